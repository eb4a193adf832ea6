// Sheets: what can lie over a place. One function each; draw_open_sheet() picks the one that is open.
#pragma once

#include "controls/sheet.h"
#include "screens/screen.h"

namespace lanternleaf {

void draw_places_sheet(Screen& screen);
void draw_audience_sheet(Screen& screen);
void draw_keypad_sheet(Screen& screen);
void draw_no_meter_sheet(Screen& screen);
void draw_differs_sheet(Screen& screen);
void draw_wrong_sheet(Screen& screen);
void draw_regardless_sheet(Screen& screen);
void draw_steps_sheet(Screen& screen);
void draw_why_sheet(Screen& screen);
void draw_menu_sheet(Screen& screen);
void draw_settings_sheet(Screen& screen);
void draw_log_step_sheet(Screen& screen);
void draw_log_note_sheet(Screen& screen);
void draw_log_compare_sheet(Screen& screen);
void draw_log_photo_sheet(Screen& screen);
void draw_log_new_photo_sheet(Screen& screen);
void draw_mend_meter_sheet(Screen& screen);
/// A test of a part, at whatever stage.
void draw_learn_sheet(Screen& screen);
/// Whichever of the Draw place's sheets is open.
void draw_plan_sheet(Screen& screen);

/// A sheet of rows to choose from; each row a button as wide as the sheet. Returns the y below the rows.
struct SheetRow {
    std::string name;
    std::string label;
    Icon icon = Icon::None;
    Command command;
    bool selected = false;
};

float draw_rows(Screen& screen, const Rect& r, float y, const std::vector<SheetRow>& rows);

/// Height that suits a sheet of so much content on this form.
[[nodiscard]] float sheet_height(const Ui& ui, float content);

/// A label with a control `control_w` wide at its right; above it where both do not fit. Gives the control's
/// place and moves y below it.
[[nodiscard]] Rect beside_label(Ui& ui, const Rect& body, float& y, const std::string& label,
                                float control_w);

} // namespace lanternleaf
