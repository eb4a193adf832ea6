// Journal: a build's events in a file, one JSON line each, on the disk before the screen says 'done'.
// A kill at any instant leaves at most one torn last line, which reading leaves out; every confirmed event is
// whole.
#pragma once

#include "base/outcome.h"
#include "files/line_file.h"
#include "record/event.h"
#include "record/record.h"

#include <string>
#include <utility>
#include <vector>

namespace lanternleaf {

/// One line, no newline. `number` runs from 1; the first line also carries the file's version and kind.
[[nodiscard]] std::string write_event(const Event& event, int number);
[[nodiscard]] Outcome<Event> read_event(const std::string& line, const std::string& file, int line_number);

/// All whole events of a journal's text. A torn last line is left out; anything else that cannot be read is a
/// Problem with its line.
[[nodiscard]] Outcome<std::vector<Event>> read_journal(const std::string& text, const std::string& file);

/// What JournalFile::open says of a file that another writer holds.
inline constexpr const char* kJournalBusy = "is open in another window; close the build there first";

/// A journal open for adding. Not copyable: one writer per build, held by a lock where the system has them.
class JournalFile {
public:
    /// Makes the file (and syncs its folder) when it is not there. A torn last line is cut off first; a file
    /// that is not a journal is refused and left as it is.
    [[nodiscard]] static Outcome<JournalFile> open(const std::string& path);
    /// As open, but a file that is already there is a Problem.
    [[nodiscard]] static Outcome<JournalFile> create(const std::string& path);
    /// Written and synced when this returns without a Problem; after a Problem (a full disk) the file is as
    /// it was.
    [[nodiscard]] Outcome<Done> add(const Event& event);

    [[nodiscard]] const std::string& path() const { return file_.path(); }

    [[nodiscard]] int count() const { return file_.count(); } ///< events in the file

private:
    explicit JournalFile(LineFile file) : file_(std::move(file)) {}

    LineFile file_;
};

} // namespace lanternleaf
