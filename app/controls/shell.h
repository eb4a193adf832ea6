// Shell: one frame from input to triangles, the same for a window, a picture file and a test.
// Exists so that fonts, metrics, frame pacing and the order of a frame are settled once. It owns the drawing
// library's context; what is drawn is a function of the caller's.
#pragma once

#include <functional>

#include "controls/ui.h"
#include "motion/frame_pacer.h"
#include "paint/soft_raster.h"

struct ImDrawData;
struct ImGuiContext;

namespace lanternleaf {

/// What the reader has chosen; the app keeps it.
struct Appearance {
    bool night = false;
    float text_scale = 1;
    bool reduced_motion = false;
    bool kids = false; ///< a child is at the table
};

class Shell {
public:
    Shell(FontFiles files, Host& host);
    ~Shell();
    Shell(const Shell&) = delete;
    Shell& operator=(const Shell&) = delete;

    /// Draws one frame. Events of `input` are used once.
    void frame(const HostInput& input, const Appearance& appearance, const std::function<void(Ui&)>& draw);

    /// Called with the current context when the font atlas was baked anew, before the frame is drawn: make a
    /// texture of atlas_bitmap() and give its id. Without it the frame can be counted and touched, but not
    /// shown.
    std::function<void*()> make_atlas_texture;

    /// Where the text of the last frame is noted, for tests; null: nowhere.
    std::vector<DrawnText>* notes = nullptr;

    [[nodiscard]] Ui& ui() { return ui_; }

    [[nodiscard]] FramePacer& pacer() { return pacer_; }

    /// The last frame's triangles.
    [[nodiscard]] ImDrawData& draw_data();
    /// The last frame as pixels; only for shells whose textures are Bitmaps.
    [[nodiscard]] Bitmap picture(Colour ground);

private:
    ImGuiContext* context_;
    Fonts fonts_;
    Ui ui_;
    FramePacer pacer_;
};

} // namespace lanternleaf
