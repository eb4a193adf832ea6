// Where everything lies: strips and patches in their order, pads, the holder's contacts.
#include "conductors/stages.h"

#include <algorithm>

namespace lanternleaf {

using namespace conductors_stages;

namespace {

/// A pad of a package that lies at `at_mm`, turned. Pads go by name; a package without that name by order.
Convex pad_outline(const std::vector<PadShape>& pads, const char* name, std::size_t order, Vec2 at_mm,
                   double turn_deg, Vec2& middle) {
    const auto named =
        std::find_if(pads.begin(), pads.end(), [name](const PadShape& pad) { return pad.name == name; });
    middle = at_mm;
    if (named == pads.end() && order >= pads.size()) {
        return {};
    }
    const PadShape& pad = named != pads.end() ? *named : pads[order];
    middle = at_mm + turned(pad.at_mm, turn_deg);
    return rectangle(middle, pad.size_mm, turn_deg);
}

void add_pads(const Package& package, PieceKind kind, int index, Vec2 at_mm, double turn_deg,
              std::vector<PadOutline>& out) {
    static constexpr const char* kLedNames[2] = {"-", "+"};
    static constexpr const char* kResistorNames[2] = {"1", "2"};
    const auto& names = kind == PieceKind::led_pad ? kLedNames : kResistorNames;
    for (int pad = 0; pad < 2; ++pad) {
        PadOutline& made = out.emplace_back();
        made.piece = {kind, index, pad};
        made.outline =
            pad_outline(package.pads, names[pad], static_cast<std::size_t>(pad), at_mm, turn_deg, made.at_mm);
        made.box = bounds(made.outline);
    }
}

const Package& led_package(const Card& card, const Parts& parts, int led) {
    const LedType& type = type_of(parts.leds, card.leds[static_cast<std::size_t>(led)].type);
    return type_of(parts.packages, type.package);
}

const Package& resistor_package(const Parts& parts) {
    static const Package kUnknown{};
    return parts.resistor ? *parts.resistor : kUnknown;
}

} // namespace

void conductors_stages::lay_out(const Card& card, const Parts& parts, Conductors& made) {
    made.strips.reserve(card.laid.size());
    made.patches.reserve(card.laid.size());
    for (std::size_t i = 0; i < card.laid.size(); ++i) {
        if (const Strip* strip = std::get_if<Strip>(&card.laid[i])) {
            const double width_mm = type_of(parts.tapes, strip->tape).width_mm;
            made.strips.push_back({static_cast<int>(i), make_ribbon(strip->path_mm, width_mm)});
        } else if (const Patch* patch = std::get_if<Patch>(&card.laid[i])) {
            const Convex outline = rectangle(patch->at_mm, patch->size_mm, patch->turn_deg);
            made.patches.push_back({static_cast<int>(i), outline, bounds(outline)});
        }
    }
    made.led_pads.reserve(2 * card.leds.size());
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        const int led = static_cast<int>(i);
        add_pads(led_package(card, parts, led), PieceKind::led_pad, led, card.leds[i].at_mm,
                 card.leds[i].turn_deg, made.led_pads);
    }
    made.resistor_pads.reserve(2 * card.resistors.size());
    for (std::size_t i = 0; i < card.resistors.size(); ++i) {
        add_pads(resistor_package(parts), PieceKind::resistor_pad, static_cast<int>(i),
                 card.resistors[i].at_mm, card.resistors[i].turn_deg, made.resistor_pads);
    }
}

RunIndex conductors_stages::index_runs(const std::vector<StripShape>& strips) {
    std::vector<RunIndex::Ref> refs;
    std::vector<Box> boxes;
    for (std::size_t strip = 0; strip < strips.size(); ++strip) {
        const std::vector<Run>& runs = strips[strip].ribbon.runs;
        for (std::size_t run = 0; run < runs.size(); ++run) {
            refs.push_back({static_cast<int>(strip), static_cast<int>(run)});
            boxes.push_back(runs[run].box);
        }
    }
    return {std::move(refs), BucketGrid(boxes)};
}

Conductors find_conductors(const Card& card, const Parts& parts) {
    Conductors made;
    lay_out(card, parts, made);
    const RunIndex index = index_runs(made.strips);
    Scratch scratch;
    find_overlaps(card, parts, index, scratch, made);
    find_contacts(card, parts, index, scratch, made);
    find_nets(card, made);
    return made;
}

std::vector<int> strip_places(const Card& card) {
    std::vector<int> places;
    for (std::size_t i = 0; i < card.laid.size(); ++i) {
        if (std::holds_alternative<Strip>(card.laid[i])) {
            places.push_back(static_cast<int>(i));
        }
    }
    return places;
}

const Strip& strip_of(const Card& card, const Conductors& conductors, int strip) {
    const int place = conductors.strips[static_cast<std::size_t>(strip)].laid_index;
    return std::get<Strip>(card.laid[static_cast<std::size_t>(place)]);
}

CellFace terminal_face(const Card& card, int terminal) {
    return terminal == 0 ? card.cell.face_down : other_face(card.cell.face_down);
}

int terminal_of(const Card& card, CellFace face) {
    return card.cell.face_down == face ? 0 : 1;
}

HolderShape holder_shape(const Card& card, const Parts& parts) {
    const HolderType& type = type_of(parts.holders, card.holder.type);
    const Vec2 at = card.holder.at_mm;
    const double turn = card.holder.turn_deg;
    HolderShape shape;
    shape.flap = type.kind == HolderKind::flap;
    if (shape.flap) {
        shape.disc_at_mm[0] = at;
        shape.disc_at_mm[1] = at + direction(turn) * type.flap_offset_mm;
        shape.disc_radius_mm[0] = type.bed_radius_mm;
        shape.disc_radius_mm[1] = type.flap_radius_mm;
        shape.at_mm[0] = shape.disc_at_mm[0];
        shape.at_mm[1] = shape.disc_at_mm[1];
        return shape;
    }
    shape.pad[0] = pad_outline(type.pads, "-", 0, at, turn, shape.at_mm[0]);
    shape.pad[1] = pad_outline(type.pads, "+", 1, at, turn, shape.at_mm[1]);
    Vec2 body = type.body_mm;
    if (body == Vec2{}) {
        // The parts do not say: as long as from pad to pad, as deep as the cell.
        body.y = type.cell_diameter_mm;
        for (const PadShape& pad : type.pads) {
            body.x = std::max(body.x, 2.0 * std::abs(pad.at_mm.x) + pad.size_mm.x);
            body.y = std::max(body.y, 2.0 * std::abs(pad.at_mm.y) + pad.size_mm.y);
        }
    }
    shape.body = rectangle(at, body, turn);
    return shape;
}

Convex led_body(const Card& card, const Parts& parts, int led) {
    const Led& placed = card.leds[static_cast<std::size_t>(led)];
    return rectangle(placed.at_mm, led_package(card, parts, led).body_mm, placed.turn_deg);
}

Convex resistor_body(const Card& card, const Parts& parts, int resistor) {
    const ResistorPart& placed = card.resistors[static_cast<std::size_t>(resistor)];
    return rectangle(placed.at_mm, resistor_package(parts).body_mm, placed.turn_deg);
}

} // namespace lanternleaf
