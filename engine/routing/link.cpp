#include "routing/link.h"

#include "geometry/polygon.h"

#include <algorithm>

namespace lanternleaf::routing_stages {

namespace {

/// Cosine of the sharpest bend there is, 120 degrees: beyond it the outer tape's corner runs far out.
constexpr double kSharpest = -0.5 - 1e-9;
/// A middle run that leads away from the goal by more than this (cosine) is not looked at.
constexpr double kAway = -0.6;
constexpr double kParallel = 1e-6;
/// Free play between a fold and a pad, for corners that are put on the grid.
constexpr double kFoldPlay_mm = 0.5;

/// tan(turn / 2) from the two directions.
double half_tangent(Vec2 in, Vec2 out) {
    return std::abs(cross(in, out)) / (1.0 + std::max(dot(in, out), -0.99));
}

double odd(double value_deg, double step_deg) {
    const double steps = value_deg / step_deg;
    return std::abs(steps - std::round(steps)) * step_deg > 0.05 ? 1.0 : 0.0;
}

double odd_bend(Vec2 in, Vec2 out) {
    // sine of four times the turn is 0 at multiples of 45 degrees
    const double c = dot(in, out);
    const double s = cross(in, out);
    const double s2 = 2.0 * s * c;
    const double c2 = c * c - s * s;
    return std::abs(2.0 * s2 * c2) > 0.004 ? 1.0 : 0.0;
}

/// What lies between a stop and a bend next to it.
double before_bend(const Pose& pose, Vec2 in, Vec2 out, const Gauge& gauge) {
    return pose.half_mm + gauge.reach_mm() * half_tangent(in, out) + kFoldPlay_mm;
}

class Finder {
public:
    Finder(const Pose& a, const Pose& b, const Gauge& gauge, const Taste& taste, double stretch_mm,
           Ways& ways)
        : a_(a), b_(b), gauge_(gauge), taste_(taste), stretch_mm_(stretch_mm), ways_(ways),
          across_(b.at_mm - a.at_mm), odd_a_(odd(a.heading_deg, 45.0)), odd_b_(odd(b.heading_deg, 45.0)),
          away_(kAway * length(across_)), ends_price_(0.5 * taste.odd_heading_mm * (odd_a_ + odd_b_)) {}

    /// Whether nothing can beat what was found.
    bool few_bends() {
        ways_.count = 0;
        if (dot(a_.heading, b_.heading) > 1.0 - 1e-9 && std::abs(cross(a_.heading, across_)) < 0.02 &&
            dot(a_.heading, across_) >= a_.half_mm + b_.half_mm) {
            Way way;
            way.length_mm = length(across_);
            keep(way);
            return true; // straight on
        }
        one_bend();
        return false;
    }

    void all() {
        if (few_bends()) {
            return;
        }
        for (int eighth = 0; eighth < 8; ++eighth) {
            two_bends(kEighths[eighth]);
        }
        if (odd_a_ > 0.0) {
            side_ways(a_.heading);
        }
        if (odd_b_ > 0.0) {
            side_ways(b_.heading);
        }
    }

private:
    static constexpr double kHalf = 0.70710678118654752;
    static constexpr Vec2 kEighths[8] = {{1, 0},  {kHalf, kHalf},   {0, 1},  {-kHalf, kHalf},
                                         {-1, 0}, {-kHalf, -kHalf}, {0, -1}, {kHalf, -kHalf}};

    void side_ways(Vec2 u) {
        const Vec2 n = quarter_turn(u);
        two_bends(n);
        two_bends(-n);
    }

    void one_bend() {
        const Vec2 u = a_.heading;
        const Vec2 v = b_.heading;
        const double det = cross(u, v);
        if (std::abs(det) < 0.02 || dot(u, v) < kSharpest) {
            return;
        }
        const double s = cross(across_, v) / det;
        const double t = cross(u, across_) / det;
        if (s < before_bend(a_, u, v, gauge_) || t < before_bend(b_, u, v, gauge_)) {
            return;
        }
        Way way;
        way.bend[0] = a_.at_mm + u * s;
        way.bends = 1;
        way.length_mm = s + t;
        way.price_mm = taste_.odd_bend_mm * odd_bend(u, v);
        keep(way);
    }

