// The verdict panel: a step that is stopped: the one plain cause, what to do, and the ways on. And the bar at
// the foot of Make, which changes with what the panel shows.
#include "controls/button.h"
#include "controls/findings_row.h"
#include "controls/hold_button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "paint/lens.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

FindingMark mark_of(Level level) {
    return level == Level::problem   ? FindingMark::Problem
           : level == Level::caution ? FindingMark::Caution
                                     : FindingMark::Fine;
}

std::string word_of(const Words& words, Level level) {
    return level == Level::problem   ? words("level.problem")
           : level == Level::caution ? words("level.caution")
                                     : words("level.note");
}

// The gap at large, with its width and the piece that would bridge it.
void draw_close_up(Screen& screen, const CloseUp& close_up, const Rect& frame) {
    Ui& ui = screen.ui;
    const OpenBuild& build = *screen.state.build;
    constexpr float kLens_ppm = 13.0f;
    BoardOptions options;
    options.words = ui.words;
    options.ppm = static_cast<double>(kLens_ppm);
    options.label_em = static_cast<double>(ui.m.type(Type::CardLabel).size);
    const auto step = static_cast<StepId>(std::min(build.record.step, kStepCount));
    const BoardView view =
        make_board_view(build.record.as_built, build.parts, build.whole,
                        board_after(build.record.as_built, build.whole, build.steps, step), options);
    LensSpec spec;
    spec.centre_mm = (close_up.from_mm + close_up.to_mm) * 0.5;
    spec.dimension = LensDimension{close_up.from_mm, close_up.to_mm, ui.words.mm(close_up.gap_mm)};
    spec.repair = LensRepair{close_up.bridge_mm, close_up.bridge_width_mm,
                             ui.words("make.bridge", {{"length", ui.words.mm(close_up.bridge_length_mm)}})};
    draw_lens(ui.pen(), ui.theme(), frame, view, spec, ui.m.type(Type::CardLabel).size, kLens_ppm);
}

struct Actions {
    Rect secondaries;
    Rect primary;
    Rect back;
};

// Landscape and upright: one row. Phone: two rows, secondaries above.
Actions divide(const Ui& ui, Rect inside, float primary_w, float back_w, bool left_handed) {
    Actions out;
    const float gap = ui.m.phone() ? 8.0f : 14.0f;
    inside = inside.shrunk(ui.m.phone() ? 8.0f : ui.m.page_margin, 0);
    if (ui.m.phone()) {
        inside.cut_top(8);
        out.secondaries = inside.cut_top(ui.m.target);
        inside.cut_top(8);
        inside.h = std::min(inside.h, ui.m.primary_h);
        out.back = left_handed ? inside.cut_right(back_w) : inside.cut_left(back_w);
        if (back_w > 0) {
            static_cast<void>(left_handed ? inside.cut_right(gap) : inside.cut_left(gap));
        }
        out.primary = inside;
        return out;
    }
    const auto upright = [&](Rect r, float h) { return Rect{r.x, r.centre().y - h / 2, r.w, h}; };
    out.primary =
        upright(left_handed ? inside.cut_left(primary_w) : inside.cut_right(primary_w), ui.m.primary_h);
    static_cast<void>(left_handed ? inside.cut_left(gap) : inside.cut_right(gap));
    out.back = upright(inside.cut_left(back_w), ui.m.button_h);
    if (back_w > 0) {
        inside.cut_left(gap);
    }
    out.secondaries = upright(inside, ui.m.button_h);
    return out;
}

struct Secondary {
    std::string name;
    ButtonLook look;
    Command command;
};

void draw_secondaries(Screen& screen, Rect row, const std::vector<Secondary>& all) {
    Ui& ui = screen.ui;
    const float gap = ui.m.phone() ? 8.0f : 14.0f;
    float wanted = gap * static_cast<float>(all.size() - 1);
    for (const Secondary& one : all) {
        wanted += button_width(ui, one.look);
    }
    const bool share = wanted > row.w || ui.m.phone();
    for (const Secondary& one : all) {
        ButtonLook look = one.look;
        float width = button_width(ui, look);
        if (share) {
            width = (row.w + gap) / static_cast<float>(all.size()) - gap;
            width = one.name == all.back().name ? row.w : width;
        }
        if (ui.m.phone()) {
            look.icon = Icon::None;
        }
        Rect slot =
            share && &one != &all.back() ? row.cut_left((row.w + gap) / 2 - gap) : row.cut_left(width);
        row.cut_left(gap);
        if (button(ui, one.name, slot, look)) {
            screen.say(one.command);
        }
    }
}

void draw_back(Screen& screen, const Rect& r, const MakeView& view, bool brief) {
    Ui& ui = screen.ui;
    if (r.empty()) {
        return;
    }
    const bool tapped =
        brief ? icon_button(ui, "make/back", r, {.icon = Icon::Back, .spoken = ui.words("make.back_one")})
              : button(ui, "make/back", r, {.label = view.back, .icon = Icon::Back});
    if (tapped) {
        screen.say(command::MoveBack{});
    }
}

} // namespace

