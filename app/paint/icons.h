// Icons: every pictograph of the app, drawn as strokes on a 24 grid, and the mark (a leaf with a flame).
// Exists because the typeface has no pictographs, and so that an icon takes any size and any role's colour.
#pragma once

#include <span>
#include <string_view>

#include "host/point.h"
#include "paint/icon_path.h"
#include "paint/pen.h"
#include "paint/theme.h"

namespace lanternleaf {

enum class Icon {
    None,
    // Screens
    Shelf,
    Draw,
    Make,
    Mend,
    Log,
    // Safety
    Cellsafe,
    Phone,
    Lock,
    People,
    Hand,
    Ear,
    Mouth,
    Eye,
    // Moving about
    Back,
    Next,
    Down,
    Up,
    Undo,
    Redo,
    ZoomIn,
    ZoomOut,
    Fit,
    Flip,
    Layers,
    Grid,
    Select,
    // Parts
    Strip,
    Led,
    Patch,
    Holder,
    Foam,
    Ruler,
    // Checks
    Meter,
    Keypad,
    Del,
    Tick,
    Cross,
    Problem,
    Caution,
    Fine,
    Differ,
    Wrong,
    Press,
    Bulb,
    BulbDim,
    BulbOff,
    // Record
    Photo,
    Clock,
    Repeat,
    Book,
    Trash,
    More,
    Plus,
    Minus,
    // View
    Sun,
    Moon,
    EyeOff,
    Suggest,
    // Settings and files
    Settings,
    Share,
    Print,
    Count,
};

/// The icon's name as the design spells it ("zin", "bulbdim"); empty for None.
[[nodiscard]] std::string_view icon_name(Icon icon);
/// Its strokes on the 24 grid. Empty for None.
[[nodiscard]] const IconPath& icon_path(Icon icon);

/// Draws an icon `size` points wide round a centre; strokes are 2 grid units wide, at least 1.5 points.
void draw_icon(Pen& pen, Icon icon, Point centre, float size, Colour colour);
/// The mark, `height` points tall: leaf, flame and stalk.
void draw_mark(Pen& pen, Point centre, float height, const Theme& theme);

} // namespace lanternleaf
