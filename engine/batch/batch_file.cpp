#include "batch/batch_file.h"

namespace lanternleaf {

namespace {

Outcome<int> count_batch_events(const std::string& text, const std::string& path) {
    const Outcome<std::vector<BatchEvent>> events = read_batch_journal(text, path);
    if (!events) {
        return events.problem();
    }
    return static_cast<int>(events.value().size());
}

const LineFileKind& batch_journal() {
    static const LineFileKind kKind{"batch", R"({"lanternleaf":)", count_batch_events};
    return kKind;
}

} // namespace

Outcome<BatchFile> BatchFile::open(const std::string& path) {
    Outcome<LineFile> file = LineFile::open(path, batch_journal());
    return file ? Outcome<BatchFile>(BatchFile(std::move(file).value())) : file.problem();
}

Outcome<BatchFile> BatchFile::create(const std::string& path) {
    Outcome<LineFile> file = LineFile::create(path, batch_journal());
    return file ? Outcome<BatchFile>(BatchFile(std::move(file).value())) : file.problem();
}

Outcome<Done> BatchFile::add(const BatchEvent& event) {
    const std::string line = write_batch_event(event, file_.count() + 1);
    // Whatever is written must be readable again, or the whole batch would be lost with it.
    const Outcome<BatchEvent> again = read_batch_event(line, file_.path(), file_.count() + 1);
    if (!again) {
        return again.problem();
    }
    return file_.add(line);
}

} // namespace lanternleaf
