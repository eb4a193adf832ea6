// A maker who draws: taps and drags on the sheet in millimetres, counted. Exists for all tests of the Draw
// place.
#pragma once

#include "table.h"

#include "files/files.h"
#include "view/viewport.h"

#include <string>
#include <vector>

namespace lanternleaf {

class Drawing : public Table {
public:
    using Table::Table;

    int taps = 0;

    DrawState& draw() {
        REQUIRE(app.state.draw.has_value());
        return *app.state.draw;
    }

    void touch(const std::string& name) {
        tap(name);
        ++taps;
    }

    Point at(Vec2 mm) {
        fingers.frame(2);
        const Sheet& sheet = draw().card.sheet;
        return fitted(fingers.need("board").rect, {sheet.width_mm, sheet.height_mm}).to_px(mm);
    }

    /// A tap on the sheet, off by as much as a finger is.
    void paper(Vec2 mm) {
        const Point p = at(mm);
        fingers.tap_at({p.x + 3, p.y - 3});
        now_s += 2;
        ++taps;
        fingers.frame(2);
    }

    /// From place to place in steps, as a finger does.
    void drag(Vec2 from, Vec2 to) {
        const Point a = at(from);
        const Point b = at(to);
        fingers.pointer(PointerSample::Phase::Down, a);
        fingers.frame();
        for (int i = 1; i <= 12; ++i) {
            const float t = static_cast<float>(i) / 12;
            fingers.pointer(PointerSample::Phase::Move, a + (b - a) * t);
            fingers.frame();
        }
        fingers.pointer(PointerSample::Phase::Up, b);
        fingers.frame(3);
    }

    int problems() { return draw().review.count(Level::problem); }

    int cautions() { return draw().review.count(Level::caution); }
};

/// Seven lights between two rails, no crossing, a resistor before them.
inline void draw_seven(Drawing& d) {
    d.touch("shelf/new");
    d.touch("draw-new/a6");
    d.touch("draw/tool/holder");
    d.paper({22, 58});
    d.touch("draw/tool/light");
    d.paper({50, 40});
    d.touch("draw/do/turn"); // the first light shows the others which way
    d.touch("draw/do/turn");
    for (int i = 1; i < 7; ++i) {
        d.paper({50.0 + 12.0 * i, 40});
    }
    d.touch("draw/light"); // seven white lights ask too much of the cell: a resistor in their trace
    d.reach("draw-light/rows", "draw-light/4.7-ohm");
    ++d.taps;
    d.paper({34, 35});
    d.touch("draw/tool/minus");
    d.paper({22, 58});
    d.paper({22, 35});
    d.paper({29, 35});
    d.touch("draw/done");
    d.paper({39, 35});
    d.paper({122, 35});
    d.touch("draw/done");
    d.touch("draw/tool/plus");
    d.paper({22, 82});
    d.paper({40, 82});
    d.paper({40, 45});
    d.paper({122, 45});
    d.touch("draw/done");
    d.touch("draw/finding/1/fix/0"); // who is it for?
    d.touch("draw-audience/adults");
}

inline std::vector<std::string> cards_in(const std::string& library) {
    return files_in(library + "/cards", ".card.json");
}

} // namespace lanternleaf
