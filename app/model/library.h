// Library: the folder of plain files behind the shelf: cards, one journal per build, and the settings.
// Exists so that several tablets can share a folder through any file synchroniser: nothing is rewritten that
// another device could be writing, and a file that cannot be read is named while the rest opens.
#pragma once

#include "model/app_state.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// Where things are and what time it is; given by the host, so that tests have their own.
struct Surroundings {
    std::string assets;  ///< shipped parts, cards, safety table
    std::string fonts;   ///< where the faces for printouts lie; empty: the built-in face
    std::string library; ///< the maker's own: cards/, builds/, prices.json; may be shared between devices
    std::string device;  ///< what is this device's alone (settings: its glass, its light); empty: the library
    Parts shipped;
    Words words = english(); ///< how to speak to the person at this device
    std::int64_t now_s = 0;  ///< UTC seconds
    double clock_s = 0.0;    ///< a steady clock, for toasts and holds
};

/// The batch a build belongs to and who makes it; both may be empty.
struct Membership {
    std::string batch;
    std::string maker;
};

[[nodiscard]] std::vector<ShelfCard> list_cards(const Surroundings& around,
                                                const std::vector<ShelfBuild>& builds);
[[nodiscard]] std::vector<ShelfBuild> list_builds(const Surroundings& around);

/// The shipped parts with the library's own, as they are on the disk now, laid over: what a card is opened
/// with. A record is read with the shipped ones: it brings its own.
[[nodiscard]] Parts known_parts(const Surroundings& around);

/// "20260504-100000": a moment as it stands in file names, so that they sort by time.
[[nodiscard]] std::string stamp(std::int64_t seconds);

/// A new build's journal: its file, written and synced with the started and audience events in it.
/// `plan`: build this instead of what the card's file says (traces laid anew for another holder).
[[nodiscard]] Outcome<std::string> start_build(const Surroundings& around, const std::string& card_path,
                                               Audience audience, const AudienceChoice& way,
                                               const Membership& of = {}, const Card* plan = nullptr);

/// Opens a build to work on: this program is then its one writer. When another program has it open, the build
/// can be looked at, and `looking_only` says why nothing can be confirmed.
[[nodiscard]] Outcome<OpenBuild> take_up_build(const Surroundings& around, const ShelfBuild& shelf);
/// Opens a journal to read and derives everything the Make place needs.
[[nodiscard]] Outcome<OpenBuild> open_build(const Surroundings& around, const ShelfBuild& shelf);
/// One event into the journal (on the disk when this returns) and into the record. Nothing changes on a
/// Problem.
[[nodiscard]] Outcome<Done> confirm(const Surroundings& around, OpenBuild& build, Event event);
/// Steps, review and move number again after the record changed.
void derive(OpenBuild& build);

[[nodiscard]] Settings read_settings(const Surroundings& around);
/// Quietly keeps the old settings when the disk refuses: settings are a comfort, never a promise.
void write_settings(const Surroundings& around, const Settings& settings);
/// The words of the settings' language and units; English when its file cannot be read.
[[nodiscard]] Words load_words(const Surroundings& around, const Settings& settings);
/// Whether these words are those that files and journals are written in: English and millimetres.
[[nodiscard]] bool told_as_in_files(const Words& words);
[[nodiscard]] Outcome<RegionTable> load_regions(const Surroundings& around);

/// "harbour-lighthouse" from ".../harbour-lighthouse.card.json".
[[nodiscard]] std::string card_name(const std::string& path);

} // namespace lanternleaf
