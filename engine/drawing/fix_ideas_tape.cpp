// Ideas for findings about tape: patches at crossings, longer overlaps, wider gaps, ends that reach.
#include "base/tolerance.h"
#include "drawing/fix_ideas.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf::ideas {

namespace {

/// Hands that aim at the least land below it as often as above: aim this much past.
constexpr double kPast_mm = 0.5;
/// The working distance between opposite sides (common practice).
constexpr double kWorking_mm = 3.0;

const Strip& strip_at(const Case& on, int strip) {
    return strip_of(on.card, on.now.conductors, strip);
}

int index_of(const Case& on, const std::string& id) {
    for (int i = 0; i < static_cast<int>(on.now.conductors.strips.size()); ++i) {
        if (strip_at(on, i).id == id) {
            return i;
        }
    }
    return -1;
}

const Ribbon& ribbon_of(const Case& on, int strip) {
    return on.now.conductors.strips[static_cast<std::size_t>(strip)].ribbon;
}

bool opposite(Side a, Side b) {
    return (a == Side::negative && b == Side::positive) || (a == Side::positive && b == Side::negative);
}

Vec2 end_of(const Strip& strip, int end) {
    return end == 0 ? strip.path_mm.front() : strip.path_mm.back();
}

/// Away from the strip, out of that end.
Vec2 way_out(const Strip& strip, int end) {
    const std::size_t size = strip.path_mm.size();
    return end == 0 ? unit(strip.path_mm[0] - strip.path_mm[1])
                    : unit(strip.path_mm[size - 1] - strip.path_mm[size - 2]);
}

int end_place(const Strip& strip, int end) {
    return end == 0 ? 0 : static_cast<int>(strip.path_mm.size()) - 1;
}

int nearer_end(const Strip& strip, Vec2 p) {
    return distance(end_of(strip, 0), p) <= distance(end_of(strip, 1), p) ? 0 : 1;
}

/// The end of a strip carried on to a place: straight on when it lies ahead, else with one fold.
Edit carried(const Strip& strip, int end, Vec2 to) {
    const Vec2 from = end_of(strip, end);
    const Vec2 out = way_out(strip, end);
    if (std::abs(cross(out, to - from)) < 0.05 && dot(out, to - from) > 0.0) {
        return {edit::MoveCorner{strip.id, end_place(strip, end), to}};
    }
    return {edit::InsertCorner{strip.id, end == 0 ? 0 : static_cast<int>(strip.path_mm.size()), to}};
}

/// Straight, then by way of a corner level with it or below it.
void carry_ideas(const Case& on, const Strip& strip, int end, Vec2 to, const std::string& label, Ideas& out) {
    const Vec2 from = end_of(strip, end);
    out.push_back({label, carried(strip, end, to)});
    for (const Vec2 corner : {Vec2{to.x, from.y}, Vec2{from.x, to.y}}) {
        if (distance(corner, from) > 1.0 && distance(corner, to) > 1.0) {
            const int last = static_cast<int>(strip.path_mm.size());
            EditList list{on.words("drawing.did_lengthen", {{"part", strip.id}}),
                          {carried(strip, end, corner)}};
            const bool straight = std::holds_alternative<edit::MoveCorner>(list.edits[0].what);
            list.edits.push_back({edit::InsertCorner{strip.id,
                                                     end == 0   ? 0
                                                     : straight ? last
                                                                : last + 1,
                                                     to}});
            out.push_back({label, {std::move(list)}});
        }
    }
}

Vec2 nearest_on(const Ribbon& ribbon, Vec2 p) {
    return point_at(ribbon, along(ribbon, p));
}

/// The conductors' pad of that name: "L3+".
const PadOutline* pad_named(const Case& on, const std::string& name) {
    for (const PadOutline& pad : on.now.conductors.led_pads) {
        if (name_of(on.card, on.now.conductors, pad.piece) == name) {
            return &pad;
        }
    }
    return nullptr;
}

void bare_crossings(const Case& on, Ideas& out) {
    EditList all{on.words("drawing.did_patch_all"), {}};
    for (const Overlap& overlap : on.now.conductors.overlaps) {
        const Strip& lower = strip_at(on, overlap.lower);
        const Strip& upper = strip_at(on, overlap.upper);
        if (opposite(lower.side, upper.side) && overlap.bare_mm2 > tolerance::kTouch_mm2) {
            all.edits.push_back({edit::PatchCrossing{lower.id, upper.id, overlap.at_mm}});
        }
    }
    if (all.edits.size() == 1) {
        out.push_back({on.words("drawing.fix_patch"), all.edits.front()});
    } else if (!all.edits.empty()) {
        out.push_back({on.words("drawing.fix_patch_all"), {std::move(all)}});
    }
}

} // namespace

