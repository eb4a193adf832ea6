// Edits of the holder, the LEDs and the resistors, and what holds for every part: move, turn, remove, copy.
#include "base/readout.h"
#include "drawing/edit_steps.h"

#include <algorithm>

namespace lanternleaf::edits {

namespace {

const char* const kLost = "That place is far off the sheet.";

std::string missing(const std::string& id) {
    return "There is no " + id + " on this card.";
}

std::string ohm_trouble(double ohm) {
    return ohm > 0.0 && ohm <= 1e7 ? "" : "A resistor needs a value above 0 and up to 10 MΩ.";
}

void move_path(Strip& strip, Vec2 by_mm) {
    for (Vec2& corner : strip.path_mm) {
        corner = corner + by_mm;
    }
}

} // namespace

std::string apply(Bench on, const edit::SetHolder& e) {
    if (on.parts.holders.count(e.type) == 0) {
        return "No holder is called " + e.type + ".";
    }
    on.card.holder.type = e.type;
    return "";
}

std::string apply(Bench on, const edit::PlaceLed& e) {
    if (on.parts.leds.count(e.type) == 0) {
        return "No light is called " + e.type + ".";
    }
    if (!is_finite(e.at_mm)) {
        return kLost;
    }
    Led led;
    led.id = free_id(on.card, 'L');
    led.type = e.type;
    led.at_mm = e.at_mm;
    led.turn_deg = wrapped_deg(e.turn_deg);
    on.card.leds.push_back(std::move(led));
    return "";
}

std::string apply(Bench on, const edit::PlaceResistor& e) {
    if (!on.parts.resistor) {
        return "The parts have no resistor.";
    }
    if (!is_finite(e.at_mm)) {
        return kLost;
    }
    if (std::string trouble = ohm_trouble(e.ohm); !trouble.empty()) {
        return trouble;
    }
    ResistorPart part;
    part.id = free_id(on.card, 'R');
    part.ohm = e.ohm;
    part.at_mm = e.at_mm;
    part.turn_deg = wrapped_deg(e.turn_deg);
    on.card.resistors.push_back(std::move(part));
    return "";
}

std::string apply(Bench on, const edit::PlacePatch& e) {
    if (!is_finite(e.at_mm) || !(e.size_mm.x > 0.0 && e.size_mm.y > 0.0) || !is_finite(e.size_mm)) {
        return "A patch needs a place and a size above 0.";
    }
    Patch patch;
    patch.id = free_id(on.card, 'P');
    patch.at_mm = e.at_mm;
    patch.size_mm = e.size_mm;
    patch.turn_deg = wrapped_deg(e.turn_deg);
    on.card.laid.emplace_back(std::move(patch));
    return "";
}

std::string apply(Bench on, const edit::MovePart& e) {
    if (!is_finite(e.to_mm)) {
        return kLost;
    }
    if (e.id == kHolderId) {
        on.card.holder.at_mm = e.to_mm;
    } else if (Led* led = led_of(on.card, e.id)) {
        led->at_mm = e.to_mm;
    } else if (ResistorPart* resistor = resistor_of(on.card, e.id)) {
        resistor->at_mm = e.to_mm;
    } else if (Patch* patch = patch_of(on.card, e.id)) {
        patch->at_mm = e.to_mm;
    } else {
        return missing(e.id);
    }
    return "";
}

std::string apply(Bench on, const edit::TurnPart& e) {
    if (!(std::abs(e.turn_deg) < 1e6)) {
        return "That is no angle.";
    }
    const double turn = wrapped_deg(e.turn_deg);
    if (e.id == kHolderId) {
        on.card.holder.turn_deg = turn;
    } else if (Led* led = led_of(on.card, e.id)) {
        led->turn_deg = turn;
    } else if (ResistorPart* resistor = resistor_of(on.card, e.id)) {
        resistor->turn_deg = turn;
    } else if (Patch* patch = patch_of(on.card, e.id)) {
        patch->turn_deg = turn;
    } else {
        return missing(e.id);
    }
    return "";
}

std::string apply(Bench on, const edit::RemovePart& e) {
    if (e.id == kHolderId) {
        return "A card keeps its holder: move it, or choose another kind.";
    }
    const auto same = [&](const auto& part) { return part.id == e.id; };
    if (std::erase_if(on.card.leds, same) > 0 || std::erase_if(on.card.resistors, same) > 0 ||
        std::erase_if(on.card.laid, [&](const Laid& laid) { return id_of(laid) == e.id; }) > 0) {
        return "";
    }
    return missing(e.id);
}

std::string apply(Bench on, const edit::CopyPart& e) {
    if (!is_finite(e.by_mm)) {
        return kLost;
    }
    if (const Led* led = led_of(on.card, e.id)) {
        Led copy = *led;
        copy.id = free_id(on.card, 'L');
        copy.at_mm = copy.at_mm + e.by_mm;
        on.card.leds.push_back(std::move(copy));
    } else if (const ResistorPart* resistor = resistor_of(on.card, e.id)) {
        ResistorPart copy = *resistor;
        copy.id = free_id(on.card, 'R');
        copy.at_mm = copy.at_mm + e.by_mm;
        on.card.resistors.push_back(std::move(copy));
    } else if (const Patch* patch = patch_of(on.card, e.id)) {
        Patch copy = *patch;
        copy.id = free_id(on.card, 'P');
        copy.at_mm = copy.at_mm + e.by_mm;
        on.card.laid.emplace_back(std::move(copy));
    } else if (const Strip* strip = strip_of(on.card, e.id)) {
        Strip copy = *strip;
        copy.id = free_id(on.card, copy.side == Side::negative   ? 'N'
                                   : copy.side == Side::positive ? 'S'
                                                                 : 'K');
        move_path(copy, e.by_mm);
        on.card.laid.emplace_back(std::move(copy));
    } else {
        return e.id == kHolderId ? "A card has one holder." : missing(e.id);
    }
    return "";
}

std::string apply(Bench on, const edit::SetLedType& e) {
    if (on.parts.leds.count(e.type) == 0) {
        return "No light is called " + e.type + ".";
    }
    Led* led = led_of(on.card, e.id);
    if (led == nullptr) {
        return missing(e.id);
    }
    led->type = e.type;
    return "";
}

std::string apply(Bench on, const edit::SetOhm& e) {
    if (std::string trouble = ohm_trouble(e.ohm); !trouble.empty()) {
        return trouble;
    }
    ResistorPart* resistor = resistor_of(on.card, e.id);
    if (resistor == nullptr) {
        return missing(e.id);
    }
    resistor->ohm = e.ohm;
    return "";
}

} // namespace lanternleaf::edits
