#include "findings/review.h"

#include "findings/rule_list.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr Rule kRules[] = {
    {"short-circuit", "A shorted cell lights nothing, runs hot and is soon flat.", rule_short_circuit},
    {"led-not-reached", "A pad without a way to the cell stays dark.", rule_led_not_reached},
    {"led-reversed", "An LED lets current through one way only.", rule_led_reversed},
    {"crossing-bare", "Opposite sides that touch short the cell.", rule_crossing_bare},
    {"patch-small", "Tape that slips a little past a patch touches what lies below.", rule_patch_small},
    {"outside-holder", "The press can only close on tape that lies inside the holder.", rule_outside_holder},
    {"joint-open", "Glue that does not conduct leaves a joint open.", rule_joint_open},
    {"joint-short", "A short overlap is the first joint to work loose.", rule_joint_short},
    {"clearance", "Hand-laid tape wanders by a millimetre: sides that nearly touch will touch.",
     rule_clearance},
    {"led-on-fold", "A pad on a fold rocks and loses touch.", rule_led_on_fold},
    {"led-on-joint", "A pad on a joint rocks and loses touch.", rule_led_on_joint},
    {"off-sheet", "What sticks out past the sheet has nothing to stick to.", rule_off_sheet},
    {"over-keepout", "A keep-out is there for a reason the maker gave.", rule_over_keepout},
    {"crease", "Tape creased along its length tears, and a part on a crease is levered off.", rule_crease},
    {"led-overdriven", "Too much current ages an LED fast.", rule_led_overdriven},
    {"cell-overloaded", "A cell that is asked for too much sags and gives less of its charge.",
     rule_cell_overloaded},
    {"dim-led", "Below 1 mA a light is hard to see in a lit room.", rule_dim_led},
    {"uneven-light", "The eye sees one light plainly dimmer than its neighbours.", rule_uneven_light},
    {"cells-stacked", "Each cell adds 3 V and a thickness.", rule_cells_stacked},
    {"foam-low", "Foam lower than the cell leaves the switch pressed.", rule_foam_low},
    {"foam-high", "Foam too high keeps the press from closing the switch.", rule_foam_high},
    {"mail-thick", "Letter rates stop at a thickness.", rule_mail_thick},
    {"cell-in-reach", "A swallowed coin cell can badly injure a child.", rule_cell_in_reach},
};

} // namespace

std::span<const Rule> rules() {
    return kRules;
}

int Review::count(Level level) const {
    return static_cast<int>(std::count_if(findings.begin(), findings.end(),
                                          [&](const Finding& finding) { return finding.level == level; }));
}

Review review(const Card& card, const Parts& parts, const Words& words) {
    Review made;
    made.conductors = find_conductors(card, parts);
    const CellState fresh = fresh_cell(card, parts);
    made.circuit = build_circuit(card, parts, made.conductors, fresh);
    made.solution = solve_operating_point(made.circuit);
    made.lighting = read_lights(card, parts, made.circuit, made.solution);

    // The card left on differs in the cell alone: the same circuit, solved again from where it stands.
    const CellState steady = steady_cell(card, parts);
    if (steady.open_V == fresh.open_V && steady.ohm == fresh.ohm) {
        made.steady_lighting = made.lighting;
    } else {
        Circuit left_on = made.circuit;
        for (CellElement& cell : left_on.cells) {
            cell.open_V = steady.open_V;
            cell.ohm = steady.ohm;
        }
        SolveOptions options;
        options.start_V = made.solution.node_V;
        made.steady_lighting = read_lights(card, parts, left_on, solve_operating_point(left_on, options));
    }

    const ReviewFacts facts{card,          parts,         made.conductors,      made.circuit,
                            made.solution, made.lighting, made.steady_lighting, words};
    for (const Rule& rule : kRules) {
        rule.check(facts, made.findings);
    }
    std::stable_sort(made.findings.begin(), made.findings.end(),
                     [](const Finding& a, const Finding& b) { return a.level < b.level; });
    return made;
}

} // namespace lanternleaf
