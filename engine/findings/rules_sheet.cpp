// The sheet: its edges, its keep-outs and its creases.
#include "base/tolerance.h"
#include "findings/rule_tools.h"
#include "geometry/polygon.h"

#include <algorithm>
#include <string_view>

namespace lanternleaf {

namespace {

/// How far past which edge something reaches.
struct Overhang {
    double mm = 0.0;
    std::string_view edge;
    Vec2 at_mm;

    void see(const Sheet& sheet, Vec2 p) {
        // On the sheet's edge, so that a badge drawn there can be seen.
        const Vec2 on_edge{std::clamp(p.x, 0.0, sheet.width_mm), std::clamp(p.y, 0.0, sheet.height_mm)};
        const auto past = [&](double by_mm, std::string_view name) {
            if (by_mm > mm + tolerance::kSamePlace_mm) {
                mm = by_mm;
                edge = name;
                at_mm = on_edge;
            } else if (by_mm > 0.0 && edge == name && by_mm > mm - tolerance::kSamePlace_mm) {
                at_mm = (at_mm + on_edge) * 0.5; // two corners equally far: between them
            }
        };
        past(-p.x, "left");
        past(p.x - sheet.width_mm, "right");
        past(-p.y, "top");
        past(p.y - sheet.height_mm, "bottom");
    }

    void see(const Sheet& sheet, const Convex& shape) {
        for (const Vec2 corner : shape.corners()) {
            see(sheet, corner);
        }
    }

    void see_disc(const Sheet& sheet, Vec2 centre, double radius_mm) {
        for (const Vec2 way : {Vec2{1, 0}, Vec2{-1, 0}, Vec2{0, 1}, Vec2{0, -1}}) {
            see(sheet, centre + way * radius_mm);
        }
    }
};

void tell_overhang(const Overhang& over, const std::string& id, const char* fix, const Words& words,
                   Findings& out) {
    if (over.mm <= tolerance::kSamePlace_mm) { // touching the edge is well
        return;
    }
    Finding found{"off-sheet", Level::problem, over.at_mm, {id}, "", ""};
    found.text = words("findings.past_" + std::string(over.edge),
                       {{"part", part_words(id, words)}, {"mm", below_mm(over.mm, 0.0, words)}});
    found.fix = words(fix);
    out.push_back(std::move(found));
}

/// Area and middle of what a keep-out (any simple polygon) shares with a convex piece: Sutherland and
/// Hodgman's clip against the piece's edges. For a hollow polygon the result may have doubled edges; they
/// cancel in the area.
struct Shared {
    double mm2 = 0.0;
    Vec2 moment;

