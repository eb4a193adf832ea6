// What a Log command does to the state. Only update.cpp and update_shelf.cpp call these.
#pragma once

#include "model/library.h"
#include "model/log_command.h"

namespace lanternleaf {

void update_log(AppState& state, const Surroundings& around, const LogCommand& command);

/// The record of `journal`, told afresh, and the Log place on it. False, and said, when it cannot be read.
bool show_log(AppState& state, const Surroundings& around, const ShelfBuild& shelf);

/// The story of a record in this person's words, what the journal keeps in English among it.
[[nodiscard]] Story tell_log(const Record& record, const std::vector<Event>& events,
                             const Surroundings& around);

/// How many earlier builds of a card are read for what they teach: the newest.
inline constexpr int kBuildsToLearnFrom = 12;
/// What earlier builds of the same card teach, at the moves of this one. A record that cannot be read
/// teaches nothing.
[[nodiscard]] std::vector<MoveLesson> learn_from_library(const AppState& state, const Surroundings& around,
                                                         const OpenBuild& build);

// ---- its parts, one file each
/// One event onto the record that is open: into its journal first. False, and said, when that is refused.
bool add_to_log(AppState& state, const Surroundings& around, Event event);
void use_as_plan(AppState& state, const Surroundings& around);
void save_copy(AppState& state, const Surroundings& around);
void compare_builds(AppState& state, const Surroundings& around, const std::string& journal);
void count_on(AppState& state, const Surroundings& around);
[[nodiscard]] std::vector<LogPhoto> photos_of(const Record& record, const Story& story,
                                              const ShelfBuild& shelf);
/// A picture that came in while a record lies open: checked, then it waits for its caption.
void take_photo(AppState& state, const Surroundings& around, const std::string& file_name,
                const std::string& content);
void keep_photo(AppState& state, const Surroundings& around);
void remove_photo(AppState& state, const Surroundings& around, int index);

} // namespace lanternleaf
