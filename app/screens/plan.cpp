// Draw, to look at: the plan of the card on the table and what the engine has to say about it.
#include "controls/button.h"
#include "controls/findings_row.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/board_panel.h"
#include "screens/make.h"

#include "circuit/seen.h"

namespace lanternleaf {

namespace {

FindingLook look_of(const Finding& finding, int number) {
    FindingLook look;
    look.mark = finding.level == Level::problem   ? FindingMark::Problem
                : finding.level == Level::caution ? FindingMark::Caution
                                                  : FindingMark::Fine;
    look.number = number;
    look.word = finding.level == Level::problem   ? "Problem"
                : finding.level == Level::caution ? "Caution"
                                                  : "Note";
    look.text = finding.text;
    return look;
}

void draw_findings(Screen& screen, const Rect& panel_rect, const Review& plan) {
    Ui& ui = screen.ui;
    panel(ui, panel_rect);
    Scroll scroll(ui, "plan/findings", panel_rect.shrunk(0, 4));
    const Rect r = panel_rect.shrunk(14, 0);
    float y = scroll.top() + 12;
    y += draw_heading(ui, r, y, "Findings", Type::H2) + 10;
    int number = 0;
    for (const Finding& finding : plan.findings) {
        const FindingLook look = look_of(finding, ++number);
        const float height = findings_row_height(ui, r.w, look);
        static_cast<void>(
            findings_row(ui, "plan/finding/" + std::to_string(number), {r.x, y, r.w, height}, look));
        y += height + 10;
    }
    if (plan.count(Level::problem) + plan.count(Level::caution) == 0) {
        FindingLook fine;
        fine.word = "Fine";
        fine.text = "Every pad is reached and every light faces the right way.";
        const float height = findings_row_height(ui, r.w, fine);
        static_cast<void>(findings_row(ui, "plan/fine", {r.x, y, r.w, height}, fine));
        y += height + 10;
    }
    scroll.done(y + 8 - scroll.top());
}

} // namespace

void draw_plan(Screen& screen) {
    Ui& ui = screen.ui;
    RegionWish wish{.actions = false};
    wish.panel_w = 374;
    const Regions regions = make_regions(ui.m, wish);
    if (!screen.state.build) {
        const Rect page = regions.page.shrunk(ui.m.page_margin + 8, 24);
        const float y = page.y + draw_heading(ui, page, page.y, "No card is open", Type::H1);
        ui.pen().paragraph({page.x, y + 8}, page.w, "Start a card on the Shelf to see its plan here.",
                           ui.m.type(Type::Body), ui.theme().ink);
        draw_top_bar(screen, regions.top, "");
        return;
    }
    const OpenBuild& build = *screen.state.build;
    const Review plan = review(build.record.as_built, build.parts);
    BoardWish board;
    board.card = &build.record.as_built;
    board.parts = &build.parts;
    board.conductors = &plan.conductors;
    board.progress = finished_board(build.record.as_built, plan.conductors);
    board.card_folder = build.shelf.card_folder;
    for (const Light& light : plan.lighting.lights) {
        board.glow.push_back(seen_brightness(light.brightness));
    }
    int number = 0;
    for (const Finding& finding : plan.findings) {
        ++number;
        if (finding.level != Level::note) {
            board.marks.push_back({finding.level == Level::problem ? MarkKind::problem : MarkKind::caution,
                                   finding.at_mm, std::to_string(number), "", "", false});
        }
    }
    Rect card = regions.card;
    const Rect tools = card.cut_bottom(76);
    draw_board_panel(screen, card, board);
    draw_board_tools(screen, tools, ui.m.phone());
    draw_findings(screen, regions.panel, plan);
    draw_top_bar(screen, regions.top, build.record.title);
}

} // namespace lanternleaf
