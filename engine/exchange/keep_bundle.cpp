// A checked card into the library: names first, then pictures, then the card.
#include "cardfile/cardfile.h"
#include "exchange/beside.h"
#include "exchange/bundle.h"
#include "exchange/names.h"
#include "exchange/on_disk.h"
#include "files/files.h"
#include "learn/own_parts.h"

#include <filesystem>

namespace lanternleaf {

using namespace exchange;

namespace {

std::string front_of(const std::string& name) {
    return name + kFrontEnding + ".png";
}

// A picture that did not come keeps its name only while no other picture has it: else the card would show
// that one.
std::string free_art_name(const std::string& folder, const std::string& wish) {
    return name_beside(folder, wish, "");
}

// What has been written, to be taken away again when the rest cannot be.
class Written {
public:
    Written() = default;
    Written(const Written&) = delete;
    Written& operator=(const Written&) = delete;

    ~Written() {
        for (const std::string& path : paths_) {
            std::error_code ignored;
            std::filesystem::remove(path, ignored);
        }
    }

    Outcome<Done> write(const std::string& path, const std::string& bytes) {
        if (is_there(path)) {
            return Done{}; // the same bytes: names were chosen so
        }
        Outcome<Done> done = write_file(path, bytes);
        if (done) {
            paths_.push_back(path);
        }
        return done;
    }

    void keep() { paths_.clear(); }

private:
    std::vector<std::string> paths_;
};

} // namespace

Outcome<KeptCard> keep_bundle(const CardBundle& bundle, const CardFolders& folders) {
    const std::string folder = folders.library + "/cards";
    for (const std::string& needed : {folders.library, folder}) {
        if (const Outcome<Done> made = make_folder(needed); !made) {
            return made.problem();
        }
    }
    Card card = bundle.card;
    std::string text = bundle.text;
    if (card.sheet.art) {
        const std::string wish = bundle.art.compare(0, 4, "\x89PNG") == 0
                                     ? without_ending(card.sheet.art->file) + ".png"
                                     : card.sheet.art->file;
        const std::string name =
            bundle.art.empty() ? free_art_name(folder, wish) : name_beside(folder, wish, bundle.art);
        if (name != card.sheet.art->file) {
            card.sheet.art->file = name;
            text = write_card(card);
        }
    }
    KeptCard kept;
    kept.name = bundle.stem;
    for (int number = 2;; ++number) {
        const std::string path = folder + "/" + kept.name + kCardEnding;
        const std::string front = folder + "/" + front_of(kept.name);
        const bool shipped = is_there(folders.shipped_cards + "/" + kept.name + kCardEnding);
        if (!shipped && holds(path, text)) {
            kept.was_there = true;
            return kept;
        }
        const bool front_free = !is_there(front) || holds(front, bundle.front);
        if (!shipped && !is_there(path) && front_free) {
            break;
        }
        kept.name = bundle.stem;
        kept.name += "-";
        kept.name += std::to_string(number);
    }
    Written written;
    if (!bundle.art.empty()) {
        if (const Outcome<Done> done = written.write(folder + "/" + card.sheet.art->file, bundle.art);
            !done) {
            return done.problem();
        }
    }
    if (!bundle.front.empty()) {
        if (const Outcome<Done> done = written.write(folder + "/" + front_of(kept.name), bundle.front);
            !done) {
            return done.problem();
        }
    }
    if (const Outcome<Done> done = write_file(folder + "/" + kept.name + kCardEnding, text); !done) {
        return done.problem();
    }
    written.keep();
    return kept;
}

std::vector<LooseFile> pack_card(const Card& card, const std::string& name, const std::string& folder,
                                 const Parts& known) {
    Card whole = card;
    whole.own_parts = carried_by(whole, known);
    std::vector<LooseFile> out{{name + kCardEnding, write_card(whole)}};
    const auto add = [&](const std::string& file) {
        if (!is_plain_file_name(file)) {
            return;
        }
        if (Outcome<std::string> bytes = read_file(folder + "/" + file)) {
            out.push_back({file, std::move(bytes).value()});
        }
    };
    if (whole.sheet.art) {
        add(whole.sheet.art->file);
    }
    add(front_of(name));
    return out;
}

} // namespace lanternleaf
