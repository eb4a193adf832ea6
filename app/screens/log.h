// Log: the parts the Log place is put together from, one function per panel. Only log*.cpp use these. Each
// panel is drawn from y down as high as it needs to be, and returns its height.
#pragma once

#include "screens/screen.h"
#include "view/log_view.h"

namespace lanternleaf {

/// The seven steps with their time and reading; each row opens its particulars.
float draw_log_rows(Screen& screen, const LogView& view, const Rect& r, float y);
/// Changes, mendings and notes, with the button for another note.
float draw_log_as_built(Screen& screen, const LogView& view, const Rect& r, float y);
/// The builds of this card.
float draw_log_builds(Screen& screen, const LogView& view, const Rect& r, float y);

/// The photos as small prints, with the button for another.
float draw_log_photos(Screen& screen, const Rect& r, float y);
/// What the whole library says, as bars.
float draw_log_figures(Screen& screen, const Rect& r, float y);
/// Two builds side by side, in place of the record.
float draw_log_compare(Screen& screen, const Rect& r, float y);

/// A reading on the range that was predicted for it: a trough with the range as a box and the reading as a
/// dot.
void draw_trough(Ui& ui, const Rect& r, const RangeShares& range);
/// A change, mending or note with its sign; returns its height.
float draw_log_line(Ui& ui, const Rect& r, float y, const LogLine& line);

} // namespace lanternleaf
