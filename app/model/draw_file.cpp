// Plans in files: opened from the shelf, saved after every edit. A card that came with the app is never
// written to: its first edit makes a card of the maker's own, under a name that is free. A file that someone
// else has changed since is left alone: the plan goes on in a new one.
#include "cardfile/cardfile.h"
#include "exchange/beside.h"
#include "files/files.h"
#include "learn/own_parts.h"
#include "model/update_draw.h"

#include <algorithm>
#include <filesystem>

namespace lanternleaf {

namespace {

const char* const kCardFileEnding = ".card.json";

std::string cards_folder(const Surroundings& around) {
    return around.library + "/cards";
}

bool in_folder(const std::string& path, const std::string& folder) {
    return path.rfind(folder + "/", 0) == 0;
}

std::string folder_of(const std::string& path) {
    const std::size_t slash = path.find_last_of('/');
    return slash == std::string::npos ? "." : path.substr(0, slash);
}

/// "My tree, 2" -> "my-tree-2": letters, digits and hyphens that every file system takes.
std::string slug(const std::string& title) {
    std::string out;
    for (const char c : title) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (letter || (c >= 'A' && c <= 'Z')) {
            out += letter ? c : static_cast<char>(c - 'A' + 'a');
        } else if (!out.empty() && out.back() != '-') {
            out += '-';
        }
    }
    while (!out.empty() && out.back() == '-') {
        out.pop_back();
    }
    return out.empty() ? "card" : out.substr(0, 40);
}

/// A name that no card has, here or among those that came with the app.
std::string free_name(const Surroundings& around, const std::string& wish) {
    std::vector<std::string> taken = files_in(cards_folder(around), kCardFileEnding);
    const std::vector<std::string> shipped = files_in(around.assets + "/cards", kCardFileEnding);
    taken.insert(taken.end(), shipped.begin(), shipped.end());
    std::error_code ignored;
    const auto is_taken = [&](const std::string& name) {
        return std::find(taken.begin(), taken.end(), name + kCardFileEnding) != taken.end() ||
               std::filesystem::exists(cards_folder(around) + "/" + name + "-front.png",
                                       ignored); // another card's shelf picture
    };
    std::string name = wish;
    for (int number = 2; is_taken(name); ++number) {
        name = wish + "-" + std::to_string(number);
    }
    return name;
}

void put_on_table(AppState& state, Card card, const Parts& known, const Words& words) {
    DrawState draw(std::move(card));
    draw.parts = merged(known, draw.history.card().own_parts);
    draw.words = words;
    // What the card is made of already is what the next strip and light will most likely be.
    const Card& first = draw.history.card();
    draw.tape = draw.parts.tapes.count("copper-5") > 0 ? "copper-5" : draw.parts.tapes.begin()->first;
    for (const Laid& laid : first.laid) {
        if (const Strip* strip = std::get_if<Strip>(&laid)) {
            draw.tape = strip->tape;
        }
    }
    draw.led_type = draw.parts.leds.count("carrier-warm-white") > 0 ? "carrier-warm-white"
                                                                    : draw.parts.leds.begin()->first;
    if (!first.leds.empty()) {
        draw.led_type = first.leds.back().type;
        draw.led_turn_deg = first.leds.back().turn_deg;
    }
    state.draw = std::move(draw);
    settle(*state.draw);
    state.camera = {};
    state.sheet = SheetKind::none;
    state.place = Place::draw;
}

} // namespace

void open_plan(AppState& state, const Surroundings& around, const std::string& path) {
    const Outcome<std::string> text = read_file(path);
    if (!text) {
        say(state, around, text.problem().sentence());
        return;
    }
    const Parts known = known_parts(around);
    Outcome<Card> card = read_card(text.value(), path, known);
    if (!card) {
        say(state, around, card.problem().sentence());
        return;
    }
    put_on_table(state, std::move(card).value(), known, around.words);
    state.draw->path = path;
    state.draw->card_folder = folder_of(path);
    state.draw->ours = in_folder(path, cards_folder(around));
    state.draw->written = text.value();
}

void new_plan(AppState& state, const Surroundings& around, double width_mm, double height_mm) {
    if (around.shipped.leds.empty() || around.shipped.tapes.empty()) {
        say(state, around, around.words("model.no_parts"));
        return;
    }
    put_on_table(state, blank_card(around.shipped, width_mm, height_mm, around.words), known_parts(around),
                 around.words);
    state.draw->card_folder = cards_folder(around);
    state.draw->tool = DrawTool::light;
}

void save_plan(AppState& state, const Surroundings& around) {
    DrawState& draw = *state.draw;
    draw.saved = false;
    const auto troubled = [&](const std::string& why) {
        draw.trouble = why;
        say(state, around, why);
    };
    const std::string folder = cards_folder(around);
    for (const std::string& each : {around.library, folder}) {
        if (const Outcome<Done> made = make_folder(each); !made) {
            troubled(made.problem().sentence());
            return;
        }
    }
    std::string path = draw.path;
    std::string told;
    Card card = draw.history.card();
    card.own_parts = carried_by(card, draw.parts); // so that it is the same card on another table
    if (!draw.ours) {
        const bool came_with_app = !path.empty();
        const std::string name = free_name(around, came_with_app ? card_name(path) : slug(card.title));
        path = folder + "/" + name + kCardFileEnding;
        if (came_with_app) {
            const std::string front = card_name(draw.path) + "-front.png";
            // A picture for the shelf: a comfort, no promise. The name is free: see free_name.
            static_cast<void>(copy_beside(draw.card_folder + "/" + front, folder, name + "-front.png").ok());
            told = around.words("model.own_card_now");
        }
    } else if (const Outcome<std::string> there = read_file(path); there && there.value() != draw.written) {
        path = folder + "/" + free_name(around, card_name(path)) + kCardFileEnding;
        told = around.words("model.changed_meanwhile");
    }
    if (card.sheet.art && draw.card_folder != folder) {
        const Outcome<std::string> name =
            copy_beside(draw.card_folder + "/" + card.sheet.art->file, folder, card.sheet.art->file);
        if (name) {
            card.sheet.art->file = name.value();
        }
    }
    const std::string text = write_card(card);
    if (const Outcome<Done> done = write_file(path, text); !done) {
        troubled(done.problem().sentence());
        return;
    }
    draw.path = path;
    draw.ours = true;
    draw.written = text;
    draw.saved = true;
    draw.saved_at_s = around.now_s;
    draw.trouble.clear();
    if (!told.empty()) {
        say(state, around, told);
    }
}

} // namespace lanternleaf
