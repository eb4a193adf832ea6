// How Mend's panels are set, and the panel of likely causes.
#include "controls/bars.h"
#include "controls/panel.h"
#include "screens/make.h"
#include "screens/mend.h"

#include <algorithm>

namespace lanternleaf {

Rect mend_inside(const Ui& ui, const Rect& r) {
    return {r.x + ui.m.panel_pad_x, r.y + ui.m.panel_pad_y, r.w - 2 * ui.m.panel_pad_x, 9000};
}

float mend_head(Ui& ui, const Rect& r, Icon icon, const std::string& title, const std::string& aside,
                bool draw) {
    const TextStyle h2 = ui.m.type(Type::H2);
    const TextStyle small = ui.m.type(Type::Small);
    const float left = icon == Icon::None ? 0.0f : 42.0f;
    const float aside_w = aside.empty() ? 0 : ui.fonts().width(aside, small) + 12;
    const bool below = ui.fonts().width(title, h2) + left + aside_w > r.w;
    const float title_w = r.w - left;
    const float title_h = std::max(h2.lead, ui.fonts().wrapped_height(title, h2, title_w));
    if (draw) {
        if (icon != Icon::None) {
            draw_icon(ui.pen(), icon, {r.x + 14, r.y + h2.lead / 2}, 28, ui.theme().leaf);
        }
        ui.pen().paragraph({r.x + left, r.y}, title_w, title, h2, ui.theme().ink);
        const float y = below ? r.y + title_h : r.y + (h2.lead - small.lead) / 2 + 1;
        ui.pen().text({below ? r.x + left : r.right(), y}, aside, small, ui.theme().ink2,
                      below ? Align::Left : Align::Right);
    }
    return title_h + (below && !aside.empty() ? small.lead : 0);
}

float mend_words(Ui& ui, const Rect& r, const std::string& text, TextStyle style, Colour colour, bool draw) {
    return draw ? ui.pen().paragraph({r.x, r.y}, r.w, text, style, colour)
                : ui.fonts().wrapped_height(text, style, r.w);
}

float mend_numbered(Ui& ui, const Rect& r, const std::vector<std::string>& lines, bool draw) {
    const TextStyle body = ui.m.type(Type::Body);
    const float disc = ui.m.with_text(16);
    const float text_x = 2 * disc + 14;
    float y = r.y;
    int number = 0;
    for (const std::string& line : lines) {
        const float high = std::max(2 * disc, ui.fonts().wrapped_height(line, body, r.w - text_x) +
                                                  std::max(0.0f, (2 * disc - body.lead) / 2));
        if (draw) {
            number_disc(ui, {r.x + disc, y + disc}, disc, std::to_string(++number), ui.theme().lamp,
                        ui.theme().on_lamp, ui.theme().lamp);
            ui.pen().paragraph({r.x + text_x, y + (2 * disc - body.lead) / 2}, r.w - text_x, line, body,
                               ui.theme().ink);
        }
        y += high + 8;
    }
    return y - r.y;
}

float mend_two(Screen& screen, const Rect& r, const MendButton& left, const MendButton& right, bool leaf,
               bool draw, int& tapped) {
    Ui& ui = screen.ui;
    const float gap = 10;
    const float half = (r.w - gap) / 2;
    const float high = leaf ? 72.0f * std::max(1.0f, ui.m.text_scale) : ui.m.button_h;
    // A long word of a label must not be broken: then each has a row.
    const auto too_wide = [&](const MendButton& one) {
        return button_width(ui, one.look) > 1.9f * half || (ui.m.text_scale > 1.6f && ui.m.phone());
    };
    const bool stacked = too_wide(left) || too_wide(right);
    const float w = stacked ? r.w : half;
    if (draw) {
        const auto place = [&](const MendButton& one, float x, float y) {
            const Rect box{x, y, w, high};
            return leaf ? leaf_button(ui, one.name, box, one.look) : button(ui, one.name, box, one.look);
        };
        if (place(left, r.x, r.y)) {
            tapped = 0;
        }
        if (place(right, stacked ? r.x : r.x + w + gap, stacked ? r.y + high + gap : r.y)) {
            tapped = 1;
        }
    }
    return stacked ? 2 * high + gap : high;
}

namespace {

// One cause; its height.
float cause_row(Screen& screen, const MendCauseRow& cause, int index, const Rect& at, bool draw) {
    Ui& ui = screen.ui;
    const Theme& theme = ui.theme();
    const TextStyle body = ui.m.type(Type::Body);
    const bool first = index == 0;
    const TextStyle style = first ? body.bold() : body;
    const float tile = ui.m.with_text(40);
    const float figure = ui.fonts().width(">99%", body.bold()) + 10;
    const float text_w = at.w - tile - 12 - figure;
    const float text_h = ui.fonts().wrapped_height(cause.title, style, text_w);
    const float high = std::max(tile, text_h + 2 + 12);
    if (!draw) {
        return high;
    }
    const Rect row{at.x, at.y, at.w, high};
    const std::string name = "mend/cause/" + cause.letter;
    ui.add({.name = name,
            .role = Role::Button,
            .label = ui.words("mend_place.cause_spoken",
                              {{"letter", cause.letter}, {"cause", cause.title}, {"percent", cause.percent}}),
            .rect = {row.x, row.y - 4, row.w, std::max(high + 8, ui.m.target - 6)}});
    const Rect box{row.x, row.y, tile, tile};
    if (ui.pressed(name) || screen.state.mend->chosen == index) {
        ui.pen().fill(row.shrunk(-6, -4), theme.plum_tint, 10);
    }
    ui.pen().fill(box, first ? theme.plum : theme.panel, 8);
    ui.pen().outline(box, theme.plum, 2, 8);
    ui.pen().text_in(box, cause.letter, body.bold(), first ? theme.on_plum : theme.plum);
    ui.pen().paragraph({row.x + tile + 12, row.y - 3}, text_w, cause.title, style, theme.ink);
    ui.pen().text({row.right(), row.y - 3}, cause.percent, body.bold(), theme.ink, Align::Right);
    share_bar(ui, {row.x + tile + 12, row.bottom() - 12, at.w - tile - 12, 12},
              static_cast<float>(cause.share), first ? theme.plum : theme.edge);
    if (ui.tapped(name)) {
        act(screen, mend::LookAt{index});
    }
    return high;
}

} // namespace

float draw_causes_panel(Screen& screen, const MendView& view, const Rect& r, bool draw) {
    Ui& ui = screen.ui;
    Rect in = mend_inside(ui, r);
    const float top = r.y;
    in.cut_top(mend_head(ui, in, Icon::None, ui.words("mend_place.likely_causes"), view.after, draw) + 6);
    for (std::size_t i = 0; i < view.causes.size(); ++i) {
        in.cut_top(cause_row(screen, view.causes[i], static_cast<int>(i), in, draw) + 10);
    }
    if (!view.own_records.empty()) {
        in.cut_top(mend_words(ui, in, view.own_records, ui.m.type(Type::Small), ui.theme().ink2, draw) + 8);
    }
    return in.y - top + 6;
}

} // namespace lanternleaf
