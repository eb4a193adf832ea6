// The figures of the Light sheet: brightness over time with its key, each light's share at the slider's
// hours, how long it lasts, and what would help most.
#include "screens/light.h"

#include "controls/bars.h"
#include "controls/panel.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr float kPlotLine = 3;
constexpr int kPercentLines = 4;

// One after another for the curves; the first is solid.
void draw_curve(Pen& pen, const std::vector<Point>& points, Colour colour, int dash) {
    switch (dash % 5) {
    case 0:
        pen.stroke(points, colour, kPlotLine);
        break;
    case 1:
        pen.dashed(points, colour, kPlotLine, {10, 6});
        break;
    case 2:
        pen.dashed(points, colour, kPlotLine, {3, 4});
        break;
    case 3:
        pen.dashed(points, colour, kPlotLine, {14, 5, 3, 5});
        break;
    default:
        pen.dashed(points, colour, kPlotLine, {20, 8});
        break;
    }
}

// Deep colours are lifted so that a line stands out from the panel.
Colour line_colour(const LightCurve& curve) {
    return mixed(glow_colour(curve.glow), {255, 255, 255, 255}, 0.2f);
}

float key_row_height(const Ui& ui) {
    return ui.m.type(Type::Small).lead * 2 + 8;
}

float key_width(Ui& ui, const LightView& view) {
    const TextStyle small = ui.m.type(Type::Small);
    float width = 0;
    for (const LightCurve& curve : view.curves) {
        width =
            std::max({width, ui.fonts().width(curve.ids, small.bold()), ui.fonts().width(curve.what, small)});
    }
    return std::min(width, 150 * std::max(1.0f, ui.m.text_scale)) + 44;
}

void draw_key(Ui& ui, const LightView& view, const Rect& r, int columns) {
    const TextStyle small = ui.m.type(Type::Small);
    const float row_h = key_row_height(ui);
    const float w = r.w / static_cast<float>(columns);
    int i = 0;
    for (const LightCurve& curve : view.curves) {
        const float x = r.x + static_cast<float>(i % columns) * w;
        const float y = r.y + static_cast<float>(i / columns) * row_h;
        draw_curve(ui.pen(), {{x, y + small.lead / 2}, {x + 34, y + small.lead / 2}}, line_colour(curve),
                   curve.dash);
        const float room = w - 44;
        ui.pen().text({x + 42, y}, ui.fonts().fitted(curve.ids, small.bold(), room), small.bold(),
                      ui.theme().ink);
        ui.pen().text({x + 42, y + small.lead}, ui.fonts().fitted(curve.what, small, room), small,
                      ui.theme().ink2);
        ++i;
    }
}

void draw_axes(Ui& ui, const LightView& view, const Rect& plot) {
    const TextStyle small = ui.m.type(Type::Small);
    for (int i = 0; i <= kPercentLines; ++i) {
        const float share = static_cast<float>(i) / kPercentLines;
        const float y = plot.bottom() - plot.h * share;
        ui.pen().line({plot.x, y}, {plot.right(), y}, ui.theme().line, 1);
        ui.pen().text({plot.x - 10, y - small.lead / 2}, std::to_string(25 * i) + " %", small,
                      ui.theme().ink2, Align::Right);
    }
    const float every = plot.w / static_cast<float>(std::max<std::size_t>(view.ticks.size() - 1, 1));
    const bool skip = every < ui.fonts().width("3000 h", small) + 8;
    for (std::size_t i = 0; i < view.ticks.size(); ++i) {
        const float x = plot.x + plot.w * static_cast<float>(view.ticks[i].first / view.most_h);
        ui.pen().line({x, plot.bottom()}, {x, plot.bottom() + 6}, ui.theme().edge, 1.5f);
        if (!skip || i % 2 == 0) {
            ui.pen().text({x, plot.bottom() + 8}, view.ticks[i].second, small, ui.theme().ink2,
                          Align::Centre);
        }
    }
}

void draw_curves(Ui& ui, const LightView& view, double hours, const Rect& plot) {
    const auto place = [&](std::size_t sample, double seen) {
        return Point{plot.x + plot.w * static_cast<float>(sample) / (kLightSamples - 1),
                     plot.bottom() - plot.h * static_cast<float>(std::clamp(seen, 0.0, 1.0))};
    };
    const float x = plot.x + plot.w * static_cast<float>(hours / std::max(view.most_h, 1e-9));
    ui.pen().line({x, plot.y - 6}, {x, plot.bottom()}, ui.theme().ink, 2);
    for (auto curve = view.curves.rbegin(); curve != view.curves.rend(); ++curve) {
        std::vector<Point> points;
        for (std::size_t i = 0; i < curve->seen.size(); ++i) {
            points.push_back(place(i, curve->seen[i]));
        }
        draw_curve(ui.pen(), points, line_colour(*curve), curve->dash);
    }
    for (const LightCurve& curve : view.curves) {
        const Point at{x, plot.bottom() - plot.h * static_cast<float>(std::clamp(curve.now, 0.0, 1.0))};
        ui.pen().disc(at, 7.5f, ui.theme().panel);
        ui.pen().disc(at, 5.5f, line_colour(curve));
    }
}

