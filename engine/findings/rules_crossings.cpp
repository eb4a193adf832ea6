// Where two strips lie over each other: a crossing that must be kept apart, or a joint that must conduct.
#include "base/readout.h"
#include "base/tolerance.h"
#include "findings/rule_tools.h"

#include <algorithm>

namespace lanternleaf {

namespace {

const TapeType& tape_of(const ReviewFacts& facts, int strip) {
    return facts.parts.tapes.find(strip_at(facts, strip).tape)->second;
}

Finding at_overlap(const ReviewFacts& facts, const Overlap& overlap, const char* rule, Level level) {
    return {
        rule, level, overlap.at_mm, {strip_at(facts, overlap.lower).id, strip_at(facts, overlap.upper).id},
        "",   ""};
}

bool is_crossing(const ReviewFacts& facts, const Overlap& overlap) {
    return overlap.area_mm2 > tolerance::kTouch_mm2 &&
           opposite(strip_at(facts, overlap.lower).side, strip_at(facts, overlap.upper).side);
}

std::string with_sign(const ReviewFacts& facts, int strip) {
    return strip_at(facts, strip).id + " (" + sign_of(strip_at(facts, strip).side) + ")";
}

/// How much the overlap can grow before it sticks out, up to the limit; found by halving.
double spare_of(const ReviewFacts& facts, const Overlap& overlap) {
    double low = 0.0;
    double high = tolerance::kPatchSpare_mm;
    for (int step = 0; step < 16; ++step) {
        const double middle = 0.5 * (low + high);
        (left_bare_mm2(facts, overlap, middle) > tolerance::kTouch_mm2 ? high : low) = middle;
    }
    return low;
}

/// A patch that covers the place but lies under both strips or over both; -1 when there is none.
int misplaced_patch(const ReviewFacts& facts, const Overlap& overlap) {
    for (std::size_t i = 0; i < facts.conductors.patches.size(); ++i) {
        if (contains(facts.conductors.patches[i].outline, overlap.at_mm)) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

} // namespace

void rule_crossing_bare(const ReviewFacts& facts, Findings& out) {
    for (const Overlap& overlap : facts.conductors.overlaps) {
        if (!is_crossing(facts, overlap) || !overlap.patches.empty()) {
            continue;
        }
        Finding found = at_overlap(facts, overlap, "crossing-bare", Level::problem);
        const std::string& upper = strip_at(facts, overlap.upper).id;
        found.text = with_sign(facts, overlap.upper) + " crosses " + with_sign(facts, overlap.lower) +
                     " with no patch between: " + readout_mm2(overlap.area_mm2) +
                     (overlap.conducts ? " of metal touch." : " are kept apart by glue alone.");
        const int misplaced = misplaced_patch(facts, overlap);
        if (misplaced >= 0) {
            const int laid = facts.conductors.patches[static_cast<std::size_t>(misplaced)].laid_index;
            const int lower_at = facts.conductors.strips[static_cast<std::size_t>(overlap.lower)].laid_index;
            const std::string& id = patch_id(facts, misplaced);
            found.parts.push_back(id);
            found.fix = id + " lies " + (laid < lower_at ? "under" : "over") + " both: lay it after " +
                        found.parts[0] + " and before " + upper + ".";
        } else {
            found.fix = "Lift " + upper + " there and put a patch under it, with " +
                        readout_mm(tolerance::kPatchSpare_mm) + " or more to spare on every side.";
        }
        out.push_back(std::move(found));
    }
}

void rule_patch_small(const ReviewFacts& facts, Findings& out) {
    for (const Overlap& overlap : facts.conductors.overlaps) {
        if (!is_crossing(facts, overlap) || overlap.patches.empty()) {
            continue;
        }
        const bool bare = overlap.bare_mm2 > tolerance::kTouch_mm2;
        if (!bare && left_bare_mm2(facts, overlap, tolerance::kPatchSpare_mm) <= tolerance::kTouch_mm2) {
            continue;
        }
        Finding found = at_overlap(facts, overlap, "patch-small", bare ? Level::problem : Level::caution);
        const std::string strips = found.parts[0] + " and " + found.parts[1];
        std::vector<std::string> patches;
        for (const int patch : overlap.patches) {
            patches.push_back(patch_id(facts, patch));
        }
        found.parts.insert(found.parts.begin(), patches.begin(), patches.end());
        const std::string names = spoken_list(patches);
        const bool one = patches.size() == 1;
        if (bare) {
            const Convex* widest = nullptr;
            for (const Convex& piece : overlap.bare) {
                if (widest == nullptr || area(piece) > area(*widest)) {
                    widest = &piece;
                }
            }
            if (widest != nullptr) {
                found.at_mm = centroid(*widest);
            }
            found.text = names + (one ? " leaves " : " leave ") + readout_mm2(overlap.bare_mm2) +
                         " of the crossing of " + strips + " bare.";
        } else {
            found.text = names + (one ? " covers" : " cover") + " the crossing of " + strips + " with only " +
                         readout_below_mm(spare_of(facts, overlap), tolerance::kPatchSpare_mm) +
                         " to spare; " + readout_mm(tolerance::kPatchSpare_mm) + " are needed.";
        }
        found.fix = std::string(one ? "Use a larger patch" : "Use one larger patch") +
                    ", centred on the crossing, with " + readout_mm(tolerance::kPatchSpare_mm) +
                    " or more past the tape on every side.";
        out.push_back(std::move(found));
    }
}

void rule_joint_open(const ReviewFacts& facts, Findings& out) {
    for (const Overlap& overlap : facts.conductors.overlaps) {
        if (overlap.conducts || overlap.bare_mm2 <= tolerance::kTouch_mm2 || is_crossing(facts, overlap)) {
            continue;
        }
        Finding found = at_overlap(facts, overlap, "joint-open", Level::problem);
        const std::string& lower = strip_at(facts, overlap.lower).id;
        const std::string& upper = strip_at(facts, overlap.upper).id;
        found.text = upper + " lies on " + lower + " over " + readout_mm2(overlap.bare_mm2) +
                     ", but the glue of its tape (" + strip_at(facts, overlap.upper).tape +
                     ") does not conduct: the joint is open.";
        found.fix = "Turn the end of " + upper + " under, so that foil lies on foil, and rub it flat.";
        out.push_back(std::move(found));
    }
}

void rule_joint_short(const ReviewFacts& facts, Findings& out) {
    // A square-cut end laid fully across gives exactly the tape's width; this much less is rounding.
    constexpr double kRounding_mm = 0.05;
    for (const Overlap& overlap : facts.conductors.overlaps) {
        if (!overlap.conducts || is_crossing(facts, overlap)) {
            continue;
        }
        const double width_mm =
            std::min(tape_of(facts, overlap.lower).width_mm, tape_of(facts, overlap.upper).width_mm);
        const double overlap_mm = overlap.bare_mm2 / width_mm;
        if (overlap_mm >= width_mm - kRounding_mm) {
            continue;
        }
        Finding found = at_overlap(facts, overlap, "joint-short", Level::caution);
        found.text = found.parts[1] + " overlaps " + found.parts[0] + " by only " +
                     readout_below_mm(overlap_mm, width_mm) + "; the tape is " + readout_mm(width_mm) +
                     " wide.";
        found.fix = "Let " + found.parts[1] + " run at least " + readout_mm(width_mm) + " onto " +
                    found.parts[0] + ", and rub the joint flat.";
        out.push_back(std::move(found));
    }
}

} // namespace lanternleaf
