// Printing from Draw: the sheets asked for as one PDF, for the host to hand over.
#include "files/files.h"
#include "model/update_draw.h"

namespace lanternleaf {

namespace {

constexpr const char* kFaces[2] = {"Andika-Regular.ttf", "Andika-Bold.ttf"};

PrintFonts faces_in(const std::string& folder) {
    if (folder.empty() || files_in(folder, kFaces[0]).empty() || files_in(folder, kFaces[1]).empty()) {
        return {}; // the built-in face
    }
    return {folder + "/" + kFaces[0], folder + "/" + kFaces[1]};
}

/// The maker's prices, when the library has them. A file that cannot be read is told, and the list goes
/// without.
std::optional<Prices> prices_in(AppState& state, const Surroundings& around) {
    if (files_in(around.library, "prices.json").empty()) {
        return std::nullopt;
    }
    const std::string path = around.library + "/prices.json";
    const Outcome<std::string> text = read_file(path);
    Outcome<Prices> prices = text ? read_prices(text.value(), path) : Outcome<Prices>(text.problem());
    if (!prices) {
        say(state, around, prices.problem().sentence());
        return std::nullopt;
    }
    return std::move(prices).value();
}

} // namespace

void print_plan(AppState& state, const Surroundings& around) {
    const DrawState& draw = *state.draw;
    PrintoutWish wish = state.print;
    if (!wish.with_template && !wish.with_steps && !wish.with_list && !wish.with_label) {
        say(state, around, "Choose at least one sheet to print.");
        return;
    }
    wish.fonts = faces_in(around.fonts);
    wish.prices = prices_in(state, around);
    Outcome<Printout> made = print_card(draw.card, draw.parts, wish);
    if (!made) {
        say(state, around, made.problem().sentence());
        return;
    }
    const std::string name = draw.path.empty() ? "card" : card_name(draw.path);
    state.to_give.push_back({name + ".pdf", std::move(made).value().pdf, "application/pdf"});
    state.sheet = SheetKind::none;
}

} // namespace lanternleaf
