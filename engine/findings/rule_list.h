// The rules of the card, one function each; review.cpp holds their table. Private to this module.
// Exists so that each theme can live in a file of its own. A rule appends what it finds and looks at nothing
// but the facts; it must not assume that another rule has run.
#pragma once

#include "findings/review.h"

namespace lanternleaf {

using Findings = std::vector<Finding>;

// rules_reach.cpp: does the cell's current have a way, and the right one?
void rule_short_circuit(const ReviewFacts& facts, Findings& out);
void rule_led_not_reached(const ReviewFacts& facts, Findings& out);
void rule_led_reversed(const ReviewFacts& facts, Findings& out);

// rules_crossings.cpp: where two strips lie over each other.
void rule_crossing_bare(const ReviewFacts& facts, Findings& out);
void rule_patch_small(const ReviewFacts& facts, Findings& out);
void rule_joint_open(const ReviewFacts& facts, Findings& out);
void rule_joint_short(const ReviewFacts& facts, Findings& out);

// rules_holder.cpp: the holder and its cell.
void rule_outside_holder(const ReviewFacts& facts, Findings& out);
void rule_cells_stacked(const ReviewFacts& facts, Findings& out);
void rule_cell_in_reach(const ReviewFacts& facts, Findings& out);

// rules_clearance.cpp: opposite sides that nearly touch.
void rule_clearance(const ReviewFacts& facts, Findings& out);

// rules_leds.cpp: what lies under a pad.
void rule_led_on_fold(const ReviewFacts& facts, Findings& out);
void rule_led_on_joint(const ReviewFacts& facts, Findings& out);

// rules_sheet.cpp: the sheet, its cut-outs and its creases.
void rule_off_sheet(const ReviewFacts& facts, Findings& out);
void rule_over_keepout(const ReviewFacts& facts, Findings& out);
void rule_crease(const ReviewFacts& facts, Findings& out);

// rules_power.cpp: currents and brightness.
void rule_led_overdriven(const ReviewFacts& facts, Findings& out);
void rule_cell_overloaded(const ReviewFacts& facts, Findings& out);
void rule_dim_led(const ReviewFacts& facts, Findings& out);
void rule_uneven_light(const ReviewFacts& facts, Findings& out);

// rules_foam.cpp: heights.
void rule_foam_low(const ReviewFacts& facts, Findings& out);
void rule_foam_high(const ReviewFacts& facts, Findings& out);
void rule_mail_thick(const ReviewFacts& facts, Findings& out);

} // namespace lanternleaf
