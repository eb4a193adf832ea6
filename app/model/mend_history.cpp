#include "model/mend_history.h"

#include "files/files.h"
#include "record/journal.h"

namespace lanternleaf {

namespace {

// A line of another kind need not be read as JSON to be passed over; whether it is one, the reader says.
bool may_be_mended(const std::string& line) {
    return line.find("mended") != std::string::npos;
}

void add_journal(const std::string& text, const std::string& path, MendHistory& history) {
    const std::size_t whole = whole_lines_end(text);
    std::size_t from = 0;
    for (int number = 1; from < whole; ++number) {
        const std::size_t end = text.find('\n', from);
        const std::string line = text.substr(from, end - from);
        from = end + 1;
        if (number > 1 && !may_be_mended(line)) {
            continue;
        }
        const Outcome<Event> event = read_event(line, path, number);
        if (!event || (number == 1 && event.value().walked)) {
            return;
        }
        if (event.value().kind == EventKind::mended) {
            add_mend(history.past, event.value().fault);
            ++history.mends;
        }
    }
}

} // namespace

MendHistory read_mend_history(const std::string& library) {
    MendHistory history;
    const std::string folder = library + "/builds";
    for (const std::string& file : files_in(folder, ".build.jsonl")) {
        const std::string path = folder + "/" + file;
        if (const Outcome<std::string> text = read_file(path)) {
            add_journal(text.value(), path, history);
        }
    }
    return history;
}

} // namespace lanternleaf
