#include "drawing/edit.h"

#include "drawing/edit_steps.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace edits {

bool is_finite(Vec2 p) {
    // Far beyond any sheet counts as lost too: sums of squares must stay exact enough to trust.
    constexpr double kFar_mm = 1e5;
    return std::abs(p.x) < kFar_mm && std::abs(p.y) < kFar_mm;
}

double wrapped_deg(double deg) {
    const double wrapped = std::fmod(deg, 360.0);
    return wrapped < 0.0 ? wrapped + 360.0 : wrapped + 0.0;
}

Led* led_of(Card& card, const std::string& id) {
    const auto found =
        std::find_if(card.leds.begin(), card.leds.end(), [&](const Led& l) { return l.id == id; });
    return found == card.leds.end() ? nullptr : &*found;
}

ResistorPart* resistor_of(Card& card, const std::string& id) {
    const auto found = std::find_if(card.resistors.begin(), card.resistors.end(),
                                    [&](const ResistorPart& r) { return r.id == id; });
    return found == card.resistors.end() ? nullptr : &*found;
}

int laid_place(const Card& card, const std::string& id) {
    for (std::size_t i = 0; i < card.laid.size(); ++i) {
        if (id_of(card.laid[i]) == id) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

Patch* patch_of(Card& card, const std::string& id) {
    const int place = laid_place(card, id);
    return place < 0 ? nullptr : std::get_if<Patch>(&card.laid[static_cast<std::size_t>(place)]);
}

Strip* strip_of(Card& card, const std::string& id) {
    const int place = laid_place(card, id);
    return place < 0 ? nullptr : std::get_if<Strip>(&card.laid[static_cast<std::size_t>(place)]);
}

namespace {

[[nodiscard]] std::string apply_any(Bench on, const Edit& edit);

std::string apply(Bench on, const EditList& list) {
    for (const Edit& edit : list.edits) {
        std::string trouble = apply_any(on, edit);
        if (!trouble.empty()) {
            return trouble;
        }
    }
    return "";
}

std::string apply_any(Bench on, const Edit& edit) {
    return std::visit([&](const auto& what) { return apply(on, what); }, edit.what);
}

const char* sign(Side side) {
    return side == Side::negative ? "−" : "+";
}

/// One overload per edit: what it did, in words that follow "Undo: ".
struct Namer {
    const Words& words;

    [[nodiscard]] std::string of(const char* key, const std::string& part) const {
        return words(key, {{"part", part}});
    }

    std::string operator()(const edit::SetHolder&) const { return words("drawing.did_set_holder"); }

    std::string operator()(const edit::PlaceLed&) const { return words("drawing.did_place_light"); }

    std::string operator()(const edit::PlaceResistor&) const { return words("drawing.did_place_resistor"); }

    std::string operator()(const edit::PlacePatch&) const { return words("drawing.did_place_patch"); }

    std::string operator()(const edit::MovePart& e) const {
        return e.id == kHolderId ? words("drawing.did_move_holder") : of("drawing.did_move", e.id);
    }

    std::string operator()(const edit::TurnPart& e) const {
        return e.id == kHolderId ? words("drawing.did_turn_holder") : of("drawing.did_turn", e.id);
    }

    std::string operator()(const edit::RemovePart& e) const { return of("drawing.did_remove", e.id); }

    std::string operator()(const edit::CopyPart& e) const { return of("drawing.did_copy", e.id); }

    std::string operator()(const edit::SetLedType& e) const { return of("drawing.did_change", e.id); }

    std::string operator()(const edit::SetOhm& e) const {
        return words("drawing.did_set_ohm", {{"part", e.id}, {"ohm", words.ohm(e.ohm)}});
    }

    std::string operator()(const edit::LayStrip& e) const {
        return e.side == Side::link ? words("drawing.did_lay_link")
                                    : words("drawing.did_lay", {{"sign", sign(e.side)}});
    }

    std::string operator()(const edit::MoveStrip& e) const { return of("drawing.did_move", e.id); }

    std::string operator()(const edit::MoveCorner& e) const { return of("drawing.did_move_corner", e.id); }

    std::string operator()(const edit::MoveRun& e) const { return of("drawing.did_move_run", e.id); }

    std::string operator()(const edit::InsertCorner& e) const { return of("drawing.did_add_corner", e.id); }

    std::string operator()(const edit::RemoveCorner& e) const { return of("drawing.did_take_corner", e.id); }

    std::string operator()(const edit::SplitStrip& e) const { return of("drawing.did_cut", e.id); }

    std::string operator()(const edit::JoinStrips& e) const {
        return words("drawing.did_join", {{"first", e.first}, {"second", e.second}});
    }

    std::string operator()(const edit::SetSide& e) const {
        return e.side == Side::link ? of("drawing.did_set_side_link", e.id)
                                    : words("drawing.did_set_side", {{"part", e.id}, {"sign", sign(e.side)}});
    }

    std::string operator()(const edit::SetTape& e) const { return of("drawing.did_set_tape", e.id); }

    std::string operator()(const edit::SetEnd& e) const {
        return of(e.style == EndStyle::folded ? "drawing.did_turn_under" : "drawing.did_lay_flat", e.id);
    }

    std::string operator()(const edit::PatchCrossing&) const { return words("drawing.did_patch"); }

    std::string operator()(const edit::ReplaceLaid&) const { return words("drawing.did_other_traces"); }

    std::string operator()(const edit::SetSheetSize&) const { return words("drawing.did_sheet"); }

    std::string operator()(const edit::SetFolds&) const { return words("drawing.did_creases"); }

    std::string operator()(const edit::SetKeepouts&) const { return words("drawing.did_clear"); }

    std::string operator()(const edit::SetArt&) const { return words("drawing.did_picture"); }

    std::string operator()(const edit::SetFoam&) const { return words("drawing.did_foam"); }

    std::string operator()(const edit::SetAudience&) const { return words("drawing.did_audience"); }

    std::string operator()(const edit::SetCell&) const { return words("drawing.did_cell"); }

    std::string operator()(const edit::SetTitle&) const { return words("drawing.did_title"); }

    std::string operator()(const EditList& e) const { return e.label; }
};

} // namespace

} // namespace edits

Outcome<Card> apply_edit(const Card& card, const Parts& parts, const Edit& edit, const Words& words) {
    Card changed = card;
    std::string trouble = edits::apply_any({changed, parts, words}, edit);
    if (!trouble.empty()) {
        return Problem{"", "", std::move(trouble)};
    }
    return changed;
}

std::string label_of(const Edit& edit, const Words& words) {
    return std::visit(edits::Namer{words}, edit.what);
}

std::string free_id(const Card& card, char letter) {
    const auto taken = [&](const std::string& id) {
        const auto same = [&](const auto& part) { return part.id == id; };
        return std::any_of(card.leds.begin(), card.leds.end(), same) ||
               std::any_of(card.resistors.begin(), card.resistors.end(), same) ||
               edits::laid_place(card, id) >= 0;
    };
    for (int number = 1;; ++number) {
        std::string id(1, letter);
        id.append(std::to_string(number));
        if (!taken(id)) {
            return id;
        }
    }
}

Card blank_card(const Parts& parts, double width_mm, double height_mm, const Words& words) {
    Card card;
    card.title = words("drawing.new_card");
    card.sheet.width_mm = std::clamp(width_mm, kLeastSheet_mm, kMostSheet_mm);
    card.sheet.height_mm = std::clamp(height_mm, kLeastSheet_mm, kMostSheet_mm);
    card.cell.type =
        parts.cells.count("CR2032") > 0 || parts.cells.empty() ? "CR2032" : parts.cells.begin()->first;
    card.holder.type = parts.holders.count("press-flap-20") > 0 || parts.holders.empty()
                           ? "press-flap-20"
                           : parts.holders.begin()->first;
    // The bed above its open flap, clear of the left edge: the flap then opens downwards, away from the
    // picture. 12 mm from the edge leaves room for the foam and a finger.
    card.holder.at_mm = {22.0, std::max(12.0, card.sheet.height_mm - 46.0)};
    card.holder.turn_deg = 90.0;
    card.foam = Foam{1.5, 3, {Edge::top, Edge::right, Edge::bottom, Edge::left}, {}};
    return card;
}

} // namespace lanternleaf
