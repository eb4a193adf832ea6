// Printing from Draw: the sheets asked for as one PDF, for the host to hand over.
#include "desk/print_desk.h"
#include "files/files.h"
#include "guide/sequence.h"
#include "model/update_draw.h"
#include "report/step_page.h"

namespace lanternleaf {

namespace {

/// The maker's prices, when the library has them. A file that cannot be read is told, and the list goes
/// without.
std::optional<Prices> prices_in(AppState& state, const Surroundings& around) {
    if (files_in(around.library, "prices.json").empty()) {
        return std::nullopt;
    }
    Outcome<Prices> prices = load_prices(around.library + "/prices.json");
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
        say(state, around, around.words("model.no_sheet"));
        return;
    }
    wish.fonts = print_fonts_in(around.fonts);
    wish.prices = prices_in(state, around);
    Outcome<Printout> made = print_card(draw.card, draw.parts, wish, around.words);
    if (!made) {
        say(state, around, made.problem().sentence());
        return;
    }
    const std::string name = draw.path.empty() ? "card" : card_name(draw.path);
    state.to_give.push_back({name + ".pdf", std::move(made).value().pdf, "application/pdf"});
    state.sheet = SheetKind::none;
}

void give_step_page(AppState& state, const Surroundings& around) {
    const DrawState& draw = *state.draw;
    const std::string name = draw.path.empty() ? "card" : card_name(draw.path);
    state.to_give.push_back(
        {name + "-steps.html",
         step_page(draw.card, make_steps(draw.card, draw.parts, around.words), around.words), "text/html"});
    state.sheet = SheetKind::none;
}

} // namespace lanternleaf
