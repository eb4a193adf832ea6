// The folder in which a card came: looked through before anything of it is opened.
#include "exchange/bundle.h"
#include "exchange/names.h"
#include "exchange/plain_picture.h"
#include "files/files.h"

#include <algorithm>
#include <filesystem>

namespace lanternleaf {

using namespace exchange;
namespace fs = std::filesystem;

Outcome<std::vector<LooseFile>> read_bundle_folder(const std::string& folder, const Words& words) {
    std::error_code error;
    if (!fs::is_directory(folder, error)) {
        return Problem{shown_name(folder), "", words("bring.no_folder")};
    }
    std::vector<std::string> names;
    for (fs::directory_iterator each(folder, error); !error && each != fs::directory_iterator();
         each.increment(error)) {
        const std::string name = each->path().filename().string();
        if (!ends_with(name, ".json") && !is_picture_name(name)) {
            continue; // a note, a system's own files: not ours
        }
        std::error_code ignored;
        const fs::file_type type = each->symlink_status(ignored).type();
        if (type == fs::file_type::directory) {
            continue;
        }
        if (type != fs::file_type::regular) {
            return Problem{shown_name(name), "", words("bring.no_file")};
        }
        names.push_back(name);
        if (names.size() > kMostLooseFiles) {
            return Problem{shown_name(folder), "",
                           words("bring.many_files", {{"most", std::to_string(kMostLooseFiles)}})};
        }
    }
    if (error) {
        return Problem{shown_name(folder), "", words("bring.no_folder")};
    }
    std::sort(names.begin(), names.end());
    std::vector<LooseFile> out;
    std::size_t sum = 0;
    for (const std::string& name : names) {
        const bool picture = is_picture_name(name);
        const std::size_t most = picture ? kMostPictureBytes : kMostCardBytes;
        const fs::path path = fs::path(folder) / name;
        const std::uintmax_t size = fs::file_size(path, error);
        if (!error && size > most) {
            return Problem{shown_name(name), "",
                           words(picture ? "bring.large_picture" : "bring.large_card",
                                 {{"mb", std::to_string(most >> 20)}})};
        }
        Outcome<std::string> bytes = read_file(path.string(), most);
        if (!bytes) {
            return Problem{shown_name(name), "", words("bring.no_file")};
        }
        sum += bytes.value().size();
        if (sum > kMostBundleBytes) {
            return Problem{shown_name(folder), "",
                           words("bring.large_bundle", {{"mb", std::to_string(kMostBundleBytes >> 20)}})};
        }
        out.push_back({name, std::move(bytes).value()});
    }
    return out;
}

} // namespace lanternleaf
