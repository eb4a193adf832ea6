#include "desk/desk.h"

#include "cardfile/cardfile.h"
#include "files/files.h"
#include "learn/own_parts.h"

#include <filesystem>
#include <utility>

namespace lanternleaf {

Outcome<Parts> load_parts(const std::string& assets_folder) {
    const std::string path = assets_folder + "/parts.json";
    const Outcome<std::string> text = read_file(path);
    if (!text) {
        return text.problem();
    }
    return read_parts(text.value(), path);
}

Outcome<OpenCard> open_card(const std::string& path, const Parts& shipped) {
    const Outcome<std::string> text = read_file(path);
    if (!text) {
        return text.problem();
    }
    Outcome<Card> card = read_card(text.value(), path, shipped);
    if (!card) {
        return card.problem();
    }
    OpenCard open;
    open.card = std::move(card).value();
    open.parts = merged(shipped, open.card.own_parts);
    open.path = path;
    return open;
}

Parts parts_beside(const std::string& card_path, const Parts& shipped) {
    std::error_code ignored;
    const std::filesystem::path folder =
        std::filesystem::absolute(std::filesystem::path(card_path), ignored).parent_path();
    if (folder.filename() != "cards") {
        return shipped;
    }
    return merged(shipped, load_own_parts(folder.parent_path().string(), shipped).parts);
}

std::string name_of_card_file(const std::string& path) {
    std::string name = path.substr(path.find_last_of('/') + 1); // npos + 1 is 0: no slash, the whole path
    for (const char* ending : {".card.json", ".json"}) {
        const std::string end = ending;
        if (name.size() > end.size() && name.ends_with(end)) {
            name.resize(name.size() - end.size());
            break;
        }
    }
    return name;
}

} // namespace lanternleaf
