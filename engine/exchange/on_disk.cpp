#include "exchange/on_disk.h"

#include "files/files.h"

#include <filesystem>

namespace lanternleaf::exchange {

bool is_there(const std::string& path) {
    std::error_code ignored;
    return std::filesystem::symlink_status(path, ignored).type() != std::filesystem::file_type::not_found;
}

bool holds(const std::string& path, const std::string& bytes) {
    const Outcome<std::string> there = read_file(path);
    return there && there.value() == bytes;
}

} // namespace lanternleaf::exchange
