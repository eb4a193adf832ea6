// The Mend place: the lights as seen on the left, the likely causes and the next test on the right; upright
// one above the other. Without a build at hand: first help.
#include "screens/mend.h"

#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/make.h"
#include "screens/sheets.h"

#include <algorithm>

namespace lanternleaf {

namespace {

std::string pressing_asks(const Ui& ui) {
    return ui.words("mend_place.pressing");
}

void draw_first_help(Screen& screen) {
    Ui& ui = screen.ui;
    const Regions regions = make_regions(ui.m, {.actions = false});
    const Rect page = regions.page.shrunk(ui.m.phone() ? 12.0f : 28.0f, 0);
    Scroll scroll(ui, "mend", regions.page);
    const TextStyle body = ui.m.type(Type::Body);
    const Rect r{page.x, 0, std::min(page.w, 760.0f), 0};
    float y = scroll.top() + 20;
    y += draw_heading(ui, r, y, ui.words("mend_place.first_help"), Type::H1) + 8;
    y += ui.pen().paragraph({r.x, y}, r.w, ui.words("wrong.warm"), body, ui.theme().ink) + 16;
    const std::string first[] = {ui.words("mend_place.first_tab"), ui.words("mend_place.first_cell"),
                                 ui.words("mend_place.first_press"), ui.words("mend_place.first_rub"),
                                 ui.words("mend_place.first_swap")};
    int number = 0;
    for (const std::string& line : first) {
        number_disc(ui, {r.x + 16, y + 16}, 16, std::to_string(++number), ui.theme().lamp, ui.theme().on_lamp,
                    ui.theme().lamp);
        y += std::max(32.0f, ui.pen().paragraph({r.x + 46, y + (32 - body.lead) / 2}, r.w - 46, line, body,
                                                ui.theme().ink)) +
             12;
    }
    y += 8;
    scroll.done(y + 16 - scroll.top());
    draw_top_bar(screen, regions.top, "");
}

// One of the three counts: its badge as on the card, the word, the number.
// A word too long to stand beside the badge stands below it, over the whole width.
constexpr float kCountDisc = 19;
constexpr float kBriefDisc = 13;

float count_words_x(const Ui& ui) {
    return ui.m.phone() ? 12 + 2 * kBriefDisc : 21 + 2 * kCountDisc;
}

void draw_count(Ui& ui, const Rect& r, Look look, const std::string& word, const std::string& count,
                bool below) {
    const Theme& theme = ui.theme();
    Pen& pen = ui.pen();
    pen.fill(r, theme.panel, ui.m.radius);
    pen.outline(r, theme.edge, 1.5f, ui.m.radius);
    const bool brief = ui.m.phone();
    const float disc = brief ? kBriefDisc : kCountDisc;
    const TextStyle small = ui.m.type(Type::Small);
    const float inset = brief ? 6.0f : 11.0f;
    const float word_w = ui.fonts().width(word, small.bold());
    const float x = r.x + count_words_x(ui);
    const float top = r.centre().y - small.lead;
    const Point at{r.x + inset + disc, below ? top + small.lead / 2 + 1 : r.centre().y};
    const float radius = below ? std::min(disc, small.lead / 2 + 3) : disc;
    pen.disc(at, radius,
             look == Look::lit   ? theme.lamp
             : look == Look::dim ? theme.lamp_tint
                                 : rgb(0x1B2024));
    if (look == Look::dim) {
        pen.dashed_ring(at, radius, theme.ink, 1.8f, 5, 4);
    } else {
        pen.ring(at, radius, look == Look::dark && theme.night ? theme.edge : theme.on_lamp, 1.8f);
    }
    const Icon icon = look == Look::lit ? Icon::Bulb : look == Look::dim ? Icon::BulbDim : Icon::BulbOff;
    draw_icon(pen, icon, at, radius * 1.3f,
              look == Look::lit   ? theme.on_lamp
              : look == Look::dim ? theme.ink
                                  : rgb(0xFFFCF5));
    const bool bare = brief || (!below && x + ui.fonts().width(count, small) > r.right() - 4);
    const std::string number = bare ? count.substr(0, count.find(' ')) : count;
    if (below) {
        const TextStyle fits = small.bold().sized(small.size * std::min(1.0f, (r.w - 8) / word_w));
        pen.text({x, top + 1}, ui.fonts().fitted(number, small, r.right() - x - 4), small, theme.ink);
        pen.text({r.centre().x, top + small.lead + 1}, word, fits, theme.ink, Align::Centre);
        return;
    }
    pen.text({x, top + 1}, word, small.bold(), theme.ink);
    pen.text({x, top + small.lead - 1}, ui.fonts().fitted(number, small, r.right() - x - 4), small,
             theme.ink);
}

void draw_counts(Screen& screen, const MendView& view, Rect row) {
    Ui& ui = screen.ui;
    const float gap = 9;
    const float slots = view.any_light ? 4.0f : 3.0f;
    const float w = (row.w - (slots - 1) * gap) / slots;
    const auto slot = [&] {
        const Rect r = row.cut_left(w);
        row.cut_left(gap);
        return r;
    };
    const std::string lit = ui.words("mend_place.lit");
    const std::string dim = ui.words("mend_place.dim");
    const std::string dark = ui.words("mend_place.dark");
    float widest = 0;
    for (const std::string& word : {lit, dim, dark}) {
        widest = std::max(widest, ui.fonts().width(word, ui.m.type(Type::Small).bold()));
    }
    const bool below = count_words_x(ui) + widest > w - 4;
    draw_count(ui, slot(), Look::lit, lit, view.lit, below);
    draw_count(ui, slot(), Look::dim, dim, view.dim, below);
    draw_count(ui, slot(), Look::dark, dark, view.dark, below);
    if (view.any_light &&
        button(ui, "mend/clear", {row.x, row.y, w, row.h},
               {.label = ui.words("mend_place.clear"), .icon = ui.m.phone() ? Icon::None : Icon::Undo})) {
        act(screen, mend::ClearLights{});
    }
}

float pressing_button(const Ui& ui) {
    return std::max(button_width(ui, {.label = ui.words("mend_place.yes")}), ui.m.with_text(72));
}

// Room for the question beside its answers; all of the width where it must stand above them.
float pressing_words(const Ui& ui, float w) {
    const float beside = w - 2 * pressing_button(ui) - 18;
    return beside < ui.m.with_text(130) ? w : beside;
}

// Does pressing change it? One of the two questions that part most faults from the rest.
void draw_pressing(Screen& screen, const MendView& view, Rect row) {
    Ui& ui = screen.ui;
    const TextStyle small = ui.m.type(Type::Small);
    const float each = pressing_button(ui);
    if (pressing_words(ui, row.w) == row.w) {
        const float asks = ui.fonts().wrapped_height(pressing_asks(ui), small, row.w);
        ui.pen().paragraph({row.x, row.y}, row.w, pressing_asks(ui), small, ui.theme().ink);
        row.cut_top(asks + 8);
        row.x = row.right() - 2 * each - 18;
        row.w = 2 * each + 18;
    }
    const bool above = row.w <= 2 * each + 18;
    const Rect no = row.cut_right(each);
    row.cut_right(8);
    const Rect yes = row.cut_right(each);
    row.cut_right(10);
    if (!above) {
        const float high = ui.fonts().wrapped_height(pressing_asks(ui), small, row.w);
        ui.pen().paragraph({row.x, row.centre().y - high / 2}, row.w, pressing_asks(ui), small,
                           ui.theme().ink);
    }
    const auto one = [&](const char* name, const Rect& r, const std::string& label, bool changes) {
        const Rect box{r.x, r.centre().y - ui.m.button_h / 2, r.w, ui.m.button_h};
        if (button(ui, name, box, {.label = label, .selected = view.pressing == changes})) {
            act(screen, mend::Pressing{changes});
        }
    };
    one("mend/pressing/yes", yes, ui.words("mend_place.yes"), true);
    one("mend/pressing/no", no, ui.words("mend_place.no"), false);
}

float pressing_height(const Ui& ui, const MendView& view, float w) {
    if (!view.any_light) {
        return 0;
    }
    const float text_w = pressing_words(ui, w);
    if (text_w == w) {
        return ui.fonts().wrapped_height(pressing_asks(ui), ui.m.type(Type::Small), w) + 8 + ui.m.button_h;
    }
    return std::max(ui.m.target,
                    ui.fonts().wrapped_height(pressing_asks(ui), ui.m.type(Type::Small), text_w) + 4);
}

float explanation_height(const Ui& ui, const MendView& view, float w) {
    return ui.fonts().wrapped_height(view.explanation, ui.m.type(Type::Body), w - 76) + 30;
}

void draw_explanation(Ui& ui, const MendView& view, const Rect& r) {
    well(ui, r, ui.theme().blue_tint);
    draw_icon(ui.pen(), Icon::Bulb, {r.x + 31, r.y + 28}, 26, ui.theme().blue);
    ui.pen().paragraph({r.x + 58, r.y + 14}, r.w - 76, view.explanation, ui.m.type(Type::Body),
                       ui.theme().ink);
}

float draw_head(Ui& ui, const MendView& view, const Rect& r) {
    float y = r.y;
    y += draw_heading(ui, r, y, view.heading, Type::H1);
    y += ui.pen().paragraph({r.x, y}, r.w, view.sentence, ui.m.type(Type::Small), ui.theme().ink2);
    return y - r.y;
}

// The panels under each other, from y on; gives where they end.
float draw_panels(Screen& screen, const MendView& view, float x, float y, float w, bool next = true) {
    Ui& ui = screen.ui;
    const auto place = [&](auto&& draw_panel) {
        const Rect r{x, y, w, draw_panel(screen, view, Rect{x, y, w, 0}, false)};
        panel(ui, r);
        static_cast<void>(draw_panel(screen, view, r, true));
        y = r.bottom() + 14;
    };
    // Nothing comes before feeling the cell; on a tall page what to do comes before what it may be.
    // So does how a cause is mended, once it is opened.
    if (!screen.state.mend->warm_asked || screen.state.mend->chosen != MendState::kNoCause ||
        ui.m.form != Form::Landscape) {
        if (next) {
            place(draw_next_panel);
        }
        place(draw_causes_panel);
    } else {
        place(draw_causes_panel);
        place(draw_next_panel);
    }
    if (screen.state.mend->warm_asked && view.can_take_back) {
        int tapped = -1;
        y += mend_two(screen, {x, y, w, 0},
                      {"mend/undo", {.label = ui.words("mend_place.take_back"), .icon = Icon::Undo}},
                      {"mend/none", {.label = ui.words("mend_place.none_fits"), .icon = Icon::Eye}}, false,
                      true, tapped) +
             14;
        if (tapped >= 0) {
            act(screen, tapped == 0 ? MendCommand(mend::TakeBack{}) : MendCommand(mend::NoneFits{}));
        }
    }
    return y;
}

void draw_beside(Screen& screen, const MendView& view, const Regions& regions) {
    Ui& ui = screen.ui;
    Rect left = regions.card;
    left.cut_top(14);
    left.cut_bottom(12);
    left.cut_top(draw_head(ui, view, left) + 2);
    const float explained = std::min(explanation_height(ui, view, left.w), left.h * 0.4f);
    draw_explanation(ui, view, left.cut_bottom(explained));
    left.cut_bottom(14);
    if (const float asks = pressing_height(ui, view, left.w); asks > 0) {
        draw_pressing(screen, view, left.cut_bottom(asks));
        left.cut_bottom(10);
    }
    draw_counts(screen, view, left.cut_bottom(64 * std::max(1.0f, ui.m.text_scale)));
    left.cut_bottom(6);
    draw_mend_card(screen, view, left);

    const Rect room{regions.panel.x - 8, regions.panel.y - 10, regions.panel.w + 16, regions.panel.h + 22};
    Scroll scroll(ui, "mend", room, ui.theme().table);
    const float end = draw_panels(screen, view, regions.panel.x, scroll.top() + 10, regions.panel.w);
    scroll.done(end - scroll.top());
}

void draw_stacked(Screen& screen, const MendView& view, const Regions& regions) {
    Ui& ui = screen.ui;
    const float margin = ui.m.phone() ? 12.0f : 28.0f;
    Scroll scroll(ui, "mend", regions.page, ui.theme().table);
    const float x = regions.page.x + margin;
    const float w = regions.page.w - 2 * margin;
    float y = scroll.top() + 12;
    y += draw_head(ui, view, {x, y, w, 9000});
    const bool cell_first = !screen.state.mend->warm_asked;
    if (cell_first) {
        const Rect r{x, y + 10, w, draw_next_panel(screen, view, {x, y + 10, w, 0}, false)};
        panel(ui, r);
        static_cast<void>(draw_next_panel(screen, view, r, true));
        y = r.bottom() + 12;
    }
    const Card& card = screen.state.build->record.as_built;
    const float ratio = static_cast<float>(card.sheet.height_mm / card.sheet.width_mm);
    const Rect board{x, y, w, std::min((w - 50) * ratio + 50, 520.0f)};
    draw_mend_card(screen, view, board);
    y = board.bottom() + 8;
    const float counts = 60 * std::max(1.0f, ui.m.text_scale);
    draw_counts(screen, view, {x, y, w, counts});
    y += counts + 12;
    if (const float asks = pressing_height(ui, view, w); asks > 0) {
        draw_pressing(screen, view, {x, y, w, asks});
        y += asks + 10;
    }
    const float explained = explanation_height(ui, view, w);
    draw_explanation(ui, view, {x, y, w, explained});
    y += explained + 14;
    y = draw_panels(screen, view, x, y, w, !cell_first);
    scroll.done(y + 4 - scroll.top());
}

} // namespace

void draw_mend(Screen& screen) {
    if (!screen.state.build || !screen.state.mend) {
        draw_first_help(screen);
        return;
    }
    const MendView view = make_mend_view(*screen.state.mend, screen.ui.words);
    const Regions regions = make_regions(screen.ui.m, {.actions = false, .panel_w = 536});
    // Large letters need the width: then all stands in one column that scrolls.
    if (screen.ui.m.form == Form::Landscape && screen.ui.m.text_scale < 1.4f) {
        draw_beside(screen, view, regions);
    } else {
        draw_stacked(screen, view, regions);
    }
    draw_top_bar(screen, regions.top, "");
}

} // namespace lanternleaf
