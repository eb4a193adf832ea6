// Batch: the board of a batch, in place of the shelf, and its sheets. Exists so that a teacher sees at arm's
// length who needs help and whether every cell is accounted for.
#pragma once

#include "screens/screen.h"
#include "view/batch_view.h"

namespace lanternleaf {

void draw_batch(Screen& screen);

// The parts of the board; each returns the height it took.
float draw_batch_rows(Screen& screen, const BatchView& view, const Rect& r, float y);
float draw_batch_cells(Screen& screen, const BatchView& view, const Rect& r, float y);
float draw_batch_figures(Screen& screen, const BatchView& view, const Rect& r, float y);

/// The batches of the shelf; returns the y below them.
float draw_shelf_batches(Screen& screen, const Rect& page, float y);

// Its sheets.
void draw_batch_card_sheet(Screen& screen);
void draw_batch_new_sheet(Screen& screen);
void draw_batch_cells_sheet(Screen& screen);
void draw_batch_name_sheet(Screen& screen);
void draw_batch_builder_sheet(Screen& screen);
void draw_batch_take_sheet(Screen& screen);
void draw_batch_close_sheet(Screen& screen);

} // namespace lanternleaf
