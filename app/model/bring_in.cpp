#include "model/bring_in.h"

#include "cardfile/cardfile.h"
#include "files/files.h"
#include "model/take_picture.h"
#include "model/update_parts.h"

#include <algorithm>
#include <filesystem>

namespace lanternleaf {

namespace {

// Small letters, digits and dashes: a name that every file system and synchroniser takes.
std::string plain_name(const std::string& file_name) {
    std::string plain;
    for (const char c : name_of_card_file(file_name)) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (letter) {
            plain += c;
        } else if (c >= 'A' && c <= 'Z') {
            plain += static_cast<char>(c - 'A' + 'a');
        } else if (!plain.empty() && plain.back() != '-') {
            plain += '-';
        }
    }
    while (!plain.empty() && plain.back() == '-') {
        plain.pop_back();
    }
    plain.resize(std::min<std::size_t>(plain.size(), 60));
    return plain.empty() ? "card" : plain;
}

bool exists(const std::string& path) {
    std::error_code ignored;
    return std::filesystem::exists(path, ignored);
}

} // namespace

Outcome<std::string> bring_in_card(const Surroundings& around, const std::string& file_name,
                                   const std::string& content) {
    const Outcome<Card> card = read_card(content, file_name, around.shipped);
    if (!card) {
        return card.problem();
    }
    const std::string folder = around.library + "/cards";
    for (const std::string& needed : {around.library, folder}) {
        if (const Outcome<Done> made = make_folder(needed); !made) {
            return made.problem();
        }
    }
    const std::string first = plain_name(file_name);
    std::string name = first;
    for (int again = 2;; ++again) {
        const std::string path = folder + "/" + name + ".card.json";
        const bool shipped = exists(around.assets + "/cards/" + name + ".card.json");
        if (exists(path)) {
            const Outcome<std::string> there = read_file(path);
            if (there && there.value() == content) {
                return name;
            }
        } else if (!shipped) {
            if (const Outcome<Done> written = write_file(path, content); !written) {
                return written.problem();
            }
            return name;
        }
        name = first + "-" + std::to_string(again);
    }
}

void bring_in(AppState& state, const Surroundings& around, const std::string& file_name,
              const std::string& content) {
    if (is_picture(content)) {
        take_picture(state, around, file_name, content);
        return;
    }
    const Outcome<std::string> name = bring_in_card(around, file_name, content);
    if (!name) {
        say(state, around, name.problem().sentence());
        return;
    }
    refresh_shelf(state, around);
    const auto is_it = [&name](const ShelfCard& card) { return card.name == name.value(); };
    const auto card = std::find_if(state.cards.begin(), state.cards.end(), is_it);
    say(state, around,
        around.words("model.on_shelf", {{"card", card == state.cards.end() ? name.value() : card->title}}));
}

} // namespace lanternleaf
