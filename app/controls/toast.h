// Toast: one sentence that lies over the foot of the page for a while, with at most one button (Undo).
// Exists to say what was done, or why a disabled control does nothing; it never asks and never blocks.
#pragma once

#include "controls/ui.h"

namespace lanternleaf {

/// Draws the toast; called by Ui::end_frame. Targets "toast" (a note) and "toast/action".
void draw_toast(Ui& ui, const ToastLine& line);

} // namespace lanternleaf
