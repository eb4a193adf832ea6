#include "controls/findings_row.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr float kText = 62; ///< where the words begin
constexpr float kRowPad = 12;
constexpr float kBar = 8;

/// Fixes flow into lines; gives their boxes relative to the first one's corner.
std::vector<Rect> place_fixes(const Ui& ui, float width, const std::vector<ButtonLook>& fixes) {
    std::vector<Rect> out;
    float x = 0;
    float y = 0;
    for (const ButtonLook& fix : fixes) {
        const float w = std::min(width, button_width(ui, fix));
        if (x > 0 && x + w > width) {
            x = 0;
            y += ui.m.button_h + 8;
        }
        out.push_back({x, y, w, ui.m.button_h});
        x += w + 8;
    }
    return out;
}

} // namespace

Colour mark_colour(const Theme& t, FindingMark mark) {
    return mark == FindingMark::Problem ? t.plum : mark == FindingMark::Caution ? t.ochre : t.leaf_text;
}

Colour mark_tint(const Theme& t, FindingMark mark) {
    return mark == FindingMark::Problem   ? t.plum_tint
           : mark == FindingMark::Caution ? t.ochre_tint
                                          : t.leaf_tint;
}

Icon mark_icon(FindingMark mark) {
    return mark == FindingMark::Problem   ? Icon::Problem
           : mark == FindingMark::Caution ? Icon::Caution
                                          : Icon::Fine;
}

float findings_row_height(const Ui& ui, float width, const FindingLook& look) {
    const TextStyle body = ui.m.type(Type::Body);
    const float room = width - kText - kRowPad;
    float h = 2 * kRowPad + body.lead + ui.fonts().wrapped_height(look.text, body, room);
    const auto fixes = place_fixes(ui, room, look.fixes);
    if (!fixes.empty()) {
        h += 8 + fixes.back().bottom();
    }
    return std::max(h, ui.m.target);
}

FindingHit findings_row(Ui& ui, std::string_view name, const Rect& r, const FindingLook& look) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    const Colour ink = mark_colour(t, look.mark);
    const Colour tint = mark_tint(t, look.mark);
    FindingHit hit;
    const std::string id(name);
    const std::string head =
        (look.number > 0 ? std::to_string(look.number) + " " : std::string()) + look.word;
    hit.row = offer(ui, {.name = id, .role = Role::Item, .label = head + ": " + look.text, .rect = r});
    pen.fill(r, ui.pressed(id) ? mixed(tint, ink, 0.12f) : tint, ui.m.radius_small);

    // The bar follows the rounded corners; solid for a problem, broken for a caution.
    if (look.mark != FindingMark::Fine) {
        const float on = look.mark == FindingMark::Problem ? r.h : 9.0f;
        const float off = look.mark == FindingMark::Problem ? 1.0f : 7.0f;
        for (float y = r.y; y < r.bottom(); y += on + off) {
            pen.push_clip(common({r.x, y, kBar, on}, r));
            pen.fill(r, ink, ui.m.radius_small, kCornersLeft);
            pen.pop_clip();
        }
    }
    const TextStyle body = ui.m.type(Type::Body);
    draw_icon(pen, mark_icon(look.mark), {r.x + 35, r.y + kRowPad + body.lead / 2 + 2}, 29, ink);
    const float x = r.x + kText;
    const float room = r.w - kText - kRowPad;
    float y = r.y + kRowPad;
    pen.text({x, y}, head, body.bold(), ink);
    y += body.lead;
    y += pen.paragraph({x, y}, room, look.text, body, t.ink);
    y += 8;
    const auto fixes = place_fixes(ui, room, look.fixes);
    for (std::size_t i = 0; i < fixes.size(); ++i) {
        if (button(ui, id + "/fix/" + std::to_string(i), fixes[i].moved(x, y), look.fixes[i])) {
            hit.fix = static_cast<int>(i);
        }
    }
    return hit;
}

} // namespace lanternleaf
