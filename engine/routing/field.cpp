#include "routing/field.h"

#include "base/tolerance.h"
#include "geometry/polygon.h"

#include <algorithm>

namespace lanternleaf::routing_stages {

namespace {

/// From tape to the rim of the wrong contact: a cell can sit off its middle by about this.
constexpr double kContactSpare_mm = 1.5;
constexpr double kCreaseSpare_mm = 1.0;
/// A fold of the tape keeps this far from a crease.
constexpr double kFoldFromCrease_mm = 3.0;
/// What crossing a crease or a kept strip squarely is worth, in mm of tape, for each tape.
constexpr double kCreasePrice_mm = 15.0;
constexpr double kCrossingPrice_mm = 60.0;
/// A crossing is square enough while the cosine between the two is below this (20 degrees off).
constexpr double kSquareEnough = 0.34;
/// From a crossing's middle to the next fold: half a patch and half a fold.
constexpr double kRoundCrossing_mm = 9.5;

double distance_to_outline(Vec2 a, Vec2 b, std::span<const Vec2> corners) {
    double least = 1e300;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        least = std::min(least, segment_distance(a, b, corners[i], corners[(i + 1) % corners.size()]));
    }
    return least;
}

} // namespace

Field::Field(const Card& card, const Parts& parts, const Gauge& gauge, const Card& kept,
             std::vector<Convex> others)
    : gauge_(gauge), size_mm_{card.sheet.width_mm, card.sheet.height_mm}, creases_(card.sheet.folds) {
    const HolderShape holder = holder_shape(card, parts);
    for (int terminal = 0; terminal < 2; ++terminal) {
        Disc disc;
        disc.at_mm = holder.at_mm[terminal];
        disc.plus = terminal_face(card, terminal) == CellFace::positive;
        double radius = holder.disc_radius_mm[terminal];
        if (!holder.flap) {
            for (const Vec2 corner : holder.pad[terminal].corners()) {
                radius = std::max(radius, distance(corner, disc.at_mm));
            }
        }
        disc.apart_mm = radius + gauge.half_mm + kContactSpare_mm;
        contacts_.push_back(disc);
    }
    const auto outline_of = [](std::span<const Vec2> corners) {
        Outline outline;
        outline.corners.assign(corners.begin(), corners.end());
        for (const Vec2 corner : corners) {
            outline.box.add(corner);
        }
        return outline;
    };
    if (!holder.flap) {
        holder_body_.push_back(outline_of(holder.body.corners()));
    }
    for (const Keepout& keepout : card.sheet.keepouts) {
        outlines_.push_back(outline_of(keepout.outline_mm));
    }
    for (const Convex& other : others) {
        outlines_.push_back(outline_of(other.corners()));
    }
    for (const Laid& laid : kept.laid) {
        const Strip* strip = std::get_if<Strip>(&laid);
        if (strip == nullptr) {
            continue;
        }
        const double half = 0.5 * parts.tapes.at(strip->tape).width_mm;
        for (std::size_t i = 1; i < strip->path_mm.size(); ++i) {
            kept_.push_back(
                {strip->path_mm[i - 1], strip->path_mm[i], half + gauge.opposite_mm - gauge.half_mm});
        }
    }
}

double Field::past_edges(Vec2 p) const {
    const double e = gauge_.edge_mm;
    return std::max(0.0, e - p.x) + std::max(0.0, e - p.y) + std::max(0.0, p.x - (size_mm_.x - e)) +
           std::max(0.0, p.y - (size_mm_.y - e));
}

void Field::judge(Link& link, Role role) const {
    judge_tape(link.right, role, role.plus_right, link);
    if (!gauge_.single) {
        judge_tape(link.left, role, !role.plus_right, link);
    }
}

void Field::judge_tape(const Points& tape, Role role, bool plus, Link& link) const {
    for (int i = 0; i < link.count; ++i) {
        link.misfit_mm += past_edges(tape[static_cast<std::size_t>(i)]);
    }
    for (int i = 1; i < link.count; ++i) {
        const Vec2 a = tape[static_cast<std::size_t>(i - 1)];
        const Vec2 b = tape[static_cast<std::size_t>(i)];
        for (const Disc& contact : contacts_) {
            if (role.from_holder && contact.plus == plus) {
                continue;
            }
            link.misfit_mm += std::max(0.0, contact.apart_mm - distance_to_segment(contact.at_mm, a, b));
        }
        Box box;
        box.add(a);
        box.add(b);
        box = box.grown(gauge_.edge_mm);
        const auto keep_off = [&](const Outline& outline) {
            if (!box.touches(outline.box)) {
                return;
            }
            double breach = gauge_.edge_mm - distance_to_outline(a, b, outline.corners);
            if (contains(outline.corners, a)) {
                breach = 2.0 * gauge_.edge_mm;
            }
            link.misfit_mm += std::max(0.0, breach);
        };
        if (!role.from_holder) {
            for (const Outline& outline : holder_body_) {
                keep_off(outline);
            }
        }
        for (const Outline& outline : outlines_) {
            keep_off(outline);
        }
        for (const KeptRun& run : kept_) {
            const double apart = segment_distance(a, b, run.from_mm, run.to_mm);
            if (apart >= run.apart_mm) {
                continue;
            }
            Vec2 at;
            if (std::abs(dot(unit(b - a), unit(run.to_mm - run.from_mm))) < kSquareEnough &&
                segments_meet(a, b, run.from_mm, run.to_mm, &at) &&
                std::min(distance(at, a), distance(at, b)) > kRoundCrossing_mm &&
                std::min(distance(at, run.from_mm), distance(at, run.to_mm)) > kRoundCrossing_mm) {
                link.price_mm += kCrossingPrice_mm;
            } else {
                link.misfit_mm += run.apart_mm - apart;
            }
        }
        for (const FoldLine& crease : creases_) {
            const double apart = segment_distance(a, b, crease.from_mm, crease.to_mm);
            const double least = gauge_.half_mm + kCreaseSpare_mm;
            if (apart >= least) {
                continue;
            }
            const double off_deg = degrees(
                std::asin(std::min(1.0, std::abs(dot(unit(b - a), unit(crease.to_mm - crease.from_mm))))));
            const double ends = std::min(distance_to_segment(a, crease.from_mm, crease.to_mm),
                                         distance_to_segment(b, crease.from_mm, crease.to_mm));
            if (off_deg < tolerance::kSquareCrossing_deg - 5.0 &&
                ends > gauge_.half_mm + kFoldFromCrease_mm) {
                link.price_mm += kCreasePrice_mm;
            } else {
                link.misfit_mm += least - apart + 2.0;
            }
        }
    }
}

double Field::over_places(const Link& link, std::span<const Vec2> places, int a, int b) const {
    const double apart = 2.0 * gauge_.off_mm + gauge_.same_mm;
    const Box box = link.box.grown(apart);
    double sum = 0.0;
    for (int k = 0; k < static_cast<int>(places.size()); ++k) {
        const Vec2 place = places[static_cast<std::size_t>(k)];
        if (k == a || k == b || !box.contains(place)) {
            continue;
        }
        for (int i = 1; i < link.count; ++i) {
            const auto j = static_cast<std::size_t>(i);
            sum += std::max(0.0, apart - distance_to_segment(place, link.middle[j - 1], link.middle[j]));
        }
    }
    return sum;
}

} // namespace lanternleaf::routing_stages
