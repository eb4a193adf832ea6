// The move panel when a child is at the table: the picture first and large, then one heading and one
// sentence. What an adult does is said in a band of its own; the button for it takes an adult's hold
// (make_actions).
#include "controls/bars.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "paint/move_picture.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

float draw_adult_band(Screen& screen, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const std::string words = ui.words("kids.adult_move");
    const TextStyle body = ui.m.type(Type::Body).bold();
    const float height = std::max(44.0f, ui.fonts().wrapped_height(words, body, r.w - 64) + 20);
    const Rect band{r.x, y, r.w, height};
    well(ui, band, ui.theme().plum_tint);
    draw_icon(ui.pen(), Icon::Hand, {band.x + 26, band.centre().y}, 30, ui.theme().plum);
    ui.pen().paragraph({band.x + 54, band.y + 10}, r.w - 64, words, body, ui.theme().plum);
    ui.add({.name = "make/adult", .role = Role::Note, .label = words, .rect = band});
    return height;
}

} // namespace

void draw_kids_panel(Screen& screen, const MakeView& view, const Rect& panel_rect) {
    Ui& ui = screen.ui;
    const Rect inside = panel_rect.shrunk(ui.m.panel_pad_x, ui.m.panel_pad_y);
    Scroll scroll(ui, "make/panel", inside_panel(panel_rect));
    Rect r{inside.x, scroll.top() + ui.m.panel_pad_y - 4, inside.w, 4000};
    if (view.pips > 1) {
        pips(ui, r.cut_top(26), view.pips, view.pip_now, false);
        r.cut_top(8);
    }
    // The picture takes half of what can be seen; the words under it roll when they need more.
    const MovePictureSpec picture =
        picture_of(*view.move, screen.state.build->record.as_built, screen.state.build->parts);
    MovePictureLook look;
    look.caption_em = ui.m.type(Type::Small).size;
    draw_move_picture(ui.pen(), ui.theme(), r.cut_top(std::max(112.0f, inside.h * 0.5f)), picture, look);
    r.cut_top(12);
    if (view.adult_only) {
        r.cut_top(draw_adult_band(screen, r, r.y) + 10);
    }
    r.cut_top(draw_heading(ui, r, r.y, view.heading, Type::H1));
    r.cut_top(6);
    r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.sentence, ui.m.type(Type::Body), ui.theme().ink));
    if (view.check) {
        r.cut_top(14);
        draw_check(screen, *view.check, r.cut_top(check_height(screen, *view.check, r.w)));
    }
    scroll.done(r.y + ui.m.panel_pad_y - scroll.top());
}

} // namespace lanternleaf
