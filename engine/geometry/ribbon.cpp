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

/// The corners of one end of a run: clockwise side first.
struct End {
    Vec2 right;
    Vec2 left;
};

End square_end(Vec2 at, Vec2 heading, double past, double h) {
    const Vec2 n = quarter_turn(heading) * h;
    return {at + heading * past + n, at + heading * past - n};
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
    return {inner, inner + out_in, at - reach, inner + out_out};
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
    const auto heading = [&](std::size_t i) { return unit(ribbon.runs[i].to_mm - ribbon.runs[i].from_mm); };

    // joints[i] lies between run i and run i + 1. Few, so no allocation for common strips is worth its code.
    std::vector<Joint> joints(count > 0 ? count - 1 : 0, Joint::mitre);
    for (std::size_t i = 0; i + 1 < count; ++i) {
        if (dot(heading(i), heading(i + 1)) < kRightAngle) {
            joints[i] = Joint::square;
        }
    }
    const auto start_of = [&](std::size_t i) {
        const Vec2 at = ribbon.runs[i].from_mm;
        if (i == 0) {
            return square_end(at, heading(i), 0.0, h);
        }
        if (joints[i - 1] == Joint::square) {
            return square_end(at, heading(i), -push_past(heading(i - 1), heading(i), h), h);
        }
        const Vec2 half_line = mitre(heading(i - 1), heading(i), h);
        return End{at + half_line, at - half_line};
    };
    const auto end_of = [&](std::size_t i) {
        const Vec2 at = ribbon.runs[i].to_mm;
        if (i + 1 == count) {
            return square_end(at, heading(i), 0.0, h);
        }
        if (joints[i] == Joint::square) {
            return square_end(at, heading(i), push_past(heading(i), heading(i + 1), h), h);
        }
        const Vec2 half_line = mitre(heading(i), heading(i + 1), h);
        return End{at + half_line, at - half_line};
    };
    // A run too short for its mitres would turn inside out: its joints become square ones. That changes its
    // neighbours' ends, so look again until nothing changes (each pass squares at least one joint more).
    for (bool changed = true; changed;) {
        changed = false;
        for (std::size_t i = 0; i < count; ++i) {
            const End start = start_of(i);
            const End end = end_of(i);
            const Vec2 along = heading(i);
            if (dot(end.right - start.right, along) >= -kNoLength_mm &&
                dot(end.left - start.left, along) >= -kNoLength_mm) {
                continue;
            }
            for (const std::size_t joint : {i - 1, i}) { // i - 1 wraps round for the first run and is skipped
                if (joint < joints.size() && joints[joint] == Joint::mitre) {
                    joints[joint] = Joint::square;
                    changed = true;
                }
            }
        }
    }
    for (std::size_t i = 0; i < count; ++i) {
        Run& run = ribbon.runs[i];
        const End start = start_of(i);
        const End end = end_of(i);
        run.outline = {start.left, end.left, end.right, start.right};
        run.box = bounds(run.outline);
        ribbon.box.add(run.box);
    }
    for (std::size_t i = 0; i + 1 < count; ++i) {
        const Vec2 in = heading(i);
        const Vec2 out = heading(i + 1);
        if (std::abs(cross(in, out)) > kStraight || dot(in, out) < 0.0) {
            ribbon.folds_mm.push_back(ribbon.runs[i].to_mm);
            ribbon.fold_places.push_back(fold_place(ribbon.runs[i].to_mm, in, out, width_mm));
        }
    }
    return ribbon;
}

double along(const Ribbon& ribbon, Vec2 p) {
    double best2 = 1e300;
    double at_mm = 0.0;
    for (const Run& run : ribbon.runs) {
        const Vec2 step = (run.to_mm - run.from_mm) * (1.0 / run.length_mm);
        const double t = std::clamp(dot(p - run.from_mm, step), 0.0, run.length_mm);
        const Vec2 off = p - (run.from_mm + step * t);
        if (dot(off, off) < best2) {
            best2 = dot(off, off);
            at_mm = run.starts_at_mm + t;
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
