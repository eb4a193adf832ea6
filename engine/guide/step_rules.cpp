#include "guide/step_rules.h"

#include "findings/review.h"

#include <algorithm>
#include <set>
#include <string_view>

namespace lanternleaf {

namespace {

// Which steps a rule is asked in, and whether it must name something that was put on the table in that step
// (a strip off the sheet is told when it is laid, not again at every later step).
struct StepRule {
    std::string_view rule;
    std::initializer_list<int> steps;
    bool own_parts;
};

const StepRule kStepRules[] = {
    {"cell-in-reach", {1}, false},
    {"off-sheet", {1, 2, 3, 4, 5, 6}, true},
    {"over-keepout", {1, 2, 3, 4, 5, 6}, true},
    {"crease", {1, 2, 3, 4, 5, 6}, true},
    {"joint-open", {3, 4, 5}, true},
    {"joint-short", {3, 4, 5}, true},
    {"outside-holder", {4, 5}, false},
    {"short-circuit", {4, 5, 6}, false},
    {"crossing-bare", {4, 5}, false},
    {"clearance", {4, 5}, true},
    {"patch-small", {5}, false},
    {"led-not-reached", {6}, false},
    {"led-reversed", {6}, false},
    {"led-on-fold", {6}, false},
    {"led-on-joint", {6}, false},
    {"led-overdriven", {6}, false},
    {"cell-overloaded", {6}, false},
    {"dim-led", {6}, false},
    {"uneven-light", {6}, false},
    {"cells-stacked", {6}, false},
    {"foam-low", {7}, false},
    {"foam-high", {7}, false},
    {"mail-thick", {7}, false},
};

const StepRule* rule_in(const std::string& rule, StepId step) {
    for (const StepRule& entry : kStepRules) {
        if (entry.rule == rule) {
            const bool asked = std::find(entry.steps.begin(), entry.steps.end(), static_cast<int>(step)) !=
                               entry.steps.end();
            return asked ? &entry : nullptr;
        }
    }
    return nullptr;
}

// Ids of what a step puts on the table.
std::set<std::string> parts_of(const GuideFacts& facts, StepId step) {
    std::set<std::string> ids;
    if (step == StepId::mount_holder) {
        ids.insert("holder");
    }
    if (step == StepId::mark_pads || step == StepId::place_leds) {
        for (const Led& led : facts.card.leds) {
            ids.insert(led.id);
        }
        for (const ResistorPart& resistor : facts.card.resistors) {
            ids.insert(resistor.id);
        }
    }
    for (const Laid& item : facts.card.laid) {
        const Strip* strip = std::get_if<Strip>(&item);
        if (strip == nullptr ? step == StepId::insulate : step_of(strip->side) == step) {
            ids.insert(id_of(item));
        }
    }
    if (step == StepId::insulate) {
        for (const Tail& tail : facts.waits) {
            ids.insert(id_of(facts.card.laid[static_cast<std::size_t>(tail.laid_index)]));
        }
    }
    return ids;
}

// "L3-", "R1.2" -> "L3", "R1".
std::string part_of(const std::string& name) {
    if (!name.empty() && (name.back() == '-' || name.back() == '+')) {
        return name.substr(0, name.size() - 1);
    }
    const std::size_t dot = name.rfind('.');
    return dot == std::string::npos ? name : name.substr(0, dot);
}

bool names_own(const Finding& finding, const std::set<std::string>& own) {
    return finding.parts.empty() ||
           std::any_of(finding.parts.begin(), finding.parts.end(), [&](const std::string& name) {
               return own.count(name) != 0 || own.count(part_of(name)) != 0;
           });
}

// A positive strip that waits whole for a crossing is not in the holder yet, and need not be.
bool positive_waits_whole(const GuideFacts& facts) {
    return std::any_of(facts.waits.begin(), facts.waits.end(), [&](const Tail& tail) {
        const Strip* strip = std::get_if<Strip>(&facts.card.laid[static_cast<std::size_t>(tail.laid_index)]);
        return strip != nullptr && strip->side == Side::positive && tail.stop_mm <= 0.0;
    });
}

Card table_of(const GuideFacts& facts, const Card& as_built, StepId step) {
    if (step >= StepId::place_leds) {
        return card_after(as_built, facts.waits, step);
    }
    Card table = card_after(facts.card, facts.waits, step);
    if (step == StepId::mark_pads) {
        table.leds = facts.card.leds;
        table.resistors = facts.card.resistors;
    }
    return table;
}

} // namespace

std::vector<Finding> findings_of_step(const GuideFacts& facts, const Card& as_built, StepId step) {
    const std::set<std::string> own = parts_of(facts, step);
    std::vector<Finding> kept;
    for (Finding& finding : review(table_of(facts, as_built, step), facts.parts, facts.words).findings) {
        const StepRule* rule = rule_in(finding.rule, step);
        if (step == StepId::lay_positive && finding.rule == "outside-holder" && positive_waits_whole(facts)) {
            continue;
        }
        if (rule != nullptr && (!rule->own_parts || names_own(finding, own))) {
            kept.push_back(std::move(finding));
        }
    }
    return kept;
}

} // namespace lanternleaf