float draw_plot(Screen& screen, const LightView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle small = ui.m.type(Type::Small);
    const TextStyle head = ui.m.type(Type::H2);
    const float inner = r.w - 2 * ui.m.panel_pad_x;
    const float key_w = key_width(ui, view);
    const bool beside = inner > key_w + 300;
    const int columns = beside ? 1 : std::max(1, std::min(3, static_cast<int>(inner / key_w)));
    const int rows = (static_cast<int>(view.curves.size()) + columns - 1) / columns;
    const float key_h = static_cast<float>(rows) * key_row_height(ui);
    const float words_h = ui.fonts().wrapped_height(view.plot_words, small, inner);
    const float plot_h = std::max(ui.m.phone() ? 190.0f : 232.0f, beside ? key_h - 12 : 0.0f);
    const float height = 2 * ui.m.panel_pad_y + head.lead + words_h + 18 + plot_h + 12 + small.lead +
                         (beside ? 0 : key_h + 10);
    panel(ui, {r.x, y, r.w, height});
    Rect inside = Rect{r.x, y, r.w, height}.shrunk(ui.m.panel_pad_x, ui.m.panel_pad_y);
    ui.pen().text({inside.x, inside.y}, ui.words("light.over_time"), head, ui.theme().ink);
    inside.cut_top(head.lead);
    ui.pen().paragraph({inside.x, inside.y}, inner, view.plot_words, small, ui.theme().ink2);
    inside.cut_top(words_h + 18);
    const float percent_w = ui.fonts().width("100 %", small) + 12;
    const float tail = ui.fonts().width(view.ticks.back().second, small) / 2 + 2;
    const Rect plot{inside.x + percent_w, inside.y,
                    inside.w - percent_w - (beside ? key_w + std::max(16.0f, tail) : tail), plot_h};
    ui.add({.name = "light/plot",
            .role = Role::Note,
            .label = ui.words("light.over_time"),
            .rect = plot,
            .value = view.after});
    draw_axes(ui, view, plot);
    draw_curves(ui, view, screen.state.light->hours, plot);
    const Rect key = beside ? Rect{inside.right() - key_w, plot.y, key_w, key_h}
                            : Rect{inside.x, plot.bottom() + 12 + small.lead + 10, inside.w, key_h};
    draw_key(ui, view, key, columns);
    return height;
}

float shares_height(const Ui& ui, const LightView& view) {
    const TextStyle body = ui.m.type(Type::Body);
    const float row_h = body.lead + (view.lights.size() > 9 ? 0.0f : 5.0f);
    return 2 * ui.m.panel_pad_y + body.lead + 6 + static_cast<float>(view.lights.size()) * row_h;
}

void draw_shares(Screen& screen, const LightView& view, const Rect& r) {
    Ui& ui = screen.ui;
    panel(ui, r);
    Rect inside = r.shrunk(ui.m.panel_pad_x - 2, ui.m.panel_pad_y);
    const TextStyle body = ui.m.type(Type::Body);
    const float row_h = body.lead + (view.lights.size() > 9 ? 0.0f : 5.0f);
    const Rect head = inside.cut_top(body.lead + 6);
    ui.pen().text({head.x, head.y}, view.at_head, body.bold(), ui.theme().ink);
    float id_w = 0;
    for (const LightShare& share : view.lights) {
        id_w = std::max(id_w, ui.fonts().width(share.id, body.bold()));
    }
    const float percent_w = ui.fonts().width("100 %", body);
    for (const LightShare& share : view.lights) {
        Rect row = inside.cut_top(row_h);
        ui.add({.name = "light/share/" + share.id,
                .role = Role::Note,
                .label = share.id,
                .rect = row,
                .value = share.percent});
        ui.pen().text_in(row.cut_left(id_w + 12), share.id, body.bold(), ui.theme().ink, Align::Left);
        ui.pen().text_in(row.cut_right(percent_w + 4), share.percent, body, ui.theme().ink, Align::Right);
        row.cut_right(10);
        share_bar(ui, {row.x, row.centre().y - 7, row.w, 14}, static_cast<float>(share.seen),
                  glow_colour(share.glow));
    }
}

float hours_height(const Ui& ui, const LightView& view, float w) {
    const TextStyle small = ui.m.type(Type::Small);
    const float inner = w - 28;
    float height = 2 * ui.m.panel_pad_y + small.lead + ui.m.type(Type::Figure).lead + 4;
    height += ui.fonts().wrapped_height(view.figure_words, small, inner) + 12;
    for (const std::string& line : view.counts) {
        height += ui.fonts().wrapped_height(line, small, inner) + 8;
    }
    return height;
}

