// Update parts: one function per group of commands, so that each file stays readable. Only update.cpp calls
// these.
#pragma once

#include "model/update.h"

namespace lanternleaf {

// update.cpp
void read_regions(AppState& state, const Surroundings& around);

// update_shelf.cpp
void go_to(AppState& state, const Surroundings& around, Place place);
void start_card(AppState& state, const Surroundings& around, const std::string& path);
void answer_audience(AppState& state, Audience audience, const Surroundings& around);
void choose_way(AppState& state, const Surroundings& around, const std::string& choice);
/// Starts a build for somebody and takes it up. The holder is as `way` says; when no way is found to lay the
/// traces to it, Draw opens instead.
void begin_for(AppState& state, const Surroundings& around, const std::string& card_path, Audience audience,
               const AudienceChoice& way, const Membership& of);
void resume(AppState& state, const Surroundings& around, const std::string& journal);
void put_away(AppState& state, const Surroundings& around, const std::string& journal);
void open_log(AppState& state, const Surroundings& around, const std::string& journal);
void refresh_shelf(AppState& state, const Surroundings& around);

// update_make.cpp
void move_done(AppState& state, const Surroundings& around);
/// One line of the open step's confirm list: all its moves, as if they were confirmed one by one.
void confirm_line(AppState& state, const Surroundings& around, int line);
void move_back(AppState& state, const Surroundings& around);
void prove_step(AppState& state, const Surroundings& around);
void go_on_regardless(AppState& state, const Surroundings& around, const std::string& why);
void adult_confirms(AppState& state, const Surroundings& around);
void cell_out(AppState& state, const Surroundings& around);
/// Records a change, derives the card as built and comes back to the move or, from a verdict, judges again.
void record_change(AppState& state, const Surroundings& around, const Change& change);

// update_readings.cpp
void open_keypad(AppState& state, const std::string& check);
void save_reading(AppState& state, const Surroundings& around);
void meter_shows_open(AppState& state, const Surroundings& around);
void looked_at(AppState& state, const Surroundings& around, bool as_expected);
void looked_at_all(AppState& state, const Surroundings& around);
void tap_light(AppState& state, const std::string& led);
void save_seen(AppState& state, const Surroundings& around);

// update_light.cpp
void open_light(AppState& state, const Surroundings& around);
void set_light_hours(AppState& state, double hours);

} // namespace lanternleaf
