// Mend view: the search for a fault as finished words and rows: what was seen, the likely causes with their
// letters, the next test with its answers, and how a cause is mended.
// Exists so that the screen places and a test reads; nothing here is worked out again while drawing.
#pragma once

#include "model/mend_state.h"
#include "view/mend_fix_view.h"
#include "view/mend_meter_view.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

struct MendCauseRow {
    std::string letter; ///< "A", also on the card
    std::string title;
    std::string percent; ///< "71%", "<1%"
    double share = 0.0;
    std::string sentence;                   ///< why it may be
    std::vector<std::string> fix;           ///< one action each
    std::string parts;                      ///< "N1 and N2"; empty for the card as a whole
    bool none_fits = false;                 ///< nothing to mend: none of these fits
    std::optional<Vec2> at_mm;              ///< where, for a close-up
    std::vector<Vec2> bridge_mm;            ///< tape to lay there
    std::optional<MovePictureSpec> picture; ///< what the hands do
};

/// A place that letters point at; two causes at one place share it.
struct MendSuspect {
    Vec2 at_mm;
    std::string letters; ///< "A", "BC"
    bool first = false;  ///< the likeliest is among them
};

/// How an answer shows, besides its words.
enum class AnswerSign { plain, came_on, stays_dark };

struct MendAnswerRow {
    int outcome = 0;
    std::string label;
    AnswerSign sign = AnswerSign::plain;
};

struct MendTestView {
    std::string title;
    std::string seconds; ///< "about 20 seconds"
    std::string sentence;
    std::string tells;                  ///< "This test tells A from the rest."
    std::vector<MendAnswerRow> answers; ///< what changed first, "no change" last
    std::optional<Vec2> at_mm;          ///< worth a picture
    std::string letter;                 ///< of the cause at that place, may be empty
    std::optional<MendMeterView> meter; ///< the answer is a figure: no rows
};

struct MendView {
    std::string heading;
    std::string sentence;
    std::string lit; ///< "4 lights"
    std::string dim;
    std::string dark;
    bool any_light = false;
    std::string explanation; ///< what the lights say already
    std::string after;       ///< "after 7 answers"
    std::vector<MendCauseRow> causes;
    std::vector<MendSuspect> suspects;
    std::optional<MendTestView> test;
    bool can_take_back = false;
    bool ask_lights = false; ///< nothing is known of any light yet: they come first
    std::string rest_dark;   ///< "All are dark", "The rest are dark"; empty when all are tapped
    std::string rest_lit;
    std::optional<bool> pressing;       ///< what was said of pressing
    std::vector<std::string> none_fits; ///< what to do when no cause fits, one action each
    std::string own_records;            ///< "The order follows 3 cards mended here."; may be empty
};

[[nodiscard]] MendView make_mend_view(const MendState& mend, const Words& words = english());

/// "71%"; under one per cent "<1%", above 99 ">99%": no cause is ever certain.
[[nodiscard]] std::string percent_text(double probability);

} // namespace lanternleaf
