#include "geometry/ribbon.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr double kNoLength_mm = 1e-9;
/// Bends of less than this (sine of the turn) are straight on.
constexpr double kStraight = 1e-6;
/// A turn counts as a right angle or less while its cosine is above this; the slack is for rounding.
constexpr double kRightAngle = -1e-9;

/// How the outline is made where two runs meet.
enum class Joint {
    mitre, ///< both runs are cut on the mitre line and tile the outline
    square ///< both runs stay rectangles, pushed past the vertex; they overlap there
};

Vec2 heading_of(const Run& run) {
    return (run.to_mm - run.from_mm) * (1.0 / run.length_mm);
}

/// Half of the mitre line, from the vertex to the corner on the clockwise side, for half-width h.
Vec2 mitre(Vec2 heading_in, Vec2 heading_out, double h) {
    const Vec2 n_in = quarter_turn(heading_in);
    const Vec2 n_out = quarter_turn(heading_out);
    return (n_in + n_out) * (h / (1.0 + dot(n_in, n_out)));
}

/// How far a square joint pushes its rectangles past the vertex: as far as the mitre's tip, at most half a
/// width.
double push_past(Vec2 heading_in, Vec2 heading_out, double h) {
    const double cosine = std::clamp(dot(heading_in, heading_out), -1.0, 1.0);
    // tan(turn / 2) = sqrt((1 - cos) / (1 + cos))
    return cosine <= 0.0 ? h : h * std::sqrt((1.0 - cosine) / (1.0 + cosine));
}

/// Where run i - 1 ends and run i begins (the first and last are the strip's ends).
struct Vertex {
    Joint joint = Joint::square;
    Vec2 half_line;       ///< of the mitre, to the clockwise corner
    double past_mm = 0.0; ///< how far a square joint reaches past
};

/// One end of a run's outline: the corner on the clockwise side, and the other.
struct End {
    Vec2 right;
    Vec2 left;
};

/// `side` is the half width to the clockwise side, `outward` points out of the run.
End end_at(const Vertex& vertex, Vec2 at, Vec2 outward, Vec2 side) {
    if (vertex.joint == Joint::mitre) {
        return {at + vertex.half_line, at - vertex.half_line};
    }
    const Vec2 tip = at + outward * vertex.past_mm;
    return {tip + side, tip - side};
}

/// The doubled tape at a fold: up to a right angle the kite between the two square cuts at the inner corner
/// and the mitre's tip (at a right angle a width by width square); beyond it a square in line with the
/// incoming run.
Convex fold_place(Vec2 at, Vec2 heading_in, Vec2 heading_out, double width) {
    if (dot(heading_in, heading_out) < kRightAngle) {
        return rectangle(at, {width, width}, degrees(std::atan2(heading_in.y, heading_in.x)));
    }
    const double towards_inside = cross(heading_in, heading_out) > 0.0 ? 1.0 : -1.0;
    const Vec2 reach = mitre(heading_in, heading_out, width / 2.0) * towards_inside;
    const Vec2 inner = at + reach;
    const Vec2 out_in = quarter_turn(heading_in) * (-towards_inside * width);
    const Vec2 out_out = quarter_turn(heading_out) * (-towards_inside * width);
    return towards_inside > 0.0 ? Convex::of_quad(inner, inner + out_in, at - reach, inner + out_out)
                                : Convex::of_quad(inner, inner + out_out, at - reach, inner + out_in);
}

} // namespace

