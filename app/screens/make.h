// Make: the parts the Make place is put together from, one function per panel. Only make*.cpp use these.
#pragma once

#include "screens/screen.h"
#include "view/make_view.h"

namespace lanternleaf {

/// The panel for the move at hand: words, picture, why, check.
void draw_move_panel(Screen& screen, const MakeView& view, const Rect& r);
/// In place of the moves: the step from memory, then line by line.
void draw_confirm_panel(Screen& screen, const MakeView& view, const Rect& r);
/// The way between moves and list, at the foot of either panel; returns the room it took.
float draw_list_switch(Screen& screen, const MakeView& view, const Rect& r);
/// The same for a child at the table: picture first.
void draw_kids_panel(Screen& screen, const MakeView& view, const Rect& r);
/// The panel at the end of a step: what proves it, and what was read.
void draw_proof_panel(Screen& screen, const MakeView& view, const Rect& r);
/// The panel when a step is stopped: what is wrong, where, and what to do.
void draw_verdict_panel(Screen& screen, const MakeView& view, const Rect& r);
/// The bar at the foot.
void draw_make_actions(Screen& screen, const MakeView& view, const Regions& regions);

/// The check of a move: what to measure, the field, and the way without a meter.
void draw_check(Screen& screen, const CheckView& check, const Rect& r);
[[nodiscard]] float check_height(const Screen& screen, const CheckView& check, float width);

/// Where a panel's content may scroll: clear of its rounded corners, with the position mark inside.
[[nodiscard]] inline Rect inside_panel(const Rect& panel) {
    return {panel.x + 2, panel.y + 5, panel.w - 8, panel.h - 14};
}

/// A line of head type, wrapped; returns its height.
float draw_heading(Ui& ui, const Rect& r, float y, const std::string& text, Type type);

} // namespace lanternleaf
