// No text is hard-coded: in a language whose every letter is ø, nothing on any screen may have another letter
// in it but what comes from the card, the parts and the maker: names, units, file names.
#include "table.h"

#include "files/files.h"
#include "life/cell_model.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

using namespace lanternleaf;

namespace {

using Json = nlohmann::json;

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// A message with ø for every letter, names in braces left as they are.
std::string without_letters(const std::string& message) {
    std::string out;
    bool name = false;
    for (const char c : message) {
        name = c == '{' || (name && c != '}');
        if (is_letter(c) && !name) {
            out += c >= 'a' ? "ø" : "Ø";
        } else {
            out += c;
        }
    }
    return out;
}

void take_letters(Json& json) {
    if (json.is_string()) {
        json = without_letters(json.get<std::string>());
    }
    if (json.is_structured()) {
        for (Json& each : json) {
            take_letters(each);
        }
    }
}

Words wordless() {
    const std::string file = std::string(LANTERNLEAF_SOURCE) + "/assets/words/en.json";
    Json json = Json::parse(read_file(file).value());
    take_letters(json["say"]);
    Outcome<Words> words = read_words(json.dump(), "xx.json");
    REQUIRE(words.ok());
    return std::move(words).value();
}

/// Stretches of two letters and more; a single one is an id's.
std::vector<std::string> words_in(const std::string& text) {
    std::vector<std::string> found;
    std::string run;
    for (const char c : text + " ") {
        if (is_letter(c)) {
            run += c;
            continue;
        }
        if (run.size() > 1) {
            found.push_back(run);
        }
        run.clear();
    }
    return found;
}

void allow(const std::string& text, std::set<std::string>& allowed) {
    for (const std::string& word : words_in(text)) {
        allowed.insert(word);
    }
}

std::set<std::string> names_and_units() {
    std::set<std::string> allowed = {"mm", "mA", "mAh", "min", "MB", "OL", "CR", "Lanternleaf"};
    allow("English Deutsch Español", allowed);
    allow("Ines Otter Finn Juno Mika", allowed); // makers of the batch that is shown
    allow("Copper", allowed);                    // a measured tape goes by the name it was kept under
    const std::string assets = std::string(LANTERNLEAF_SOURCE) + "/assets";
    const Json parts = Json::parse(read_file(assets + "/parts.json").value());
    for (const char* kind : {"leds", "tapes", "cells", "holders"}) {
        for (const auto& [id, part] : parts[kind].items()) {
            allow(id, allowed);
        }
    }
    const Json regions = Json::parse(read_file(assets + "/safety/regions.json").value());
    allow(regions["checked_how"], allowed);
    for (const Json& region : regions["regions"]) { // told in the languages of that file alone
        for (const char* text : {"name", "help_name", "first", "food"}) {
            allow(region[text], allowed);
        }
    }
    for (const std::string& card : files_in(assets + "/cards", ".card.json")) {
        allow(Json::parse(read_file(assets + "/cards/" + card).value())["title"].get<std::string>(), allowed);
    }
    for (int maker = 0; maker < cell_maker_count(); ++maker) {
        allow(cell_maker_name(maker), allowed);
    }
    return allowed;
}

// A batch for a class has its traces laid for a holder with a screw: on the first card in a moment.
const char* const kLaidSoon = "harbour-lighthouse.card.json";
const char* const kTram = "night-tram.card.json";

} // namespace

TEST_CASE("No screen has a letter that is not a message's, a name's or a unit's", "[words]") {
    const std::set<std::string> allowed = names_and_units();
    const Words words = wordless();
    const std::string cards = std::string(LANTERNLEAF_SOURCE) + "/assets/cards/";
    std::set<std::string> hard;
    for (const char* name :
         {"shelf",      "safety",      "audience",     "make",        "make/1/1",     "proof",
          "lights",     "keypad",      "no-meter",     "differs",     "wrong",        "settings",
          "steps",      "verdict",     "notice",       "log",         "light",        "light-tired",
          "mend/start", "mend/lights", "mend",         "mend/named",  "mend/dark",    "mend/none",
          "mend/meter", "draw",        "draw/empty",   "draw/lights", "draw/laying",  "draw/part",
          "draw/strip", "draw/fault",  "draw/suggest", "draw/card",   "draw/box",     "draw/box-measure",
          "batch",      "batch/new",   "batch/cells",  "batch/close", "make/confirm", "draw/print",
          "learn",      "learn/led",   "learn/tape",   "learn/foam",  "learn/done"}) {
        const OwnFolder library;
        NoPictures pictures;
        App app = app_in(library.path(), pictures);
        app.around.words = words;
        retell(app.state, app.around);
        const Outcome<Done> shown =
            show_screen(app, name, cards + (std::string(name).starts_with("batch") ? kLaidSoon : kTram));
        INFO(name);
        REQUIRE(shown.ok());
        std::vector<std::string> lines;
        std::vector<DrawnText> texts;
        HeadlessApp fingers([&](Ui& ui) { app_frame(app, ui, 1'780'000'000); });
        fingers.shell().notes = &texts;
        fingers.frame(3);
        for (const DrawnText& text : texts) {
            lines.push_back(text.text);
        }
        for (const Target& target : fingers.targets().all()) {
            lines.push_back(target.label);
            lines.push_back(target.value);
        }
        for (const std::string& line : lines) {
            for (const std::string& word : words_in(line)) {
                if (allowed.count(word) == 0) {
                    hard.insert(std::string(name) + ": " + line);
                    break;
                }
            }
        }
    }
    for (const std::string& line : hard) {
        FAIL_CHECK(line);
    }
}
