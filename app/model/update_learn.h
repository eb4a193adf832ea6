// Update, Learn: the tests of a part, by whose answers the library's own parts grow. Only update.cpp calls
// these.
#pragma once

#include "model/learn_command.h"
#include "model/library.h"

namespace lanternleaf {

void update_learn(AppState& state, const Surroundings& around, const LearnCommand& act);
/// An adult confirmed the notice that a test was waiting for. False: none was.
[[nodiscard]] bool adult_confirms_test(AppState& state);
/// The notice was put aside: the test stays where it was.
void stop_waiting(AppState& state);

} // namespace lanternleaf
