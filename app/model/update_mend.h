// Update mend: what update() does with a MendCommand. Only update.cpp and update_shelf.cpp call these.
#pragma once

#include "model/mend_command.h"
#include "model/update.h"

namespace lanternleaf {

void update_mend(AppState& state, const Surroundings& around, const MendCommand& command);
/// Mend is entered: a search on the build at hand with everything known filled in. One under way goes on
/// unless the record has moved on since.
void enter_mend(AppState& state);

} // namespace lanternleaf
