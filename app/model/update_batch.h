// Update batch: what the batch commands do. Disk first, then state, as everywhere.
#pragma once

#include "model/command.h"
#include "model/library.h"

namespace lanternleaf {

void update_batch(AppState& state, const Surroundings& around, const BatchCommand& command);
/// Reads the open batch and its builds again; the board goes when the batch cannot be read.
void refresh_batch(AppState& state, const Surroundings& around);
/// The audience was answered for the batch that is being thought of: it begins, and its board opens.
void begin_batch(AppState& state, const Surroundings& around, const AudienceChoice& way);
/// Whether a build's makers made one of its batch before: then lists are offered first.
[[nodiscard]] bool made_one_before(const AppState& state, const ShelfBuild& build);
/// What is shown for the maker of a build; empty when not told.
[[nodiscard]] std::string maker_shown(const AppState& state, const ShelfBuild& build);

} // namespace lanternleaf
