// Findings at the side of the plan: what is wrong, what to mind, and the cures that take one tap.
#include "controls/findings_row.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/draw.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

FindingLook look_of(const DrawState& draw, std::size_t index, bool editing) {
    const Finding& finding = draw.review.findings[index];
    FindingLook look;
    look.mark = finding.level == Level::problem   ? FindingMark::Problem
                : finding.level == Level::caution ? FindingMark::Caution
                                                  : FindingMark::Fine;
    look.number = finding.level == Level::note ? 0 : static_cast<int>(index) + 1;
    look.word = finding.level == Level::problem   ? "Problem"
                : finding.level == Level::caution ? "Caution"
                                                  : "Note";
    look.text = finding.text;
    if (finding.level == Level::note) {
        return look;
    }
    if (editing) {
        for (const Fix& fix : draw.fixes[index]) {
            look.fixes.push_back({.label = fix.label});
        }
        if (finding.rule == "cell-in-reach") {
            look.fixes.push_back({.label = "Say who it is for"});
        }
    }
    look.fixes.push_back({.label = "Show"});
    return look;
}

void answer(Screen& screen, std::size_t index, const FindingLook& look, const FindingHit& hit) {
    const DrawState& draw = *screen.state.draw;
    const auto number = static_cast<int>(index);
    if (hit.fix >= 0) {
        const std::string& label = look.fixes[static_cast<std::size_t>(hit.fix)].label;
        if (label == "Show") {
            act(screen, draw::ShowFinding{number});
        } else if (hit.fix < static_cast<int>(draw.fixes[index].size())) {
            act(screen, draw::ApplyFix{number, hit.fix});
        } else {
            screen.say(command::OpenSheet{SheetKind::draw_audience});
        }
    } else if (hit.row) {
        act(screen, draw::ShowFinding{number});
    }
}

std::string all_well(const DrawState& draw) {
    if (draw.card.leds.empty()) {
        return "Nothing is on the sheet yet but the holder. Choose Light and tap where it should glow.";
    }
    const std::size_t count = draw.card.leds.size();
    return (count == 1 ? std::string("The light is") : "All " + std::to_string(count) + " lights are") +
           " joined to the cell and the right way round.";
}

} // namespace

void draw_findings_panel(Screen& screen, const Rect& area, bool lights_too) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    panel(ui, area);
    Scroll scroll(ui, "draw/findings", inside_panel(area));
    const Rect r = area.shrunk(14, 0);
    float y = scroll.top() + 14;
    const TextStyle head = ui.m.type(Type::H2);
    const float head_w = ui.pen().text({r.x + 4, y}, "Findings", head, ui.theme().ink);
    const TextStyle small = ui.m.type(Type::Small);
    if (r.w - head_w > ui.fonts().width("checked as you draw", small) + 20) {
        ui.pen().text({r.right() - 4, y + 5}, "checked as you draw", small, ui.theme().ink2, Align::Right);
    }
    y += head.lead + 10;
    // Upright, rows stand in two columns where there is room.
    const int columns = area.w > 700 ? 2 : 1;
    const float width = (r.w - 10.0f * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    std::vector<float> foot(static_cast<std::size_t>(columns), y);
    const auto next = [&](float height) {
        const auto shortest = std::min_element(foot.begin(), foot.end());
        const auto column = static_cast<float>(shortest - foot.begin());
        const Rect row{r.x + column * (width + 10), *shortest, width, height};
        *shortest += height + 10;
        return row;
    };
    const bool editing = !ui.m.phone();
    for (std::size_t i = 0; i < draw.review.findings.size(); ++i) {
        const FindingLook look = look_of(draw, i, editing);
        const Rect row = next(findings_row_height(ui, width, look));
        answer(screen, i, look, findings_row(ui, "draw/finding/" + std::to_string(i + 1), row, look));
    }
    if (draw.review.count(Level::problem) + draw.review.count(Level::caution) == 0) {
        FindingLook fine;
        fine.word = draw.card.leds.empty() ? "An empty sheet" : "Fine";
        fine.text = all_well(draw);
        const Rect row = next(findings_row_height(ui, width, fine));
        static_cast<void>(findings_row(ui, "draw/fine", row, fine));
    }
    if (lights_too && !draw.card.leds.empty()) {
        const float height = 126 * std::max(1.0f, ui.m.text_scale);
        const float top = *std::max_element(foot.begin(), foot.end());
        draw_brightness(screen, {r.x, top, r.w, height});
        std::fill(foot.begin(), foot.end(), top + height + 10);
    }
    scroll.done(*std::max_element(foot.begin(), foot.end()) + 4 - scroll.top());
}

} // namespace lanternleaf
