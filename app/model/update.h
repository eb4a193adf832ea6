// Update: carries out a command. The one place where the app's state changes; every promise to the maker
// ("done", "saved") is kept on the disk before the state says so, and when the disk refuses, the state stays
// and a toast says why.
#pragma once

#include "model/command.h"
#include "model/library.h"

namespace lanternleaf {

/// A fresh app: settings, safety table and library read. A missing library is an empty one.
[[nodiscard]] AppState open_app(const Surroundings& around);
void update(AppState& state, const Surroundings& around, const Command& command);

/// Everything in the state that is told in words, told again: after the language or the units changed.
void retell(AppState& state, const Surroundings& around);

/// The check with this id in the open step: a move's or the step's proof; null when there is none.
[[nodiscard]] const Check* find_check(const OpenBuild& build, const std::string& id);

/// The checks that the open step's proof needs, with the last reading taken for each (null: not taken yet).
struct NeededCheck {
    const Check* check = nullptr;
    const Reading* reading = nullptr;
};

[[nodiscard]] std::vector<NeededCheck> needed_checks(const OpenBuild& build);
/// The last reading for a check in the open step; null when there is none.
[[nodiscard]] const Reading* last_reading(const OpenBuild& build, const std::string& check);
[[nodiscard]] const Step& open_step(const OpenBuild& build);
/// The move at hand; null when all moves of the step are done.
[[nodiscard]] const Move* open_move(const OpenBuild& build);

void say(AppState& state, const Surroundings& around, const std::string& text);

} // namespace lanternleaf
