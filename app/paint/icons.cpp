#include "paint/icons.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cstddef>

namespace lanternleaf {

namespace {

struct Row {
    Icon icon;
    std::string_view name;
    std::string_view path;
};

// clang-format off
constexpr Row kRows[] = {
    {Icon::None, "", ""},
    {Icon::Shelf, "shelf", "R 2.5 3.5 19 17.5 0.5 M 6.8 21 6.8 8.5 11.6 8.5 11.6 21 M 11.6 11.5 16.6 11.5 16.6 21"},
    {Icon::Draw, "draw", "M 2 21 9 21 9 14.5 13 14.5 M 13 14.5 13.8 11 20 4.5 22 7.2 16.3 13.6 Z M 17.5 7 20 9.6"},
    {Icon::Make, "make", "M 3 21 10.5 13.5 M 10.8 13.2 C 8.8 10.2 11 6 20.5 3.5 C 19.5 11 15 15.8 10.8 13.2 Z"},
    {Icon::Mend, "mend", "M 3.5 12.5 12.5 3.5 20.5 11.5 11.5 20.5 Z M 3 4 5.5 6.5 M 18.5 18.5 21 21 D 9.4 12.1 D 12.1 9.4 D 12.1 14.8 D 14.8 12.1"},
    {Icon::Log, "log", "R 6 2.5 14 19 1 M 3.5 6.5 8 6.5 M 3.5 12 8 12 M 3.5 17.5 8 17.5 M 11.5 12.5 13.3 14.3 17 9.8 M 11.5 6.5 15 6.5"},
    {Icon::Cellsafe, "cellsafe", "M 12 2 C 14.5 3.8 17.2 4.7 20.5 4.8 L 20.5 11 C 20.5 16.5 17 20 12 22 C 7 20 3.5 16.5 3.5 11 L 3.5 4.8 C 6.8 4.7 9.5 3.8 12 2 Z M 12 7.5 12 12.5 D 12 16.2"},
    {Icon::Phone, "phone", "M 6.5 2.8 9 3 10.8 8 8.3 10 C 9.5 12.8 11.3 14.5 14 15.8 L 16 13.3 21 15 21.3 17.6 C 20.8 20.2 19 21.4 16.6 21.2 C 9 20.4 3.6 15 2.8 7.4 C 2.6 5 3.9 3.2 6.5 2.8 Z"},
    {Icon::Lock, "lock", "R 4 11 16 10 1 M 7.5 11 7.5 7 A 12 7 4.5 180 360 L 16.5 11"},
    {Icon::People, "people", "O 9 7.5 3.8 M 2.5 21 2.5 19.5 A 9 20 6.5 180 360 L 15.5 21 M 16 3.9 C 20.6 5 20.6 10.2 16.6 11.2 M 18.2 14.2 C 20.6 15.2 21.8 17.4 21.6 21"},
    {Icon::Hand, "hand", "M 7.5 14.2 7.5 5.8 A 8.9 5.8 1.4 180 360 L 10.3 11 M 10.3 11 10.3 3.9 A 11.7 3.9 1.4 180 360 L 13.1 11 M 13.1 11 13.1 4.9 A 14.5 4.9 1.4 180 360 L 15.9 12 M 15.9 12 15.9 7.6 A 17.3 7.6 1.4 180 360 L 18.7 14.5 C 18.7 19.5 16.4 22 12.9 22 C 9.5 22 8 20 6.4 17.3 L 4.2 13.4 C 3.6 12.2 5.3 11.2 6.2 12.4 L 7.5 14.2"},
    {Icon::Ear, "ear", "M 6 9 A 12 8.6 6 180 360 C 18 13.2 14.8 13.6 14.2 17 C 13.8 19.8 12 21.6 9.6 21.4 C 8 21.2 6.9 20.2 6.6 18.6 M 9.2 9.2 A 12 8.8 2.8 180 380 C 14.4 11.6 12.4 11.2 11.6 13.6"},
    {Icon::Mouth, "mouth", "M 2 12.2 C 5 9.6 7.6 7 9.8 7 C 11 7 11.4 7.8 12 7.8 C 12.6 7.8 13 7 14.2 7 C 16.4 7 19 9.6 22 12.2 C 19 16 16 17.6 12 17.6 C 8 17.6 5 16 2 12.2 Z M 5.5 12.2 C 9 11.2 15 11.2 18.5 12.2"},
    {Icon::Eye, "eye", "M 1.8 12 C 6.4 3.6 17.6 3.6 22.2 12 C 17.6 20.4 6.4 20.4 1.8 12 Z O 12 12 3.2"},
    {Icon::Back, "back", "M 15 5 8 12 15 19"},
    {Icon::Next, "next", "M 9 5 16 12 9 19"},
    {Icon::Down, "down", "M 5 9 12 16 19 9"},
    {Icon::Up, "up", "M 5 15 12 8 19 15"},
    {Icon::Undo, "undo", "M 8 4 3.5 8.5 8 13 M 3.5 8.5 15 8.5 A 15 14 5.5 270 450 L 9 19.5"},
    {Icon::Redo, "redo", "M 16 4 20.5 8.5 16 13 M 20.5 8.5 9 8.5 A 9 14 5.5 270 90 L 15 19.5"},
    {Icon::ZoomIn, "zin", "O 10.5 10.5 7.2 M 15.8 15.8 21.5 21.5 M 10.5 7.4 10.5 13.6 M 7.4 10.5 13.6 10.5"},
    {Icon::ZoomOut, "zout", "O 10.5 10.5 7.2 M 15.8 15.8 21.5 21.5 M 7.4 10.5 13.6 10.5"},
    {Icon::Fit, "fit", "M 3.5 9 3.5 3.5 9 3.5 M 15 3.5 20.5 3.5 20.5 9 M 20.5 15 20.5 20.5 15 20.5 M 9 20.5 3.5 20.5 3.5 15"},
    {Icon::Flip, "flip", "M 12 2.5 12 6 M 12 9.5 12 14 M 12 17.5 12 21.5 M 8.8 5 8.8 20 2.5 20 Z M 15.2 5 15.2 20 21.5 20 Z"},
    {Icon::Layers, "layers", "M 12 3.5 21.5 9 12 14.5 2.5 9 Z M 2.8 14.5 12 20 21.2 14.5"},
    {Icon::Grid, "grid", "R 3 3 18 18 0.5 M 9 3 9 21 M 15 3 15 21 M 3 9 21 9 M 3 15 21 15"},
    {Icon::Select, "select", "M 5.5 3 20 11.5 13.4 13.4 10.5 20.5 Z"},
    {Icon::Strip, "strip", "R 1.8 8 20.4 8 0.6 D 7 12 D 12 12 D 17 12"},
    {Icon::Led, "led", "R 1.8 6 20.4 12 0.8 M 6.4 6 6.4 18 M 17.6 6 17.6 18 M 9.6 9.2 13.8 12 9.6 14.8 Z M 14.6 9 14.6 15"},
    {Icon::Patch, "patch", "R 3 3 18 18 1 M 4 12.5 12.5 4 M 4 20 20 4 M 11.5 20 20 11.5"},
    {Icon::Holder, "holder", "R 3.2 2.5 17.6 19 0.5 O 12 13.8 5.2 M 3.2 6.4 20.8 6.4"},
    {Icon::Foam, "foam", "R 2.5 3.5 19 17 0.5 R 6.8 7.8 10.4 8.4 0.3 M 2.5 3.5 6.8 7.8 M 21.5 3.5 17.2 7.8 M 2.5 20.5 6.8 16.2 M 21.5 20.5 17.2 16.2"},
    {Icon::Ruler, "ruler", "R 1.8 7 20.4 10 0.5 M 5.8 7 5.8 11 M 9.9 7 9.9 12.2 M 14 7 14 11 M 18.1 7 18.1 12.2"},
    {Icon::Meter, "meter", "R 4.5 2.5 15 19 0.6 R 8 6 8 5.5 0.2 M 10 9.8 13.6 7.4 D 8.4 15.5 D 12 15.5 D 15.6 15.5"},
    {Icon::Keypad, "keypad", "R 3.5 3.5 17 17 0.5 D 8 8 D 12 8 D 16 8 D 8 12 D 12 12 D 16 12 D 8 16 D 12 16 D 16 16"},
    {Icon::Del, "del", "M 8 5 21.5 5 21.5 19 8 19 2 12 Z M 11.6 9 17 15 M 17 9 11.6 15"},
    {Icon::Tick, "tick", "M 4 12.8 9.5 18.3 20.5 6.2"},
    {Icon::Cross, "cross", "M 5 5 19 19 M 19 5 5 19"},
    {Icon::Problem, "problem", "M 8.1 2.5 15.9 2.5 21.5 8.1 21.5 15.9 15.9 21.5 8.1 21.5 2.5 15.9 2.5 8.1 Z M 12 6.8 12 13 D 12 16.8"},
    {Icon::Caution, "caution", "M 12 1.8 22.2 12 12 22.2 1.8 12 Z M 12 7.2 12 13 D 12 16.6"},
    {Icon::Fine, "fine", "O 12 12 10 M 7.2 12.4 10.8 16 17 8.6"},
    {Icon::Differ, "differ", "M 2.5 18.5 8.5 18.5 8.5 8.5 21 8.5 M 13 18.5 21 18.5"},
    {Icon::Wrong, "wrong", "M 3 3.5 21 3.5 21 16.5 11.5 16.5 7 21.5 7 16.5 3 16.5 Z M 12 6.8 12 10 D 12 13.3"},
    {Icon::Press, "press", "M 12 2 12 11.5 M 7.8 7.8 12 12 16.2 7.8 M 2.5 16.5 21.5 16.5 M 7 21 17 21"},
    {Icon::Bulb, "bulb", "M 9 17 9 15.6 C 6.6 14.2 5.5 12 5.5 9.3 A 12 9.3 6.5 180 360 C 18.5 12 17.4 14.2 15 15.6 L 15 17 Z M 9.8 20.8 14.2 20.8"},
    {Icon::BulbDim, "bulbdim", "M 9 17 9 15.6 C 6.6 14.2 5.5 12 5.5 9.3 A 12 9.3 6.5 180 360 C 18.5 12 17.4 14.2 15 15.6 L 15 17 Z M 9.8 20.8 14.2 20.8 M 9 9.8 15 9.8"},
    {Icon::BulbOff, "bulboff", "M 9 17 9 15.6 C 6.6 14.2 5.5 12 5.5 9.3 A 12 9.3 6.5 180 360 C 18.5 12 17.4 14.2 15 15.6 L 15 17 Z M 9.8 20.8 14.2 20.8 M 3.5 2.5 20.5 20.5"},
    {Icon::Photo, "photo", "M 2.5 7 7.4 7 9.2 4 14.8 4 16.6 7 21.5 7 21.5 20 2.5 20 Z O 12 13.2 3.8"},
    {Icon::Clock, "clock", "O 12 12 9.6 M 12 6.4 12 12 16 14.6"},
    {Icon::Repeat, "repeat", "M 3.6 10.5 A 12 12 8.5 190 325 M 19.6 3 19.6 7.6 15 7.6 M 20.4 13.5 A 12 12 8.5 10 145 M 4.4 21 4.4 16.4 9 16.4"},
    {Icon::Book, "book", "M 12 5.5 C 9 3.6 6 3.4 2.5 3.8 L 2.5 18.8 C 6 18.4 9 18.8 12 20.8 C 15 18.8 18 18.4 21.5 18.8 L 21.5 3.8 C 18 3.4 15 3.6 12 5.5 L 12 20.8"},
    {Icon::Trash, "trash", "M 3.5 6 20.5 6 M 8.5 6 8.5 3 15.5 3 15.5 6 M 5.6 6 6.6 21.5 17.4 21.5 18.4 6"},
    {Icon::More, "more", "D 4.5 12 D 12 12 D 19.5 12"},
    {Icon::Plus, "plus", "M 12 3.5 12 20.5 M 3.5 12 20.5 12"},
    {Icon::Minus, "minus", "M 3.5 12 20.5 12"},
    {Icon::Sun, "sun", "O 12 12 4.4 M 12 1.8 12 3.8 M 12 20.2 12 22.2 M 1.8 12 3.8 12 M 20.2 12 22.2 12 M 4.8 4.8 6.2 6.2 M 17.8 17.8 19.2 19.2 M 19.2 4.8 17.8 6.2 M 6.2 17.8 4.8 19.2"},
    {Icon::Moon, "moon", "M 11 3.2 A 12.2 12.2 9 -98 -98 C 8.4 7.4 9.6 14.6 20.6 14.8 C 18.8 19.4 14.6 21.6 10.4 20.8 C 5.6 19.8 2.6 15.6 3.2 11 C 3.8 6.8 7 3.9 11 3.2 Z"},
    {Icon::EyeOff, "eyeoff", "M 2 10 C 6.6 15.8 17.4 15.8 22 10 M 5 12.6 3 15.6 M 9.6 14.6 8.8 18 M 14.4 14.6 15.2 18 M 19 12.6 21 15.6"},
    {Icon::Suggest, "suggest", "O 4 20 2 O 19.6 4.4 2 M 6 20 10.5 20 10.5 7 M 10.5 7 10.5 4.4 17.4 4.4 M 18 13 18 20 M 14.5 16.5 21.5 16.5"},
    {Icon::Settings, "settings", "M 3 6.5 13 6.5 M 19 6.5 21 6.5 O 16 6.5 2.6 M 3 17.5 5 17.5 M 11 17.5 21 17.5 O 8 17.5 2.6"},
    {Icon::Share, "share", "M 8 10 4.5 10 4.5 21.5 19.5 21.5 19.5 10 16 10 M 12 15 12 2.5 M 7.8 6.7 12 2.5 16.2 6.7"},
    {Icon::Print, "print", "M 7 9 7 2.5 17 2.5 17 9 M 7 17.5 3 17.5 3 9 21 9 21 17.5 17 17.5 R 7 14 10 7.5 0.3 D 17.4 11.8"},
};
// clang-format on

static_assert(std::size(kRows) == static_cast<std::size_t>(Icon::Count));

const Row& row_of(Icon icon) {
    const Row& row = kRows[static_cast<std::size_t>(icon)];
    assert(row.icon == icon);
    return row;
}

/// A leaf-like drop between a top and a bottom point, as wide as `half` each side.
Polyline drop(Point top, Point bottom, float half, float belly) {
    const float y = top.y + (bottom.y - top.y) * belly;
    const float reach = (bottom.y - top.y) * 0.28f;
    Polyline out{top};
    add_cubic(out, {top.x + half * 0.35f, top.y + reach * 0.45f}, {top.x + half, y - reach},
              {top.x + half, y}, 0.05f);
    add_cubic(out, {top.x + half, y + reach}, {bottom.x + half * 0.4f, bottom.y - reach * 0.5f}, bottom,
              0.05f);
    add_cubic(out, {bottom.x - half * 0.4f, bottom.y - reach * 0.5f}, {top.x - half, y + reach},
              {top.x - half, y}, 0.05f);
    add_cubic(out, {top.x - half, y - reach}, {top.x - half * 0.35f, top.y + reach * 0.45f}, top, 0.05f);
    out.pop_back();
    return out;
}

} // namespace

std::string_view icon_name(Icon icon) {
    return row_of(icon).name;
}

const IconPath& icon_path(Icon icon) {
    // Read once, at the first icon that is drawn.
    static const auto paths = [] {
        std::array<IconPath, std::size(kRows)> out;
        for (std::size_t i = 0; i < std::size(kRows); ++i) {
            Outcome<IconPath> read = read_icon_path(kRows[i].path);
            assert(read.ok());
            out[i] = std::move(read).value();
        }
        return out;
    }();
    return paths[static_cast<std::size_t>(row_of(icon).icon)];
}

void draw_icon(Pen& pen, Icon icon, Point centre, float size, Colour colour) {
    if (icon == Icon::None || size <= 0) {
        return;
    }
    const IconPath& path = icon_path(icon);
    const float k = size / 24;
    const float width = std::max(1.5f, 2.1f * k);
    const Point origin{centre.x - size / 2, centre.y - size / 2};
    Polyline placed;
    for (const IconStroke& stroke : path.strokes) {
        placed.clear();
        for (const Point p : stroke.points) {
            const Point q = origin + p * k;
            // Curves share end points with the lines that follow; a repeated point would look like a corner.
            if (placed.empty() || distance(placed.back(), q) > 0.01f) {
                placed.push_back(q);
            }
        }
        // For the same reason a closed curve must not come back to its own first point.
        if (stroke.closed && placed.size() > 2 && distance(placed.back(), placed.front()) < 0.01f) {
            placed.pop_back();
        }
        pen.stroke(placed, colour, width, stroke.closed, true);
    }
    for (const Point dot : path.dots) {
        pen.disc(origin + dot * k, std::max(1.0f, 1.3f * k), colour);
    }
}

void draw_mark(Pen& pen, Point centre, float height, const Theme& theme) {
    const float k = height / 38;
    const Point top{centre.x, centre.y - 19 * k};
    pen.line({centre.x, centre.y + 8 * k}, {centre.x, centre.y + 18 * k}, theme.leaf, 2.6f * k, true);
    pen.fill_polygon(drop(top, {centre.x, centre.y + 13 * k}, 10.5f * k, 0.46f), theme.leaf);
    pen.fill_polygon(drop({centre.x, centre.y - 10 * k}, {centre.x, centre.y + 6 * k}, 4.2f * k, 0.58f),
                     theme.lamp);
}

} // namespace lanternleaf
