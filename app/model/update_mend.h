// What a Mend command does to the state. Only update.cpp and update_shelf.cpp call these.
#pragma once

#include "model/mend_command.h"
#include "model/update.h"

namespace lanternleaf {

/// Called on the way to Mend: a search on the build at hand, the one under way if nothing happened since.
void enter_mend(AppState& state, const Surroundings& around);
void update_mend(AppState& state, const Surroundings& around, const MendCommand& command);

// ---- its parts, one file each
/// One line told: into the journal, then into the session. False, and said, when either refuses.
bool tell_mend(AppState& state, const Surroundings& around, const std::string& line);
/// Causes and next test from the session.
void settle_mend(MendState& mend);
/// The search from its beginning, with what the build's record knows and what was told before.
void start_mend_search(AppState& state, const Surroundings& around);
/// The fault as it was, what the mending added, and a line in words; then the step is proved again.
void mend_found(AppState& state, const Surroundings& around, int cause);

} // namespace lanternleaf
