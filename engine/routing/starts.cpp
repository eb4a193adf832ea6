#include "routing/starts.h"

#include <algorithm>

namespace lanternleaf::routing_stages {

namespace {

/// A tape begins this far behind the middle of its holder contact.
constexpr double kBehindContact_mm = 4.0;
/// Straight on from between the holder's discs before the first bend.
constexpr double kOutOfDiscs_mm = 6.5;
constexpr double kBehindPad_mm = 2.5;
/// A branch's tape begins this far before the tape it is joined to, so that the joint is as long as the tape
/// is wide even where a corner has drifted.
constexpr double kPastJoint_mm = 0.8;
constexpr double kHalfPatch_mm = 7.0;
constexpr double kBranchPrice_mm = 60.0; ///< two joints, a crossing and two cuts, in mm of tape
constexpr double kBranchStep_mm = 6.0;
/// A second pair of tapes on the holder, in mm of tape.
constexpr double kBackPrice_mm = 30.0;
/// What a slanted start is worth avoiding.
constexpr double kSlantPrice_mm = 1.0;
constexpr double kStartSlants_deg[] = {0.0, 15.0, -15.0, 30.0, -30.0};

struct Contacts {
    Vec2 minus_mm;
    Vec2 plus_mm;
};

Contacts contacts_of(const Card& card, const HolderShape& shape) {
    const int plus = terminal_of(card, CellFace::positive);
    return {shape.at_mm[1 - plus], shape.at_mm[plus]};
}

/// The clash with those runs of a link that do not go on along `line`, on which the stub stands.
double clash_off_line(const Link& stub, const Link& link, Vec2 line, const Gauge& gauge) {
    double sum = 0.0;
    for (int i = 1; i < link.count; ++i) {
        const auto k = static_cast<std::size_t>(i);
        if (std::abs(cross(unit(link.middle[k] - link.middle[k - 1]), line)) > 0.02) {
            sum += clash(stub, straight_line(link.middle[k - 1], link.middle[k], gauge), gauge, false, false);
        }
    }
    return sum;
}

} // namespace

std::vector<Start> holder_starts(const Card& card, const Parts& parts, const Gauge& gauge) {
    const HolderShape shape = holder_shape(card, parts);
    const Contacts at = contacts_of(card, shape);
    const Vec2 middle = (at.minus_mm + at.plus_mm) * 0.5;
    const double across_deg = bearing_deg(at.minus_mm, at.plus_mm);
    std::vector<Start> starts;
    for (const bool plus_right : {true, false}) {
        for (const double slant : kStartSlants_deg) {
            if (!shape.flap && slant != 0.0) {
                continue;
            }
            Start start;
            start.plus_right = plus_right;
            double heading = across_deg + (plus_right ? -90.0 : 90.0) + slant;
            heading -= 360.0 * std::floor(heading / 360.0);
            start.pose = make_pose(middle, heading, kOutOfDiscs_mm);
            start.root_mm = middle;
            start.price_mm = kSlantPrice_mm * std::abs(slant) / 15.0;
            if (!shape.flap) {
                // The tapes come together at 45 degrees from the pads, then run side by side.
                const double in_mm = std::max(0.0, 0.5 * distance(at.minus_mm, at.plus_mm) - gauge.off_mm);
                start.pose.at_mm = middle + start.pose.heading * in_mm;
                start.pose.half_mm = gauge.half_mm;
            }
            starts.push_back(start);
        }
    }
    return starts;
}

Roots roots_of(const Card& card, const Parts& parts, const Gauge& gauge, const Start& start,
               const std::vector<Woven>& others) {
    const Vec2 u = start.pose.heading;
    const Vec2 n = quarter_turn(u);
    const Vec2 right = start.pose.at_mm + n * gauge.off_mm;
    const Vec2 left = start.pose.at_mm - n * gauge.off_mm;
    Roots roots;
    if (!start.from_holder) {
        // Which of the main ribbon's tapes faces the branch, and of which side is it?
        const Woven& main = others[static_cast<std::size_t>(start.on_ribbon)];
        const Link& run = main.links[static_cast<std::size_t>(start.on_link)];
        Vec2 along{1, 0};
        double least = 1e300;
        for (int i = 1; i < run.count; ++i) {
            const auto k = static_cast<std::size_t>(i);
            const double d = distance_to_segment(start.root_mm, run.middle[k - 1], run.middle[k]);
            if (d < least) {
                least = d;
                along = unit(run.middle[k] - run.middle[k - 1]);
            }
        }
        const bool faces_right = cross(along, u) > 0.0;
        const bool facing_plus = faces_right == main.start.plus_right;
        for (const bool is_right : {true, false}) {
            const bool plus = is_right == start.plus_right;
            const double side = plus == facing_plus ? 1.0 : -1.0;
            const double at = side * gauge.off_mm - gauge.half_mm - kPastJoint_mm;
            const Vec2 from = start.root_mm + n * (is_right ? gauge.off_mm : -gauge.off_mm) + u * at;
            (is_right ? roots.right : roots.left).push_back(from);
        }
        return roots;
    }
    const HolderShape shape = holder_shape(card, parts);
    const Contacts at = contacts_of(card, shape);
    const Vec2 right_contact = start.plus_right ? at.plus_mm : at.minus_mm;
    const Vec2 left_contact = start.plus_right ? at.minus_mm : at.plus_mm;
    const auto add = [&](std::vector<Vec2>& root, Vec2 contact, Vec2 first) {
        if (shape.flap) {
            root.push_back(first + u * (dot(contact - first, u) - kBehindContact_mm));
        } else {
            root.push_back(contact - unit(first - contact) * kBehindPad_mm);
            root.push_back(first);
        }
    };
    add(roots.right, right_contact, right);
    add(roots.left, left_contact, left);
    return roots;
}

std::vector<Start> branch_starts(const std::vector<Woven>& others, std::size_t on, const WeaveTask& task,
                                 int first_place) {
    const Gauge& gauge = task.field->gauge();
    const Woven& main = others[on];
    const double from_fold = gauge.reach_mm() + gauge.off_mm + gauge.half_mm + 1.0;
    const double side_mm = gauge.off_mm + std::max(gauge.half_mm, kHalfPatch_mm) + 0.5;
    std::vector<Start> starts;
    for (std::size_t k = static_cast<std::size_t>(std::max(first_place, 0)); k + 1 < main.links.size(); ++k) {
        const Link& link = main.links[k];
        for (int i = 1; i < link.count; ++i) {
            const auto p = static_cast<std::size_t>(i);
            const Vec2 a = link.middle[p - 1];
            const Vec2 b = link.middle[p];
            const double run_mm = distance(a, b);
            const auto half_of = [&](std::size_t place) {
                return task.stops[static_cast<std::size_t>(main.places[place].stop)].half_mm;
            };
            const double head = i > 1   ? from_fold
                                : k > 0 ? side_mm + half_of(k - 1)
                                        : (main.start.from_holder ? 22.0 : from_fold);
            const double foot = i + 1 < link.count ? from_fold : side_mm + half_of(k);
            const Vec2 m = unit(b - a);
            for (double at = head; at <= run_mm - foot + 1e-9; at += kBranchStep_mm) {
                for (const double side : {1.0, -1.0}) {
                    Start start;
                    start.from_holder = false;
                    start.root_mm = a + m * at;
                    start.price_mm = kBranchPrice_mm;
                    start.on_ribbon = static_cast<int>(on);
                    start.on_link = static_cast<int>(k);
                    const double clear = gauge.off_mm + gauge.opposite_mm + 0.1;
                    start.pose = make_pose(start.root_mm + quarter_turn(m) * (side * clear),
                                           bearing_deg({}, quarter_turn(m) * side), 0.0);
                    Link stub = straight_line(start.root_mm, start.pose.at_mm, gauge);
                    task.field->judge(stub, {true, true});
                    double trouble = stub.misfit_mm;
                    for (std::size_t other = 0; other < others.size(); ++other) {
                        for (std::size_t l = 0; l < others[other].links.size(); ++l) {
                            trouble += other == on && l + 1 >= k && l <= k + 1
                                           ? clash_off_line(stub, others[other].links[l], m, gauge)
                                           : clash(stub, others[other].links[l], gauge, false, false);
                        }
                    }
                    if (trouble > 0.0) {
                        continue;
                    }
                    for (const bool plus_right : {true, false}) {
                        start.plus_right = plus_right;
                        starts.push_back(start);
                    }
                }
            }
        }
    }
    return starts;
}

std::vector<Start> back_starts(const std::vector<Woven>& others, const WeaveTask& task) {
    std::vector<Start> starts;
    for (const Start& start : task.starts) {
        const bool opposite = std::all_of(others.begin(), others.end(), [&](const Woven& other) {
            return !other.start.from_holder || dot(other.start.pose.heading, start.pose.heading) < -0.95;
        });
        if (!opposite || distance(start.pose.at_mm, start.root_mm) > 0.1) {
            continue;
        }
        Start back = start;
        back.pose.at_mm = start.pose.at_mm + start.pose.heading * (task.field->gauge().same_mm + 0.1);
        back.pose.half_mm = 1.0;
        back.price_mm += kBackPrice_mm;
        starts.push_back(back);
    }
    return starts;
}

} // namespace lanternleaf::routing_stages
