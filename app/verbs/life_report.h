// Life report: what `life` says, as JSON, as CSV and as a table for people.
// Exists apart from the verb so that each form is one function of the same values.
//
// `life --json` prints one object:
// { "title": "…", "temperature_C": 23, "stored_years": 0, "use": "press",        what the holder is made for
//   "shorted": false, "estimate": false,                                         the cell is scaled from the
//   CR2032 "makers": ["FDK 2010", "Panasonic 2005"], "cell": { "type": "CR2032", "count": 1, "fresh_mA": 8.2,
//   "fresh_V": 2.98, "stored_loss": 0 }, "press": MARKS, "left_on": MARKS, of the first light "press_s": 5,
//   "presses": { "plainly_dim": [low, high], "dark": [low, high] }, "leds": [ { "id": "L1", "colour":
//   "#FFAD59", "fresh_mA": 8.2, "brightness": 1.4, "seen": 1,
//               "neighbour": "L2", "ratio": 0.9, "likeness": "barely different",
//               "dark_from_start": false, "press": MARKS, "left_on": MARKS } ],
//   "phases": [ { "phase": 0, "colours": ["red"], "press": MARKS, "left_on": MARKS, "cell_mA": 12 } ],
//   "reversed": [ { "id": "L1", "volts": 6.1, "max_V": 5, "beyond": true } ],
//   "curves": [ { "maker": "…", "use": "left_on", "hours": [...], "cell_V": [...], "cell_mA": [...],
//                 "seen": { "L1": [...] } } ],
//   "resistors": [ { "leds": ["L1"], "ohm": 100, "before_mA": [...], "after_mA": [...], "text": "…" } ],
//   "helps": [ { "kind": "resistor", "leds": ["L1"], "type": "", "ohm": 47, "before_h": 1, "after_h": 2,
//                "before_ratio": 1, "after_ratio": 1, "fresh_seen": 0.9, "estimate": false, "text": "…" } ],
//   "closing": { "closed_mm": 5.7, "holder_mm": 3.8, "foam_mm": 4.5, "foam_window_mm": [3.8, 5.3], "risk":
//   "none",
//                "letters": [ { "post": "…", "name": "…", "fits": true, "why_not": "", "as_of": "…" } ],
//                "advice": ["…"] } }
// MARKS: { "dimmer": [low, high], "plainly_dim": [low, high], "dark": [low, high], "band": { the same three }
// } in hours of light (life/life.h says what each mark is); the range is over the makers, the band also over
// the least and greatest forward voltage; null: not within the hours looked at. `seen`: 0..1 of the brightest
// light on a fresh cell, as the eye takes it.
//
// `life --csv`: a heading, then one row per maker, use and moment: maker,use,hours,presses,drawn_mAh,cell_V,
// cell_mA, and for each light its mA and seen.
#pragma once

#include "desk/desk.h"
#include "life/closing.h"
#include "life/helps.h"
#include "life/life.h"
#include "life/resistors.h"

#include <string>

namespace lanternleaf {

/// All that the verb has worked out.
struct LifeFacts {
    const Card& card;
    const Parts& parts;
    Life life;
    Use use = Use::press; ///< what the holder is made for
    double shown_h = 0.0; ///< the curves end here
    std::vector<ResistorSuggestion> resistors;
    std::vector<Help> helps;
    Closing closing;
};

[[nodiscard]] std::string life_json(const LifeFacts& facts);
[[nodiscard]] std::string life_csv(const LifeFacts& facts);
[[nodiscard]] std::string life_text(const LifeFacts& facts);

/// The moments a curve of `shown_h` hours is written at: dense at first, where the cell settles.
[[nodiscard]] std::vector<double> curve_hours(double shown_h);

} // namespace lanternleaf
