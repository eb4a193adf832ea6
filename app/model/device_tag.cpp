#include "model/device_tag.h"

#include "files/files.h"

#include <random>

namespace lanternleaf {

namespace {

// Without the ones that are mistaken for each other: these names are read out and typed.
const std::string kCharacters = "abcdefghkmnpqrstuvwxyz3456789";
constexpr std::size_t kLength = 4;

bool is_tag(const std::string& text) {
    return text.size() == kLength && text.find_first_not_of(kCharacters) == std::string::npos;
}

std::string new_tag() {
    std::random_device random;
    std::uniform_int_distribution<std::size_t> choose(0, kCharacters.size() - 1);
    std::string tag;
    while (tag.size() < kLength) {
        tag += kCharacters[choose(random)];
    }
    return tag;
}

} // namespace

std::string device_tag(const Surroundings& around) {
    const std::string folder = around.device.empty() ? around.library : around.device;
    const std::string path = folder + "/device-tag.txt";
    if (const Outcome<std::string> kept = read_file(path)) {
        const std::string tag = kept.value().substr(0, kept.value().find_last_not_of(" \r\n") + 1);
        if (is_tag(tag)) {
            return tag;
        }
    }
    const std::string tag = new_tag();
    const bool kept = make_folder(folder).ok() && write_file(path, tag + "\n").ok();
    return kept ? tag : "";
}

} // namespace lanternleaf
