#include "guide/gaps.h"

#include "guide/phrases.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// A bridge is at least this long, and lies on each side of the gap by at least kOnEach_mm (common practice: a
// lap as long as the tape is wide, 5 mm, and easy to hold).
constexpr double kBridge_mm = 15.0;
constexpr double kOnEach_mm = 5.0;
// A wider gap is not bridged by a scrap: there a strip is missing or lies elsewhere.
constexpr double kWide_mm = 30.0;
constexpr double kDiscCorners = 24.0;

struct Miss {
    double mm = 1e300;
    std::string near; ///< what is fed: a strip's id, or "holder"
    std::string far;  ///< what is not
    std::string near_text;
    Vec2 at_mm;
};

Nearest between(const Ribbon& a, const Ribbon& b) {
    Nearest best;
    for (const Run& one : a.runs) {
        for (const Run& other : b.runs) {
            const Nearest here = nearest(one.outline, other.outline);
            if (here.mm < best.mm) {
                best = here;
            }
        }
    }
    return best;
}

Nearest between(const Ribbon& a, const Convex& b) {
    Nearest best;
    for (const Run& one : a.runs) {
        const Nearest here = nearest(one.outline, b);
        if (here.mm < best.mm) {
            best = here;
        }
    }
    return best;
}

Convex contact_outline(const GuideFacts& facts, int terminal) {
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    if (!shape.flap) {
        return shape.pad[terminal];
    }
    Convex disc;
    for (double i = 0.0; i < kDiscCorners; i += 1.0) {
        disc.add(shape.disc_at_mm[terminal] +
                 direction(360.0 * i / kDiscCorners) * shape.disc_radius_mm[terminal]);
    }
    return disc;
}

std::string contact_text(const GuideFacts& facts, int terminal) {
    if (has_flap(facts)) {
        return facts.words(terminal == 0 ? "findings.bed" : "findings.flap_inside");
    }
    return facts.words(terminal == 0 ? "findings.holder_minus" : "findings.holder_plus");
}

void keep_least(Miss& best, const Nearest& here, const std::string& near, const std::string& near_text,
                const std::string& far) {
    if (here.mm < best.mm) {
        best = {here.mm, near, far, near_text, (here.on_a + here.on_b) * 0.5};
    }
}

// From the strips under an unreached pad to what is fed on its trace.
Miss miss_of_tape(const GuideFacts& facts, const Stage& stage, const PadRef& pad, int net) {
    const Conductors& made = stage.conductors;
    const std::vector<int>* feed = nullptr;
    if (pad.want != Side::link) {
        feed = &stage.feed[pad.want == Side::negative ? 0 : 1];
    }
    Miss best;
    for (std::size_t far = 0; far < made.strips.size(); ++far) {
        if (made.net_of_strip[far] != net) {
            continue;
        }
        const std::string& far_id = strip_of(stage.card, made, static_cast<int>(far)).id;
        for (std::size_t near = 0; near < made.strips.size(); ++near) {
            const Strip& strip = strip_of(stage.card, made, static_cast<int>(near));
            const int near_net = made.net_of_strip[near];
            const bool fed = feed == nullptr ? strip.side == Side::link
                                             : (*feed)[static_cast<std::size_t>(near_net)] != kNotFed;
            if (near_net != net && strip.side == pad.want && fed) {
                keep_least(best, between(made.strips[near].ribbon, made.strips[far].ribbon), strip.id,
                           strip.id, far_id);
            }
        }
        if (feed != nullptr) {
            const int terminal = contact_of(facts, pad.want);
            keep_least(best, between(made.strips[far].ribbon, contact_outline(facts, terminal)), "holder",
                       contact_text(facts, terminal), far_id);
        }
    }
    return best;
}

