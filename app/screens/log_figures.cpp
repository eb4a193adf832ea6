// The Log's panel over the whole library, and two builds side by side.
#include "controls/bars.h"
#include "controls/button.h"
#include "controls/panel.h"
#include "screens/log.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

std::string in_short(const LibraryFigures& figures, int unreadable, const Words& words) {
    std::string text = words("log.builds", {{"n", figures.builds}, {"finished", figures.finished}});
    if (figures.finished > 0) {
        text += ' ';
        text += words("log.at_first_try", {{"percent", words.percent(figures.first_pass_share())},
                                           {"time", spoken_span(figures.median_build_s)}});
    }
    if (unreadable > 0) {
        text += ' ';
        text += words("log.unreadable", {{"n", unreadable}});
    }
    return text;
}

// "Tape: 1.9 m planned, 2.1 m used": two bars to one scale.
float draw_tape(Ui& ui, const Rect& r, float y, const LibraryFigures& figures) {
    const TextStyle small = ui.m.type(Type::Small);
    const double most = std::max({figures.planned_tape_mm, figures.used_tape_mm, 1.0});
    const float label_w = std::min(ui.m.with_text(210), r.w * 0.5f);
    const auto bar_of = [&](const char* key, double mm, Colour colour) {
        // Rolls are sold by the metre; inches are read as inches.
        const std::string length = ui.words.unit() == LengthUnit::inch
                                       ? ui.words.mm(mm)
                                       : ui.words("log.metres", {{"m", ui.words.number(mm / 1000.0, 2)}});
        const std::string words = ui.words(key, {{"length", length}});
        ui.pen().text_in({r.x, y, label_w, 26}, words, small, ui.theme().ink, Align::Left);
        share_bar(ui, {r.x + label_w, y + 7, r.w - label_w, 12}, static_cast<float>(mm / most), colour);
        y += std::max(28.0f, small.lead + 4);
    };
    bar_of("log.tape_planned", figures.planned_tape_mm, ui.theme().cu);
    bar_of("log.tape_used", figures.used_tape_mm, ui.theme().cu_lo);
    return y;
}

} // namespace

float draw_log_figures(Screen& screen, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const FiguresRun& run = screen.state.log_page.figures;
    const LibraryFigures figures = run.count.figures();
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const float width = r.w - 2 * ui.m.panel_pad_x;
    const std::string words =
        run.done() ? in_short(figures, run.unreadable, ui.words) : ui.words("log.counting");
    const float row_h = std::max(30.0f, small.lead + 8);
    const float head_h = ui.m.type(Type::H2).lead + 6 + ui.fonts().wrapped_height(words, body, width) + 10;
    const float tape_h = figures.finished > 0 ? 2 * std::max(28.0f, small.lead + 4) + 18 : 0;
    const float height = 28 + head_h + static_cast<float>(kStepCount + 1) * row_h + tape_h;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 14);
    ui.add({.name = "log/figures",
            .role = Role::Note,
            .label = ui.words("log.all_spoken", {{"words", words}}),
            .rect = box});
    inside.cut_top(draw_heading(ui, inside, inside.y, ui.words("log.all_builds"), Type::H2) + 6);
    inside.cut_top(ui.pen().paragraph({inside.x, inside.y}, inside.w, words, body, ui.theme().ink) + 10);
    const bool narrow = inside.w < 560;
    const float name_w = narrow ? inside.w * 0.44f : inside.w * 0.34f;
    const float time_w = ui.m.with_text(narrow ? 74 : 130);
    const float percent_w = ui.m.with_text(64);
    Rect head = inside.cut_top(row_h);
    ui.pen().text_in({head.x + name_w, head.y, head.w - name_w - time_w, head.h},
                     narrow ? ui.words("log.first_try_brief") : ui.words("log.first_try"), small,
                     ui.theme().ink2, Align::Left);
    ui.pen().text_in({head.right() - time_w, head.y, time_w, head.h},
                     narrow ? ui.words("log.time_brief") : ui.words("log.middle_time"), small,
                     ui.theme().ink2, Align::Right);
    for (int i = 0; i < kStepCount; ++i) {
        const StepFigures& step = figures.steps[static_cast<std::size_t>(i)];
        Rect row = inside.cut_top(row_h);
        const bool hardest = figures.hardest_step == i + 1;
        std::string name = std::to_string(i + 1);
        name += ' ';
        name += title_of(static_cast<StepId>(i + 1), ui.words);
        const TextStyle style = hardest ? small.bold() : small;
        Rect label = row.cut_left(name_w);
        if (hardest) { // a shape besides the weight: the step that is stopped most
            draw_icon(ui.pen(), Icon::Caution, {label.right() - 18, label.centre().y}, 20, ui.theme().ochre);
            label.cut_right(32);
        }
        ui.pen().text_in(label, ui.fonts().fitted(name, style, label.w - 6), style, ui.theme().ink,
                         Align::Left);
        ui.pen().text_in(row.cut_right(time_w), step.median_s > 0 ? spoken_span(step.median_s) : "", style,
                         ui.theme().ink, Align::Right);
        const Rect percent = row.cut_right(percent_w);
        if (step.reached > 0) {
            const double share = first_pass_share(step);
            share_bar(ui, {row.x, row.centre().y - 6, row.w, 12}, static_cast<float>(share), ui.theme().leaf);
            ui.pen().text_in(percent, ui.words.percent(share), style, ui.theme().ink, Align::Right);
        }
    }
    if (figures.finished > 0) {
        divider(ui, {inside.x, inside.y + 8}, {inside.right(), inside.y + 8});
        draw_tape(ui, inside, inside.y + 16, figures);
    }
    return height;
}

