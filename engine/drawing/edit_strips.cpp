// Edits of what is laid: strips with their corners, and patches at crossings.
#include "base/tolerance.h"
#include "conductors/conductors.h"
#include "drawing/edit_steps.h"
#include "geometry/ribbon.h"

#include <algorithm>
#include <limits>

namespace lanternleaf::edits {

namespace {

/// Two corners of a path closer than this are one place: less than a hand can lay.
constexpr double kLeastRun_mm = 0.5;
/// More of the patch than the least to spare, so that a millimetre of slip is no finding.
constexpr double kPatchPast_mm = tolerance::kPatchSpare_mm + 1.0;

std::string no_strip(Bench on, const std::string& id) {
    return on.words("drawing.no_strip", {{"part", id}});
}

std::string no_tape(Bench on, const std::string& tape) {
    return on.words("drawing.no_tape_type", {{"type", tape}});
}

std::string path_trouble(Bench on, const std::vector<Vec2>& path) {
    if (path.size() < 2) {
        return on.words("drawing.two_ends");
    }
    if (!std::all_of(path.begin(), path.end(), is_finite)) {
        return on.words("drawing.far_off");
    }
    for (std::size_t i = 1; i < path.size(); ++i) {
        if (distance(path[i - 1], path[i]) < kLeastRun_mm) {
            return on.words("drawing.corners_meet");
        }
    }
    return "";
}

/// Changes a strip's path when the new one can be laid.
std::string set_path(Bench on, Strip& strip, std::vector<Vec2> path) {
    if (std::string trouble = path_trouble(on, path); !trouble.empty()) {
        return trouble;
    }
    strip.path_mm = std::move(path);
    return "";
}

bool has_corner(const Strip& strip, int corner) {
    return corner >= 0 && corner < static_cast<int>(strip.path_mm.size());
}

char letter_of(Side side) {
    return side == Side::negative ? 'N' : side == Side::positive ? 'S' : 'K';
}

std::string no_corner(Bench on) {
    return on.words("drawing.no_corner");
}

} // namespace

std::string apply(Bench on, const edit::LayStrip& e) {
    if (on.parts.tapes.count(e.tape) == 0) {
        return no_tape(on, e.tape);
    }
    Strip strip;
    strip.id = free_id(on.card, letter_of(e.side));
    strip.side = e.side;
    strip.tape = e.tape;
    if (std::string trouble = set_path(on, strip, e.path_mm); !trouble.empty()) {
        return trouble;
    }
    on.card.laid.emplace_back(std::move(strip));
    return "";
}

std::string apply(Bench on, const edit::MoveStrip& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    std::vector<Vec2> path = strip->path_mm;
    for (Vec2& corner : path) {
        corner = corner + e.by_mm;
    }
    return set_path(on, *strip, std::move(path));
}

std::string apply(Bench on, const edit::MoveCorner& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    if (!has_corner(*strip, e.corner)) {
        return no_corner(on);
    }
    std::vector<Vec2> path = strip->path_mm;
    path[static_cast<std::size_t>(e.corner)] = e.to_mm;
    return set_path(on, *strip, std::move(path));
}

std::string apply(Bench on, const edit::MoveRun& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    if (!has_corner(*strip, e.run) || !has_corner(*strip, e.run + 1)) {
        return no_corner(on);
    }
    std::vector<Vec2> path = strip->path_mm;
    Vec2& from = path[static_cast<std::size_t>(e.run)];
    Vec2& to = path[static_cast<std::size_t>(e.run) + 1];
    const Vec2 by = quarter_turn(unit(to - from)) * e.by_mm;
    from = from + by;
    to = to + by;
    return set_path(on, *strip, std::move(path));
}

std::string apply(Bench on, const edit::InsertCorner& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    std::vector<Vec2> path = strip->path_mm;
    if (e.before < 0 || e.before > static_cast<int>(path.size())) {
        return no_corner(on);
    }
    path.insert(path.begin() + e.before, e.at_mm);
    return set_path(on, *strip, std::move(path));
}

std::string apply(Bench on, const edit::RemoveCorner& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    if (!has_corner(*strip, e.corner)) {
        return no_corner(on);
    }
    std::vector<Vec2> path = strip->path_mm;
    path.erase(path.begin() + e.corner);
    return path.size() < 2 ? on.words("drawing.remove_whole") : set_path(on, *strip, std::move(path));
}

std::string apply(Bench on, const edit::SplitStrip& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    const double width_mm = on.parts.tapes.at(strip->tape).width_mm;
    const Ribbon ribbon = make_ribbon(strip->path_mm, width_mm);
    const double cut_mm = along(ribbon, e.at_mm);
    // The joint is a full width of tape, and both pieces stay longer than that.
    if (cut_mm < 2.0 * width_mm || ribbon.length_mm - cut_mm < width_mm) {
        return on.words("drawing.cut_near_end", {{"part", e.id}});
    }
    const double back_mm = cut_mm - width_mm;
    std::vector<Vec2> first;
    std::vector<Vec2> second{point_at(ribbon, back_mm)};
    for (const Run& run : ribbon.runs) {
        if (run.starts_at_mm < cut_mm - kLeastRun_mm) {
            first.push_back(run.from_mm);
        }
        if (run.starts_at_mm > back_mm + kLeastRun_mm) {
            second.push_back(run.from_mm);
        }
    }
    first.push_back(point_at(ribbon, cut_mm));
    second.push_back(strip->path_mm.back());
    Strip piece = *strip;
    piece.id = free_id(on.card, letter_of(piece.side));
    piece.ends = {EndStyle::plain, strip->ends[1]};
    if (on.parts.tapes.at(strip->tape).adhesive == Adhesive::non_conductive) {
        piece.ends[0] = EndStyle::folded; // glue that does not conduct: foil must meet foil
    }
    piece.extras = {};
    if (std::string trouble = set_path(on, piece, std::move(second)); !trouble.empty()) {
        return trouble;
    }
    strip->ends[1] = EndStyle::plain;
    if (std::string trouble = set_path(on, *strip, std::move(first)); !trouble.empty()) {
        return trouble;
    }
    const int place = laid_place(on.card, e.id);
    on.card.laid.insert(on.card.laid.begin() + place + 1, std::move(piece));
    return "";
}

std::string apply(Bench on, const edit::JoinStrips& e) {
    Strip* first = strip_of(on.card, e.first);
    Strip* second = strip_of(on.card, e.second);
    if (first == nullptr || second == nullptr || first == second) {
        return no_strip(on, first == nullptr ? e.first : e.second);
    }
    if (first->side != second->side) {
        return on.words("drawing.join_sides", {{"first", e.first}, {"second", e.second}});
    }
    if (first->tape != second->tape) {
        return on.words("drawing.join_tapes", {{"first", e.first}, {"second", e.second}});
    }
    // Turn both so that the nearest ends are the first's end and the second's start.
    std::vector<Vec2> a = first->path_mm;
    std::vector<Vec2> b = second->path_mm;
    std::array<EndStyle, 2> ends{first->ends[0], second->ends[1]};
    double least = std::numeric_limits<double>::max();
    bool turn_a = false;
    bool turn_b = false;
    for (const bool back_a : {false, true}) {
        for (const bool back_b : {false, true}) {
            const double gap = distance(back_a ? a.front() : a.back(), back_b ? b.back() : b.front());
            if (gap < least) {
                least = gap;
                turn_a = back_a;
                turn_b = back_b;
            }
        }
    }
    if (turn_a) {
        std::reverse(a.begin(), a.end());
        ends[0] = first->ends[1];
    }
    if (turn_b) {
        std::reverse(b.begin(), b.end());
        ends[1] = second->ends[0];
    }
    // Overlapping ends on one line: the second's start and the first's end both fall away.
    const Vec2 heading = unit(a.back() - a[a.size() - 2]);
    const Vec2 other = unit(b[1] - b.front());
    if (std::abs(cross(heading, other)) < 0.02 && dot(heading, other) > 0.0 &&
        std::abs(cross(heading, b.front() - a.back())) < 0.5) {
        a.pop_back();
        b.erase(b.begin());
    } else if (distance(a.back(), b.front()) < kLeastRun_mm) {
        b.erase(b.begin());
    }
    a.insert(a.end(), b.begin(), b.end());
    if (std::string trouble = set_path(on, *first, std::move(a)); !trouble.empty()) {
        return trouble;
    }
    first->ends = ends;
    std::erase_if(on.card.laid, [&](const Laid& laid) { return id_of(laid) == e.second; });
    return "";
}

std::string apply(Bench on, const edit::SetSide& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    strip->side = e.side;
    return "";
}

std::string apply(Bench on, const edit::SetTape& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    if (on.parts.tapes.count(e.tape) == 0) {
        return no_tape(on, e.tape);
    }
    strip->tape = e.tape;
    return "";
}

std::string apply(Bench on, const edit::SetEnd& e) {
    Strip* strip = strip_of(on.card, e.id);
    if (strip == nullptr) {
        return no_strip(on, e.id);
    }
    if (e.end != 0 && e.end != 1) {
        return on.words("drawing.end_number");
    }
    strip->ends[static_cast<std::size_t>(e.end)] = e.style;
    return "";
}

std::string apply(Bench on, const edit::PatchCrossing& e) {
    const Conductors made = find_conductors(on.card, on.parts);
    const Overlap* nearest = nullptr;
    for (const Overlap& overlap : made.overlaps) {
        const std::string& lower = lanternleaf::strip_of(on.card, made, overlap.lower).id;
        const std::string& upper = lanternleaf::strip_of(on.card, made, overlap.upper).id;
        const bool ours = (lower == e.first && upper == e.second) || (lower == e.second && upper == e.first);
        if (ours &&
            (nearest == nullptr || distance(overlap.at_mm, e.at_mm) < distance(nearest->at_mm, e.at_mm))) {
            nearest = &overlap;
        }
    }
    if (nearest == nullptr) {
        return on.words("drawing.no_crossing", {{"first", e.first}, {"second", e.second}});
    }
    // Square to the lower strip, and as large as the crossing's bounds in that direction need.
    const Vec2 way =
        heading_at(made.strips[static_cast<std::size_t>(nearest->lower)].ribbon, nearest->along_lower_mm);
    const double turn_deg = degrees(std::atan2(way.y, way.x));
    Box box;
    for (const Convex& piece : nearest->pieces) {
        for (const Vec2 corner : piece.corners()) {
            box.add(turned(corner, -turn_deg));
        }
    }
    Patch patch;
    patch.at_mm = turned((box.min + box.max) * 0.5, turn_deg);
    patch.size_mm = {box.max.x - box.min.x + 2.0 * kPatchPast_mm,
                     box.max.y - box.min.y + 2.0 * kPatchPast_mm};
    patch.turn_deg = std::fmod(wrapped_deg(turn_deg), 180.0);
    // Only patches that lie wholly under the new one go: a larger one may keep other strips apart too.
    const Convex cover = rectangle(patch.at_mm, patch.size_mm, patch.turn_deg);
    std::vector<std::string> old;
    for (const int index : nearest->patches) {
        const PatchShape& shape = made.patches[static_cast<std::size_t>(index)];
        if (spare_inside(shape.outline, cover) > -tolerance::kSamePlace_mm) {
            old.push_back(id_of(on.card.laid[static_cast<std::size_t>(shape.laid_index)]));
        }
    }
    const std::string upper = lanternleaf::strip_of(on.card, made, nearest->upper).id;
    std::erase_if(on.card.laid, [&](const Laid& laid) {
        return std::find(old.begin(), old.end(), id_of(laid)) != old.end();
    });
    patch.id = free_id(on.card, 'P');
    on.card.laid.insert(on.card.laid.begin() + laid_place(on.card, upper), std::move(patch));
    return "";
}

std::string apply(Bench on, const edit::ReplaceLaid& e) {
    std::vector<std::string> ids;
    for (const Led& led : on.card.leds) {
        ids.push_back(led.id);
    }
    for (const ResistorPart& resistor : on.card.resistors) {
        ids.push_back(resistor.id);
    }
    for (const Laid& laid : e.laid) {
        if (std::find(ids.begin(), ids.end(), id_of(laid)) != ids.end()) {
            return on.words("drawing.same_name", {{"part", id_of(laid)}});
        }
        ids.push_back(id_of(laid));
        if (const Strip* strip = std::get_if<Strip>(&laid)) {
            if (on.parts.tapes.count(strip->tape) == 0) {
                return no_tape(on, strip->tape);
            }
            if (std::string trouble = path_trouble(on, strip->path_mm); !trouble.empty()) {
                return trouble;
            }
        }
    }
    on.card.laid = e.laid;
    return "";
}

} // namespace lanternleaf::edits
