// Journal: a build's events in a file, one JSON line each, on the disk before the screen says 'done'.
// A kill at any instant leaves at most one torn last line, which reading leaves out; every confirmed event is
// whole.
#pragma once

#include "base/outcome.h"
#include "record/event.h"
#include "record/record.h"

#include <string>
#include <vector>

namespace lanternleaf {

[[nodiscard]] std::string write_event(const Event& event); ///< one line, no newline
[[nodiscard]] Outcome<Event> read_event(const std::string& line, const std::string& file, int line_number);

/// All whole events of a journal's text. A torn last line (no newline at the end) is left out; anything else
/// that cannot be read is a Problem with its line.
[[nodiscard]] Outcome<std::vector<Event>> read_journal(const std::string& text, const std::string& file);

/// Opens a journal for adding; makes the file (and syncs its folder) when it is new. A torn last line is cut
/// off first. Not copyable: one writer per build.
class JournalFile {
public:
    [[nodiscard]] static Outcome<JournalFile> open(const std::string& path);
    JournalFile(JournalFile&& other) noexcept;
    JournalFile& operator=(JournalFile&& other) noexcept;
    ~JournalFile();
    /// Written and synced when this returns without a Problem.
    [[nodiscard]] Outcome<Done> add(const Event& event);

private:
    JournalFile() = default;
    int descriptor_ = -1;
    std::string path_;
};

/// The record as the JSON document that assets/schema/record.schema.json describes.
[[nodiscard]] std::string write_record(const Record& record, const Parts& parts);

} // namespace lanternleaf