Ribbon make_ribbon(std::span<const Vec2> path_mm, double width_mm) {
    Ribbon ribbon;
    ribbon.width_mm = width_mm;
    ribbon.runs.reserve(path_mm.size());
    for (std::size_t i = 1; i < path_mm.size(); ++i) {
        const Vec2 from = ribbon.runs.empty() ? path_mm[i - 1] : ribbon.runs.back().to_mm;
        const double size = distance(from, path_mm[i]);
        if (size <= kNoLength_mm) {
            continue;
        }
        Run& run = ribbon.runs.emplace_back();
        run.from_mm = from;
        run.to_mm = path_mm[i];
        run.starts_at_mm = ribbon.length_mm;
        run.length_mm = size;
        ribbon.length_mm += size;
    }
    const std::size_t count = ribbon.runs.size();
    const double h = width_mm / 2.0;
    std::vector<Vertex> vertices(count + 1);
    ribbon.folds_mm.reserve(count);
    ribbon.fold_places.reserve(count);
    for (std::size_t i = 1; i < count; ++i) {
        const Vec2 at = ribbon.runs[i].from_mm;
        const Vec2 in = heading_of(ribbon.runs[i - 1]);
        const Vec2 out = heading_of(ribbon.runs[i]);
        vertices[i].past_mm = push_past(in, out, h);
        if (dot(in, out) >= kRightAngle) {
            vertices[i].joint = Joint::mitre;
            vertices[i].half_line = mitre(in, out, h);
        }
        if (std::abs(cross(in, out)) > kStraight || dot(in, out) < 0.0) {
            ribbon.folds_mm.push_back(at);
            ribbon.fold_places.push_back(fold_place(at, in, out, width_mm));
        }
    }
    // A run too short for its mitres would turn inside out: its joints become square ones. That changes its
    // neighbours' ends, so look again until nothing changes (each pass squares at least one joint more).
    for (bool changed = true; changed;) {
        changed = false;
        for (std::size_t i = 0; i < count; ++i) {
            Run& run = ribbon.runs[i];
            const Vec2 heading = heading_of(run);
            const Vec2 side = quarter_turn(heading) * h;
            const End start = end_at(vertices[i], run.from_mm, -heading, side);
            const End end = end_at(vertices[i + 1], run.to_mm, heading, side);
            run.outline = Convex::of_quad(start.left, end.left, end.right, start.right);
            if (dot(end.right - start.right, heading) < -kNoLength_mm ||
                dot(end.left - start.left, heading) < -kNoLength_mm) {
                vertices[i].joint = Joint::square; // at the strip's own ends it is already
                vertices[i + 1].joint = Joint::square;
                changed = true;
            }
        }
    }
    for (Run& run : ribbon.runs) {
        run.box = bounds(run.outline);
        ribbon.box.add(run.box);
    }
    return ribbon;
}

double along(const Ribbon& ribbon, Vec2 p) {
    double best2 = 1e300;
    double at_mm = 0.0;
    for (const Run& run : ribbon.runs) {
        // The run lies in its box: one whose box is farther than the best so far need not be measured.
        const Vec2 to_box{std::max({run.box.min.x - p.x, 0.0, p.x - run.box.max.x}),
                          std::max({run.box.min.y - p.y, 0.0, p.y - run.box.max.y})};
        if (dot(to_box, to_box) >= best2) {
            continue;
        }
        const Vec2 whole = run.to_mm - run.from_mm;
        const double t = std::clamp(dot(p - run.from_mm, whole) / (run.length_mm * run.length_mm), 0.0, 1.0);
        const Vec2 off = p - (run.from_mm + whole * t);
        if (dot(off, off) < best2) {
            best2 = dot(off, off);
            at_mm = run.starts_at_mm + run.length_mm * t;
        }
    }
    return at_mm;
}

namespace {

/// The run that holds arc length `at_mm`; at a vertex the earlier one.
const Run* run_at(const Ribbon& ribbon, double at_mm) {
    for (const Run& run : ribbon.runs) {
        if (at_mm <= run.starts_at_mm + run.length_mm) {
            return &run;
        }
    }
    return ribbon.runs.empty() ? nullptr : &ribbon.runs.back();
}

} // namespace

Vec2 point_at(const Ribbon& ribbon, double at_mm) {
    const Run* run = run_at(ribbon, at_mm);
    if (run == nullptr) {
        return {};
    }
    const double t = std::clamp((at_mm - run->starts_at_mm) / run->length_mm, 0.0, 1.0);
    return run->from_mm + (run->to_mm - run->from_mm) * t;
}

Vec2 heading_at(const Ribbon& ribbon, double at_mm) {
    const Run* run = run_at(ribbon, at_mm);
    return run == nullptr ? Vec2{1.0, 0.0} : unit(run->to_mm - run->from_mm);
}

} // namespace lanternleaf
