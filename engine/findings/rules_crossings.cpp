// Where two strips lie over each other: a crossing that must be kept apart, or a joint that must conduct.
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
        const Words& words = facts.words;
        const std::string& upper = strip_at(facts, overlap.upper).id;
        const std::string& lower = strip_at(facts, overlap.lower).id;
        found.text = words(overlap.conducts ? "findings.crosses_touch" : "findings.crosses_glue",
                           {{"upper", upper},
                            {"upper_sign", sign_of(strip_at(facts, overlap.upper).side, words)},
                            {"lower", lower},
                            {"lower_sign", sign_of(strip_at(facts, overlap.lower).side, words)},
                            {"area", area_text(overlap.area_mm2, words)}});
        const int misplaced = misplaced_patch(facts, overlap);
        if (misplaced >= 0) {
            const int laid = facts.conductors.patches[static_cast<std::size_t>(misplaced)].laid_index;
            const int lower_at = facts.conductors.strips[static_cast<std::size_t>(overlap.lower)].laid_index;
            const std::string& id = patch_id(facts, misplaced);
            found.parts.push_back(id);
            found.fix = words(laid < lower_at ? "findings.patch_under_both" : "findings.patch_over_both",
                              {{"patch", id}, {"lower", lower}, {"upper", upper}});
        } else {
            found.fix = words("findings.patch_needed",
                              {{"upper", upper}, {"mm", words.mm(tolerance::kPatchSpare_mm)}});
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
        const Words& words = facts.words;
        const std::string strips = words.list({found.parts[0], found.parts[1]});
        std::vector<std::string> patches;
        for (const int patch : overlap.patches) {
            patches.push_back(patch_id(facts, patch));
        }
        found.parts.insert(found.parts.begin(), patches.begin(), patches.end());
        const std::string names = spoken_list(patches, words);
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
            found.text = words("findings.patch_leaves_bare", {{"n", patches.size()},
                                                              {"patches", names},
                                                              {"area", area_text(overlap.bare_mm2, words)},
                                                              {"strips", strips}});
        } else {
            found.text =
                words("findings.patch_scant",
                      {{"n", patches.size()},
                       {"patches", names},
                       {"strips", strips},
                       {"spare", below_mm(spare_of(facts, overlap), tolerance::kPatchSpare_mm, words)},
                       {"mm", words.mm(tolerance::kPatchSpare_mm)}});
        }
        found.fix = words("findings.patch_larger",
                          {{"n", patches.size()}, {"mm", words.mm(tolerance::kPatchSpare_mm)}});
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
        const Words& words = facts.words;
        found.text = words("findings.joint_open", {{"upper", upper},
                                                   {"lower", lower},
                                                   {"area", area_text(overlap.bare_mm2, words)},
                                                   {"tape", strip_at(facts, overlap.upper).tape}});
        found.fix = words("findings.joint_open_fix", {{"upper", upper}});
        out.push_back(std::move(found));
    }
}

void rule_joint_short(const ReviewFacts& facts, Findings& out) {
    // A square-cut end laid fully across gives exactly the tape's width; this much less is rounding.
    constexpr double kRulerRounding_mm = 0.05;
    for (const Overlap& overlap : facts.conductors.overlaps) {
        if (!overlap.conducts || is_crossing(facts, overlap)) {
            continue;
        }
        const double width_mm =
            std::min(tape_of(facts, overlap.lower).width_mm, tape_of(facts, overlap.upper).width_mm);
        const double overlap_mm = overlap.bare_mm2 / width_mm;
        if (overlap_mm >= width_mm - kRulerRounding_mm) {
            continue;
        }
        Finding found = at_overlap(facts, overlap, "joint-short", Level::caution);
        const Words& words = facts.words;
        const Fill upper{"upper", found.parts[1]};
        const Fill lower{"lower", found.parts[0]};
        const Fill width{"width", words.mm(width_mm)};
        found.text = words("findings.joint_short",
                           {upper, lower, {"mm", below_mm(overlap_mm, width_mm, words)}, width});
        found.fix = words("findings.joint_short_fix", {upper, lower, width});
        out.push_back(std::move(found));
    }
}

} // namespace lanternleaf
