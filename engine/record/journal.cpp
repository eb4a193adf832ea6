#include "record/journal.h"

namespace lanternleaf {

namespace {

Outcome<int> count_events(const std::string& text, const std::string& path) {
    const Outcome<std::vector<Event>> events = read_journal(text, path);
    if (!events) {
        return events.problem();
    }
    return static_cast<int>(events.value().size());
}

const LineFileKind& build_journal() {
    static const LineFileKind kKind{"build", R"({"lanternleaf":)", count_events};
    return kKind;
}

} // namespace

Outcome<std::vector<Event>> read_journal(const std::string& text, const std::string& file) {
    const std::size_t end = whole_lines_end(text);
    std::vector<Event> events;
    std::size_t start = 0;
    while (start < end) {
        const std::size_t newline = text.find('\n', start);
        Outcome<Event> event =
            read_event(text.substr(start, newline - start), file, static_cast<int>(events.size()) + 1);
        if (!event) {
            return event.problem();
        }
        events.push_back(std::move(event).value());
        start = newline + 1;
    }
    return events;
}

Outcome<JournalFile> JournalFile::open(const std::string& path) {
    Outcome<LineFile> file = LineFile::open(path, build_journal());
    return file ? Outcome<JournalFile>(JournalFile(std::move(file).value())) : file.problem();
}

Outcome<JournalFile> JournalFile::create(const std::string& path) {
    Outcome<LineFile> file = LineFile::create(path, build_journal());
    return file ? Outcome<JournalFile>(JournalFile(std::move(file).value())) : file.problem();
}

Outcome<Done> JournalFile::add(const Event& event) {
    const std::string line = write_event(event, file_.count() + 1);
    // Whatever is written must be readable again, or the whole build would be lost with it.
    const Outcome<Event> again = read_event(line, file_.path(), file_.count() + 1);
    if (!again) {
        return again.problem();
    }
    return file_.add(line);
}

} // namespace lanternleaf
