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

/// One line, no newline. `number` runs from 1; the first line also carries the file's version and kind.
[[nodiscard]] std::string write_event(const Event& event, int number);
[[nodiscard]] Outcome<Event> read_event(const std::string& line, const std::string& file, int line_number);

/// How much of a journal's text is whole lines: a last line without its newline, or with bytes that never
/// reached the disk (NUL), was being written when the power went and was never confirmed.
[[nodiscard]] std::size_t whole_lines_end(const std::string& text);

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
    JournalFile(JournalFile&& other) noexcept;
    JournalFile& operator=(JournalFile&& other) noexcept;
    ~JournalFile();
    /// Written and synced when this returns without a Problem; after a Problem (a full disk) the file is as
    /// it was.
    [[nodiscard]] Outcome<Done> add(const Event& event);

    [[nodiscard]] const std::string& path() const { return path_; }

    [[nodiscard]] int count() const { return count_; } ///< events in the file

private:
    JournalFile() = default;
    [[nodiscard]] static Outcome<JournalFile> open_with(const std::string& path, int flags);
    [[nodiscard]] Outcome<Done> take_up();
    [[nodiscard]] Outcome<Done> append(const std::string& line);
    [[nodiscard]] Outcome<Done> cut_to(long long size);
    [[nodiscard]] Problem failed(const char* doing, int error) const;
    void close();

    int descriptor_ = -1;
    std::string path_;
    long long size_ = 0; ///< bytes of whole lines
    int count_ = 0;
    bool ragged_ = false; ///< a failed write could not be cut off yet
};

} // namespace lanternleaf
