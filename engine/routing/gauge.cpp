#include "routing/gauge.h"

#include "base/tolerance.h"

#include <algorithm>

namespace lanternleaf::routing_stages {

namespace {

/// A corner on the grid lies at most this far (grid step x) from where it was meant: half a diagonal. Two
/// tapes can come nearer by twice that.
constexpr double kSnapDrift = 0.7072;
/// How much of a pad's width must rest on tape; the rest may stick out towards the gap.
constexpr double kLeastOfPad = 0.6;
/// How much must where a straight run is gained by passing beside the LED's middle.
constexpr double kGoodPad = 0.75;
constexpr double kMostSlack_mm = 1.2;
/// The gap between the two tapes that is asked for where pads allow it: common practice, from memory.
constexpr double kWishedGap_mm = 3.0;
constexpr double kCoarseSnap_mm = 0.5;
constexpr double kFineSnap_mm = 0.1;

} // namespace

PadSpan pad_span(const Package& package) {
    PadSpan span;
    if (package.pads.size() < 2) {
        return span;
    }
    const PadShape& a = package.pads[0];
    const PadShape& b = package.pads[1];
    span.middle_mm = (a.at_mm + b.at_mm) * 0.5;
    const double apart = std::abs(b.at_mm.x - a.at_mm.x);
    const double size = std::min(a.size_mm.x, b.size_mm.x);
    span.from_mm = std::max(0.0, 0.5 * (apart - size));
    span.to_mm = span.from_mm + size;
    span.half_across_mm = 0.5 * std::max(a.size_mm.y, b.size_mm.y);
    return span;
}

double slack_of(const PadSpan& span, const Gauge& gauge) {
    const double size = span.to_mm - span.from_mm;
    const double inside = span.from_mm - (gauge.off_mm - gauge.half_mm); // play at the pad's inner edge
    const double outside = gauge.off_mm + gauge.half_mm - span.to_mm;    // and at its outer one
    const double play = std::min(inside, outside) + (1.0 - kGoodPad) * size - kSnapDrift * gauge.snap_mm;
    return std::clamp(play, 0.0, kMostSlack_mm);
}

Outcome<Gauge> make_gauge(const Card& card, const Parts& parts, std::span<const int> leds,
                          const std::string& tape, double clearance_mm, double edge_mm, const Words& words) {
    const auto type = parts.tapes.find(tape);
    if (type == parts.tapes.end()) {
        return Problem{"", "", words("routing.no_tape", {{"tape", tape}})};
    }
    const double clearance = std::max(clearance_mm, tolerance::kClearance_mm);
    Gauge gauge;
    gauge.tape = tape;
    gauge.half_mm = 0.5 * type->second.width_mm;
    double low = gauge.half_mm + 0.5 * clearance;
    double high = 1e9;
    double wish = 0.0;
    for (const int led : leds) {
        const Led& placed = card.leds[static_cast<std::size_t>(led)];
        const PadSpan span = pad_span(parts.packages.at(parts.leds.at(placed.type).package));
        const double least = kLeastOfPad * (span.to_mm - span.from_mm);
        const double led_low = span.from_mm + least - gauge.half_mm;
        const double led_high = span.to_mm - least + gauge.half_mm;
        if (std::max(low, led_low) > std::min(high, led_high) + 1e-9) {
            return Problem{"", placed.id,
                           words(led_high < low ? "routing.pads_close" : "routing.pads_far",
                                 {{"led", placed.id}, {"type", placed.type}, {"tape", tape}})};
        }
        low = std::max(low, led_low);
        high = std::min(high, led_high);
        wish += 0.5 * (span.from_mm + span.to_mm) / static_cast<double>(leds.size());
    }
    gauge.off_mm = std::clamp(std::max(wish, gauge.half_mm + 0.5 * kWishedGap_mm), low, high);
    const double gap = 2.0 * (gauge.off_mm - gauge.half_mm);
    gauge.snap_mm = gap - clearance < 2.0 * kSnapDrift * kCoarseSnap_mm ? kFineSnap_mm : kCoarseSnap_mm;
    const double drift = 2.0 * kSnapDrift * gauge.snap_mm;
    if (gap - clearance < drift) { // nothing to spare: as far apart as the pads allow, up to the drift
        gauge.off_mm = std::min(high, low + 0.5 * drift);
    }
    gauge.opposite_mm = 2.0 * gauge.half_mm + clearance + drift;
    gauge.same_mm = 2.0 * gauge.half_mm + drift;
    gauge.edge_mm = gauge.half_mm + std::max(edge_mm, 0.0) + 0.5 * drift;
    return gauge;
}

} // namespace lanternleaf::routing_stages