    void two_bends(Vec2 m) {
        const Vec2 u = a_.heading;
        const Vec2 v = b_.heading;
        const double cos1 = dot(u, m);
        const double cos2 = dot(m, v);
        const double sin1 = cross(u, m);
        const double sin2 = cross(m, v);
        if (dot(m, across_) < away_) {
            return;
        }
        if (cos1 < kSharpest || cos2 < kSharpest || std::abs(sin1) < kParallel ||
            std::abs(sin2) < kParallel) {
            return;
        }
        const double t1 = std::abs(sin1) / (1.0 + cos1);
        const double t2 = std::abs(sin2) / (1.0 + cos2);
        const double least_s = a_.half_mm + gauge_.reach_mm() * t1 + kFoldPlay_mm + stretch_mm_;
        const double least_t = b_.half_mm + gauge_.reach_mm() * t2 + kFoldPlay_mm + stretch_mm_;
        // On neither tape may the two folds overlap.
        const double least_l = gauge_.off_mm * (sin1 * sin2 > 0.0 ? t1 + t2 : std::abs(t1 - t2)) +
                               gauge_.half_mm * (t1 + t2) + kFoldPlay_mm;
        { // the first bend as early as it can be
            const Vec2 rest = across_ - u * least_s;
            offer(least_s, m, cross(rest, v) / sin2, cross(m, rest) / sin2, least_l, least_t);
        }
        { // the last bend as late as it can be
            const Vec2 rest = across_ - v * least_t;
            const double s = cross(rest, m) / sin1;
            if (s >= least_s) {
                offer(s, m, cross(u, rest) / sin1, least_t, least_l, least_t);
            }
        }
    }

    void offer(double s, Vec2 m, double l, double t, double least_l, double least_t) {
        if (l < least_l || t < least_t - 1e-9 || s + l + t > 4000.0 ||
            (ways_.count == Ways::kMost &&
             2.0 * (s + l + t + taste_.bend_mm) > ways_.way[Ways::kMost - 1].price_mm)) {
            return;
        }
        Way way;
        way.bend[0] = a_.at_mm + a_.heading * s;
        way.bend[1] = way.bend[0] + m * l;
        way.bends = 2;
        way.length_mm = s + l + t;
        way.price_mm = taste_.odd_bend_mm * (odd_bend(a_.heading, m) + odd_bend(m, b_.heading));
        keep(way);
    }

    void keep(Way& way) {
        way.price_mm += 2.0 * way.length_mm + taste_.bend_mm * way.bends + ends_price_;
        int at = ways_.count;
        if (at == Ways::kMost) {
            if (ways_.way[Ways::kMost - 1].price_mm <= way.price_mm) {
                return;
            }
            --at;
        } else {
            ++ways_.count;
        }
        for (; at > 0 && ways_.way[static_cast<std::size_t>(at - 1)].price_mm > way.price_mm; --at) {
            ways_.way[static_cast<std::size_t>(at)] = ways_.way[static_cast<std::size_t>(at - 1)];
        }
        ways_.way[static_cast<std::size_t>(at)] = way;
    }

