// Scroll: a part of the screen whose content can be taller than its room; drag, fling, wheel and keys move
// it. Exists because the drawing library has no touch scrolling. Use it as a scope: what is drawn between its
// making and done() is clipped, and touches outside the visible part do not reach it.
#pragma once

#include <optional>

#include "controls/ui.h"

namespace lanternleaf {

class Scroll {
public:
    /// Begins. The offset is kept in ui.scrolls under the name. `ground` is the colour it lies on (panel if
    /// not given).
    Scroll(Ui& ui, std::string_view name, const Rect& room, std::optional<Colour> ground = std::nullopt);
    ~Scroll();
    Scroll(const Scroll&) = delete;
    Scroll& operator=(const Scroll&) = delete;

    /// Where the content begins: room.y less the offset.
    [[nodiscard]] float top() const { return top_; }

    [[nodiscard]] const Rect& room() const { return room_; }

    /// Ends. content_h is the height of all that was drawn from top() down. Draws the position mark and end
    /// shades.
    void done(float content_h);

private:
    void keep_focus_in_view(float most);

    Ui& ui_;
    std::string name_;
    Rect room_;
    Colour ground_;
    float top_ = 0;
    std::size_t first_target_ = 0;
    bool open_ = true;
};

} // namespace lanternleaf
