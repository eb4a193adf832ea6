// Mend commands: everything a person can mean in the Mend place.
#pragma once

#include <string>
#include <variant>

namespace lanternleaf::mend {

/// The answer to "Is anything warm?", asked before all else with the cell out.
struct WarmAnswer {
    bool warm = false;
};

/// lit, dim, dark, flickers, and round again.
struct TapLight {
    std::string led;
};

struct ClearLights {};

/// An outcome of the test on offer; -1: cannot tell, or another test please.
struct Answer {
    int outcome = -1;
};

/// The last thing said, unsaid.
struct TakeBack {};

enum class Tool { foil, known_cell, meter };

/// Has the maker got it? Each call turns the answer round.
struct Have {
    Tool tool = Tool::meter;
};

/// How a cause is mended, in place of the next test; -1: back to the tests.
struct LookAt {
    int cause = -1;
};

/// It was this one, and it is mended.
struct Found {
    int cause = 0;
};

struct StartAgain {};

} // namespace lanternleaf::mend

namespace lanternleaf {

using MendCommand = std::variant<mend::WarmAnswer, mend::TapLight, mend::ClearLights, mend::Answer,
                                 mend::TakeBack, mend::Have, mend::LookAt, mend::Found, mend::StartAgain>;

} // namespace lanternleaf
