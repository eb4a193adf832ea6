// The panels of the board: builders, who needs help first; the cells; what the batch has shown so far.
#include "controls/button.h"
#include "controls/panel.h"
#include "screens/batch.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// Seven beads: a tick where a step is closed, lamp where it is open, an octagon where it is stopped.
void draw_beads(Ui& ui, const BatchRowView& row, Point at, float pitch) {
    const float radius = pitch * 0.39f;
    for (int step = 1; step <= kStepCount; ++step) {
        const Point centre{at.x + pitch * (static_cast<float>(step) - 0.5f), at.y};
        if (row.closed[static_cast<std::size_t>(step - 1)]) {
            ui.pen().disc(centre, radius, ui.theme().leaf);
            draw_icon(ui.pen(), Icon::Tick, centre, radius * 1.5f, ui.theme().on_leaf);
        } else if (step == row.step && row.state == BuilderState::stopped) {
            draw_icon(ui.pen(), Icon::Problem, centre, radius * 2.4f, ui.theme().plum);
        } else if (step == row.step && row.state != BuilderState::not_begun) {
            ui.pen().disc(centre, radius, ui.theme().lamp);
            ui.pen().ring(centre, radius, ui.theme().lamp_dk, 2);
        } else {
            ui.pen().dashed_ring(centre, radius, ui.theme().edge, 2, 4, 3);
        }
    }
}

Command on_action(const BatchRowView& row) {
    if (row.state == BuilderState::not_begun) {
        return command::Batch{batching::Begin{row.maker}};
    }
    return row.state == BuilderState::done ? Command(command::OpenLog{row.journal})
                                           : Command(command::Resume{row.journal});
}

void draw_row(Screen& screen, const BatchRowView& row, std::size_t index, Rect line, bool narrow) {
    Ui& ui = screen.ui;
    const std::string number = std::to_string(index + 1);
    const TextStyle who = ui.m.type(Type::H2).bold();
    const TextStyle body = ui.m.type(ui.m.phone() ? Type::Small : Type::Body);
    const bool help = row.state == BuilderState::stopped;
    const Rect whole = line;
    ui.add({.name = "batch/row/" + number,
            .role = Role::Item,
            .label = row.who + ". " + row.line,
            .rect = whole});
    if (help || ui.pressed("batch/row/" + number)) {
        const Rect tint{whole.x - 10, whole.y + 3, whole.w + 20, whole.h - 6};
        ui.pen().fill(tint, help ? ui.theme().plum_tint : ui.theme().well, 10);
        if (help) {
            ui.pen().fill({tint.x, tint.y, 8, tint.h}, ui.theme().plum, 4);
        }
    }
    if (index > 0) {
        divider(ui, {line.x, line.y}, {line.right(), line.y});
    }
    if (ui.tapped("batch/row/" + number)) {
        screen.say(command::Batch{batching::OpenBuilder{row.maker, row.build}});
    }
    line.cut_left(help ? 10.0f : 0.0f);
    const ButtonLook look{.label = row.action, .bold = help, .spoken = row.action + ": " + row.who};
    const float button_w = std::max(button_width(ui, look), ui.m.with_text(112));
    Rect right = line.cut_right(button_w);
    line.cut_right(14);
    const Rect button_r{right.x, (narrow ? whole.y + 8 : right.centre().y - ui.m.button_h / 2), right.w,
                        ui.m.button_h};
    const std::string name = "batch/go/" + number;
    if (row.state == BuilderState::done || row.state == BuilderState::not_begun
            ? button(ui, name, button_r, look)
            : leaf_button(ui, name, button_r, look)) {
        screen.say(on_action(row));
    }
    if (!narrow) {
        const float beads_w = 7 * ui.m.with_text(30);
        const Rect beads = line.cut_right(beads_w);
        line.cut_right(12);
        draw_beads(ui, row, {beads.x, beads.centre().y}, beads.w / 7);
    }
    const float text_h = ui.fonts().wrapped_height(row.line, body, line.w);
    const float bead_h = narrow ? ui.m.with_text(32) + 8 : 0;
    float y = whole.centre().y - (who.lead + text_h + bead_h) / 2;
    ui.pen().text({line.x, y}, ui.fonts().fitted(row.who, who, line.w), who, ui.theme().ink);
    y += who.lead;
    ui.pen().paragraph({line.x, y}, line.w, row.line, body, help ? ui.theme().plum : ui.theme().ink2);
    y += text_h + 8;
    if (narrow) {
        const float pitch = std::min(line.w / 7, ui.m.with_text(32));
        draw_beads(ui, row, {line.x, y + pitch / 2}, pitch);
    }
}

} // namespace

