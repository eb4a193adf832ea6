// Findings at the side of the plan: what is wrong, what to mind, and the cures that take one tap.
#include "controls/findings_row.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/draw.h"
#include "screens/make.h"
#include "view/finding_rows.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// Nothing is laid there yet, so that all of it can be asked for at once.
bool asks_for_traces(const DrawState& draw, const FindingRow& row) {
    const Finding& first = draw.review.findings[static_cast<std::size_t>(row.findings.front())];
    return first.rule == "led-not-reached" && first.parts.size() == 1;
}

FindingLook look_of(const DrawState& draw, const FindingRow& row, bool editing, const Words& words) {
    const auto index = static_cast<std::size_t>(row.findings.front());
    FindingLook look;
    look.mark = row.level == Level::problem   ? FindingMark::Problem
                : row.level == Level::caution ? FindingMark::Caution
                                              : FindingMark::Fine;
    look.number = row.number;
    look.word = row.level == Level::problem   ? words("level.problem")
                : row.level == Level::caution ? words("level.caution")
                                              : words("level.note");
    look.text = row.text;
    if (row.level == Level::note) {
        return look;
    }
    if (editing) {
        for (const Fix& fix : draw.fixes[index]) {
            look.fixes.push_back({.label = fix.label});
        }
        if (asks_for_traces(draw, row)) {
            look.fixes.push_back({.label = words("draw.suggest_traces"), .icon = Icon::Suggest});
        }
        if (draw.review.findings[index].rule == "cell-in-reach") {
            look.fixes.push_back({.label = words("draw.say_who")});
        }
    }
    look.fixes.push_back({.label = words("draw.show")});
    return look;
}

void answer(Screen& screen, const FindingRow& row, const FindingLook& look, const FindingHit& hit) {
    const DrawState& draw = *screen.state.draw;
    const int index = row.findings.front();
    const auto fixes = static_cast<int>(draw.fixes[static_cast<std::size_t>(index)].size());
    if (hit.fix >= 0) {
        if (hit.fix + 1 == static_cast<int>(look.fixes.size())) { // "Show" is always the last
            act(screen, draw::ShowFinding{index});
        } else if (hit.fix < fixes) {
            act(screen, draw::ApplyFix{index, hit.fix});
        } else if (asks_for_traces(draw, row)) {
            act(screen, draw::Suggest{});
        } else {
            screen.say(command::OpenSheet{SheetKind::draw_audience});
        }
    } else if (hit.row && row.level != Level::note) {
        act(screen, draw::ShowFinding{index});
    }
}

std::string all_well(const DrawState& draw, const Words& words) {
    if (draw.card.leds.empty()) {
        return words("draw.nothing_yet");
    }
    return words("draw.all_joined", {{"n", draw.card.leds.size()}});
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
    const float head_w = ui.pen().text({r.x + 4, y}, ui.words("draw.findings"), head, ui.theme().ink);
    const TextStyle small = ui.m.type(Type::Small);
    if (r.w - head_w > ui.fonts().width(ui.words("draw.as_you_draw"), small) + 20) {
        ui.pen().text({r.right() - 4, y + 5}, ui.words("draw.as_you_draw"), small, ui.theme().ink2,
                      Align::Right);
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
    const std::vector<FindingRow> rows =
        finding_rows(draw.review.findings, draw.words); // notes come last in it
    const auto tell = [&](std::size_t i) {
        const FindingLook look = look_of(draw, rows[i], editing, ui.words);
        const Rect row = next(findings_row_height(ui, width, look));
        answer(screen, rows[i], look, findings_row(ui, "draw/finding/" + std::to_string(i + 1), row, look));
    };
    std::size_t told = 0;
    for (; told < rows.size() && rows[told].level != Level::note; ++told) {
        tell(told);
    }
    if (draw.review.count(Level::problem) + draw.review.count(Level::caution) == 0) {
        FindingLook fine;
        fine.word = draw.card.leds.empty() ? ui.words("draw.empty_sheet") : ui.words("level.fine");
        fine.text = all_well(draw, ui.words);
        const Rect row = next(findings_row_height(ui, width, fine));
        static_cast<void>(findings_row(ui, "draw/fine", row, fine));
    }
    for (; told < rows.size(); ++told) {
        tell(told);
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
