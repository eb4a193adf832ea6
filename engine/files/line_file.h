// Line file: a file that only grows, line by line, each on the disk before add() returns. Exists so that
// every journal (of a build, of a batch) has one writer, loses no confirmed line at any instant, and is left
// alone when it is not what it should be. What the lines mean is for the caller.
#pragma once

#include "base/outcome.h"

#include <cstddef>
#include <functional>
#include <string>

namespace lanternleaf {

/// How much of a line file's text is whole lines: a last line without its newline, or with bytes that never
/// reached the disk (NUL), was being written when the power went and was never confirmed.
[[nodiscard]] std::size_t whole_lines_end(const std::string& text);

/// What a line file holds, for its checks and sentences.
struct LineFileKind {
    std::string thing;     ///< "build": what one file is the journal of
    std::string beginning; ///< how every such file begins
    /// Counts the lines of a whole text; a Problem for what is no such file, which is then left as it is.
    std::function<Outcome<int>(const std::string& text, const std::string& path)> count;
};

/// What open() says of a file that another writer holds: "is open in another window; ...".
[[nodiscard]] std::string busy_words(const LineFileKind& kind);

/// A line file open for adding. Not copyable: one writer per file, held by a lock where the system has them.
class LineFile {
public:
    /// Makes the file (and syncs its folder) when it is not there. A torn last line is cut off first; a file
    /// of another kind is refused and left as it is.
    [[nodiscard]] static Outcome<LineFile> open(const std::string& path, const LineFileKind& kind);
    /// As open, but a file that is already there is a Problem.
    [[nodiscard]] static Outcome<LineFile> create(const std::string& path, const LineFileKind& kind);
    LineFile(LineFile&& other) noexcept;
    LineFile& operator=(LineFile&& other) noexcept;
    ~LineFile();
    /// `line` without its newline. Written and synced when this returns without a Problem; after a Problem (a
    /// full disk) the file is as it was.
    [[nodiscard]] Outcome<Done> add(const std::string& line);

    [[nodiscard]] const std::string& path() const { return path_; }

    [[nodiscard]] int count() const { return count_; } ///< lines in the file

private:
    LineFile() = default;
    [[nodiscard]] static Outcome<LineFile> open_with(const std::string& path, const LineFileKind& kind,
                                                     int flags);
    [[nodiscard]] Outcome<Done> take_up(const LineFileKind& kind);
    [[nodiscard]] Outcome<Done> append(const std::string& line);
    [[nodiscard]] Outcome<Done> cut_to(long long size);
    [[nodiscard]] Problem failed(const char* doing, int error) const;
    void close();

    int descriptor_ = -1;
    std::string path_;
    std::string thing_;
    long long size_ = 0; ///< bytes of whole lines
    int count_ = 0;
    bool ragged_ = false; ///< a failed write could not be cut off yet
};

} // namespace lanternleaf