float draw_batch_rows(Screen& screen, const BatchView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const bool narrow = r.w < 620 * ui.m.text_scale;
    const TextStyle body = ui.m.type(ui.m.phone() ? Type::Small : Type::Body);
    const TextStyle who = ui.m.type(Type::H2).bold();
    const float inner = r.w - 2 * ui.m.panel_pad_x;
    const float button_w = ui.m.with_text(150);
    const float text_w = inner - button_w - 24 - (narrow ? 0 : 7 * ui.m.with_text(30) + 12);
    std::vector<float> heights;
    float sum = 0;
    for (const BatchRowView& row : view.rows) {
        const float words = who.lead + ui.fonts().wrapped_height(row.line, body, text_w) + 22;
        heights.push_back(std::max(ui.m.target + 16, words + (narrow ? ui.m.with_text(32) + 8 : 0)));
        sum += heights.back();
    }
    const bool empty = view.rows.empty();
    const float note_h =
        view.unreadable.empty() ? 0 : ui.fonts().wrapped_height(view.unreadable, body, inner) + 12;
    const float height = (empty ? body.lead + 40 : sum + 16) + note_h;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 8);
    if (empty) {
        ui.pen().text({inside.x, inside.y + 12}, ui.words("batch.nobody"), body, ui.theme().ink2);
    }
    for (std::size_t i = 0; i < view.rows.size(); ++i) {
        draw_row(screen, view.rows[i], i, inside.cut_top(heights[i]), narrow);
    }
    if (!view.unreadable.empty()) {
        ui.pen().paragraph({inside.x, box.bottom() - note_h}, inner, view.unreadable, body, ui.theme().plum);
    }
    return height;
}

float draw_batch_cells(Screen& screen, const BatchView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const TextStyle figure = ui.m.type(Type::Figure);
    const TextStyle head = ui.m.type(Type::H2);
    const float inner = r.w - 2 * ui.m.panel_pad_x;
    const ButtonLook look{.label = ui.words("batch.count_cells"), .icon = Icon::Cellsafe};
    const float words_h = ui.fonts().wrapped_height(view.cells_words, body, inner - 34);
    const float height = 28 + head.lead + 8 + figure.lead + small.lead + 12 + words_h + 14 + ui.m.button_h;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 14);
    ui.pen().text({inside.x, inside.y}, ui.words("batch.cells"), head, ui.theme().ink);
    inside.cut_top(head.lead + 8);
    Rect figures = inside.cut_top(figure.lead + small.lead + 12);
    const float third = figures.w / 3;
    const auto column = [&](int count, const char* word) {
        const Rect at = figures.cut_left(third);
        ui.pen().text({at.x, at.y}, std::to_string(count), figure, ui.theme().ink);
        ui.pen().text({at.x, at.y + figure.lead}, ui.fonts().fitted(ui.words(word), small, at.w - 6), small,
                      ui.theme().ink2);
    };
    column(view.cells.out, "batch.cells_out");
    column(view.cells.back, "batch.cells_back");
    column(view.cells.in_finished, "batch.cells_cards");
    const bool fine = view.cells.matches();
    draw_icon(ui.pen(), fine ? Icon::Fine : Icon::Cellsafe, {inside.x + 13, inside.y + body.lead / 2}, 26,
              fine ? ui.theme().leaf_text : ui.theme().plum);
    inside.cut_top(ui.pen().paragraph({inside.x + 34, inside.y}, inner - 34, view.cells_words, body,
                                      fine ? ui.theme().ink : ui.theme().plum) +
                   14);
    ui.add({.name = "batch/cells-words", .role = Role::Note, .label = view.cells_words, .rect = box});
    const Rect slot{inside.x, inside.y, std::min(inside.w, std::max(button_width(ui, look), 220.0f)),
                    ui.m.button_h};
    if (button(ui, "batch/cells", slot, look)) {
        screen.say(command::Batch{batching::OpenCells{}});
    }
    return height;
}