    void add(const Shared& other) {
        mm2 += other.mm2;
        moment = moment + other.moment;
    }
};

Shared shared_with(std::span<const Vec2> polygon, const Convex& piece) {
    std::vector<Vec2> now(polygon.begin(), polygon.end());
    std::vector<Vec2> next;
    const auto corners = piece.corners();
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec2 from = corners[i];
        const Vec2 along = corners[(i + 1) % corners.size()] - from;
        next.clear();
        for (std::size_t k = 0; k < now.size(); ++k) {
            const Vec2 a = now[k];
            const Vec2 b = now[(k + 1) % now.size()];
            const double side_a = cross(along, a - from);
            const double side_b = cross(along, b - from);
            if (side_a >= 0.0) {
                next.push_back(a);
            }
            if ((side_a > 0.0 && side_b < 0.0) || (side_a < 0.0 && side_b > 0.0)) {
                next.push_back(a + (b - a) * (side_a / (side_a - side_b)));
            }
        }
        now.swap(next);
    }
    Shared shared;
    for (std::size_t k = 0; k < now.size(); ++k) {
        const Vec2 a = now[k];
        const Vec2 b = now[(k + 1) % now.size()];
        const double twice = cross(a, b);
        shared.mm2 += 0.5 * twice;
        shared.moment = shared.moment + (a + b) * (twice / 6.0);
    }
    if (shared.mm2 < 0.0) {
        return {-shared.mm2, -shared.moment};
    }
    return shared;
}

/// A disc as a polygon inscribed in it; what it leaves out (about 1 % of the area) is less than a hand's
/// accuracy.
Convex inscribed(Vec2 centre, double radius_mm) {
    Convex disc;
    for (std::size_t i = 0; i < Convex::kMost; ++i) {
        disc.add(centre + direction(360.0 * static_cast<double>(i) / Convex::kMost) * radius_mm);
    }
    return disc;
}

void tell_keepout(const Keepout& keepout, const std::string& id, const Shared& shared, const char* fix,
                  const Words& words, Findings& out) {
    if (shared.mm2 <= tolerance::kTouch_mm2) {
        return;
    }
    Finding found{"over-keepout", Level::problem, shared.moment * (1.0 / shared.mm2), {id}, "", ""};
    found.text = words(
        keepout.why.empty() ? "findings.keepout" : "findings.keepout_why",
        {{"part", part_words(id, words)}, {"area", area_text(shared.mm2, words)}, {"why", keepout.why}});
    found.fix = words(fix);
    out.push_back(std::move(found));
}

/// Degrees between a run and the square crossing of a fold line: 0 square, 90 along it.
double off_square_deg(const Run& run, const FoldLine& fold) {
    const double across = std::abs(cross(unit(run.to_mm - run.from_mm), unit(fold.to_mm - fold.from_mm)));
    return degrees(std::acos(std::clamp(across, 0.0, 1.0)));
}

constexpr double kLeastOnCrease_mm = 0.05;

/// The part of a fold line inside a disc; false when shorter than kLeastOnCrease_mm.
bool chord(Vec2 centre, double radius_mm, const FoldLine& fold, Vec2& from, Vec2& to) {
    const Vec2 along = unit(fold.to_mm - fold.from_mm);
    const double off_mm = cross(along, centre - fold.from_mm);
    if (std::abs(off_mm) >= radius_mm) {
        return false;
    }
    const double middle_mm = dot(along, centre - fold.from_mm);
    const double half_mm = std::sqrt(radius_mm * radius_mm - off_mm * off_mm);
    const double low_mm = std::max(0.0, middle_mm - half_mm);
    const double high_mm = std::min(distance(fold.from_mm, fold.to_mm), middle_mm + half_mm);
    from = fold.from_mm + along * low_mm;
    to = fold.from_mm + along * high_mm;
    return high_mm - low_mm >= kLeastOnCrease_mm;
}

} // namespace

void rule_off_sheet(const ReviewFacts& facts, Findings& out) {
    const Sheet& sheet = facts.card.sheet;
    for (std::size_t i = 0; i < facts.conductors.strips.size(); ++i) {
        Overhang over;
        for (const Run& run : facts.conductors.strips[i].ribbon.runs) {
            over.see(sheet, run.outline);
        }
        tell_overhang(over, strip_at(facts, static_cast<int>(i)).id, "findings.past_strip_fix", facts.words,
                      out);
    }
    for (std::size_t i = 0; i < facts.conductors.patches.size(); ++i) {
        Overhang over;
        over.see(sheet, facts.conductors.patches[i].outline);
        tell_overhang(over, patch_id(facts, static_cast<int>(i)), "findings.past_patch_fix", facts.words,
                      out);
    }
    for (const PartShapes& part : part_shapes(facts)) {
        Overhang over;
        for (const Convex& solid : part.solids) {
            over.see(sheet, solid);
        }
        for (std::size_t i = 0; i < part.discs_mm.size(); ++i) {
            over.see_disc(sheet, part.discs_mm[i], part.disc_radius_mm[i]);
        }
        tell_overhang(over, part.id, "findings.past_part_fix", facts.words, out);
    }
}