void patch_crossing(const Case& on, Ideas& out) {
    const auto named = [&](const std::string& id) {
        return std::find(on.finding.parts.begin(), on.finding.parts.end(), id) != on.finding.parts.end();
    };
    for (const Overlap& overlap : on.now.conductors.overlaps) {
        const Strip& lower = strip_at(on, overlap.lower);
        const Strip& upper = strip_at(on, overlap.upper);
        if (!opposite(lower.side, upper.side)) {
            continue;
        }
        const Edit patch{edit::PatchCrossing{lower.id, upper.id, overlap.at_mm}};
        if (named(lower.id) && named(upper.id) && distance(overlap.at_mm, on.finding.at_mm) < 15.0) {
            out.push_back({on.words(on.finding.rule == "patch-small" ? "drawing.fix_patch_larger"
                                                                     : "drawing.fix_patch"),
                           patch});
        }
    }
    if (on.finding.rule == "short-circuit") {
        bare_crossings(on, out);
    }
}

void lengthen_joint(const Case& on, Ideas& out) {
    for (const Overlap& overlap : on.now.conductors.overlaps) {
        const Strip& lower = strip_at(on, overlap.lower);
        const Strip& upper = strip_at(on, overlap.upper);
        if (on.finding.parts.size() < 2 || lower.id != on.finding.parts[0] ||
            upper.id != on.finding.parts[1] || distance(overlap.at_mm, on.finding.at_mm) > 1.0) {
            continue;
        }
        const double width =
            std::min(ribbon_of(on, overlap.lower).width_mm, ribbon_of(on, overlap.upper).width_mm);
        const double more = std::ceil((width - overlap.bare_mm2 / width + kPast_mm) * 2.0) / 2.0;
        for (const Strip* strip : {&upper, &lower}) {
            const int end = nearer_end(*strip, overlap.at_mm);
            out.push_back(
                {on.words("drawing.fix_lengthen_by", {{"part", strip->id}, {"by", on.words.mm(more)}}),
                 {edit::MoveCorner{strip->id, end_place(*strip, end),
                                   end_of(*strip, end) + way_out(*strip, end) * more}}});
        }
    }
}

void turn_end_under(const Case& on, Ideas& out) {
    if (on.finding.parts.size() < 2) {
        return;
    }
    if (const Strip* upper = find_strip(on.card, on.finding.parts[1])) {
        const int end = nearer_end(*upper, on.finding.at_mm);
        out.push_back({on.words("drawing.fix_turn_under"), {edit::SetEnd{upper->id, end, EndStyle::folded}}});
    }
}

void widen_gap(const Case& on, Ideas& out) {
    std::vector<int> strips;
    for (const std::string& id : on.finding.parts) {
        if (const int index = index_of(on, id); index >= 0) {
            strips.push_back(index);
        }
    }
    if (strips.size() == 2) {
        const Ribbon& a = ribbon_of(on, strips[0]);
        const Ribbon& b = ribbon_of(on, strips[1]);
        for (const bool second : {true, false}) { // the one laid last is the easier to move
            const Ribbon& mine = second ? b : a;
            const Ribbon& theirs = second ? a : b;
            const Strip& strip = strip_at(on, strips[second ? 1 : 0]);
            const double at_mm = along(mine, on.finding.at_mm);
            for (std::size_t i = 0; i < mine.runs.size() && mine.runs.size() + 1 == strip.path_mm.size();
                 ++i) {
                const Run& run = mine.runs[i];
                if (at_mm < run.starts_at_mm - 0.01 || at_mm > run.starts_at_mm + run.length_mm + 0.01) {
                    continue;
                }
                double gap = 1e300;
                for (const Run& other : theirs.runs) {
                    gap = std::min(gap, nearest(run.outline, other.outline).mm);
                }
                const double by = std::ceil(std::max(0.5, kWorking_mm - gap));
                const Vec2 right = quarter_turn(unit(run.to_mm - run.from_mm));
                const double side = dot(right, point_at(mine, at_mm) - on.finding.at_mm) >= 0.0 ? 1.0 : -1.0;
                const std::string label =
                    on.words("drawing.fix_move", {{"part", strip.id}, {"by", on.words.mm(by)}});
                out.push_back({label, {edit::MoveRun{strip.id, static_cast<int>(i), side * by}}});
                out.push_back({label, {edit::MoveRun{strip.id, static_cast<int>(i), -side * by}}});
            }
            const int end = nearer_end(strip, on.finding.at_mm);
            out.push_back({on.words("drawing.fix_shorten", {{"part", strip.id}}),
                           {edit::MoveCorner{strip.id, end_place(strip, end),
                                             end_of(strip, end) - way_out(strip, end) * kWorking_mm}}});
        }
        return;
    }
    if (strips.size() == 1) { // too near the holder's disc: draw the end back
        const Strip& strip = strip_at(on, strips[0]);
        const int end = nearer_end(strip, on.finding.at_mm);
        for (const double by : {2.0, 4.0, 6.0}) {
            out.push_back({on.words("drawing.fix_shorten_by", {{"part", strip.id}, {"by", on.words.mm(by)}}),
                           {edit::MoveCorner{strip.id, end_place(strip, end),
                                             end_of(strip, end) - way_out(strip, end) * by}}});
        }
    }
}

