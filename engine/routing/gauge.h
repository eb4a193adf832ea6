// Gauge: the measures of a ribbon on one card: how wide its tapes are, how far apart they run, how near
// another may come. Exists so that every stage of routing keeps the same distances.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "words/words.h"

#include <span>
#include <string>

namespace lanternleaf::routing_stages {

struct Gauge {
    std::string tape;
    double half_mm = 2.5;     ///< half the tape's width
    double off_mm = 5.0;      ///< from the ribbon's middle to each tape's middle
    double opposite_mm = 7.7; ///< least distance of middles, opposite sides
    double same_mm = 5.7;     ///< the same side, where the two are not one run
    double edge_mm = 3.7;     ///< from a tape's middle to edges and keep-outs
    double snap_mm = 0.5;     ///< corners lie on this grid
    bool single = false;      ///< one tape only (off_mm is 0)

    /// From the ribbon's middle to its outer edge.
    [[nodiscard]] double reach_mm() const { return off_mm + half_mm; }

    /// Two ribbons whose middles are at least this far apart have nothing to do with each other.
    [[nodiscard]] double apart_mm() const { return 2.0 * off_mm + opposite_mm; }
};

/// For the LEDs `leds` (indices). A problem names the LED whose pads no common spacing fits.
[[nodiscard]] Outcome<Gauge> make_gauge(const Card& card, const Parts& parts, std::span<const int> leds,
                                        const std::string& tape, double clearance_mm, double edge_mm,
                                        const Words& words = english());

/// What a ribbon must know of a package: where its pads lie along the part's own axis.
struct PadSpan {
    Vec2 middle_mm;       ///< between the pads, relative to the part's centre
    double from_mm = 0.0; ///< nearest and farthest edge of a pad from `middle_mm`, along the axis
    double to_mm = 0.0;
    double half_across_mm = 0; ///< half of the pads' size across the axis
};

/// How far the ribbon may pass beside an LED's middle so that three quarters of each pad lie on tape.
[[nodiscard]] double slack_of(const PadSpan& span, const Gauge& gauge);

[[nodiscard]] PadSpan pad_span(const Package& package);

} // namespace lanternleaf::routing_stages
