#include "files/line_file.h"

#include "files/files.h"

#include <algorithm>
#include <cassert>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace lanternleaf {

namespace {

// A file too short to show how it begins must at least not contradict it.
bool could_be(const std::string& torn, const std::string& beginning) {
    if (torn.find_first_not_of('\0') == std::string::npos) {
        return true; // empty, or a first write of which only the length reached the disk
    }
    const std::size_t shared = std::min(torn.size(), beginning.size());
    return torn.compare(0, shared, beginning, 0, shared) == 0;
}

int sync_descriptor(int descriptor) {
    int result = 0;
    do {
#ifdef F_FULLFSYNC
        // On Apple's systems fsync stops at the drive's own cache (fsync(2) there says so).
        result = fcntl(descriptor, F_FULLFSYNC);
#else
        result = fsync(descriptor);
#endif
    } while (result != 0 && errno == EINTR);
    return result;
}

// A new file is only sure to be found again once its folder is on the disk too. Folders that cannot be synced
// (some network and in-memory file systems say EINVAL) are taken as they are.
int sync_folder_of(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    const std::string folder = slash == std::string::npos ? "." : slash == 0 ? "/" : path.substr(0, slash);
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) {
        return errno == EACCES ? 0 : -1; // a folder that may be written but not listed
    }
    const int result = sync_descriptor(descriptor);
    const int error = errno;
    ::close(descriptor);
    errno = error;
    return result != 0 && error != EINVAL && error != ENOTSUP && error != EBADF ? -1 : 0;
}

} // namespace

std::size_t whole_lines_end(const std::string& text) {
    const std::size_t newline = text.rfind('\n');
    if (newline == std::string::npos) {
        return 0;
    }
    // JSON text never holds a NUL; in the last line it is a block that was not written when the power went.
    const std::size_t before = newline == 0 ? std::string::npos : text.rfind('\n', newline - 1);
    const std::size_t start = before == std::string::npos ? 0 : before + 1;
    const bool hole = text.find('\0', start) < newline;
    return hole ? start : newline + 1;
}

std::string busy_words(const LineFileKind& kind) {
    return "is open in another window; close the " + kind.thing + " there first";
}

LineFile::LineFile(LineFile&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)), path_(std::move(other.path_)),
      thing_(std::move(other.thing_)), size_(other.size_), count_(other.count_), ragged_(other.ragged_) {}

LineFile& LineFile::operator=(LineFile&& other) noexcept {
    if (this != &other) {
        close();
        descriptor_ = std::exchange(other.descriptor_, -1);
        path_ = std::move(other.path_);
        thing_ = std::move(other.thing_);
        size_ = other.size_;
        count_ = other.count_;
        ragged_ = other.ragged_;
    }
    return *this;
}

LineFile::~LineFile() {
    close();
}

void LineFile::close() {
    if (descriptor_ >= 0) {
        ::close(descriptor_); // nothing is lost if this fails: every confirmed line is already synced
        descriptor_ = -1;
    }
}

Problem LineFile::failed(const char* doing, int error) const {
    if (error == ENOSPC || error == EDQUOT) {
        return {path_, "", std::string("could not be ") + doing + ": the disk is full"};
    }
    return {path_, "", std::string("could not be ") + doing + ": " + std::strerror(error)};
}

Outcome<LineFile> LineFile::open(const std::string& path, const LineFileKind& kind) {
    return open_with(path, kind, 0);
}

Outcome<LineFile> LineFile::create(const std::string& path, const LineFileKind& kind) {
    return open_with(path, kind, O_EXCL);
}

Outcome<LineFile> LineFile::open_with(const std::string& path, const LineFileKind& kind, int flags) {
    LineFile file;
    file.path_ = path;
    file.thing_ = kind.thing;
    const int asked = O_RDWR | O_APPEND | O_CREAT | O_CLOEXEC | flags;
    do {
        file.descriptor_ = ::open(path.c_str(), asked, 0666);
    } while (file.descriptor_ < 0 && errno == EINTR);
    if (file.descriptor_ < 0) {
        if (errno == EEXIST) {
            return Problem{path, "", "is already there; a " + kind.thing + " is never written over"};
        }
        return file.failed("opened", errno);
    }
#ifndef __EMSCRIPTEN__ // one page has the file there
    if (flock(file.descriptor_, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK) {
        return Problem{path, "", busy_words(kind)};
    }
#endif
    Outcome<Done> taken = file.take_up(kind);
    if (!taken) {
        return taken.problem();
    }
    return file;
}

// Reads what the file holds, refuses what is of another kind, cuts off a torn last line.
Outcome<Done> LineFile::take_up(const LineFileKind& kind) {
    Outcome<std::string> text = read_file(path_);
    if (!text) {
        return text.problem();
    }
    const std::string& held = text.value();
    const Outcome<int> lines = kind.count(held, path_);
    if (!lines) {
        return lines.problem();
    }
    const std::size_t end = whole_lines_end(held);
    if (end == 0 && !could_be(held, kind.beginning)) {
        return Problem{path_, "line 1", "expected a " + kind.thing + "'s journal, found something else"};
    }
    size_ = static_cast<long long>(end);
    count_ = lines.value();
    if (end < held.size()) {
        Outcome<Done> cut = cut_to(size_);
        if (!cut) {
            return cut.problem();
        }
    }
    if (held.empty() && sync_folder_of(path_) != 0) {
        return failed("made", errno);
    }
    return Done{};
}

Outcome<Done> LineFile::cut_to(long long size) {
    int result = 0;
    do {
        result = ftruncate(descriptor_, static_cast<off_t>(size));
    } while (result != 0 && errno == EINTR);
    if (result != 0 || sync_descriptor(descriptor_) != 0) {
        return failed("mended after a torn line", errno);
    }
    return Done{};
}

Outcome<Done> LineFile::append(const std::string& line) {
    std::size_t written = 0;
    while (written < line.size()) {
        const ssize_t got = ::write(descriptor_, line.data() + written, line.size() - written);
        if (got > 0) {
            written += static_cast<std::size_t>(got);
        } else if (got == 0 || errno != EINTR) {
            return failed("written", got == 0 ? EIO : errno);
        }
    }
    if (sync_descriptor(descriptor_) != 0) {
        return failed("written", errno);
    }
    return Done{};
}

Outcome<Done> LineFile::add(const std::string& line) {
    assert(descriptor_ >= 0);
    assert(line.find('\n') == std::string::npos);
    if (ragged_) {
        Outcome<Done> cut = cut_to(size_);
        if (!cut) {
            return cut.problem();
        }
        ragged_ = false;
    }

    struct stat now {};

    if (fstat(descriptor_, &now) != 0) {
        return failed("looked at", errno);
    }

    // The name must still lead to this very file: a synchroniser may have put another one in its place.
    struct stat named {};

    const bool in_place =
        stat(path_.c_str(), &named) == 0 && named.st_ino == now.st_ino && named.st_dev == now.st_dev;
    if (now.st_size != size_ || now.st_nlink == 0 || !in_place) {
        return Problem{path_, "",
                       "was changed or taken away by something else; open the " + thing_ + " again"};
    }
    Outcome<Done> appended = append(line + "\n");
    if (!appended) {
        ragged_ = !cut_to(size_);
        return appended.problem();
    }
    size_ += static_cast<long long>(line.size()) + 1;
    ++count_;
    return Done{};
}

} // namespace lanternleaf
