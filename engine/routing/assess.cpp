#include "routing/assess.h"

#include <algorithm>
#include <set>

namespace lanternleaf::routing_stages {

namespace {

/// Rules about cells, heights and the holder's lid: nothing that tape can change.
bool is_about_parts(const std::string& rule) {
    static const std::set<std::string> kRules = {"led-overdriven", "cell-overloaded", "cells-stacked",
                                                 "foam-low",       "foam-high",       "mail-thick",
                                                 "cell-in-reach"};
    return kRules.count(rule) != 0;
}

bool is_about_light(const std::string& rule) {
    return rule == "dim-led" || rule == "uneven-light";
}

bool same_place(const Finding& a, const Finding& b) {
    return a.rule == b.rule && a.parts == b.parts;
}

/// The same card on tape without resistance: what is dim there is dim by its parts.
std::vector<Finding> findings_on_perfect_tape(const Card& card, Parts parts) {
    for (auto& [id, tape] : parts.tapes) {
        tape.ohm_per_square = 0.0;
        tape.joint_ohm_mm2 = 0.0;
    }
    return review(card, parts).findings;
}

} // namespace

std::vector<Finding> findings_before(const Card& kept, const Parts& parts) {
    return review(kept, parts).findings;
}

Suggestion assess(LaidCard laid, const Parts& parts, const std::vector<Finding>& before, double bound_mm,
                  const Words& words) {
    Suggestion out;
    const Review found = review(laid.card, parts, words);
    const auto is_new = [&](const std::string& id) {
        return std::find(laid.laid.begin(), laid.laid.end(), id) != laid.laid.end();
    };
    for (const StripShape& strip : found.conductors.strips) {
        if (is_new(id_of(laid.card.laid[static_cast<std::size_t>(strip.laid_index)]))) {
            out.report.length_mm += strip.ribbon.length_mm;
            out.report.folds += static_cast<int>(strip.ribbon.folds_mm.size());
            ++out.report.cuts;
        }
    }
    for (const Overlap& overlap : found.conductors.overlaps) {
        const bool ours = is_new(strip_of(laid.card, found.conductors, overlap.lower).id) ||
                          is_new(strip_of(laid.card, found.conductors, overlap.upper).id);
        out.report.crossings += ours && !overlap.patches.empty() ? 1 : 0;
        out.report.joints += ours && overlap.patches.empty() ? 1 : 0;
    }
    out.report.bound_mm = bound_mm;
    out.report.ratio = bound_mm > 0.0 ? out.report.length_mm / bound_mm : 0.0;
    out.report.turned = std::move(laid.turned);

    std::vector<Finding> perfect;
    bool asked = false;
    for (const Finding& finding : found.findings) {
        if (finding.level == Level::note || is_about_parts(finding.rule)) {
            continue;
        }
        const auto is_this = [&](const Finding& other) { return same_place(other, finding); };
        if (is_about_light(finding.rule)) {
            if (!asked) {
                perfect = findings_on_perfect_tape(laid.card, parts);
                asked = true;
            }
            if (std::any_of(perfect.begin(), perfect.end(), is_this)) {
                continue;
            }
        } else if (finding.rule != "led-not-reached" && finding.rule != "outside-holder" &&
                   std::any_of(before.begin(), before.end(), is_this)) {
            continue;
        }
        out.findings.push_back(finding);
    }
    out.clean = out.findings.empty();
    out.card = std::move(laid.card);
    return out;
}

} // namespace lanternleaf::routing_stages
