#include "guide/strip_changes.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

Outcome<Card> change_led(const Card& card, const Parts& parts, const Change& change) {
    Card out = card;
    const auto led =
        std::find_if(out.leds.begin(), out.leds.end(), [&](const Led& one) { return one.id == change.part; });
    if (led == out.leds.end()) {
        return no_such("an LED", change.part);
    }
    if (change.kind == ChangeKind::led_turned) {
        led->turn_deg = std::fmod(led->turn_deg + 180.0, 360.0);
    } else if (change.kind == ChangeKind::led_moved) {
        led->at_mm = change.at_mm;
    } else {
        if (parts.leds.find(change.type) == parts.leds.end()) {
            return no_such("a type of LED", change.type);
        }
        led->type = change.type;
    }
    return out;
}

Outcome<Card> change_patch(const Card& card, const Change& change) {
    Card out = card;
    const auto patch = std::find_if(out.laid.begin(), out.laid.end(), [&](const Laid& item) {
        return std::holds_alternative<Patch>(item) && id_of(item) == change.part;
    });
    if (patch == out.laid.end()) {
        return no_such("a patch", change.part);
    }
    if (change.kind == ChangeKind::patch_missing) {
        out.laid.erase(patch);
    } else {
        std::get<Patch>(*patch).at_mm = change.at_mm;
    }
    return out;
}

Outcome<Card> change_cell(const Card& card, const Parts& parts, const Change& change) {
    Card out = card;
    if (change.kind == ChangeKind::cell_upside_down) {
        out.cell.face_down = other_face(out.cell.face_down);
    } else if (change.kind == ChangeKind::cells_stacked) {
        if (change.count < 1) {
            return Problem{"", "count", "expected one cell or more"};
        }
        out.cell.count = change.count;
    } else {
        if (parts.cells.find(change.type) == parts.cells.end()) {
            return no_such("a cell", change.type);
        }
        out.cell.type = change.type;
    }
    return out;
}

} // namespace

Outcome<Card> apply_change(const Card& card, const Parts& parts, const Change& change) {
    switch (change.kind) {
    case ChangeKind::joint_cut:
    case ChangeKind::tape_swapped:
    case ChangeKind::strip_moved:
    case ChangeKind::tear:
    case ChangeKind::bridged:
        return change_strip(card, parts, change);
    case ChangeKind::led_turned:
    case ChangeKind::led_swapped:
    case ChangeKind::led_moved:
        return change_led(card, parts, change);
    case ChangeKind::patch_missing:
    case ChangeKind::patch_moved:
        return change_patch(card, change);
    case ChangeKind::patch_added:
        return add_patch(card, parts, change);
    case ChangeKind::cells_stacked:
    case ChangeKind::cell_upside_down:
    case ChangeKind::cell_swapped:
        return change_cell(card, parts, change);
    case ChangeKind::holder_swapped: {
        if (parts.holders.find(change.type) == parts.holders.end()) {
            return no_such("a holder", change.type);
        }
        Card out = card;
        out.holder.type = change.type;
        return out;
    }
    case ChangeKind::foam_layers: {
        if (!card.foam) {
            return Problem{"", "foam", "expected a card with foam, but this one has none"};
        }
        if (change.count < 0) {
            return Problem{"", "count", "expected no layers or more"};
        }
        Card out = card;
        out.foam->layers = change.count;
        return out;
    }
    }
    return Problem{"", "kind", "expected a known kind of change"};
}

} // namespace lanternleaf
