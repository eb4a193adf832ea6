#include "files/durable.h"

#ifdef _WIN32
#include <io.h>
#include <string>
#else
#include <cerrno>
#include <fcntl.h>
#include <unistd.h>
#endif

namespace lanternleaf::durable {

#ifdef _WIN32

std::FILE* open(const std::filesystem::path& path, const char* mode) {
    const std::string narrow(mode);
    return _wfopen(path.c_str(), std::wstring(narrow.begin(), narrow.end()).c_str());
}

bool sync(std::FILE* file) {
    return _commit(_fileno(file)) == 0;
}

void sync_folder(const std::filesystem::path&) {
    // A folder cannot be synced there; the file system journals renames itself.
}

#else

std::FILE* open(const std::filesystem::path& path, const char* mode) {
    return std::fopen(path.c_str(), mode);
}

bool sync(std::FILE* file) {
    if (fsync(fileno(file)) == 0) {
        return true;
    }
    return errno == EINVAL ||
           errno == ENOSYS; // a file system without sync, such as a browser's, is no failure
}

void sync_folder(const std::filesystem::path& folder) {
    const int handle = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY);
    if (handle >= 0) {
        [[maybe_unused]] const int done = fsync(handle);
        ::close(handle);
    }
}

#endif

} // namespace lanternleaf::durable
