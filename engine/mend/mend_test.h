// Mend test: one thing to try or to look at, with its possible answers and what each fault would answer.
// Exists so that every way of finding out (a finger on a joint, a scrap of foil, a meter) is weighed alike:
// by what it is expected to tell for the seconds it takes.
#pragma once

#include "geometry/vec2.h"

#include <cstdint>
#include <string>
#include <vector>

namespace lanternleaf {

struct MendModel;

/// What the maker must have for a test.
enum class TestNeeds { hands, foil, known_cell, known_led, meter };

enum class TestKind {
    warm,         ///< is the cell warm?
    look_cell,    ///< way up, type, tab, there at all
    press_all,    ///< here and there
    look_led,     ///< do its marks stand the right way, is it the right one?
    look_along,   ///< follow one strip
    look_close,   ///< where + and - come close
    press_pads,   ///< both pads of one LED
    press_along,  ///< each joint of one strip
    press_holder, ///< cell, flap and tape ends, one after the other
    foil_along,   ///< foil over each joint and stretch of one strip
    foil_holder,  ///< foil from the cell to the tape in the flap, then to the tape on the bed
    feed_holder,  ///< a known-good cell held to the tapes beside the holder
    swap_cell,
    touch_led,    ///< a known-good cell across one LED's pads, both ways
    feed_led,     ///< a known-good cell held to the tapes beside one LED
    lift_led,     ///< one LED lifted off: do the others wake?
    lift_bridge,  ///< a crossing lifted
    see_light,    ///< look once more at one light
    see_hidden,   ///< from the side, in a dark room
    try_open,     ///< opened, the flap pressed by hand
    slip_paper,   ///< paper between the closed faces
    dark_glow,    ///< closed and unpressed in a dark room
    liner,        ///< lift the ends of the strips
    probe_holder, ///< a known-good LED held to the tapes beside the holder, pressed
    probe_led,    ///< the same to the tapes beside one LED
    meter_apart,  ///< ohm between the traces, cell out
    meter_reach,  ///< ohm from bed or flap to a pad's tape
    meter_joint,  ///< ohm across a joint
    meter_volts,  ///< volts at the tapes beside an LED, pressed
    meter_holder, ///< volts at the holder's tapes, pressed
    meter_cell,   ///< volts of the bare cell
};

/// What an answer says of the light that it is about, for its sign on the screen.
enum class AnswerShows { other, came_on, stays_dark };

/// What a fault would answer: `outcome` with chance `sure`, else outcome 0 ("nothing to see"). Before the
/// maker's own slips, which the session adds.
struct Prediction {
    std::uint8_t outcome = 0;
    std::uint8_t sure_255 = 255;
};

struct MendTest {
    std::string id; ///< stable for a card: "press-pads/L3", "look-along/N1"
    TestKind kind = TestKind::warm;
    TestNeeds needs = TestNeeds::hands;
    double effort_s = 0.0;             ///< to get ready and do it once
    double per_place_s = 0.0;          ///< and for every place of it
    std::string title;                 ///< "Press both pads of L3"
    std::string sentence;              ///< what to do, one action a sentence
    std::vector<std::string> outcomes; ///< what may be answered; 0 is always "nothing to see"
    std::vector<AnswerShows> shows;    ///< one per outcome
    std::vector<Vec2> at_mm; ///< where, one per outcome from 1 on when it is a place; else the place
    std::vector<std::string> parts;
    /// The outcomes worth offering, as indices: all, or for a test of many places those that still matter.
    std::vector<int> offered;
    // What it is about, for the predictions.
    int led = -1;
    std::vector<int> places; ///< outcome k + 1 is places[k]
    int from_node = -1;      ///< meter
    int to_node = -1;
};

/// Whether the meter reads volts in it, ohms, or it is not for a meter.
[[nodiscard]] bool reads_volts(TestKind kind);
[[nodiscard]] bool reads_ohms(TestKind kind);

/// The tests that make sense on a card, in the usual order of asking: least effort and most told first
/// (common practice).
void find_tests(MendModel& model);
/// Fills model.predictions.
void predict_tests(MendModel& model);

/// Reading classes, the outcomes of meter tests.
enum class OhmClass { fine = 0, high = 1, none = 2 }; ///< as planned, much more, no path
enum class VoltClass { fine = 0, low = 1, none = 2, reversed = 3 };

/// A measured resistance against the figure expected: `fine` within what joints and leads spread.
[[nodiscard]] OhmClass class_of_ohm(double ohm, double expected_ohm);
[[nodiscard]] VoltClass class_of_volts(double volts, double expected_V);

} // namespace lanternleaf
