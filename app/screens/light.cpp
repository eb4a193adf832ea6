// The Light sheet: the card after dark, over any place and always by night: the preview and the slider from a
// fresh cell to a tired one. The plot and the figures beside them are in light_figures.cpp.
#include "screens/light.h"

#include "circuit/seen.h"
#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "controls/segmented.h"
#include "controls/slider.h"
#include "paint/board.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr char kSlider[] = "light/hours";
constexpr Colour kMoonlight{70, 84, 112, 255}; ///< what a lit room's colours are multiplied by
constexpr double kLeastHalo = 0.02;

// The front picture, darkened; without one the card's lines on dark paper.
void draw_front(Screen& screen, const LightSheet& light, const Rect& r) {
    Pen& pen = screen.ui.pen();
    const Picture front = screen.pictures.get(light.picture);
    if (front.there()) {
        draw_picture(pen, front, r, kMoonlight, 4);
        return;
    }
    pen.fill(r, screen.ui.theme().well, 4);
    if (light.card.sheet.art) {
        const Art& art = *light.card.sheet.art;
        const Picture lines = screen.pictures.pencil(light.card_folder + "/" + art.file);
        const float ppm = r.w / static_cast<float>(light.card.sheet.width_mm);
        const float w = static_cast<float>(art.width_mm) * ppm;
        const float h = lines.w > 0 ? w * lines.h / lines.w : 0;
        draw_picture(
            pen, lines,
            {r.x + static_cast<float>(art.at_mm.x) * ppm, r.y + static_cast<float>(art.at_mm.y) * ppm, w, h},
            screen.ui.theme().edge);
    }
}

void draw_halos(Screen& screen, const LightSheet& light, const LightView& view, const Rect& r) {
    Pen& pen = screen.ui.pen();
    const double ppm = static_cast<double>(r.w) / light.card.sheet.width_mm;
    for (const LightShare& share : view.lights) {
        if (share.halo < kLeastHalo) {
            continue;
        }
        const Point at{r.x + static_cast<float>(share.at_mm.x * ppm),
                       r.y + static_cast<float>(share.at_mm.y * ppm)};
        const auto radius = static_cast<float>((5.0 + 11.0 * std::sqrt(share.halo)) * ppm);
        const auto peak = static_cast<float>(0.35 + 0.65 * share.halo);
        const Colour glow = glow_colour(share.glow);
        pen.halo(at, radius, glow, peak);
        // The light itself, near white where it is strong.
        const Colour core = mixed(glow, {255, 255, 255, 255}, 0.65f);
        pen.halo(at, static_cast<float>(4.2 * ppm), core, static_cast<float>(share.halo));
    }
}

void draw_traces(Screen& screen, const LightSheet& light, const LightView& view, const Rect& r) {
    Ui& ui = screen.ui;
    const Vec2 sheet_mm{light.card.sheet.width_mm, light.card.sheet.height_mm};
    const Viewport viewport = fitted(r, sheet_mm, false);
    BoardOptions options;
    options.words = ui.words;
    options.ppm = viewport.ppm;
    options.label_em = static_cast<double>(ui.m.type(Type::CardLabel).size);
    options.note_em = static_cast<double>(ui.m.type(Type::CardNote).size);
    for (const LightShare& share : view.lights) {
        options.glow.push_back(share.halo);
    }
    BoardProgress progress = finished_board(light.card, light.conductors);
    progress.cell_in = true;
    const BoardView board = make_board_view(light.card, light.parts, light.conductors, progress, options);
    BoardLook look;
    look.label_em = static_cast<float>(options.label_em);
    look.note_em = static_cast<float>(options.note_em);
    if (board.art) {
        const Picture art = screen.pictures.pencil(light.card_folder + "/" + board.art->file);
        look.art = art.texture;
        look.art_ratio = art.w > 0 ? art.h / art.w : 1.0f;
    }
    draw_board(ui.pen(), ui.theme(), board, viewport, look);
}