namespace {

// A cell of the comparison; what differs has a diamond before it and stands bold, besides its tint.
float draw_side(Ui& ui, const Rect& r, float y, const StepSide& side, const StepDiffers& differs) {
    const TextStyle small = ui.m.type(Type::Small);
    const float top = y;
    const auto words = [&](const std::string& text, bool marked) {
        if (text.empty()) {
            return;
        }
        if (marked) {
            draw_icon(ui.pen(), Icon::Differ, {r.x + 9, y + small.lead / 2}, 18, ui.theme().ochre);
        }
        y +=
            ui.pen().paragraph({r.x + 24, y}, r.w - 28, text, marked ? small.bold() : small, ui.theme().ink) +
            2;
    };
    words(side.outcome, differs.outcome);
    words(side.time, differs.time);
    words(side.reading, differs.reading);
    words(side.stops.empty() && differs.stops ? ui.words("log.no_stop") : side.stops, differs.stops);
    for (const std::string& change : side.changes) {
        words(change, differs.changes);
    }
    if (side.changes.empty() && differs.changes) {
        words(ui.words("log.nothing_changed"), true);
    }
    return y - top;
}

float side_height(Ui& ui, float width, const StepSide& side, const StepDiffers& differs) {
    const TextStyle small = ui.m.type(Type::Small);
    float height = 0;
    const auto words = [&](const std::string& text) {
        height += text.empty() ? 0 : ui.fonts().wrapped_height(text, small.bold(), width - 28) + 2;
    };
    words(side.outcome);
    words(side.time);
    words(side.reading);
    words(side.stops.empty() && differs.stops ? ui.words("log.no_stop") : side.stops);
    for (const std::string& change : side.changes) {
        words(change);
    }
    words(side.changes.empty() && differs.changes ? ui.words("log.nothing_changed") : "");
    return height;
}

} // namespace

float draw_log_compare(Screen& screen, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const LogCompare& compared = *screen.state.log_page.compare;
    const TextStyle body = ui.m.type(Type::Body);
    const float start = y;
    y += draw_heading(ui, r, y, ui.words("log.two_builds", {{"card", compared.title}}), Type::H1) + 4;
    y += ui.pen().paragraph({r.x, y}, r.w, compared.rows.summary, body, ui.theme().ink2) + 14;
    const bool narrow = r.w < 620;
    const float width = r.w - 2 * ui.m.panel_pad_x;
    const float name_w = narrow ? 0 : width * 0.28f;
    const float side_w = (width - name_w) / 2;
    const float title_h = narrow ? body.lead + 6 : 0;
    const float head_h = body.lead * 2 + 14;
    float height = head_h + 24;
    std::vector<float> rows;
    for (const StepCompared& step : compared.rows.steps) {
        const float sides = std::max(side_height(ui, side_w, step.left, step.differs),
                                     side_height(ui, side_w, step.right, step.differs));
        rows.push_back(std::max(sides, body.lead * (narrow ? 1.0f : 2.0f)) + title_h + 20);
        height += rows.back();
    }
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 12);
    Rect head = inside.cut_top(head_h);
    head.cut_left(name_w);
    const auto head_of = [&](const Rect& cell, const std::string& name, const std::string& outcome) {
        ui.pen().text({cell.x + 24, cell.y}, name, body.bold(), ui.theme().ink);
        ui.pen().text({cell.x + 24, cell.y + body.lead},
                      ui.fonts().fitted(outcome, ui.m.type(Type::Small), cell.w - 28), ui.m.type(Type::Small),
                      ui.theme().ink2);
    };
    head_of({head.x, head.y, side_w, head.h}, compared.left, compared.rows.left_outcome);
    head_of({head.x + side_w, head.y, side_w, head.h}, compared.right, compared.rows.right_outcome);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const StepCompared& step = compared.rows.steps[i];
        Rect row = inside.cut_top(rows[i]);
        if (step.differs.any()) {
            ui.pen().fill(row.shrunk(-10, 2), ui.theme().ochre_tint, 10);
        }
        divider(ui, {row.x, row.y}, {row.right(), row.y});
        ui.add({.name = "log/compare/" + std::to_string(step.number),
                .role = Role::Note,
                .label = ui.words(step.differs.any() ? "log.step_differs" : "log.step_alike",
                                  {{"step", step.title}}),
                .rect = row});
        std::string title = std::to_string(step.number);
        title += ' ';
        title += step.title;
        row.cut_top(10);
        if (narrow) {
            ui.pen().text(Point{row.x, row.y}, title, body.bold(), ui.theme().ink);
            row.cut_top(title_h);
        } else {
            const float h = ui.pen().paragraph({row.x, row.y}, name_w - 12, title, body, ui.theme().ink);
            if (!step.check.empty()) {
                ui.pen().text({row.x, row.y + h},
                              ui.fonts().fitted(step.check, ui.m.type(Type::Small), name_w - 12),
                              ui.m.type(Type::Small), ui.theme().ink2);
            }
        }
        row.cut_left(name_w);
        draw_side(ui, {row.x, row.y, side_w, row.h}, row.y, step.left, step.differs);
        draw_side(ui, {row.x + side_w, row.y, side_w, row.h}, row.y, step.right, step.differs);
    }
    return y + height - start;
}

} // namespace lanternleaf
