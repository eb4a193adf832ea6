// Edits of the holder, the LEDs and the resistors, and what holds for every part: move, turn, remove, copy.
#include "drawing/edit_steps.h"

#include <algorithm>

namespace lanternleaf::edits {

namespace {

std::string lost(Bench on) {
    return on.words("drawing.far_off");
}

std::string missing(Bench on, const std::string& id) {
    return on.words("drawing.no_part", {{"part", id}});
}

std::string ohm_trouble(Bench on, double ohm) {
    return ohm > 0.0 && ohm <= 1e7 ? "" : on.words("drawing.ohm_range");
}

void move_path(Strip& strip, Vec2 by_mm) {
    for (Vec2& corner : strip.path_mm) {
        corner = corner + by_mm;
    }
}

} // namespace

std::string apply(Bench on, const edit::SetHolder& e) {
    if (on.parts.holders.count(e.type) == 0) {
        return on.words("drawing.no_holder_type", {{"type", e.type}});
    }
    on.card.holder.type = e.type;
    return "";
}

std::string apply(Bench on, const edit::PlaceLed& e) {
    if (on.parts.leds.count(e.type) == 0) {
        return on.words("drawing.no_light_type", {{"type", e.type}});
    }
    if (!is_finite(e.at_mm)) {
        return lost(on);
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
        return on.words("drawing.no_resistor");
    }
    if (!is_finite(e.at_mm)) {
        return lost(on);
    }
    if (std::string trouble = ohm_trouble(on, e.ohm); !trouble.empty()) {
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
        return on.words("drawing.patch_size");
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
        return lost(on);
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
        return missing(on, e.id);
    }
    return "";
}

std::string apply(Bench on, const edit::TurnPart& e) {
    if (!(std::abs(e.turn_deg) < 1e6)) {
        return on.words("drawing.no_angle");
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
        return missing(on, e.id);
    }
    return "";
}

std::string apply(Bench on, const edit::RemovePart& e) {
    if (e.id == kHolderId) {
        return on.words("drawing.keeps_holder");
    }
    const auto same = [&](const auto& part) { return part.id == e.id; };
    if (std::erase_if(on.card.leds, same) > 0 || std::erase_if(on.card.resistors, same) > 0 ||
        std::erase_if(on.card.laid, [&](const Laid& laid) { return id_of(laid) == e.id; }) > 0) {
        return "";
    }
    return missing(on, e.id);
}

std::string apply(Bench on, const edit::CopyPart& e) {
    if (!is_finite(e.by_mm)) {
        return lost(on);
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
        return e.id == kHolderId ? on.words("drawing.one_holder") : missing(on, e.id);
    }
    return "";
}

std::string apply(Bench on, const edit::SetLedType& e) {
    if (on.parts.leds.count(e.type) == 0) {
        return on.words("drawing.no_light_type", {{"type", e.type}});
    }
    Led* led = led_of(on.card, e.id);
    if (led == nullptr) {
        return missing(on, e.id);
    }
    led->type = e.type;
    return "";
}

std::string apply(Bench on, const edit::SetOhm& e) {
    if (std::string trouble = ohm_trouble(on, e.ohm); !trouble.empty()) {
        return trouble;
    }
    ResistorPart* resistor = resistor_of(on.card, e.id);
    if (resistor == nullptr) {
        return missing(on, e.id);
    }
    resistor->ohm = e.ohm;
    return "";
}

} // namespace lanternleaf::edits