void rule_over_keepout(const ReviewFacts& facts, Findings& out) {
    if (facts.card.sheet.keepouts.empty()) {
        return;
    }
    const std::vector<PartShapes> parts = part_shapes(facts);
    for (const Keepout& keepout : facts.card.sheet.keepouts) {
        Box box;
        for (const Vec2 corner : keepout.outline_mm) {
            box.add(corner);
        }
        for (std::size_t i = 0; i < facts.conductors.strips.size(); ++i) {
            const Ribbon& ribbon = facts.conductors.strips[i].ribbon;
            Shared shared;
            for (const Run& run : ribbon.runs) {
                if (run.box.touches(box)) {
                    shared.add(shared_with(keepout.outline_mm, run.outline));
                }
            }
            tell_keepout(keepout, strip_at(facts, static_cast<int>(i)).id, shared,
                         "findings.keepout_strip_fix", facts.words, out);
        }
        for (const PartShapes& part : parts) {
            Shared most; // body and pads overlap each other: count the largest, not the sum
            const auto see = [&](const Convex& shape) {
                if (bounds(shape).touches(box)) {
                    const Shared here = shared_with(keepout.outline_mm, shape);
                    most = here.mm2 > most.mm2 ? here : most;
                }
            };
            for (const Convex& solid : part.solids) {
                see(solid);
            }
            for (std::size_t i = 0; i < part.discs_mm.size(); ++i) {
                see(inscribed(part.discs_mm[i], part.disc_radius_mm[i]));
            }
            tell_keepout(keepout, part.id, most, "findings.keepout_part_fix", facts.words, out);
        }
    }
}

void rule_crease(const ReviewFacts& facts, Findings& out) {
    if (facts.card.sheet.folds.empty()) {
        return;
    }
    const std::vector<PartShapes> parts = part_shapes(facts);
    for (const FoldLine& fold : facts.card.sheet.folds) {
        Vec2 from;
        Vec2 to;
        for (std::size_t i = 0; i < facts.conductors.strips.size(); ++i) {
            double worst_deg = tolerance::kSquareCrossing_deg;
            Vec2 at_mm;
            for (const Run& run : facts.conductors.strips[i].ribbon.runs) {
                const double off_deg = off_square_deg(run, fold);
                if (off_deg > worst_deg + 1e-6 &&
                    segment_inside(run.outline, fold.from_mm, fold.to_mm, kLeastOnCrease_mm, from, to)) {
                    worst_deg = off_deg;
                    at_mm = (from + to) * 0.5;
                }
            }
            if (worst_deg <= tolerance::kSquareCrossing_deg) {
                continue;
            }
            const std::string& id = strip_at(facts, static_cast<int>(i)).id;
            Finding found{"crease", Level::caution, at_mm, {id}, "", ""};
            const Words& words = facts.words;
            found.text = worst_deg > 85.0
                             ? words("findings.crease_along", {{"part", id}})
                             : words("findings.crease_slant",
                                     {{"part", id},
                                      {"deg", words.number(worst_deg, 0)},
                                      {"limit", words.number(tolerance::kSquareCrossing_deg, 0)}});
            found.fix = words("findings.crease_strip_fix", {{"part", id}});
            out.push_back(std::move(found));
        }
        for (const PartShapes& part : parts) {
            double most_mm = 0.0;
            Vec2 at_mm;
            const auto see = [&](double mm, Vec2 middle) {
                if (mm > most_mm) {
                    most_mm = mm;
                    at_mm = middle;
                }
            };
            for (const Convex& solid : part.solids) {
                if (segment_inside(solid, fold.from_mm, fold.to_mm, kLeastOnCrease_mm, from, to)) {
                    see(distance(from, to), (from + to) * 0.5);
                }
            }
            for (std::size_t i = 0; i < part.discs_mm.size(); ++i) {
                if (chord(part.discs_mm[i], part.disc_radius_mm[i], fold, from, to)) {
                    see(distance(from, to), (from + to) * 0.5);
                }
            }
            if (most_mm <= 0.0) {
                continue;
            }
            Finding found{"crease", Level::caution, at_mm, {part.id}, "", ""};
            const Words& words = facts.words;
            found.text = words("findings.crease_part",
                               {{"part", part_words(part.id, words)}, {"mm", below_mm(most_mm, 0.0, words)}});
            found.fix = words("findings.crease_part_fix");
            out.push_back(std::move(found));
        }
    }
}

} // namespace lanternleaf
