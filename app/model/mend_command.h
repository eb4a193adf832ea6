// Mend commands: everything a person can mean in the Mend place.
#pragma once

#include "mend/session.h"

#include <string>
#include <variant>

namespace lanternleaf::mend {

/// The answer to "Is anything warm?", asked before all else with the cell out.
struct WarmAnswer {
    bool warm = false;
};

/// The cell is in again, an adult having put it there.
struct CellIn {};

/// lit, dim, dark, flickers, and round again.
struct TapLight {
    std::string led;
};

/// All lights not tapped yet look like this.
struct TapRest {
    Look look = Look::dark;
};

struct ClearLights {};

/// Does pressing the card here and there change anything? The same answer twice takes it back.
struct Pressing {
    bool changes = false;
};

/// An outcome of the test on offer; -1: cannot tell, or another test please.
struct Answer {
    int outcome = -1;
};

/// The keypad for the meter test on offer, what it shows now, and its two ends.
struct OpenMeter {};

struct TypeFigure {
    std::string text;
};

struct SaveFigure {
    bool minus = false; ///< the meter shows a minus before it
};

struct MeterShowsOpen {};

/// The last thing said, unsaid.
struct TakeBack {};

enum class Tool { foil, known_cell, known_led, meter };

/// Has the maker got it? Each call turns the answer round.
struct Have {
    Tool tool = Tool::meter;
};

/// How a cause is mended, in place of the next test; -1: back to the tests.
struct LookAt {
    int cause = -1;
};

/// The maker says that none of the causes fits: what to do then is shown.
struct NoneFits {};

/// A line in the record that no cause was found.
struct NoteNoneFits {};

/// It was this one, and it is mended.
struct Found {
    int cause = 0;
};

struct StartAgain {};

} // namespace lanternleaf::mend

namespace lanternleaf {

using MendCommand =
    std::variant<mend::WarmAnswer, mend::CellIn, mend::TapLight, mend::TapRest, mend::ClearLights,
                 mend::Pressing, mend::Answer, mend::OpenMeter, mend::TypeFigure, mend::SaveFigure,
                 mend::MeterShowsOpen, mend::TakeBack, mend::Have, mend::LookAt, mend::NoneFits,
                 mend::NoteNoneFits, mend::Found, mend::StartAgain>;

} // namespace lanternleaf
