#include "exchange/bundle.h"

#include "cardfile/cardfile.h"
#include "exchange/beside.h"
#include "exchange/names.h"
#include "exchange/plain_picture.h"

namespace lanternleaf {

using namespace exchange;

namespace {

Problem wrong(const std::string& file, const std::string& sentence) {
    return {shown_name(file), "", sentence};
}

bool looks_like_card(const LooseFile& file) {
    return ends_with(file.name, ".json");
}

// A file by its name, whatever its case; a picture also by its name with another picture's ending, since
// programs on the way turn PNG into JPEG.
const LooseFile* find_picture(const std::vector<LooseFile>& files, const std::string& name) {
    for (const LooseFile& file : files) {
        if (last_part(file.name) == name) {
            return &file;
        }
    }
    for (const LooseFile& file : files) {
        const std::string other = last_part(file.name);
        if (is_picture_name(other) && without_ending(other) == without_ending(name)) {
            return &file;
        }
    }
    return nullptr;
}

Outcome<Card> read_sent_card(const LooseFile& file, const Parts& shipped, const Words& words) {
    if (file.bytes.size() > kMostCardBytes) {
        return wrong(file.name, words("bring.large_card", {{"mb", std::to_string(kMostCardBytes >> 20)}}));
    }
    const std::size_t first = file.bytes.find_first_not_of(" \t\r\n\xef\xbb\xbf");
    if (first == std::string::npos || file.bytes[first] != '{') {
        return wrong(file.name, words("bring.not_card"));
    }
    Outcome<Card> card = read_card(file.bytes, shown_name(file.name), shipped);
    if (!card) {
        const Problem& problem = card.problem();
        if (problem.place == "/kind" || problem.place.empty()) {
            return wrong(file.name, words("bring.not_card"));
        }
        return Problem{problem.file, "",
                       words("bring.bad_card", {{"place", problem.place}, {"what", problem.expected}})};
    }
    const std::optional<Art>& art = card.value().sheet.art;
    if (art && !is_plain_file_name(art->file)) {
        return wrong(file.name, words("bring.bad_name", {{"name", shown_name(art->file)}}));
    }
    return card;
}

} // namespace

Outcome<CardBundle> check_bundle(const std::vector<LooseFile>& files, const Parts& shipped,
                                 const Words& words) {
    if (files.size() > kMostLooseFiles) {
        return Problem{"", "", words("bring.many_files", {{"most", std::to_string(kMostLooseFiles)}})};
    }
    std::size_t bytes = 0;
    const LooseFile* found = nullptr;
    for (const LooseFile& file : files) {
        bytes += file.bytes.size();
        if (!looks_like_card(file)) {
            continue;
        }
        if (found != nullptr) {
            return wrong(file.name, words("bring.two_cards", {{"other", shown_name(found->name)}}));
        }
        found = &file;
    }
    if (bytes > kMostBundleBytes) {
        return Problem{"", "", words("bring.large_bundle", {{"mb", std::to_string(kMostBundleBytes >> 20)}})};
    }
    if (found == nullptr && files.size() == 1) {
        found = files.data(); // one file alone is meant as the card, whatever it is called
    }
    if (found == nullptr) {
        return Problem{"", "", words("bring.no_card")};
    }
    Outcome<Card> card = read_sent_card(*found, shipped, words);
    if (!card) {
        return card.problem();
    }
    CardBundle out;
    out.stem = plain_stem(found->name);
    out.card = std::move(card).value();
    out.text = found->bytes;
    const auto take = [&](const LooseFile* file, std::string& into) -> Outcome<Done> {
        if (file == nullptr || file == found) {
            return Done{};
        }
        Outcome<std::string> picture = plain_picture(file->bytes, shown_name(file->name), words);
        if (!picture) {
            return picture.problem();
        }
        into = std::move(picture).value();
        return Done{};
    };
    if (out.card.sheet.art) {
        if (const Outcome<Done> taken = take(find_picture(files, out.card.sheet.art->file), out.art);
            !taken) {
            return taken.problem();
        }
        out.art_missing = out.art.empty();
    }
    const std::string name = last_part(found->name);
    const std::string stem = ends_with(name, kCardEnding)
                                 ? name.substr(0, name.size() - std::string(kCardEnding).size())
                                 : without_ending(name);
    if (const Outcome<Done> taken = take(find_picture(files, stem + kFrontEnding + ".png"), out.front);
        !taken) {
        return taken.problem();
    }
    return out;
}

} // namespace lanternleaf
