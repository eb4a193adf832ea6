#include "files/files.h"

#include "files/durable.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <system_error>

namespace lanternleaf {

namespace {

namespace fs = std::filesystem;

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};

using Handle = std::unique_ptr<std::FILE, CloseFile>;

// Paths are UTF-8 everywhere in the engine; std::filesystem would take a char string as the system's code
// page.
fs::path as_path(const std::string& text) {
    return fs::path(std::u8string(text.begin(), text.end()));
}

std::string as_text(const fs::path& path) {
    const std::u8string text = path.u8string();
    return {text.begin(), text.end()};
}

std::string reason(int error) {
    return std::generic_category().message(error);
}

Problem problem(const std::string& file, const std::string& expected) {
    return {file, "", expected};
}

Problem too_large(const std::string& file, std::size_t most = kMostBytes) {
    constexpr std::size_t kMega = 1024U * 1024U;
    const std::string size =
        most < kMega ? std::to_string(most / 1024U) + " kB" : std::to_string(most / kMega) + " MB";
    return problem(file, "expected a file of at most " + size + ", found a larger one");
}

// A temporary file of our own beside the target. "x" refuses a name that exists, so that two writers, or a
// file left by a power cut, never share one. The ending keeps it out of every files_in() by ending.
Handle open_beside(const fs::path& target, fs::path& temp, int& error) {
    for (int attempt = 1; attempt <= 100; ++attempt) {
        temp = target;
        temp += ".tmp" + std::to_string(attempt);
        errno = 0;
        Handle file = Handle(durable::open(temp, "wbx"));
        error = errno;
        if (file || error != EEXIST) {
            return file;
        }
    }
    return nullptr;
}

// Writes, flushes and syncs; 0 or the errno of what failed. Closing is checked too: some file systems tell
// only then that the disk is full.
int fill(Handle file, const std::string& content) {
    errno = 0;
    if (!content.empty() && std::fwrite(content.data(), 1, content.size(), file.get()) != content.size()) {
        return errno != 0 ? errno : EIO;
    }
    if (std::fflush(file.get()) != 0 || !durable::sync(file.get())) {
        return errno != 0 ? errno : EIO;
    }
    if (std::fclose(file.release()) != 0) {
        return errno != 0 ? errno : EIO;
    }
    return 0;
}

} // namespace

Outcome<std::string> read_file(const std::string& path, std::size_t most) {
    most = std::min(most, kMostBytes);
    const fs::path place = as_path(path);
    std::error_code error;
    const fs::file_status status = fs::status(place, error);
    if (status.type() == fs::file_type::not_found) {
        return problem(path, "expected a file, found nothing of this name");
    }
    if (fs::is_directory(status)) {
        return problem(path, "expected a file, found a folder");
    }
    if (error) {
        return problem(path, "expected a file that can be read: " + reason(error.value()));
    }
    if (!fs::is_regular_file(status)) {
        return problem(path, "expected an ordinary file, found a device or a pipe");
    }
    const std::uintmax_t size = fs::file_size(place, error);
    if (!error && size > most) {
        return too_large(path, most);
    }
    errno = 0;
    const Handle file(durable::open(place, "rb"));
    if (!file) {
        return problem(path, "expected a file that can be read: " + reason(errno));
    }
    std::string content;
    if (!error) {
        content.reserve(static_cast<std::size_t>(size));
    }
    std::array<char, 65536> piece;
    // The file may grow while it is read, so the limit is checked again here.
    while (const std::size_t got = std::fread(piece.data(), 1, piece.size(), file.get())) {
        content.append(piece.data(), got);
        if (content.size() > most) {
            return too_large(path, most);
        }
    }
    if (std::ferror(file.get()) != 0) {
        return problem(path, "expected a file that can be read to its end: " + reason(errno));
    }
    return content;
}

Outcome<Done> write_file(const std::string& path, const std::string& content) {
    if (content.size() > kMostBytes) {
        return too_large(path); // it could never be read again
    }
    std::error_code error;
    fs::path target = as_path(path);
    if (target.filename().empty()) {
        return problem(path, "expected the name of a file to write");
    }
    if (fs::is_symlink(target, error)) {
        // Renaming over a link would replace the link and leave the file it points to as it was.
        const fs::path real = fs::weakly_canonical(target, error);
        if (!error) {
            target = real;
        }
    }
    const fs::file_status before = fs::status(target, error);
    if (fs::exists(before) && !fs::is_regular_file(before)) {
        return problem(path, fs::is_directory(before) ? "expected a file to write, found a folder"
                                                      : "expected a file to write, found a device or a pipe");
    }
    fs::path temp;
    int failed = 0;
    Handle file = open_beside(target, temp, failed);
    if (!file) {
        return problem(path, "expected a folder that can be written to: " + reason(failed));
    }
    failed = fill(std::move(file), content);
    if (failed == 0 && fs::exists(before)) {
        fs::permissions(temp, before.permissions(), error); // best effort: the content matters more
    }
    if (failed == 0) {
        fs::rename(temp, target, error);
        failed = error ? error.value() : 0;
    }
    if (failed != 0) {
        fs::remove(temp, error);
        return problem(path, "expected to write the whole file, nothing was changed: " + reason(failed));
    }
    durable::sync_folder(target.parent_path());
    return Done{};
}

Outcome<Done> make_folder(const std::string& path) {
    std::error_code error;
    const fs::path place = as_path(path);
    fs::create_directories(place, error);
    std::error_code ignored;
    if (fs::is_directory(place, ignored)) {
        return Done{};
    }
    if (fs::exists(place, ignored)) {
        return problem(path, "expected a folder, found a file");
    }
    return problem(path, "expected a folder that can be made: " + reason(error.value()));
}

std::vector<std::string> files_in(const std::string& folder, const std::string& ending) {
    std::vector<std::string> names;
    std::error_code error;
    fs::directory_iterator each(as_path(folder), error);
    for (; !error && each != fs::directory_iterator(); each.increment(error)) {
        std::error_code ignored;
        const std::string name = as_text(each->path().filename());
        if (name.ends_with(ending) && each->is_regular_file(ignored)) {
            names.push_back(name);
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

bool path_exists(const std::string& path) {
    std::error_code ignored;
    return std::filesystem::exists(path, ignored);
}

} // namespace lanternleaf