void draw_hours(Screen& screen, const LightView& view, const Rect& r) {
    Ui& ui = screen.ui;
    panel(ui, r);
    const TextStyle small = ui.m.type(Type::Small);
    Rect inside = r.shrunk(14, ui.m.panel_pad_y);
    ui.pen().text_in(inside.cut_top(small.lead), ui.words("light.hours"), small, ui.theme().ink2);
    TextStyle figure = ui.m.type(Type::Figure);
    const float wide = ui.fonts().width(view.figure, figure);
    const float lead = figure.lead;
    if (wide > inside.w) {
        figure = figure.sized(std::max(18.0f, figure.size * inside.w / wide * 0.98f));
    }
    ui.pen().text_in(inside.cut_top(lead + 4), view.figure, figure, ui.theme().ink);
    inside.cut_top(ui.pen().paragraph({inside.x, inside.y}, inside.w, view.figure_words, small,
                                      ui.theme().ink2, Align::Centre) +
                   6);
    divider(ui, {inside.x, inside.y}, {inside.right(), inside.y});
    inside.cut_top(6);
    for (const std::string& line : view.counts) {
        inside.cut_top(
            ui.pen().paragraph({inside.x, inside.y}, inside.w, line, small, ui.theme().ink, Align::Centre) +
            8);
    }
    ui.add({.name = "light/figure",
            .role = Role::Note,
            .label = ui.words("light.hours"),
            .rect = r,
            .value = view.figure});
}

float draw_helps(Screen& screen, const LightView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const TextStyle head = ui.m.type(Type::H2);
    const float inner = r.w - 2 * ui.m.panel_pad_x;
    const std::string none = ui.words("light.nothing_helps");
    float height = 2 * ui.m.panel_pad_y + head.lead + 6;
    for (const std::string& help : view.helps) {
        height += ui.fonts().wrapped_height(help, body, inner - 38) + 10;
    }
    height += view.helps.empty() ? ui.fonts().wrapped_height(none, body, inner) + 8 : 0.0f;
    height += 10;
    for (const std::string& note : view.notes) {
        height += ui.fonts().wrapped_height(note, small, inner) + 4;
    }
    panel(ui, {r.x, y, r.w, height});
    Rect inside = Rect{r.x, y, r.w, height}.shrunk(ui.m.panel_pad_x, ui.m.panel_pad_y);
    ui.pen().text({inside.x, inside.y}, ui.words("light.would_help"), head, ui.theme().ink);
    inside.cut_top(head.lead + 6);
    int number = 0;
    for (const std::string& help : view.helps) {
        number_disc(ui, {inside.x + 13, inside.y + body.lead / 2}, 13, std::to_string(++number),
                    ui.theme().lamp_tint, ui.theme().ink, ui.theme().edge);
        inside.cut_top(ui.pen().paragraph({inside.x + 38, inside.y}, inner - 38, help, body, ui.theme().ink) +
                       10);
    }
    if (view.helps.empty()) {
        inside.cut_top(ui.pen().paragraph({inside.x, inside.y}, inner, none, body, ui.theme().ink) + 8);
    }
    divider(ui, {inside.x, inside.y}, {inside.right(), inside.y});
    inside.cut_top(8);
    for (const std::string& note : view.notes) {
        inside.cut_top(ui.pen().paragraph({inside.x, inside.y}, inner, note, small, ui.theme().ink2) + 4);
    }
    return height;
}

} // namespace

float draw_light_figures(Screen& screen, const LightView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    if (!view.trouble.empty()) {
        const TextStyle body = ui.m.type(Type::Body);
        const float inner = r.w - 2 * ui.m.panel_pad_x;
        const float height = 2 * ui.m.panel_pad_y + ui.fonts().wrapped_height(view.trouble, body, inner);
        panel(ui, {r.x, y, r.w, height});
        ui.pen().paragraph({r.x + ui.m.panel_pad_x, y + ui.m.panel_pad_y}, inner, view.trouble, body,
                           ui.theme().ink);
        return height;
    }
    const float top = y;
    const float gap = ui.m.gap;
    y += draw_plot(screen, view, r, y) + gap;
    if (r.w > 440 * std::max(1.0f, ui.m.text_scale)) {
        const float hours_w = (r.w - gap) * 0.44f;
        const float height = std::max(shares_height(ui, view), hours_height(ui, view, hours_w));
        draw_shares(screen, view, {r.x, y, r.w - gap - hours_w, height});
        draw_hours(screen, view, {r.right() - hours_w, y, hours_w, height});
        y += height + gap;
    } else {
        const float shares_h = shares_height(ui, view);
        const float hours_h = hours_height(ui, view, r.w);
        draw_hours(screen, view, {r.x, y, r.w, hours_h});
        draw_shares(screen, view, {r.x, y + hours_h + gap, r.w, shares_h});
        y += hours_h + shares_h + 2 * gap;
    }
    y += draw_helps(screen, view, r, y);
    return y - top;
}

} // namespace lanternleaf
