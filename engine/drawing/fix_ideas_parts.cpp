// Ideas for findings about parts: turn them, slide them, move them in or off, build the foam higher or lower.
#include "base/tolerance.h"
#include "drawing/fix_ideas.h"
#include "geometry/polygon.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf::ideas {

namespace {

constexpr double kStep_mm = 1.0;
constexpr double kFurthest_mm = 40.0;
constexpr double kFurthestSlide_mm = 15.0;

/// "L3" of "L3+", "R1" of "R1.2".
std::string owner_of(const std::string& pad) {
    const std::size_t dot = pad.find('.');
    return dot != std::string::npos ? pad.substr(0, dot) : pad.substr(0, pad.size() - 1);
}

struct Solid {
    std::string id;
    Vec2 at_mm;
    std::vector<Convex> shapes;
};

Convex round_shape(Vec2 centre, double radius_mm) {
    Convex disc;
    for (std::size_t i = 0; i < Convex::kMost; ++i) {
        // Circumscribed, so that what clears the polygon clears the disc.
        const double out_mm = radius_mm / std::cos(radians(180.0 / Convex::kMost));
        disc.add(centre + direction(360.0 * static_cast<double>(i) / Convex::kMost) * out_mm);
    }
    return disc;
}

Solid solid_of(const Case& on, const std::string& id) {
    const Conductors& made = on.now.conductors;
    if (id == kHolderId) {
        const HolderShape holder = holder_shape(on.card, on.parts);
        Solid out{id, on.card.holder.at_mm, {}};
        for (int i = 0; i < 2; ++i) {
            out.shapes.push_back(holder.flap ? round_shape(holder.disc_at_mm[i], holder.disc_radius_mm[i])
                                             : holder.pad[i]);
        }
        if (!holder.body.empty()) {
            out.shapes.push_back(holder.body);
        }
        return out;
    }
    for (std::size_t i = 0; i < on.card.leds.size(); ++i) {
        if (on.card.leds[i].id == id) {
            return {id,
                    on.card.leds[i].at_mm,
                    {led_body(on.card, on.parts, static_cast<int>(i)), made.led_pads[2 * i].outline,
                     made.led_pads[2 * i + 1].outline}};
        }
    }
    for (std::size_t i = 0; i < on.card.resistors.size(); ++i) {
        if (on.card.resistors[i].id == id) {
            return {id,
                    on.card.resistors[i].at_mm,
                    {resistor_body(on.card, on.parts, static_cast<int>(i)), made.resistor_pads[2 * i].outline,
                     made.resistor_pads[2 * i + 1].outline}};
        }
    }
    for (const PatchShape& patch : made.patches) {
        const auto& laid = on.card.laid[static_cast<std::size_t>(patch.laid_index)];
        if (id_of(laid) == id) {
            return {id, std::get<Patch>(laid).at_mm, {patch.outline}};
        }
    }
    return {};
}

Convex moved(const Convex& shape, Vec2 by) {
    Convex out;
    for (const Vec2 corner : shape.corners()) {
        out.add(corner + by);
    }
    return out;
}

Fix move_fix(const Case& on, const Solid& part, Vec2 by) {
    return {on.words(part.id == kHolderId ? "drawing.fix_move_holder" : "drawing.fix_move",
                     {{"part", part.id}, {"by", on.words.mm(length(by))}}),
            {edit::MovePart{part.id, part.at_mm + by}}};
}

bool on_crease(const Sheet& sheet, const Convex& shape) {
    for (const FoldLine& fold : sheet.folds) {
        const auto corners = shape.corners();
        if (contains(shape, fold.from_mm) || contains(shape, fold.to_mm)) {
            return true;
        }
        for (std::size_t i = 0; i < corners.size(); ++i) {
            if (segments_meet(corners[i], corners[(i + 1) % corners.size()], fold.from_mm, fold.to_mm)) {
                return true;
            }
        }
    }
    return false;
}

bool on_keepout(const Sheet& sheet, const Convex& shape) {
    return std::any_of(sheet.keepouts.begin(), sheet.keepouts.end(),
                       [&](const Keepout& keepout) { return overlaps(keepout.outline_mm, shape); });
}

bool in_sheet(const Sheet& sheet, const Convex& shape) {
    const Box box = bounds(shape);
    return box.min.x >= 0.0 && box.min.y >= 0.0 && box.max.x <= sheet.width_mm &&
           box.max.y <= sheet.height_mm;
}

bool lies_well(const Sheet& sheet, const Solid& part, Vec2 by) {
    return std::all_of(part.shapes.begin(), part.shapes.end(), [&](const Convex& shape) {
        const Convex there = moved(shape, by);
        return !on_crease(sheet, there) && !on_keepout(sheet, there) && in_sheet(sheet, there);
    });
}

} // namespace