float draw_batch_figures(Screen& screen, const BatchView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const TextStyle head = ui.m.type(Type::H2);
    const float inner = r.w - 2 * ui.m.panel_pad_x;
    const float words_h =
        view.figures.empty() ? 0 : ui.fonts().wrapped_height(view.figures, body, inner) + 10;
    const float row_h = 2 * small.lead + 14;
    const float height = 28 + head.lead + 6 + words_h + static_cast<float>(view.steps.size()) * row_h;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 14);
    ui.pen().text({inside.x, inside.y}, ui.words("batch.figures"), head, ui.theme().ink);
    inside.cut_top(head.lead + 6);
    if (!view.figures.empty()) {
        inside.cut_top(ui.pen().paragraph({inside.x, inside.y}, inner, view.figures, body, ui.theme().ink) +
                       10);
    }
    for (const BatchStepView& step : view.steps) {
        const Rect row = inside.cut_top(row_h);
        divider(ui, {row.x, row.y}, {row.right(), row.y});
        const float top = row.y + 7;
        ui.pen().text({row.x, top}, ui.fonts().fitted(step.title, small, inner), small, ui.theme().ink);
        ui.pen().text({row.x, top + small.lead}, step.time, small.bold(), ui.theme().ink);
        ui.pen().text({row.right(), top + small.lead}, step.first, small, ui.theme().ink2, Align::Right);
    }
    return height;
}

float draw_shelf_batches(Screen& screen, const Rect& page, float y) {
    Ui& ui = screen.ui;
    bool any = false;
    for (const ShelfBatch& batch : screen.state.batches) {
        any = any || batch.trouble.empty();
    }
    if (!any) {
        return y;
    }
    const TextStyle h1 = ui.m.type(Type::H1);
    const TextStyle head = ui.m.type(Type::H2).bold();
    const TextStyle body = ui.m.type(Type::Body);
    ui.pen().text({page.x, y}, ui.words("batch.shelf_heading"), h1, ui.theme().ink);
    y += h1.lead + 12;
    for (const ShelfBatch& batch : screen.state.batches) {
        if (!batch.trouble.empty()) {
            continue;
        }
        std::string line = ui.words("batch.shelf_line", {{"done", std::to_string(batch.done)},
                                                         {"count", std::to_string(batch.count)}});
        if (batch.closed) {
            line.append(", ").append(ui.words("batch.shelf_closed"));
        } else if (batch.stopped > 0) {
            line.append(", ").append(ui.words("batch.shelf_help", {{"n", batch.stopped}}));
        }
        const ButtonLook look{.label = ui.words("batch.board"), .icon = Icon::People, .bold = true};
        const bool beside = page.w > 560 * ui.m.text_scale;
        const float button_w = beside ? button_width(ui, look) : page.w - 2 * ui.m.panel_pad_x;
        const float words_h = head.lead + body.lead;
        const float height = 28 + (beside ? std::max(words_h, ui.m.button_h) : words_h + 12 + ui.m.button_h);
        const Rect box{page.x, y, page.w, height};
        panel(ui, box);
        Rect inside = box.shrunk(ui.m.panel_pad_x, 14);
        const Rect slot = beside ? inside.cut_right(button_w) : inside.cut_bottom(ui.m.button_h);
        const std::string title =
            ui.words("batch.heading", {{"title", batch.title}, {"count", std::to_string(batch.count)}});
        const float text_w = inside.w - 12;
        const float top = inside.centre().y - words_h / 2;
        ui.pen().text({inside.x, top}, ui.fonts().fitted(title, head, text_w), head, ui.theme().ink);
        ui.pen().text({inside.x, top + head.lead}, ui.fonts().fitted(line, body, text_w), body,
                      batch.stopped > 0 && !batch.closed ? ui.theme().plum : ui.theme().ink2);
        const Rect at{slot.x, slot.centre().y - ui.m.button_h / 2, slot.w, ui.m.button_h};
        if (leaf_button(ui, "shelf/batch/" + batch.id, at, look)) {
            screen.say(command::Batch{batching::Open{batch.id}});
        }
        y += height + 16;
    }
    return y + 8;
}

} // namespace lanternleaf
