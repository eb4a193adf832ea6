// Link: one piece of a ribbon between two stops, of at most three straight runs, with both its tapes. Exists
// as the unit that the search swaps, prices and compares.
#pragma once

#include "geometry/convex.h"
#include "routing/gauge.h"

#include <array>

namespace lanternleaf::routing_stages {

/// A place and a direction that the ribbon's middle passes through.
struct Pose {
    Vec2 at_mm;
    double heading_deg = 0.0;
    Vec2 heading;         ///< unit vector of heading_deg
    double half_mm = 0.0; ///< stays straight this far on both sides of at_mm (pads lie there)
};

[[nodiscard]] Pose make_pose(Vec2 at_mm, double heading_deg, double half_mm);

/// Points along the middle and along each tape. `right` lies clockwise of the direction of travel.
struct Link {
    static constexpr int kMost = 8;
    int count = 0; ///< points in use
    std::array<Vec2, kMost> middle;
    std::array<Vec2, kMost> right;
    std::array<Vec2, kMost> left;
    Box box;
    double length_mm = 0.0;
    int bends = 0;
    double price_mm = 0.0;  ///< length, folds, taste: what the search weighs
    double misfit_mm = 0.0; ///< how much it breaks what must hold (edges, keep-outs, no way at all)
    bool made = false;      ///< false: no way of three runs was found, and the link is a straight line

    // Only the points in use are cleared, filled and copied: the search makes and moves many of these.
    Link() {} // NOLINT: not defaulted, since that would clear the room

    Link(const Link& other) { take(other); }

    Link& operator=(const Link& other) {
        if (this != &other) {
            take(other);
        }
        return *this;
    }

    ~Link() = default;

    void add(Vec2 point) { middle[static_cast<std::size_t>(count++)] = point; }

private:
    void take(const Link& other) {
        count = other.count;
        for (std::size_t i = 0; i < static_cast<std::size_t>(count); ++i) {
            middle[i] = other.middle[i];
            right[i] = other.right[i];
            left[i] = other.left[i];
        }
        box = other.box;
        length_mm = other.length_mm;
        bends = other.bends;
        price_mm = other.price_mm;
        misfit_mm = other.misfit_mm;
        made = other.made;
    }
};

/// What a fold is worth in mm of tape, and what other shapes are.
struct Taste {
    double bend_mm = 30.0;       ///< two folds, one on each tape
    double odd_bend_mm = 0.5;    ///< a bend that is no multiple of 45 degrees
    double odd_heading_mm = 0.5; ///< a run that is no multiple of 45 degrees on the sheet
};

/// One way from one stop to the next, by its bends alone.
struct Way {
    std::array<Vec2, 2> bend{};
    int bends = 0;
    double length_mm = 0.0;
    double price_mm = 0.0;
};

/// The ways from `a` to `b`, found by shape alone, cheapest first.
struct Ways {
    static constexpr int kMost = 4;
    std::array<Way, kMost> way;
    int count = 0;
};

/// `stretch_mm` makes the runs next to the stops longer than they need be, where that is free to choose.
void find_ways(const Pose& a, const Pose& b, const Gauge& gauge, const Taste& taste, double stretch_mm,
               Ways& ways);
/// Only those with no bend or one.
void find_few_bends(const Pose& a, const Pose& b, const Gauge& gauge, const Taste& taste, Ways& ways);
[[nodiscard]] Link link_of(const Pose& a, const Pose& b, const Way& way, const Gauge& gauge);
/// Fills right, left, box from the middle line.
void spread(Link& link, const Gauge& gauge);
[[nodiscard]] Link reversed(const Link& link);
[[nodiscard]] Link straight_line(Vec2 a, Vec2 b, const Gauge& gauge);

/// Adds up how much (mm) two pieces come too near each other. `swapped` when right of one is the side that
/// is left of the other; `neighbours` when they share a stop, where tapes of the same side meet.
[[nodiscard]] double clash(const Link& a, const Link& b, const Gauge& gauge, bool neighbours, bool swapped);

[[nodiscard]] double segment_distance(Vec2 a, Vec2 b, Vec2 c, Vec2 d);

} // namespace lanternleaf::routing_stages
