#include "model/bring_in.h"

#include "model/take_picture.h"
#include "model/update_parts.h"

#include <algorithm>

namespace lanternleaf {

namespace {

void keep(AppState& state, const Surroundings& around, const CardBundle& bundle) {
    const Outcome<KeptCard> kept = keep_bundle(bundle, card_folders(around));
    if (!kept) {
        say(state, around, kept.problem().sentence());
        return;
    }
    refresh_shelf(state, around); // with its findings, as any card
    const Fill title{"title", bundle.card.title.empty() ? kept.value().name : bundle.card.title};
    if (kept.value().was_there) {
        say(state, around, around.words("bring.was_there", {title}));
    } else if (bundle.art_missing) {
        say(state, around, around.words("bring.no_art", {title, {"name", bundle.card.sheet.art->file}}));
    } else {
        say(state, around, around.words("bring.on_shelf", {title}));
    }
}

} // namespace

CardFolders card_folders(const Surroundings& around) {
    return {around.library, around.assets + "/cards"};
}

Outcome<std::string> bring_in_card(const Surroundings& around, const std::string& file_name,
                                   const std::string& content) {
    const Outcome<CardBundle> bundle = check_bundle({{file_name, content}}, around.shipped, around.words);
    if (!bundle) {
        return bundle.problem();
    }
    const Outcome<KeptCard> kept = keep_bundle(bundle.value(), card_folders(around));
    return kept ? Outcome<std::string>(kept.value().name) : Outcome<std::string>(kept.problem());
}

void bring_in_files(AppState& state, const Surroundings& around, const std::vector<LooseFile>& files) {
    const bool pictures =
        !files.empty() &&
        std::all_of(files.begin(), files.end(), [](const LooseFile& file) { return is_picture(file.bytes); });
    if (pictures) {
        for (const LooseFile& file : files) {
            take_picture(state, around, file.name, file.bytes);
        }
        return;
    }
    const Outcome<CardBundle> bundle = check_bundle(files, around.shipped, around.words);
    if (bundle) {
        keep(state, around, bundle.value());
    } else {
        say(state, around, bundle.problem().sentence());
    }
}

void bring_in_folder(AppState& state, const Surroundings& around, const std::string& folder) {
    const Outcome<std::vector<LooseFile>> files = read_bundle_folder(folder, around.words);
    const Outcome<CardBundle> bundle = files ? check_bundle(files.value(), around.shipped, around.words)
                                             : Outcome<CardBundle>(files.problem());
    if (bundle) {
        keep(state, around, bundle.value());
    } else {
        say(state, around, bundle.problem().sentence());
    }
}

void bring_in(AppState& state, const Surroundings& around, const std::string& file_name,
              const std::string& content) {
    bring_in_files(state, around, {{file_name, content}});
}

} // namespace lanternleaf