// From a pad that lies on no tape of its trace to the nearest such tape.
Miss miss_of_pad(const GuideFacts& facts, const Stage& stage, const PadRef& pad) {
    const auto& outlines =
        pad.piece.kind == PieceKind::led_pad ? facts.conductors.led_pads : facts.conductors.resistor_pads;
    const auto outline = std::find_if(outlines.begin(), outlines.end(),
                                      [&](const PadOutline& one) { return one.piece == pad.piece; });
    Miss best;
    if (outline == outlines.end()) {
        return best;
    }
    for (std::size_t i = 0; i < stage.conductors.strips.size(); ++i) {
        const Strip& strip = strip_of(stage.card, stage.conductors, static_cast<int>(i));
        if (strip.side == pad.want) {
            keep_least(best, between(stage.conductors.strips[i].ribbon, outline->outline), strip.id, strip.id,
                       pad.name);
        }
    }
    return best;
}

void word_gap(Gap& gap, const Miss& miss, const Words& words) {
    const std::string far = shown(miss.far);
    if (miss.mm > 1e299) {
        gap.finding.text = words("step.gap_no_strip");
        gap.finding.fix = words("step.gap_no_strip_fix");
    } else if (gap.lies_over) {
        gap.finding.text = words("step.gap_open", {{"far", far}, {"near", miss.near_text}});
        gap.finding.fix = words("step.gap_open_fix");
    } else {
        const bool fine = miss.mm < 0.1 && words.unit() == LengthUnit::mm;
        gap.finding.text =
            words("step.gap", {{"far", far},
                               {"near", miss.near_text},
                               {"mm", fine ? words.number(miss.mm, 2) + " mm" : words.mm(miss.mm)}});
        gap.finding.fix = words("step.gap_fix");
    }
}

} // namespace

std::vector<Gap> find_gaps(const GuideFacts& facts, const Stage& stage, const std::vector<PadState>& states) {
    std::vector<Gap> gaps;
    for (const PadState& state : states) {
        if (state.reached) {
            continue;
        }
        const PadRef& pad = *state.pad;
        const int net = net_under(facts, stage, pad);
        const Miss miss = net < 0 ? miss_of_pad(facts, stage, pad) : miss_of_tape(facts, stage, pad, net);
        const auto same = std::find_if(gaps.begin(), gaps.end(), [&](const Gap& gap) {
            return miss.mm < 1e299 && gap.finding.parts[0] == miss.near && gap.finding.parts[1] == miss.far;
        });
        if (same != gaps.end()) {
            same->finding.parts.push_back(pad.name);
            continue;
        }
        Gap gap;
        gap.mm = miss.mm > 1e299 ? 0.0 : miss.mm;
        gap.lies_over = miss.mm <= 0.0;
        gap.finding.rule = "led-not-reached";
        gap.finding.level = Level::problem;
        gap.finding.at_mm = miss.mm > 1e299 ? pad.at_mm : miss.at_mm;
        gap.finding.parts = {miss.near, miss.far};
        if (miss.far != pad.name) {
            gap.finding.parts.push_back(pad.name);
        }
        std::erase(gap.finding.parts, std::string());
        if (gap.finding.parts.size() < 2) {
            gap.finding.parts.resize(2, pad.name);
        }
        word_gap(gap, miss, facts.words);
        gaps.push_back(std::move(gap));
    }
    return gaps;
}

std::vector<std::string> mend_gap(const Gap& gap, const Words& words) {
    const std::string& near = gap.finding.parts[0];
    const std::string far = shown(gap.finding.parts[1]);
    if (gap.lies_over || gap.mm <= 0.0) {
        return {gap.finding.fix, words("step.gap_check_again")};
    }
    if (gap.mm > kWide_mm) {
        return {near == "holder" ? words("step.gap_lay_holder", {{"far", far}})
                                 : words("step.gap_lay", {{"near", near}, {"far", far}}),
                words("step.gap_rub")};
    }
    const double mm = std::max(kBridge_mm, std::ceil(gap.mm + 2.0 * kOnEach_mm));
    return {words("step.gap_cut", {{"mm", words.mm(mm)}}),
            words("step.gap_lay_over", {{"mm", words.mm(kOnEach_mm)}}), words("step.gap_rub")};
}

} // namespace lanternleaf