    const Pose& a_;
    const Pose& b_;
    const Gauge& gauge_;
    const Taste& taste_;
    double stretch_mm_;
    Ways& ways_;
    Vec2 across_;
    double odd_a_;
    double odd_b_;
    double away_;
    double ends_price_;
};

double distance2_to(Vec2 p, Vec2 a, Vec2 b) {
    const Vec2 ab = b - a;
    const double size2 = dot(ab, ab);
    const double t = size2 > 0.0 ? std::clamp(dot(p - a, ab) / size2, 0.0, 1.0) : 0.0;
    const Vec2 off = p - (a + ab * t);
    return dot(off, off);
}

/// How much nearer than `least_mm` two tapes come, summed over pairs of runs.
double tape_clash(const std::array<Vec2, Link::kMost>& a, int a_count, const std::array<Vec2, Link::kMost>& b,
                  int b_count, double least_mm) {
    double sum = 0.0;
    for (int i = 1; i < a_count; ++i) {
        const Vec2 p = a[static_cast<std::size_t>(i - 1)];
        const Vec2 q = a[static_cast<std::size_t>(i)];
        const double x0 = std::min(p.x, q.x) - least_mm;
        const double x1 = std::max(p.x, q.x) + least_mm;
        const double y0 = std::min(p.y, q.y) - least_mm;
        const double y1 = std::max(p.y, q.y) + least_mm;
        for (int j = 1; j < b_count; ++j) {
            const Vec2 r = b[static_cast<std::size_t>(j - 1)];
            const Vec2 s = b[static_cast<std::size_t>(j)];
            if (std::max(r.x, s.x) < x0 || std::min(r.x, s.x) > x1 || std::max(r.y, s.y) < y0 ||
                std::min(r.y, s.y) > y1) {
                continue;
            }
            const double apart = segment_distance(p, q, r, s);
            sum += apart < least_mm ? least_mm - apart : 0.0;
        }
    }
    return sum;
}

} // namespace

Pose make_pose(Vec2 at_mm, double heading_deg, double half_mm) {
    return {at_mm, heading_deg, direction(heading_deg), half_mm};
}

void find_ways(const Pose& a, const Pose& b, const Gauge& gauge, const Taste& taste, double stretch_mm,
               Ways& ways) {
    Finder(a, b, gauge, taste, stretch_mm, ways).all();
}

void find_few_bends(const Pose& a, const Pose& b, const Gauge& gauge, const Taste& taste, Ways& ways) {
    Finder(a, b, gauge, taste, 0.0, ways).few_bends();
}

Link link_of(const Pose& a, const Pose& b, const Way& way, const Gauge& gauge) {
    Link link;
    link.add(a.at_mm);
    for (int i = 0; i < way.bends; ++i) {
        link.add(way.bend[static_cast<std::size_t>(i)]);
    }
    link.add(b.at_mm);
    link.length_mm = way.length_mm;
    link.bends = way.bends;
    link.price_mm = way.price_mm;
    link.made = true;
    spread(link, gauge);
    return link;
}

void spread(Link& link, const Gauge& gauge) {
    link.box = {};
    Vec2 in = link.count > 1 ? unit(link.middle[1] - link.middle[0]) : Vec2{1, 0};
    for (int i = 0; i < link.count; ++i) {
        const auto k = static_cast<std::size_t>(i);
        const Vec2 out = i + 1 < link.count ? unit(link.middle[k + 1] - link.middle[k]) : in;
        const Vec2 n_in = quarter_turn(in);
        const Vec2 n_out = quarter_turn(out);
        const Vec2 reach = (n_in + n_out) * (gauge.off_mm / std::max(0.3, 1.0 + dot(n_in, n_out)));
        link.right[k] = link.middle[k] + reach;
        link.left[k] = link.middle[k] - reach;
        link.box.add(link.middle[k]);
        in = out;
    }
}

Link reversed(const Link& link) {
    Link back = link;
    for (int i = 0; i < link.count; ++i) {
        const auto k = static_cast<std::size_t>(i);
        const auto r = static_cast<std::size_t>(link.count - 1 - i);
        back.middle[k] = link.middle[r];
        back.right[k] = link.left[r];
        back.left[k] = link.right[r];
    }
    return back;
}

Link straight_line(Vec2 a, Vec2 b, const Gauge& gauge) {
    Link link;
    link.add(a);
    link.add(b);
    link.length_mm = distance(a, b);
    link.price_mm = 2.0 * link.length_mm;
    spread(link, gauge);
    return link;
}

double clash(const Link& a, const Link& b, const Gauge& gauge, bool neighbours, bool swapped) {
    if (a.count < 2 || b.count < 2 || !a.box.grown(gauge.apart_mm()).touches(b.box)) {
        return 0.0;
    }
    const auto& b_right = swapped ? b.left : b.right;
    const auto& b_left = swapped ? b.right : b.left;
    double sum = tape_clash(a.right, a.count, b_left, b.count, gauge.opposite_mm) +
                 tape_clash(a.left, a.count, b_right, b.count, gauge.opposite_mm);
    if (!neighbours) {
        sum += 0.7 * (tape_clash(a.right, a.count, b_right, b.count, gauge.same_mm) +
                      tape_clash(a.left, a.count, b_left, b.count, gauge.same_mm));
    }
    return sum;
}

double segment_distance(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
    const Vec2 ab = b - a;
    const Vec2 cd = d - c;
    const double det = cross(ab, cd);
    if (std::abs(det) > 1e-12) {
        const double s = cross(c - a, cd) / det;
        const double t = cross(c - a, ab) / det;
        if (s >= 0.0 && s <= 1.0 && t >= 0.0 && t <= 1.0) {
            return 0.0;
        }
    }
    return std::sqrt(std::min(std::min(distance2_to(a, c, d), distance2_to(b, c, d)),
                              std::min(distance2_to(c, a, b), distance2_to(d, a, b))));
}

} // namespace lanternleaf::routing_stages