float draw_head(Screen& screen, const LightSheet& light, const Rect& page, float y) {
    Ui& ui = screen.ui;
    const float side = ui.m.target;
    Rect row{page.x, y, page.w, side};
    if (icon_button(ui, "light/close", row.cut_right(side),
                    {.icon = Icon::Cross, .spoken = ui.words("sheet.close")})) {
        screen.say(command::CloseLight{});
    }
    row.cut_right(10);
    const Segment views[] = {{ui.words("light.front"), Icon::Photo, "front"},
                             {ui.words("light.traces"), Icon::Strip, "traces"}};
    const float width = segmented_width(ui, views);
    const bool own_row = ui.m.phone() || row.w < width + 170;
    const TextStyle head = ui.m.type(Type::H1);
    Rect choice = own_row ? Rect{page.x, row.bottom() + 8, page.w, side} : row.cut_right(width);
    ui.pen().text_in(row, ui.fonts().fitted(ui.words("light.after_dark"), head, row.w), head, ui.theme().ink,
                     Align::Left);
    int index = light.traces ? 1 : 0;
    if (segmented(ui, "light/view", choice, views, index)) {
        screen.say(command::ShowLightTraces{index == 1});
    }
    return own_row ? 2 * side + 8 : side;
}

void draw_preview(Screen& screen, const LightSheet& light, const LightView& view, const Rect& r) {
    Ui& ui = screen.ui;
    ui.add({.name = "light/preview", .role = Role::Note, .label = ui.words("light.preview"), .rect = r});
    if (light.traces) {
        draw_traces(screen, light, view, r);
        return;
    }
    ui.pen().push_clip(r);
    draw_front(screen, light, r);
    draw_halos(screen, light, view, r);
    ui.pen().pop_clip();
    ui.pen().outline(r, ui.theme().edge, 1.5f, 4);
}

SliderLook slider_look(const LightView& view, bool narrow, const Words& words) {
    SliderLook look;
    look.label = words("light.hours");
    look.high = static_cast<float>(view.most_h);
    look.step = static_cast<float>(kLightStep_h / 5);
    look.key_step = static_cast<float>(kLightStep_h);
    look.value_text = view.after;
    for (std::size_t i = 0; i < view.ticks.size(); ++i) {
        // A narrow slider names every other tick, always the first and, when even, the last.
        const bool named = !narrow || view.ticks.size() < 5 || i % 2 == 0;
        look.marks.push_back(
            {static_cast<float>(view.ticks[i].first), named ? view.ticks[i].second : std::string()});
    }
    look.value_text.erase(std::remove(look.value_text.begin(), look.value_text.end(), '*'),
                          look.value_text.end());
    return look;
}

float slider_panel_height(const Ui& ui, const LightView& view) {
    const float words = ui.m.type(Type::Body).lead * (ui.m.phone() ? 2.0f : 1.0f);
    return 2 * ui.m.panel_pad_y + words + 4 + slider_height(ui, slider_look(view, ui.m.phone(), ui.words));
}

// Arrow keys belong to the slider as long as no other control is shown to have the focus.
void take_arrows(Ui& ui, float& hours, float most) {
    if (!ui.focused(ui.focus())) {
        ui.set_focus(kSlider);
    }
    ui.arrows_in = kSlider;
    if (ui.focus() != kSlider || ui.focused(kSlider)) {
        return; // the slider itself takes them
    }
    const auto step = static_cast<float>(kLightStep_h);
    if (ui.take_key(Key::Left) || ui.take_key(Key::Down)) {
        hours = std::max(0.0f, hours - step);
    }
    if (ui.take_key(Key::Right) || ui.take_key(Key::Up)) {
        hours = std::min(most, hours + step);
    }
}

