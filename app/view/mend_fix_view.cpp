#include "view/mend_fix_view.h"

#include <limits>

namespace lanternleaf {

namespace {

std::optional<MoveKind> move_for(FaultKind kind) {
    switch (kind) {
    case FaultKind::led_turned:
    case FaultKind::led_dead:
    case FaultKind::led_wrong:
    case FaultKind::led_swapped:
    case FaultKind::led_one_side:
    case FaultKind::led_in_series:
    case FaultKind::pad_loose:
        return MoveKind::place_led;
    case FaultKind::joint_loose:
    case FaultKind::glue_plain:
        return MoveKind::joint;
    case FaultKind::contact_loose:
    case FaultKind::strip_broken:
        return MoveKind::press;
    case FaultKind::liner_left:
        return MoveKind::peel;
    case FaultKind::crossing_bare:
        return MoveKind::patch;
    case FaultKind::switch_open:
    case FaultKind::switch_stuck:
        return MoveKind::foam;
    case FaultKind::cell_upside_down:
    case FaultKind::cell_flat:
    case FaultKind::cell_wrong:
    case FaultKind::cell_missing:
        return MoveKind::cell_in;
    case FaultKind::resistor_wrong:
        return MoveKind::place_resistor;
    default:
        return std::nullopt;
    }
}

const Strip* strip_named(const Card& card, const std::string& id) {
    for (const Laid& item : card.laid) {
        const Strip* strip = std::get_if<Strip>(&item);
        if (strip != nullptr && strip->id == id) {
            return strip;
        }
    }
    return nullptr;
}

} // namespace

std::optional<MovePictureSpec> fix_picture(const Cause& cause, const Card& card, const Parts& parts,
                                           const Words& words) {
    const std::optional<MoveKind> kind = move_for(cause.kind);
    if (!kind) {
        return std::nullopt;
    }
    Move move;
    move.kind = *kind;
    if (!cause.places.empty()) {
        move.parts = cause.places.front().parts;
        if (cause.kind == FaultKind::joint_loose && !move.parts.empty()) {
            move.parts = {move.parts.back()}; // the strip on top: its end is folded under
        }
        move.path_mm = {cause.places.front().at_mm};
    }
    return picture_of(move, card, parts, words);
}

std::vector<Vec2> bridge_path(const Cause& cause, const Card& card) {
    if (!cause.mend || cause.mend->kind != ChangeKind::bridged || cause.mend->mm <= 0.0) {
        return {};
    }
    const Strip* strip = strip_named(card, cause.mend->part);
    if (strip == nullptr || strip->path_mm.size() < 2) {
        return {};
    }
    const Vec2 at_mm = cause.mend->at_mm;
    Vec2 along{1.0, 0.0};
    double least = std::numeric_limits<double>::max();
    for (std::size_t i = 1; i < strip->path_mm.size(); ++i) {
        const Vec2 from = strip->path_mm[i - 1];
        const Vec2 to = strip->path_mm[i];
        const double off = distance_to_segment(at_mm, from, to);
        const double length = distance(from, to);
        if (off < least && length > 0.0) {
            least = off;
            along = (to - from) * (1.0 / length);
        }
    }
    const Vec2 half = along * (cause.mend->mm / 2.0);
    return {at_mm - half, at_mm + half};
}

} // namespace lanternleaf