void turn_led(const Case& on, Ideas& out) {
    const Led* led = find_led(on.card, on.finding.parts.front());
    if (led == nullptr) {
        return;
    }
    // When every light is the wrong way round, it is the cell that lies wrong.
    const auto reversed = std::count_if(on.now.findings.begin(), on.now.findings.end(),
                                        [](const Finding& each) { return each.rule == "led-reversed"; });
    if (on.card.leds.size() > 1 && reversed == static_cast<std::ptrdiff_t>(on.card.leds.size())) {
        const CellChoice& cell = on.card.cell;
        out.push_back({on.words("drawing.fix_turn_cell"),
                       {edit::SetCell{cell.type, cell.count, other_face(cell.face_down)}}});
    }
    out.push_back({on.words("drawing.fix_turn", {{"part", led->id}}),
                   {edit::TurnPart{led->id, led->turn_deg + 180.0}}});
}

void slide_along_tape(const Case& on, Ideas& out) {
    const Solid part = solid_of(on, owner_of(on.finding.parts.front()));
    if (part.shapes.size() < 3) {
        return;
    }
    // Along every run that passes near the pad, either way.
    std::vector<Vec2> ways;
    constexpr double kNear_mm = 8.0;
    for (const StripShape& strip : on.now.conductors.strips) {
        for (const Run& run : strip.ribbon.runs) {
            if (distance_to_segment(on.finding.at_mm, run.from_mm, run.to_mm) < kNear_mm) {
                const Vec2 way = unit(run.to_mm - run.from_mm);
                const auto known = [&](Vec2 each) { return std::abs(cross(each, way)) < 0.02; };
                if (std::none_of(ways.begin(), ways.end(), known)) {
                    ways.push_back(way);
                    ways.push_back(-way);
                }
            }
        }
    }
    const auto flat = [&](Vec2 by) {
        for (std::size_t i = 1; i < part.shapes.size(); ++i) { // the pads
            const Convex pad = moved(part.shapes[i], by);
            for (const StripShape& strip : on.now.conductors.strips) {
                for (const Convex& fold : strip.ribbon.fold_places) {
                    if (area(clip(fold, pad)) > 0.2) {
                        return false;
                    }
                }
            }
            for (const Overlap& overlap : on.now.conductors.overlaps) {
                for (const Convex& piece : overlap.pieces) {
                    if (area(clip(piece, pad)) > 0.2) {
                        return false;
                    }
                }
            }
        }
        return true;
    };
    std::vector<bool> done(ways.size(), false);
    for (double far = kStep_mm; far <= kFurthestSlide_mm; far += kStep_mm) {
        for (std::size_t i = 0; i < ways.size(); ++i) {
            if (!done[i] && flat(ways[i] * far)) {
                done[i] = true; // the nearest flat place that way
                out.push_back(move_fix(on, part, ways[i] * far));
            }
        }
    }
}

