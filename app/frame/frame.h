// Frame: the app as one value and the one function that draws it.
// Exists so that a window, a picture file and a test all run the same app. For now it is the gallery of
// controls.
#pragma once

#include "controls/gallery.h"
#include "controls/shell.h"

namespace lanternleaf {

/// Everything the app remembers while it runs.
struct App {
    Appearance look;
    GalleryState gallery;
};

/// Draws one frame and takes in what was done to it.
void app_frame(App& app, Ui& ui);

} // namespace lanternleaf
