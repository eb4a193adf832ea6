// Times find_conductors on cards of 12, 40 and 100 LEDs, against a named reference: the same job from the
// same paths done with a general polygon library (polyclipping 6.4, Debian's libpolyclipping): outlines by
// its own offsetting with square ends and mitres, the overlaps of strips with strips and of pads with strips,
// and what patches leave bare of them, pairs sorted out by their boxes first. Exits 1 when we are not 5 times
// faster or areas differ by over 0.1 %. Our time is all of find_conductors: folds, holder contacts,
// resistances and nets too, which the reference lacks.
#include "conductors/conductors.h"
#include "support/make_card.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <polyclipping/clipper.hpp>
#include <string>
#include <variant>
#include <vector>

using namespace lanternleaf;

namespace {

constexpr double kLeastRatio = 5.0;
constexpr double kAreaAgreement = 1e-3;
constexpr double kUnitsPerMm = 1e5; // the library counts in whole units

/// Rows of six LEDs on two strips each, every row joined to a minus trunk at its left and a plus trunk that
/// its minus strip crosses on a patch. The strips step aside a little after each LED, as tape laid round
/// pictures does.
Card rows_card(int lights) {
    Card card = make::bare_card();
    const int rows = (lights + 5) / 6;
    const double height_mm = 60.0 + 25.0 * rows;
    card.sheet.width_mm = 220;
    card.sheet.height_mm = height_mm + 20.0;
    card.holder.at_mm = {20, height_mm};
    std::vector<Laid> patches;
    std::vector<Laid> upper;
    card.laid.emplace_back(make::strip("N0", Side::negative, {{20, height_mm}, {20, 20}}));
    for (int row = 0; row < rows; ++row) {
        const std::string name = std::to_string(row + 1);
        const double y = 30.0 + 25.0 * row;
        std::vector<Vec2> minus{{16, y + 10}, {65, y + 10}};
        std::vector<Vec2> plus{{40, y}, {65, y}};
        for (int i = 0; i < 6 && row * 6 + i < lights; ++i) {
            const double x = 70.0 + 24.0 * i;
            const double aside = i % 2 == 0 ? 0.0 : 3.0;
            const double next = 3.0 - aside;
            card.leds.push_back(
                make::led(make::numbered("L", row * 6 + i + 1), "carrier-white", {x, y + 5 + aside}, 270));
            minus.insert(minus.end(), {{x + 8, y + 10 + aside}, {x + 16, y + 10 + next}});
            plus.insert(plus.end(), {{x + 8, y + aside}, {x + 16, y + next}});
        }
        card.laid.emplace_back(make::strip("N" + name, Side::negative, minus));
        patches.emplace_back(make::patch("P" + name, {44, y + 10}, {12, 12}));
        upper.emplace_back(make::strip("S" + name, Side::positive, plus));
    }
    card.laid.insert(card.laid.end(), patches.begin(), patches.end());
    card.laid.emplace_back(make::strip("S0", Side::positive, {{44, height_mm}, {44, 20}}));
    card.laid.insert(card.laid.end(), upper.begin(), upper.end());
    return card;
}

template <class Work>
double median_us(Work work) {
    using Clock = std::chrono::steady_clock;
    std::vector<double> times;
    const auto start = Clock::now();
    while (times.size() < 15 ||
           (Clock::now() - start < std::chrono::milliseconds(400) && times.size() < 2000)) {
        const auto before = Clock::now();
        work();
        times.push_back(std::chrono::duration<double, std::micro>(Clock::now() - before).count());
    }
    std::nth_element(times.begin(), times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2),
                     times.end());
    return times[times.size() / 2];
}

ClipperLib::IntPoint whole(Vec2 p) {
    return {static_cast<ClipperLib::cInt>(std::llround(p.x * kUnitsPerMm)),
            static_cast<ClipperLib::cInt>(std::llround(p.y * kUnitsPerMm))};
}

ClipperLib::Path path_of(const Convex& shape) {
    ClipperLib::Path path;
    for (const Vec2 corner : shape.corners()) {
        path.push_back(whole(corner));
    }
    return path;
}

/// The path swept by its width, with the library's own offsetting.
ClipperLib::Paths outline_of(const Strip& strip, double width_mm) {
    ClipperLib::Path path;
    for (const Vec2 p : strip.path_mm) {
        path.push_back(whole(p));
    }
    ClipperLib::ClipperOffset offset(2.0); // mitres up to a right angle reach 1.41 half widths
    offset.AddPath(path, ClipperLib::jtMiter, ClipperLib::etOpenButt);
    ClipperLib::Paths outline;
    offset.Execute(outline, width_mm / 2.0 * kUnitsPerMm);
    return outline;
}

struct Areas {
    double whole_mm2 = 0.0;
    double bare_mm2 = 0.0;
};

double area_of(const ClipperLib::Paths& paths) {
    double sum = 0.0;
    for (const ClipperLib::Path& path : paths) {
        sum += ClipperLib::Area(path);
    }
    return sum / (kUnitsPerMm * kUnitsPerMm);
}

