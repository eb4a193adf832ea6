// The named screens of the Mend place, for pictures and tests.
#pragma once

#include "frame/frame.h"

namespace lanternleaf {

/// On a build whose lights are placed: "mend" (lights tapped as with a torn strip), "mend/start" (the cell
/// first), "mend/lights" (none tapped yet), "mend/named" (a few answers on, how the likeliest is mended),
/// "mend/dark" (all dark), "mend/none" (none fits), "mend/meter" (a figure being typed). False: no such one.
[[nodiscard]] bool show_mend(App& app, const std::string& name);

} // namespace lanternleaf