void draw_verdict_panel(Screen& screen, const MakeView& view, const Rect& panel_rect) {
    Ui& ui = screen.ui;
    Scroll scroll(ui, "make/verdict", inside_panel(panel_rect));
    Rect r{panel_rect.x + ui.m.panel_pad_x, scroll.top() + 14, panel_rect.w - 2 * ui.m.panel_pad_x, 9000};
    const TextStyle body = ui.m.type(Type::Body);
    draw_icon(ui.pen(), Icon::Problem, {r.x + 18, r.y + 18}, 36, ui.theme().plum);
    Rect head = r;
    head.cut_left(50);
    r.cut_top(std::max(40.0f, draw_heading(ui, head, r.y, view.heading, Type::H1)));
    r.cut_top(6);
    if (!view.sentence.empty()) {
        r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.sentence, body, ui.theme().ink));
        r.cut_top(14);
    }
    if (view.close_up && !ui.m.phone()) {
        const float height = ui.m.form == Form::Landscape ? 214.0f : 130.0f;
        draw_close_up(screen, *view.close_up, r.cut_top(height));
        r.cut_top(14);
    }
    if (!view.to_do.empty()) {
        r.cut_top(draw_heading(ui, r, r.y, ui.words("make.to_do"), Type::H2));
        r.cut_top(8);
        int number = 0;
        for (const std::string& line : view.to_do) {
            const float height = std::max(32.0f, ui.fonts().wrapped_height(line, body, r.w - 46));
            number_disc(ui, {r.x + 16, r.y + 16}, 16, std::to_string(++number), ui.theme().lamp,
                        ui.theme().on_lamp, ui.theme().lamp);
            ui.pen().paragraph({r.x + 46, r.y + (32 - body.lead) / 2}, r.w - 46, line, body, ui.theme().ink);
            r.cut_top(height + 10);
        }
    }
    if (view.findings.size() > 1) {
        r.cut_top(4);
        int number = 0;
        for (const Finding& finding : view.findings) {
            FindingLook look;
            look.mark = mark_of(finding.level);
            look.number = finding.level == Level::note ? 0 : ++number;
            look.word = word_of(ui.words, finding.level);
            look.text = finding.text;
            const float height = findings_row_height(ui, r.w, look);
            static_cast<void>(
                findings_row(ui, "make/finding/" + std::to_string(number), {r.x, r.y, r.w, height}, look));
            r.cut_top(height + 8);
        }
    }
    if (view.measure_again) {
        r.cut_top(6);
        if (leaf_button(ui, "make/find-fault", {r.x, r.y, r.w, ui.m.button_h},
                        {.label = ui.words("make.find_fault"), .icon = Icon::Mend})) {
            screen.say(command::GoTo{Place::mend});
        }
        r.cut_top(ui.m.button_h + 10);
    }
    scroll.done(r.y + 8 - scroll.top());
}

void draw_make_actions(Screen& screen, const MakeView& view, const Regions& regions) {
    Ui& ui = screen.ui;
    bar(ui, regions.actions, false);
    const Rect inside = regions.content(regions.actions);
    const MakeFace face = screen.state.build->face;
    ButtonLook primary{.label = view.primary, .icon = Icon::Tick};
    std::vector<Secondary> secondaries = {{"make/differs",
                                           {.label = ui.words("make.differs"), .icon = Icon::Differ},
                                           command::OfferDifferences{}},
                                          {"make/wrong",
                                           {.label = ui.words("make.wrong"), .icon = Icon::Wrong},
                                           command::OpenSheet{SheetKind::wrong}}};
    Command on_primary = command::MoveDone{};
    if (!view.list.empty()) {
        on_primary = command::Batch{batching::ConfirmLine{view.list_now}};
    }
    if (face == MakeFace::verdict) {
        primary.icon = Icon::Repeat;
        on_primary = command::ProveStep{};
        if (view.repair) {
            on_primary = command::MendWith{view.repair->change};
        } else if (view.measure_again) {
            on_primary = command::MoveBack{};
        }
        if (ui.m.phone() && !view.measure_again) {
            primary.label = view.repair ? view.repair->done : ui.words("make.check_again");
        }
        secondaries[1] = {"make/regardless",
                          {.label = ui.words("make.regardless"), .icon = Icon::Next},
                          command::OpenSheet{SheetKind::regardless}};
    } else if (face == MakeFace::proof) {
        on_primary = command::ProveStep{};
        if (view.unanswered > 0) {
            primary.enabled = false;
            primary.icon = Icon::Lock;
            primary.reason = ui.words("make.unanswered", {{"n", view.unanswered}});
        }
    }
    const bool next_move = face == MakeFace::move && view.pip_now + 1 < view.pips && view.move != nullptr &&
                           view.move->kind != MoveKind::adult_notice;
    if (ui.m.form == Form::Portrait && next_move) {
        primary.label = ui.words("make.done_next");
    }
    const bool brief = ui.m.form != Form::Landscape;
    const float back_w = view.back.empty() ? 0
                         : brief           ? ui.m.target
                                           : button_width(ui, {.label = view.back, .icon = Icon::Back});
    const float primary_w =
        std::min(std::max(primary_width(ui, primary), ui.m.form == Form::Landscape ? 360.0f : 226.0f),
                 inside.w * 0.44f);
    const Actions actions = divide(ui, inside, primary_w, back_w, screen.state.settings.left_handed);
    draw_back(screen, actions.back, view, brief);
    draw_secondaries(screen, actions.secondaries, secondaries);
    const bool locked = screen.state.settings.kids && face == MakeFace::move && view.adult_only;
    const HoldLook hold{.label = ui.words("kids.hold"),
                        .idle = ui.words("kids.hold_idle"),
                        .one_more = ui.words("kids.hold_one"),
                        .more = ui.words("kids.hold_more")};
    if (locked ? hold_button(ui, "make/done", actions.primary, hold)
               : primary_button(ui, "make/done", actions.primary, primary)) {
        screen.say(on_primary);
    }
}

} // namespace lanternleaf
