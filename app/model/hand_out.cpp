#include "model/hand_out.h"

#include "files/files.h"

#include <filesystem>
#include <system_error>

namespace lanternleaf {

namespace {

namespace fs = std::filesystem;

// "a.build.html" is "a" and ".build.html": the number goes where a person reads the name.
std::size_t ending_at(const std::string& name) {
    const std::size_t dot = name.find('.', 1);
    return dot == std::string::npos ? name.size() : dot;
}

} // namespace

Outcome<std::string> hand_out(const std::string& folder, const std::string& file_name,
                              std::string_view bytes) {
    const std::string name = fs::path(file_name).filename().string();
    if (name.empty() || name == "." || name == "..") {
        return Problem{file_name, "", "expected a file's name"};
    }
    std::error_code code;
    fs::create_directories(folder, code);
    if (code) {
        return Problem{folder, "", "expected a folder that can be written: " + code.message()};
    }
    std::string path = folder + "/" + name;
    for (int again = 2; fs::exists(path, code); ++again) {
        const std::size_t ending = ending_at(name);
        path =
            folder + "/" + name.substr(0, ending) + " (" + std::to_string(again) + ")" + name.substr(ending);
    }
    if (const Outcome<Done> written = write_file(path, std::string(bytes)); !written) {
        return written.problem();
    }
    return path;
}

Outcome<std::string> hand_out_folder(const std::string& folder, const std::string& name,
                                     const std::vector<SharedFile>& files) {
    const std::string plain = fs::path(name).filename().string();
    if (plain.empty() || plain == "." || plain == "..") {
        return Problem{name, "", "expected a folder's name"};
    }
    std::error_code code;
    fs::create_directories(folder, code);
    std::string made = folder + "/" + plain;
    for (int again = 2; !fs::create_directory(made, code); ++again) {
        if (code) {
            return Problem{made, "", "expected a folder that can be made: " + code.message()};
        }
        made = folder + "/" + plain + " (" + std::to_string(again) + ")";
    }
    for (const SharedFile& file : files) {
        const Outcome<std::string> path = hand_out(made, file.file_name, file.bytes);
        if (!path) {
            fs::remove_all(made, code);
            return path.problem();
        }
    }
    return made;
}

std::string downloads_folder(const std::string& home, const std::string& user_dirs) {
    static const std::string kKey = "XDG_DOWNLOAD_DIR=\"";
    static const std::string kHome = "$HOME";
    std::size_t at = user_dirs.find(kKey);
    while (at != std::string::npos && at != 0 && user_dirs[at - 1] != '\n') {
        at = user_dirs.find(kKey, at + 1); // a comment, not a setting
    }
    if (at != std::string::npos) {
        const std::size_t begin = at + kKey.size();
        const std::size_t end = user_dirs.find('"', begin);
        const std::string value =
            end == std::string::npos ? std::string() : user_dirs.substr(begin, end - begin);
        if (value.rfind(kHome + "/", 0) == 0 && value.size() > kHome.size() + 1) {
            return home + value.substr(kHome.size());
        }
        if (value.rfind('/', 0) == 0) {
            return value;
        }
    }
    return home + "/Downloads";
}

} // namespace lanternleaf
