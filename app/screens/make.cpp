// The Make place: rail, card, panel, action bar, in the three forms.
#include "screens/make.h"

#include "circuit/seen.h"
#include "controls/button.h"
#include "controls/chip.h"
#include "controls/panel.h"
#include "controls/step_rail.h"
#include "screens/board_panel.h"

#include <algorithm>

namespace lanternleaf {

namespace {

std::vector<Bead> beads_of(const MakeView& view) {
    std::vector<Bead> beads;
    for (const RailBead& step : view.rail) {
        Bead bead;
        bead.label = step.upper + (step.lower.empty() ? "" : "\n" + step.lower);
        bead.brief = step.brief;
        switch (step.state) {
        case BeadKind::done:
            bead.state = RailState::Done;
            break;
        case BeadKind::regardless:
            bead.state = RailState::Open;
            break;
        case BeadKind::now:
            bead.state = RailState::Now;
            break;
        case BeadKind::stopped:
            bead.state = RailState::Stopped;
            break;
        case BeadKind::blocked:
            bead.state = RailState::Blocked;
            break;
        }
        beads.push_back(std::move(bead));
    }
    return beads;
}

BoardWish wish_for(const OpenBuild& build) {
    BoardWish wish;
    wish.card = &build.record.as_built;
    wish.parts = &build.parts;
    wish.conductors = &build.whole;
    const auto step = static_cast<StepId>(std::min(build.record.step, kStepCount));
    // A verdict on one reading comes in the middle of a step too: then only what is laid lies there.
    wish.progress = build.face == MakeFace::move || open_move(build) != nullptr
                        ? board_at(build.record.as_built, build.whole, build.steps, step, build.move)
                        : board_after(build.record.as_built, build.whole, build.steps, step);
    wish.progress.cell_in = build.record.cell_in;
    wish.card_folder = build.shelf.card_folder;
    if (build.record.cell_in) {
        for (const Light& light : build.now.lighting.lights) {
            wish.glow.push_back(seen_brightness(light.brightness));
        }
    }
    if (build.face == MakeFace::verdict && build.verdict) {
        int number = 0;
        for (const Finding& finding : build.verdict->findings) {
            if (finding.level == Level::note) {
                continue;
            }
            BoardMark mark;
            mark.kind = finding.level == Level::problem ? MarkKind::problem : MarkKind::caution;
            mark.at_mm = finding.at_mm;
            mark.text = std::to_string(++number);
            wish.marks.push_back(mark);
        }
    }
    return wish;
}

bool any_fabric(const Card& card, const Parts& parts) {
    for (const Laid& laid : card.laid) {
        if (const Strip* strip = std::get_if<Strip>(&laid)) {
            const auto tape = parts.tapes.find(strip->tape);
            return tape != parts.tapes.end() && tape->second.ohm_per_square > 0.005;
        }
    }
    return false;
}

// The pads of a trace step, each reached or not, where the legend's tools otherwise are.
void draw_pads(Screen& screen, const MakeView& view, Rect r) {
    Ui& ui = screen.ui;
    const TextStyle head = ui.m.type(Type::Body).bold();
    ui.pen().text_in(r.cut_top(head.lead), view.pads_text, head, ui.theme().ink, Align::Left);
    r.cut_top(8);
    float x = r.x;
    float y = r.y;
    const float height = 36 * ui.m.text_scale;
    for (const MakeView::Pad& pad : view.pads) {
        const float width = ui.fonts().width(pad.pad, ui.m.type(Type::Body).bold()) + 44;
        if (x + width > r.right()) {
            x = r.x;
            y += height + 6;
        }
        if (y + height > r.bottom()) {
            return;
        }
        tag(ui, {x, y, width, height}, pad.pad, !pad.reached);
        x += width + 8;
    }
}

// While pads are marked no tape lies there to explain: the legend's place is for the light box.
void draw_trace_button(Screen& screen, const Rect& row) {
    Ui& ui = screen.ui;
    const ButtonLook look{.label = ui.words("make.trace_from_screen"), .icon = Icon::Sun};
    const float w = std::min(button_width(ui, look), row.w);
    const Rect r{row.x, row.centre().y - ui.m.button_h / 2, w, ui.m.button_h};
    if (button(ui, "make/trace", r, look)) {
        screen.say(command::Draw{draw::OpenLightBox{}});
    }
}

void draw_card_side(Screen& screen, const MakeView& view, Rect area) {
    Ui& ui = screen.ui;
    const OpenBuild& build = *screen.state.build;
    const bool marking =
        build.record.step == static_cast<int>(StepId::mark_pads) && build.face == MakeFace::move;
    const bool verdict_pads = build.face == MakeFace::verdict && !view.pads.empty();
    if (ui.m.form == Form::Landscape) {
        Rect tools = area.cut_bottom(verdict_pads ? 84 * std::max(1.0f, ui.m.text_scale) : 76);
        const Rect legend = area.cut_bottom(marking ? ui.m.target + 6 : 40);
        draw_board_panel(screen, area, wish_for(build));
        if (marking) {
            draw_trace_button(screen, {legend.x + 16, legend.y, legend.w - 16, legend.h});
        } else {
            draw_legend(screen, {legend.x + 16, legend.y, legend.w - 16, legend.h},
                        build.face == MakeFace::move, any_fabric(build.record.as_built, build.parts));
        }
        tools.cut_left(16);
        if (verdict_pads) {
            draw_pads(screen, view, tools);
        } else {
            const float used = draw_board_tools(screen, tools, false);
            if (!view.length_text.empty() && used + 110 < tools.w) {
                const TextStyle small = ui.m.type(Type::Small);
                const float x = tools.x + used + 18;
                ui.pen().text({x, tools.centre().y - small.lead}, ui.words("make.this_move"), small,
                              ui.theme().ink2);
                ui.pen().text({x, tools.centre().y}, view.length_text, small.bold(), ui.theme().ink);
            }
        }
    } else if (ui.m.form == Form::Portrait) {
        Rect foot = area.cut_bottom(68);
        draw_board_panel(screen, area, wish_for(build));
        Rect tools = foot.cut_right(4 * ui.m.target + 30);
        draw_board_tools(screen, tools, true);
        foot.cut_left(16);
        if (marking) {
            draw_trace_button(screen, foot);
        } else {
            draw_legend(screen, foot, build.face == MakeFace::move,
                        any_fabric(build.record.as_built, build.parts));
        }
    } else {
        draw_board_panel(screen, area, wish_for(build));
    }
}

void draw_nothing_yet(Screen& screen) {
    Ui& ui = screen.ui;
    const Regions regions = make_regions(ui.m, {.actions = false});
    const Rect page = regions.content(regions.page).shrunk(ui.m.page_margin + 8, 24);
    const float y = page.y + draw_heading(ui, page, page.y, ui.words("make.nothing"), Type::H1);
    const float words_h =
        ui.pen().paragraph({page.x, y + 8}, std::min(page.w, 620.0f), ui.words("make.nothing_words"),
                           ui.m.type(Type::Body), ui.theme().ink);
    const ButtonLook look{.label = ui.words("make.to_shelf"), .icon = Icon::Shelf};
    const Rect button{page.x, y + std::max(90.0f, words_h + 30), std::min(primary_width(ui, look), page.w),
                      ui.m.primary_h};
    if (primary_button(ui, "make/shelf", button, look)) {
        screen.say(command::GoTo{Place::shelf});
    }
    draw_top_bar(screen, regions.top, "");
}

} // namespace

float draw_heading(Ui& ui, const Rect& r, float y, const std::string& text, Type type) {
    return ui.pen().paragraph({r.x, y}, r.w, text, ui.m.type(type), ui.theme().ink);
}

void draw_make(Screen& screen) {
    if (!screen.state.build) {
        draw_nothing_yet(screen);
        return;
    }
    Ui& ui = screen.ui;
    const MakeView view = make_view(screen.state);
    RegionWish wish{.rail = true};
    wish.actions_h = ui.m.phone() ? 144 * std::max(1.0f, ui.m.text_scale * 0.85f) : 0;
    const Regions regions = make_regions(ui.m, wish);
    Rect card = regions.card;
    if (ui.m.form == Form::Landscape) {
        card.x -= 4;
        card.w += 4;
    }
    draw_card_side(screen, view, card);
    panel(ui, regions.panel);
    switch (screen.state.build->face) {
    case MakeFace::move:
        if (view.can_list) {
            draw_confirm_panel(screen, view, regions.panel);
        } else if (screen.state.settings.kids) {
            draw_kids_panel(screen, view, regions.panel);
        } else {
            draw_move_panel(screen, view, regions.panel);
        }
        break;
    case MakeFace::proof:
        draw_proof_panel(screen, view, regions.panel);
        break;
    case MakeFace::verdict:
        draw_verdict_panel(screen, view, regions.panel);
        break;
    }
    if (step_rail(ui, regions.rail, beads_of(view)) >= 0) {
        screen.say(command::OpenSheet{SheetKind::steps});
    }
    draw_make_actions(screen, view, regions);
    draw_top_bar(screen, regions.top, view.title);
}

} // namespace lanternleaf
