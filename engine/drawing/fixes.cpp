#include "drawing/fixes.h"

#include "drawing/fix_ideas.h"

#include <algorithm>

namespace lanternleaf {

namespace {

struct Row {
    const char* rule;
    void (*ideas)(const ideas::Case& on, ideas::Ideas& out);
};

constexpr Row kRows[] = {
    {"crossing-bare", ideas::patch_crossing}, {"patch-small", ideas::patch_crossing},
    {"short-circuit", ideas::patch_crossing}, {"led-reversed", ideas::turn_led},
    {"led-on-fold", ideas::slide_along_tape}, {"led-on-joint", ideas::slide_along_tape},
    {"joint-short", ideas::lengthen_joint},   {"joint-open", ideas::turn_end_under},
    {"clearance", ideas::widen_gap},          {"outside-holder", ideas::start_in_holder},
    {"led-not-reached", ideas::reach_gap},    {"off-sheet", ideas::move_in},
    {"over-keepout", ideas::move_off},        {"crease", ideas::move_off},
    {"foam-low", ideas::set_foam_height},     {"foam-high", ideas::set_foam_height},
    {"cells-stacked", ideas::one_cell},
};

constexpr std::size_t kMostOffered = 2;

bool cures(const Review& before, const Review& after, const Finding& finding) {
    const auto same = [&](const Finding& each) { return same_finding(each, finding); };
    if (std::any_of(after.findings.begin(), after.findings.end(), same)) {
        return false;
    }
    const int problems = after.count(Level::problem) - before.count(Level::problem);
    const int cautions = after.count(Level::caution) - before.count(Level::caution);
    // Curing a problem may uncover cautions that it hid (a card without a short has a brightness); curing a
    // caution may cost nothing.
    return finding.level == Level::problem ? problems < 0 : problems <= 0 && problems + cautions < 0;
}

} // namespace

bool same_finding(const Finding& a, const Finding& b) {
    constexpr double kSameSpot_mm = 3.0;
    if (a.rule != b.rule || a.parts.empty() != b.parts.empty()) {
        return false;
    }
    if (a.rule == "crossing-bare" || a.rule == "patch-small" || a.rule == "joint-short" ||
        a.rule == "joint-open") {
        return a.parts == b.parts && distance(a.at_mm, b.at_mm) < kSameSpot_mm; // two strips may meet twice
    }
    if (a.rule == "led-not-reached") {
        return !a.parts.empty() && a.parts.front() == b.parts.front();
    }
    if (a.rule == "led-on-fold" || a.rule == "led-on-joint") {
        return a.parts.front() == b.parts.front(); // the pad: on which strip's fold it lies may change
    }
    return a.parts == b.parts;
}

std::vector<Fix> fixes_for(const Card& card, const Parts& parts, const Review& now, const Finding& finding,
                           const Words& words) {
    ideas::Ideas untried;
    for (const Row& row : kRows) {
        if (finding.rule == row.rule) {
            row.ideas({card, parts, now, finding, words}, untried);
        }
    }
    std::vector<Fix> out;
    int tries = 0;
    for (Fix& fix : untried) {
        if (out.size() == kMostOffered || ++tries > kMostTries) {
            break;
        }
        const auto same_words = [&](const Fix& each) { return each.label == fix.label; };
        if (std::any_of(out.begin(), out.end(), same_words)) {
            continue; // a gentler one of that name is offered already
        }
        const Outcome<Card> cured = apply_edit(card, parts, fix.edit);
        if (cured && cures(now, review(cured.value(), parts), finding)) {
            out.push_back(std::move(fix));
        }
    }
    return out;
}

std::vector<Fix> fixes_for(const Card& card, const Parts& parts, const Finding& finding, const Words& words) {
    return fixes_for(card, parts, review(card, parts, words), finding, words);
}

} // namespace lanternleaf
