#include "view/move_picture_spec.h"

#include "base/readout.h"
#include "view/board_shapes.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

bool names(const Move& move, const std::string& id) {
    return std::find(move.parts.begin(), move.parts.end(), id) != move.parts.end();
}

const Strip* strip_of_move(const Move& move, const Card& card) {
    for (const std::string& part : move.parts) {
        if (const Strip* strip = find_strip(card, part)) {
            return strip;
        }
    }
    return nullptr;
}

/// The way the strip runs into `place`, to the nearest quarter turn.
double heading_into(const Strip& strip, Vec2 place) {
    Vec2 way = strip.path_mm[1] - strip.path_mm[0];
    double least = 1e300;
    for (std::size_t i = 1; i < strip.path_mm.size(); ++i) {
        const double off = distance_to_segment(place, strip.path_mm[i - 1], strip.path_mm[i]);
        if (off < least - 0.01) { // the first of two equal ones: the run before a fold
            least = off;
            way = strip.path_mm[i] - strip.path_mm[i - 1];
        }
    }
    const double deg = degrees(std::atan2(way.y, way.x));
    return std::fmod(90.0 * std::round(deg / 90.0) + 360.0, 360.0);
}

std::vector<std::string> captions_of(const Move& move, const MovePictureSpec& spec) {
    switch (move.kind) {
    case MoveKind::measure:
        return {"1 From the left", "2 From the top"};
    case MoveKind::peel:
        return {"1 Bend a corner", "2 Peel it off"};
    case MoveKind::press:
        return {"1 Press down", "2 Rub flat"};
    case MoveKind::flap_way:
        return {"1 Flap open", "2 Flap closed"};
    case MoveKind::mark_pad:
        return {"1 Mark −", "2 Mark +"};
    case MoveKind::start_strip:
        return {"1 Bare the end", "2 Start here", "3 Press"};
    case MoveKind::run:
        return {"1 Hold it straight", "2 Lay it along", "3 Rub flat"};
    case MoveKind::fold:
        return {"1 Fold back", spec.turn_right ? "2 Swing right" : "2 Swing left", "3 Rub flat"};
    case MoveKind::joint:
        return {"1 Lap " + spec.overlap, "2 Rub hard"};
    case MoveKind::cut:
        return {"1 Mark the end", "2 Cut square"};
    case MoveKind::leave_tail:
        return {"1 Stop here", "2 Leave it loose"};
    case MoveKind::patch:
        return {"1 Hold it over", "2 Centre it", "3 Rub flat"};
    case MoveKind::carry_across:
        return {"1 Lift the tail", "2 Carry it over", "3 Rub flat"};
    case MoveKind::place_resistor:
        return {"1 Set it down", "2 Press both ends"};
    case MoveKind::place_led:
        return {"1 Find − and +", "2 Set it down", "3 Press both ends"};
    case MoveKind::adult_notice:
        return {"An adult does this"};
    case MoveKind::cell_in:
        return {spec.plus_up ? "1 + face up" : "1 − face up", "2 Onto the bed"};
    case MoveKind::light_test:
        return {"1 Press the flap", "2 Look"};
    case MoveKind::foam:
        return {"1 Cut strips", spec.layers == 1 ? "2 One layer" : "2 Stack " + std::to_string(spec.layers)};
    case MoveKind::close:
        return {"1 Let go: dark", "2 Press: light"};
    case MoveKind::label:
        return {"Write it on"};
    }
    return {};
}

} // namespace

MovePictureSpec picture_of(const Move& move, const Card& card, const Parts& parts) {
    MovePictureSpec spec;
    spec.kind = move.kind;
    spec.turn_right = move.turn_deg >= 0.0;
    spec.flap_turn_deg = card.holder.turn_deg;
    spec.plus_up = card.cell.face_down == CellFace::negative;
    spec.layers = card.foam ? card.foam->layers : 1;
    const Vec2 place = move.path_mm.empty() ? Vec2{} : move.path_mm.front();
    spec.from_left = readout_mm(place.x);
    spec.from_top = readout_mm(place.y);
    if (const Strip* strip = strip_of_move(move, card)) {
        spec.side = strip->side;
        const auto tape = parts.tapes.find(strip->tape);
        if (tape != parts.tapes.end()) {
            spec.fabric = is_fabric(tape->second);
            spec.overlap = readout_mm(tape->second.width_mm);
        }
        if (!move.path_mm.empty() && strip->path_mm.size() >= 2) {
            const bool start = move.kind == MoveKind::start_strip;
            spec.heading_deg = heading_into(*strip, start ? strip->path_mm.front() : move.path_mm.back());
        }
        const HolderShape holder = holder_shape(card, parts);
        spec.on_bed = holder.flap && distance(place, holder.disc_at_mm[0]) < holder.disc_radius_mm[0];
        spec.on_flap = holder.flap && distance(place, holder.disc_at_mm[1]) < holder.disc_radius_mm[1];
    }
    for (const Laid& item : card.laid) { // moves that name no strip show the card's own tape too
        const Strip* strip = std::get_if<Strip>(&item);
        if (strip != nullptr && strip_of_move(move, card) == nullptr) {
            const auto tape = parts.tapes.find(strip->tape);
            spec.fabric = tape != parts.tapes.end() && is_fabric(tape->second);
            break;
        }
    }
    for (const Led& led : card.leds) {
        if (names(move, led.id)) {
            spec.id = led.id;
            spec.led_turn_deg = led.turn_deg;
            const auto type = parts.leds.find(led.type);
            spec.tint = type != parts.leds.end() ? tint_of(type->second.colour) : LightTint::warm;
            break;
        }
    }
    for (const ResistorPart& resistor : card.resistors) {
        if (spec.id.empty() && names(move, resistor.id)) {
            spec.id = resistor.id;
            spec.led_turn_deg = resistor.turn_deg;
        }
    }
    spec.captions = captions_of(move, spec);
    return spec;
}

} // namespace lanternleaf