void draw_slider(Screen& screen, const LightSheet& light, const LightView& view, const Rect& r) {
    Ui& ui = screen.ui;
    panel(ui, r);
    Rect inside = r.shrunk(ui.m.panel_pad_x, ui.m.panel_pad_y);
    const TextStyle body = ui.m.type(Type::Body);
    Rect words = inside.cut_top(body.lead);
    ui.pen().text({words.x, words.y}, ui.words("light.fresh"), body.bold(), ui.theme().ink);
    ui.pen().text({words.right(), words.y}, ui.words("light.tired"), body.bold(), ui.theme().ink,
                  Align::Right);
    if (ui.m.phone()) {
        words = inside.cut_top(body.lead);
    }
    ui.pen().paragraph({words.x, words.y}, words.w, view.after, body, ui.theme().ink, Align::Centre);
    inside.cut_top(4);
    auto hours = static_cast<float>(light.hours);
    const float before = hours;
    take_arrows(ui, hours, static_cast<float>(view.most_h));
    slider(ui, kSlider, inside, slider_look(view, ui.m.phone(), ui.words), hours);
    if (hours != before) {
        screen.say(command::SetLightHours{static_cast<double>(hours)});
    }
}

float sheet_ratio(const Card& card) {
    return static_cast<float>(card.sheet.height_mm / std::max(card.sheet.width_mm, 1.0));
}

// Head, preview and slider from y down; the preview no taller than `most_h`. Gives the height.
float draw_left(Screen& screen, const LightSheet& light, const LightView& view, const Rect& page, float y,
                float most_h) {
    const Ui& ui = screen.ui;
    const float top = y;
    y += draw_head(screen, light, page, y) + ui.m.gap;
    const float slider_h = view.trouble.empty() ? slider_panel_height(ui, view) + ui.m.gap : 0.0f;
    const float ratio = sheet_ratio(light.card);
    const float h = std::max(120.0f, std::min(page.w * ratio, most_h - (y - top) - slider_h));
    const float w = std::min(page.w, h / ratio);
    draw_preview(screen, light, view, {page.x + (page.w - w) / 2, y, w, h});
    y += h + ui.m.gap;
    if (view.trouble.empty()) {
        draw_slider(screen, light, view, {page.x, y, page.w, slider_h - ui.m.gap});
        y += slider_h;
    }
    return y - top;
}

} // namespace

Colour glow_colour(const Rgb& glow) {
    const auto channel = [](double v) {
        return static_cast<std::uint8_t>(std::lround(std::clamp(v, 0.0, 1.0) * 255.0));
    };
    return {channel(glow.red), channel(glow.green), channel(glow.blue), 255};
}

void draw_light(Screen& screen) {
    Ui& ui = screen.ui;
    const LightSheet& light = *screen.state.light;
    const LightView view = make_light_view(light, screen.ui.words);
    const Regions regions = make_regions(ui.m, {.actions = false, .panel_w = 496});
    if (ui.m.form == Form::Landscape) {
        const Rect& left = regions.card;
        const float y = regions.panel.y;
        draw_left(screen, light, view, left, y, regions.page.bottom() - y - 8);
        Scroll scroll(ui, "light/figures", {regions.panel.x, regions.page.y, regions.panel.w, regions.page.h},
                      ui.theme().table);
        const float top = scroll.top() + (regions.panel.y - regions.page.y);
        scroll.done(draw_light_figures(screen, view, regions.panel, top) + top - scroll.top() + 12);
    } else {
        const Rect page = regions.page.shrunk(ui.m.phone() ? 10.0f : ui.m.page_margin, 0);
        Scroll scroll(ui, "light/figures", regions.page, ui.theme().table);
        float y = scroll.top() + ui.m.gap;
        y += draw_left(screen, light, view, page, y, 1e6f);
        y += draw_light_figures(screen, view, page, y);
        scroll.done(y + 16 - scroll.top());
    }
    draw_top_bar(screen, regions.top, light.card.title);
    if (screen.state.sheet == SheetKind::none && ui.take_key(Key::Escape)) {
        screen.say(command::CloseLight{});
    }
}

} // namespace lanternleaf
