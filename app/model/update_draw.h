// Update draw: what update() does with a DrawCommand, by theme. Only update.cpp and update_draw*.cpp call
// these.
#pragma once

#include "model/draw_command.h"
#include "model/update.h"

namespace lanternleaf {

void update_draw(AppState& state, const Surroundings& around, const DrawCommand& command);
/// Draw is entered: the card of the build at hand when nothing is on the drawing table yet.
void enter_draw(AppState& state, const Surroundings& around);

// draw_file.cpp: files. The disk first, then the state.
void open_plan(AppState& state, const Surroundings& around, const std::string& path);
void new_plan(AppState& state, const Surroundings& around, double width_mm, double height_mm);
/// Writes the plan at hand into a file of its own; says why when that does not work.
void save_plan(AppState& state, const Surroundings& around);

// update_draw.cpp
/// Does an edit, reviews, saves. False, with a sentence said, when it cannot be done.
bool commit_edit(AppState& state, const Surroundings& around, const Edit& edit);
/// Shows the history's card again and what is to be said of it, with fixes.
void settle(DrawState& draw);
/// Shows a card that is not settled yet: its findings, no fixes.
void preview(DrawState& draw, Card card);

// update_draw_touch.cpp
void tap_plan(AppState& state, const Surroundings& around, Vec2 at_mm, double reach_mm);
void drag_start(AppState& state, Vec2 from_mm, double reach_mm);
void drag_to(AppState& state, Vec2 to_mm, double reach_mm);
void drag_end(AppState& state, const Surroundings& around, bool keep);
void finish_strip(AppState& state, const Surroundings& around);
void nudge(AppState& state, const Surroundings& around, Vec2 by_mm);

// update_suggest.cpp
void suggest_traces(AppState& state, const Surroundings& around);
void search_on(AppState& state, const Surroundings& around);
/// Shows what was found until now.
void end_search(AppState& state, const Surroundings& around);
void look_at_suggestion(AppState& state, int index);
void take_suggestion(AppState& state, const Surroundings& around);

// update_print.cpp
void print_plan(AppState& state, const Surroundings& around);
void give_step_page(AppState& state, const Surroundings& around);

// draw_art.cpp
/// A picture from outside goes beside the plan's file and under the plan, as wide as the sheet.
void lay_art(AppState& state, const Surroundings& around, const std::string& file_name,
             const std::string& content);

// update_light_box.cpp
void open_light_box(AppState& state, const Surroundings& around);
void keep_scale(AppState& state, const Surroundings& around);

} // namespace lanternleaf
