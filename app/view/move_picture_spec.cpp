#include "view/move_picture_spec.h"

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

std::vector<std::string> captions_of(const Move& move, const MovePictureSpec& spec, const Words& words) {
    std::vector<std::string> captions;
    const auto frame = [&](const char* key, Fills fills = {}) { captions.push_back(words(key, fills)); };
    switch (move.kind) {
    case MoveKind::measure:
        frame("picture.from_left");
        frame("picture.from_top");
        break;
    case MoveKind::peel:
        frame("picture.bend_corner");
        frame("picture.peel_off");
        break;
    case MoveKind::press:
        frame("picture.press_down");
        frame("picture.rub_flat");
        break;
    case MoveKind::flap_way:
        frame("picture.flap_open");
        frame("picture.flap_closed");
        break;
    case MoveKind::mark_pad:
        frame("picture.mark_minus");
        frame("picture.mark_plus");
        break;
    case MoveKind::start_strip:
        frame("picture.bare_end");
        frame("picture.start_here");
        frame("picture.press");
        break;
    case MoveKind::run:
        frame("picture.hold_straight");
        frame("picture.lay_along");
        frame("picture.rub_flat");
        break;
    case MoveKind::fold:
        frame("picture.fold_back");
        frame(spec.turn_right ? "picture.swing_right" : "picture.swing_left");
        frame("picture.rub_flat");
        break;
    case MoveKind::joint:
        frame("picture.lap", {{"overlap", spec.overlap}});
        frame("picture.rub_hard");
        break;
    case MoveKind::cut:
        frame("picture.mark_end");
        frame("picture.cut_square");
        break;
    case MoveKind::leave_tail:
        frame("picture.stop_here");
        frame("picture.leave_loose");
        break;
    case MoveKind::patch:
        frame("picture.hold_over");
        frame("picture.centre");
        frame("picture.rub_flat");
        break;
    case MoveKind::carry_across:
        frame("picture.lift_tail");
        frame("picture.carry_over");
        frame("picture.rub_flat");
        break;
    case MoveKind::place_resistor:
        frame("picture.set_down");
        frame("picture.press_ends");
        break;
    case MoveKind::place_led:
        frame("picture.find_signs");
        frame("picture.set_down");
        frame("picture.press_ends");
        break;
    case MoveKind::adult_notice:
        frame("picture.adult_does");
        break;
    case MoveKind::cell_in:
        frame(spec.plus_up ? "picture.plus_up" : "picture.minus_up");
        frame("picture.onto_bed");
        break;
    case MoveKind::light_test:
        frame("picture.press_flap");
        frame("picture.look");
        break;
    case MoveKind::foam:
        frame("picture.cut_strips");
        frame("picture.layers", {{"n", spec.layers}});
        break;
    case MoveKind::close:
        frame("picture.let_go");
        frame("picture.press_light");
        break;
    case MoveKind::label:
        frame("picture.write_on");
        break;
    }
    for (std::size_t i = 0; captions.size() > 1 && i < captions.size(); ++i) {
        captions[i].insert(0, std::to_string(i + 1).append(" "));
    }
    return captions;
}

} // namespace

MovePictureSpec picture_of(const Move& move, const Card& card, const Parts& parts, const Words& words) {
    MovePictureSpec spec;
    spec.kind = move.kind;
    spec.turn_right = move.turn_deg >= 0.0;
    spec.flap_turn_deg = card.holder.turn_deg;
    spec.plus_up = card.cell.face_down == CellFace::negative;
    spec.layers = card.foam ? card.foam->layers : 1;
    const Vec2 place = move.path_mm.empty() ? Vec2{} : move.path_mm.front();
    spec.from_left = words.mm(place.x);
    spec.from_top = words.mm(place.y);
    if (const Strip* strip = strip_of_move(move, card)) {
        spec.side = strip->side;
        const auto tape = parts.tapes.find(strip->tape);
        if (tape != parts.tapes.end()) {
            spec.fabric = is_fabric(tape->second);
            spec.overlap = words.mm(tape->second.width_mm);
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
    spec.captions = captions_of(move, spec, words);
    return spec;
}

} // namespace lanternleaf