void start_in_holder(const Case& on, Ideas& out) {
    const Strip* strip = find_strip(on.card, on.finding.parts.front());
    if (strip == nullptr) {
        return;
    }
    const HolderShape holder = holder_shape(on.card, on.parts);
    const Vec2 goal = holder.at_mm[terminal_of(on.card, CellFace::positive)];
    const int first = nearer_end(*strip, goal);
    carry_ideas(on, *strip, first, goal, on.words("drawing.fix_start_in_holder"), out);
    carry_ideas(on, *strip, 1 - first, goal, on.words("drawing.fix_start_in_holder"), out);
}

void reach_gap(const Case& on, Ideas& out) {
    const std::vector<std::string>& names = on.finding.parts;
    const PadOutline* pad = pad_named(on, names.front());
    std::vector<int> strips;
    for (const std::string& name : names) {
        if (const int index = index_of(on, name); index >= 0) {
            strips.push_back(index);
        }
    }
    if (pad == nullptr || strips.empty()) {
        return;
    }
    if (names.size() > 1 &&
        find_led(on.card, names[1]) != nullptr) { // both pads on one metal: where do the sides meet?
        bare_crossings(on, out);
        return;
    }
    const bool to_holder = names.back() == kHolderId;
    if (strips.size() == 1 && !to_holder) { // a lone pad that misses its strip
        const Strip& strip = strip_at(on, strips[0]);
        const std::string owner = names.front().substr(0, names.front().size() - 1);
        const Led* led = find_led(on.card, owner);
        const Vec2 by = nearest_on(ribbon_of(on, strips[0]), pad->at_mm) - pad->at_mm;
        if (led != nullptr && length(by) < 25.0) {
            out.push_back({on.words("drawing.fix_move", {{"part", owner}, {"by", on.words.mm(length(by))}}),
                           {edit::MovePart{owner, led->at_mm + by}}});
        }
        carry_ideas(on, strip, nearer_end(strip, pad->at_mm), pad->at_mm,
                    on.words("drawing.fix_lengthen", {{"part", strip.id}}), out);
        return;
    }
    const Strip& from = strip_at(on, strips[0]);
    if (to_holder) {
        const HolderShape holder = holder_shape(on.card, on.parts);
        const CellFace face = names.front().back() == '-' ? CellFace::negative : CellFace::positive;
        const Vec2 goal = holder.at_mm[terminal_of(on.card, face)];
        carry_ideas(on, from, nearer_end(from, goal), goal,
                    on.words("drawing.fix_lengthen", {{"part", from.id}}), out);
        carry_ideas(on, from, 1 - nearer_end(from, goal), goal,
                    on.words("drawing.fix_lengthen", {{"part", from.id}}), out);
        return;
    }
    // Two strips that should meet: carry the end of either onto the other, a width deep.
    for (const bool swap : {false, true}) {
        const int mine = strips[swap ? 1 : 0];
        const int theirs = strips[swap ? 0 : 1];
        const Strip& strip = strip_at(on, mine);
        const int end = nearer_end(strip, on.finding.at_mm);
        const Vec2 goal = nearest_on(ribbon_of(on, theirs), end_of(strip, end));
        const Vec2 way = unit(goal - end_of(strip, end));
        const double past = ribbon_of(on, mine).width_mm / 2.0;
        carry_ideas(on, strip, end, goal + way * past, on.words("drawing.fix_lengthen", {{"part", strip.id}}),
                    out);
    }
}

} // namespace lanternleaf::ideas
