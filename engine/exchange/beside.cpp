#include "exchange/beside.h"

#include "exchange/on_disk.h"
#include "files/files.h"

#include <algorithm>
#include <array>

namespace lanternleaf {

using namespace exchange;

namespace {

constexpr std::size_t kLongestName = 100;

// CON, NUL, COM1...: names that Windows opens as devices, with any ending (learn.microsoft.com, "Naming
// Files, Paths, and Namespaces"; from memory).
bool is_device(const std::string& name) {
    std::string stem = name.substr(0, name.find('.'));
    std::transform(stem.begin(), stem.end(), stem.begin(),
                   [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
    static constexpr std::array<const char*, 4> kWhole{"CON", "PRN", "AUX", "NUL"};
    if (std::find(kWhole.begin(), kWhole.end(), stem) != kWhole.end()) {
        return true;
    }
    return stem.size() == 4 && (stem.rfind("COM", 0) == 0 || stem.rfind("LPT", 0) == 0) && stem[3] >= '0' &&
           stem[3] <= '9';
}

} // namespace

bool is_plain_file_name(const std::string& name) {
    if (name.empty() || name.size() > kLongestName || name.front() == '.' || name.back() == '.' ||
        name.front() == ' ' || name.back() == ' ' || name.find("..") != std::string::npos ||
        is_device(name)) {
        return false;
    }
    return std::none_of(name.begin(), name.end(), [](char c) {
        const auto code = static_cast<unsigned char>(c);
        return code < 0x20 || code == 0x7F ||
               std::string_view("/\\:*?\"<>|").find(c) != std::string_view::npos;
    });
}

std::string name_beside(const std::string& folder, const std::string& wish, const std::string& bytes) {
    const std::size_t dot = wish.rfind('.');
    const std::string stem = wish.substr(0, dot);
    const std::string ending = dot == std::string::npos ? "" : wish.substr(dot);
    std::string name = wish;
    for (int number = 2; is_there(folder + "/" + name) && !holds(folder + "/" + name, bytes); ++number) {
        name = stem;
        name += "-";
        name += std::to_string(number);
        name += ending;
    }
    return name;
}

Outcome<std::string> put_beside(const std::string& folder, const std::string& wish,
                                const std::string& bytes) {
    const std::string name = name_beside(folder, wish, bytes);
    if (!is_there(folder + "/" + name)) {
        if (const Outcome<Done> written = write_file(folder + "/" + name, bytes); !written) {
            return written.problem();
        }
    }
    return name;
}

Outcome<std::string> copy_beside(const std::string& from, const std::string& folder,
                                 const std::string& wish) {
    const Outcome<std::string> bytes = read_file(from);
    return bytes ? put_beside(folder, wish, bytes.value()) : Outcome<std::string>(bytes.problem());
}

} // namespace lanternleaf