void move_in(const Case& on, Ideas& out) {
    const std::string& id = on.finding.parts.front();
    const Sheet& sheet = on.card.sheet;
    if (const Strip* strip = find_strip(on.card, id)) {
        const double half_mm = on.parts.tapes.at(strip->tape).width_mm / 2.0;
        EditList list{on.words("drawing.did_move_in", {{"part", id}}), {}};
        for (std::size_t i = 0; i < strip->path_mm.size(); ++i) {
            const Vec2 at = strip->path_mm[i];
            const auto inside = [&](double value, double size) {
                return std::clamp(value, std::min(half_mm, size / 2), std::max(size - half_mm, size / 2));
            };
            const Vec2 to{inside(at.x, sheet.width_mm), inside(at.y, sheet.height_mm)};
            if (to != at) {
                list.edits.push_back({edit::MoveCorner{id, static_cast<int>(i), to}});
            }
        }
        out.push_back({on.words("drawing.fix_move_in", {{"part", id}}), {std::move(list)}});
        return;
    }
    const Solid part = solid_of(on, id);
    Box box;
    for (const Convex& shape : part.shapes) {
        box.add(bounds(shape));
    }
    if (part.id.empty()) {
        return;
    }
    const auto in_by = [](double low, double high, double size) {
        return low < 0.0 ? std::ceil(-low) : high > size ? -std::ceil(high - size) : 0.0;
    };
    const Vec2 by{in_by(box.min.x, box.max.x, sheet.width_mm), in_by(box.min.y, box.max.y, sheet.height_mm)};
    out.push_back(move_fix(on, part, by));
}

void move_off(const Case& on, Ideas& out) {
    const Solid part = solid_of(on, on.finding.parts.front());
    if (part.id.empty()) {
        return; // a strip: how it should run instead is the maker's choice, or the router's
    }
    std::vector<Vec2> ways{{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
    for (const FoldLine& fold : on.card.sheet.folds) {
        const Vec2 across = quarter_turn(unit(fold.to_mm - fold.from_mm));
        ways.push_back(across);
        ways.push_back(-across);
    }
    std::vector<bool> done(ways.size(), false);
    for (double far = kStep_mm; far <= kFurthest_mm; far += kStep_mm) {
        for (std::size_t i = 0; i < ways.size(); ++i) {
            if (!done[i] && lies_well(on.card.sheet, part, ways[i] * far)) {
                done[i] = true;
                out.push_back(move_fix(on, part, ways[i] * far));
            }
        }
    }
}

void set_foam_height(const Case& on, Ideas& out) {
    const CellType& cell = on.parts.cells.at(on.card.cell.type);
    const HolderType& holder = on.parts.holders.at(on.card.holder.type);
    const double least_mm = on.card.cell.count * cell.height_mm + 2.0 * holder.paper_mm;
    const double most_mm = least_mm + holder.travel_mm;
    Foam foam = on.card.foam.value_or(Foam{1.5, 1, {}, {}});
    if (foam.edges.empty()) {
        foam.edges = {Edge::top, Edge::right, Edge::bottom, Edge::left};
    }
    // The maker's own foam first, then thicknesses that craft foam and foam tape come in (common practice).
    for (const double thickness_mm : {foam.thickness_mm, 1.5, 2.0, 1.0, 3.0}) {
        const int layers = std::max(1, static_cast<int>(std::ceil(least_mm / thickness_mm - 1e-9)));
        if (layers * thickness_mm <= most_mm + 1e-9) {
            foam.thickness_mm = thickness_mm;
            foam.layers = layers;
            out.push_back(
                {on.words("drawing.fix_layers", {{"n", layers}, {"thickness", on.words.mm(thickness_mm)}}),
                 {edit::SetFoam{foam}}});
        }
    }
}

void one_cell(const Case& on, Ideas& out) {
    out.push_back(
        {on.words("drawing.fix_one_cell"), {edit::SetCell{on.card.cell.type, 1, on.card.cell.face_down}}});
}

} // namespace lanternleaf::ideas