struct Reference {
    Reference(const Card& card, const Conductors& found) : from(found) {
        for (const StripShape& strip : found.strips) {
            const Strip& laid = std::get<Strip>(card.laid[static_cast<std::size_t>(strip.laid_index)]);
            strips.push_back(outline_of(laid, strip.ribbon.width_mm));
        }
        for (const PatchShape& patch : found.patches) {
            patches.push_back(path_of(patch.outline));
        }
        for (const PadOutline& pad : found.led_pads) {
            pads.push_back({path_of(pad.outline)});
        }
    }

    /// Adds the area that two shapes share, and what the patches between their levels leave of it.
    void add_shared(const ClipperLib::Paths& a, const ClipperLib::Paths& b, const Box& a_box,
                    const Box& b_box, int lower, int upper, Areas& sum) {
        using namespace ClipperLib;
        clipper.Clear();
        clipper.AddPaths(a, ptSubject, true);
        clipper.AddPaths(b, ptClip, true);
        clipper.Execute(ctIntersection, shared, pftNonZero, pftNonZero);
        if (shared.empty()) {
            return;
        }
        sum.whole_mm2 += area_of(shared);
        bool between = false;
        for (std::size_t p = 0; p < patches.size(); ++p) {
            const PatchShape& patch = from.patches[p];
            if (patch.laid_index > lower && patch.laid_index < upper && patch.box.touches(a_box) &&
                patch.box.touches(b_box)) {
                if (!between) {
                    clipper.Clear();
                    clipper.AddPaths(shared, ptSubject, true);
                }
                clipper.AddPath(patches[p], ptClip, true);
                between = true;
            }
        }
        if (between) {
            clipper.Execute(ctDifference, bare, pftNonZero, pftNonZero);
        }
        sum.bare_mm2 += area_of(between ? bare : shared);
    }

    Areas joints() {
        Areas sum;
        for (std::size_t a = 0; a < strips.size(); ++a) {
            const StripShape& lower = from.strips[a];
            for (std::size_t b = a + 1; b < strips.size(); ++b) {
                const StripShape& upper = from.strips[b];
                if (lower.ribbon.box.touches(upper.ribbon.box)) {
                    add_shared(strips[a], strips[b], lower.ribbon.box, upper.ribbon.box, lower.laid_index,
                               upper.laid_index, sum);
                }
            }
        }
        return sum;
    }

    Areas on_pads() {
        Areas sum;
        for (std::size_t p = 0; p < pads.size(); ++p) {
            const Box& box = from.led_pads[p].box;
            for (std::size_t s = 0; s < strips.size(); ++s) {
                const StripShape& strip = from.strips[s];
                if (box.touches(strip.ribbon.box)) {
                    add_shared(strips[s], pads[p], strip.ribbon.box, box, strip.laid_index, 1 << 30, sum);
                }
            }
        }
        return sum;
    }

    const Conductors& from;
    std::vector<ClipperLib::Paths> strips;
    ClipperLib::Paths patches;
    std::vector<ClipperLib::Paths> pads;
    ClipperLib::Clipper clipper;
    ClipperLib::Paths shared;
    ClipperLib::Paths bare;
};

bool agree(double ours, double theirs) {
    return std::abs(ours - theirs) <= kAreaAgreement * std::max(ours, theirs);
}

} // namespace

int main() {
    const Parts parts = make::test_parts();
    bool well = true;
    std::printf("%5s %7s %5s %9s %14s %16s %7s %22s %22s\n", "LEDs", "strips", "runs", "overlaps",
                "conductors us", "polyclipping us", "ratio", "joints mm2 (theirs)", "pads mm2 (theirs)");
    for (const int lights : {12, 40, 100}) {
        const Card card = rows_card(lights);
        const Conductors found = find_conductors(card, parts);
        Areas joints;
        double pads_mm2 = 0.0;
        std::size_t runs = 0;
        for (const Overlap& overlap : found.overlaps) {
            joints.whole_mm2 += overlap.area_mm2;
            joints.bare_mm2 += overlap.bare_mm2;
        }
        for (const Contact& contact : found.contacts) {
            pads_mm2 += contact.b.kind == PieceKind::led_pad ? contact.area_mm2 : 0.0;
        }
        for (const StripShape& strip : found.strips) {
            runs += strip.ribbon.runs.size();
        }
        Reference reference(card, found);
        const Areas their_joints = reference.joints();
        const Areas their_pads = reference.on_pads();
        const double our_us = median_us([&] {
            if (find_conductors(card, parts).nets.size() != 2) {
                well = false; // every light of this card sits on two nets
            }
        });
        double sink = 0.0;
        const double their_us = median_us([&] {
            Reference again(card, found);
            sink += again.joints().bare_mm2 + again.on_pads().bare_mm2;
        });
        const double ratio = their_us / our_us;
        std::printf("%5d %7zu %5zu %9zu %14.1f %16.1f %7.1f %10.2f (%.2f) %10.2f (%.2f)\n", lights,
                    found.strips.size(), runs, found.overlaps.size(), our_us, their_us, ratio,
                    joints.whole_mm2, their_joints.whole_mm2, pads_mm2, their_pads.bare_mm2);
        well = well && sink > 0.0 && ratio >= kLeastRatio &&
               agree(joints.whole_mm2, their_joints.whole_mm2) &&
               agree(joints.bare_mm2, their_joints.bare_mm2) && agree(pads_mm2, their_pads.bare_mm2);
    }
    std::puts(well ? "conductors: at least 5 times the reference, areas agree" : "conductors: MARK MISSED");
    return well ? 0 : 1;
}
