// Page: what the program asks of the page round it; page/page.js answers.
// Exists so that C++ and JavaScript meet in one place. The page calls back by the exports in main.cpp.
#pragma once

extern "C" {

/// Calls lanternleaf_turn() after so many seconds, with the browser's next drawing.
void page_wake(double after_s);
/// Starts to keep what the program wrote since the last time; 0 when nothing was. The page calls
/// lanternleaf_kept() once all of it is in the browser's storage, and never before.
int page_keep();
/// The first frame is on the glass: the page takes its waiting picture away.
void page_ready();
/// A sentence for the person when the app cannot start.
void page_stopped(const char* sentence);

/// Fills in left, top, right and bottom inset (points), points per millimetre, less motion wanted, dark
/// wanted.
void page_surroundings(float values[7]);

/// 1: the device's share sheet opens; 0: the file goes to the downloads.
int page_share_file(const char* name, const char* bytes, int count, const char* mime);
/// Files that are given together: held one by one, then shared. page_share_held() answers as
/// page_share_file().
void page_hold_file(const char* name, const char* bytes, int count, const char* mime);
int page_share_held(const char* title);
/// Opens the device's picker (camera, pictures, files) for these kinds; what is chosen comes back by
/// lanternleaf_bring_in(), the last of it by lanternleaf_brought_in().
void page_pick(const char* accept);
void page_keep_screen_on(int on);
void page_show_keyboard(int shown, float x, float y, float w, float h);
void page_tick();
}
