#include "controls/step_rail.h"

#include <algorithm>
#include <vector>

namespace lanternleaf {

namespace {

struct Placed {
    float words_w = 0;
    float w = 0; ///< bead, gap and words
    std::vector<TextLine> words;
};

bool current(const Bead& bead) {
    return bead.state == RailState::Now || bead.state == RailState::Stopped;
}

void draw_bead(Ui& ui, Point c, float radius, const Bead& bead, std::string_view number) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    const TextStyle style = ui.m.type(Type::Body).bold();
    const Rect box = around(c, 2 * radius, 2 * radius);
    switch (bead.state) {
    case RailState::Done:
        pen.disc(c, radius, t.leaf_tint);
        pen.ring(c, radius, t.leaf, 2);
        draw_icon(pen, Icon::Tick, c, radius * 1.15f, t.leaf_text);
        break;
    case RailState::Now:
        pen.disc(c, radius, t.lamp);
        pen.ring(c, radius, t.lamp_dk, 2);
        pen.text_in(box, number, style, t.on_lamp);
        break;
    case RailState::Stopped:
        pen.disc(c, radius, t.panel);
        pen.ring(c, radius, t.plum, 2);
        draw_icon(pen, Icon::Problem, c, radius * 1.2f, t.plum);
        break;
    case RailState::Open:
        pen.disc(c, radius, t.panel);
        pen.ring(c, radius, t.edge, 2);
        pen.text_in(box, number, style, t.ink);
        break;
    case RailState::Blocked:
        pen.dashed_ring(c, radius, t.edge, 2, 5, 3.5f);
        pen.text_in(box, number, style, t.ink2);
        break;
    }
}

} // namespace

int step_rail(Ui& ui, const Rect& r, std::span<const Bead> beads) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    const bool phone = ui.m.phone();
    const bool all_words = ui.m.form == Form::Landscape;
    pen.fill(r, t.well);
    pen.fill({r.x, r.bottom() - 1, r.w, 1}, t.line);

    const float radius = phone ? 15.0f : 20.0f;
    const float now_radius = phone ? 17.0f : 22.0f;
    TextStyle small = ui.m.type(Type::Small);
    small.lead = small.size * 1.18f;
    // Narrower words first, then none but the current ones, until the beads fit with a bit of thread between.
    std::vector<Placed> placed(beads.size());
    const float room = r.w - (phone ? 16.0f : 24.0f);
    float sum = 0;
    bool words = all_words;
    for (int attempt = 0; attempt < 2; ++attempt) {
        sum = 0;
        for (std::size_t i = 0; i < beads.size(); ++i) {
            Placed& p = placed[i];
            p.words.clear();
            p.words_w = 0;
            const bool now = current(beads[i]);
            if (now || words) {
                std::string label = phone && !beads[i].brief.empty() ? beads[i].brief : beads[i].label;
                if (!words) {
                    std::replace(label.begin(), label.end(), '\n', ' ');
                }
                const TextStyle style = now ? small.bold() : small;
                p.words = ui.fonts().wrap(label, style, words ? 1000 : room * 0.5f);
                for (const TextLine& line : p.words) {
                    p.words_w = std::max(p.words_w, line.width);
                }
            }
            const float k = now ? now_radius : radius;
            p.w = 2 * k + (p.words.empty() ? 0 : 7 + p.words_w) + (now ? 20.0f : 0.0f);
            sum += p.w;
        }
        if (sum + 12 * static_cast<float>(beads.size() - 1) <= room || !words) {
            break;
        }
        words = false;
    }

    int hit = -1;
    const float thread =
        beads.size() > 1 ? std::max(6.0f, (room - sum) / static_cast<float>(beads.size() - 1)) : 0;
    float x = r.x + (r.w - room) / 2;
    const float y = r.centre().y;
    for (std::size_t i = 0; i < beads.size(); ++i) {
        const Bead& bead = beads[i];
        const Placed& p = placed[i];
        const bool now = current(bead);
        const float k = now ? now_radius : radius;
        const std::string number = std::to_string(i + 1);
        const std::string id = "rail/" + number;
        const Rect box{x, r.y + 4, p.w, r.h - 8};
        if (offer(ui, {.name = id, .role = Role::Tab, .label = bead.label, .rect = box, .checked = now})) {
            hit = static_cast<int>(i);
        }
        float cx = x + k;
        if (now) {
            const float h = std::min(r.h - 8, phone ? 46.0f : 64.0f);
            const Rect pill{x, y - h / 2, p.w, h};
            const bool stopped = bead.state == RailState::Stopped;
            pen.fill(pill, stopped ? t.plum_tint : t.lamp_tint, h / 2);
            pen.outline(pill, stopped ? t.plum : t.lamp_dk, 2, h / 2);
            cx += 4;
        } else if (ui.pressed(id)) {
            pen.fill(box, t.panel, ui.m.radius_small);
        }
        draw_bead(ui, {cx, y}, k, bead, number);
        if (bead.state == RailState::Blocked && !phone) {
            const Point lock{cx + radius * 0.85f, y + radius * 0.85f};
            pen.disc(lock, 9, t.well);
            draw_icon(pen, Icon::Lock, lock, 15, t.ink2);
        }
        if (!p.words.empty()) {
            const float h = static_cast<float>(p.words.size()) * small.lead;
            const Colour ink = bead.state == RailState::Blocked ? t.ink2 : t.ink;
            pen.lines({cx + k + 7, y - h / 2}, p.words, now ? small.bold() : small, ink, Align::Left,
                      p.words_w);
        }
        x += p.w;
        if (i + 1 < beads.size()) {
            const Point ends[] = {{x + 4, y}, {x + thread - 4, y}};
            if (thread > 9) {
                pen.dashed(ends, t.edge, 2, {2, 2});
            }
            x += thread;
        }
    }
    return hit;
}

} // namespace lanternleaf
