// What might cure a finding, rule by rule, untried. Private to this module; fixes.cpp tries the ideas.
#pragma once

#include "drawing/fixes.h"

namespace lanternleaf::ideas {

struct Case {
    const Card& card;
    const Parts& parts;
    const Review& now;
    const Finding& finding;
    const Words& words;
};

using Ideas = std::vector<Fix>;

// fix_ideas_tape.cpp
void patch_crossing(const Case& on, Ideas& out);
void lengthen_joint(const Case& on, Ideas& out);
void turn_end_under(const Case& on, Ideas& out);
void widen_gap(const Case& on, Ideas& out);
void start_in_holder(const Case& on, Ideas& out);
void reach_gap(const Case& on, Ideas& out);

// fix_ideas_parts.cpp
void turn_led(const Case& on, Ideas& out);
void slide_along_tape(const Case& on, Ideas& out);
void move_in(const Case& on, Ideas& out);
void move_off(const Case& on, Ideas& out);
void set_foam_height(const Case& on, Ideas& out);
void one_cell(const Case& on, Ideas& out);

} // namespace lanternleaf::ideas
