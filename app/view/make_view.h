// Make view: the Make place as finished sentences and rows, ready to be placed on a screen.
// Exists so that what a maker reads can be tested without a screen; drawing adds no words and no figures of
// its own.
#pragma once

#include "guide/repair.h"
#include "model/update.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

enum class BeadKind { done, regardless, now, stopped, blocked };

struct RailBead {
    int step = 1;
    BeadKind state = BeadKind::blocked;
    std::string full;  ///< "Lay the positive trace"
    std::string upper; ///< the same on two lines
    std::string lower;
    std::string brief; ///< for narrow screens: "+ trace"
};

struct CheckView {
    std::string id;
    CheckKind kind = CheckKind::look;
    std::string title;  ///< "flap to L3+"
    std::string expect; ///< "0.1–0.6 Ω"
    std::string unit;   ///< "Ω", "V", "mm"
    std::string without_meter;
    bool needed = false;
    bool answered = false;
    bool as_expected = false;
    std::string answer; ///< "0.3 Ω, as expected"
    double low = 0.0;
    double high = 0.0;
    double value = 0.0; ///< of the answer, when it is a number
    bool has_value = false;
    bool from_meter = false;
};

struct LightTap {
    std::string led;
    std::string state;    ///< "lit", "dim", "dark"
    std::string expected; ///< what the engine predicts
};

/// A line of the open step's confirm list.
struct ConfirmRow {
    std::string text;
    std::string detail;
    bool done = false;
};

struct MakeView {
    std::string title;
    std::string build; ///< "Build 3"
    std::vector<RailBead> rail;
    std::string step_text; ///< "Step 4 of 7"
    std::string move_text; ///< "Move 3 of 8"
    int pips = 0;
    int pip_now = 0;
    std::string heading;
    std::string sentence;
    std::string why;
    std::vector<std::string> lessons; ///< what earlier builds of the card say of this move
    std::string length_text;          ///< "76 mm"; empty when the move uses no tape
    std::optional<CheckView> check;
    bool adult_only = false;
    std::string back;    ///< "Move 2"; empty at the first move of a step
    std::string primary; ///< "Done: next move"
    const Move* move = nullptr;
    std::vector<ConfirmRow> list; ///< shown in place of the moves; empty: move by move
    int list_now = -1;            ///< the first row that is not confirmed
    bool can_list = false;        ///< the open move belongs to a list
    // proof
    std::vector<CheckView> proof;
    int unanswered = 0;
    std::vector<LightTap> lights;
    // verdict
    std::vector<std::string> to_do;

    struct Pad {
        std::string pad;
        bool reached = false;
    };

    std::vector<Pad> pads;
    std::string pads_text; ///< "Negative pads reached: 6 of 7"
    std::vector<Finding> findings;
    std::optional<Repair> repair;
    std::optional<CloseUp> close_up;
    bool measure_again = false; ///< stopped by a reading alone: it is taken again
};

/// In the words of the build on the table.
[[nodiscard]] MakeView make_view(const AppState& state);
[[nodiscard]] CheckView check_view(const OpenBuild& build, const Check& check);
/// A step's label in two lines, split at the space nearest to its middle.
void split_label(const std::string& label, std::string& upper, std::string& lower);
[[nodiscard]] std::string brief_title(int step, const Words& words = english());

} // namespace lanternleaf
