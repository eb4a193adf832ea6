#include "controls/scroll.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr float kStop_mm_per_s = 10;
constexpr float kNotch = 64; ///< points per wheel notch
constexpr float kShade = 22;

} // namespace

Scroll::Scroll(Ui& ui, std::string_view name, const Rect& room, std::optional<Colour> ground)
    : ui_(ui), name_(name), room_(room), ground_(ground.value_or(ui.theme().panel)) {
    ui_.add({.name = name_, .role = Role::Scroll, .rect = room, .drag = DragAxis::Y});
    first_target_ = ui_.targets.all().size();
    top_ = std::round((room.y - ui_.scrolls[name_].offset) * ui_.m.px_per_pt) / ui_.m.px_per_pt;
    ui_.pen().push_clip(room);
    ui_.targets.push_clip(room);
}

Scroll::~Scroll() {
    if (open_) {
        done(0);
    }
}

void Scroll::done(float content_h) {
    open_ = false;
    const Theme& t = ui_.theme();
    Pen& pen = ui_.pen();
    Kinetic& k = ui_.scrolls[name_];
    const float most = std::max(0.0f, content_h - room_.h);
    if (const Drag* drag = ui_.drag(name_); drag != nullptr && most > 0) {
        k.held = !drag->ended;
        k.drag(-drag->move.y, most);
        if (drag->ended) {
            k.release(-drag->velocity.y, most);
        }
    } else {
        k.held = false;
    }
    if (const Point wheel = ui_.wheel(name_); wheel.y != 0) {
        k.jump(-wheel.y * kNotch, most);
    }
    keep_focus_in_view(most);
    if (ui_.reduced_motion && !k.held) {
        k.velocity = 0;
        k.jump(0, most);
    }
    if (k.advance(ui_.dt(), most, ui_.m.mm(kStop_mm_per_s)) && !k.held) {
        ui_.keep_awake(name_);
    }

    // Shades at the ends say that there is more; a thin mark says where one is.
    if (k.offset > 1) {
        pen.gradient({room_.x, room_.y, room_.w, kShade}, faded(ground_, 0.95f), faded(ground_, 0), true);
    }
    if (k.offset < most - 1) {
        pen.gradient({room_.x, room_.bottom() - kShade, room_.w, kShade}, faded(ground_, 0),
                     faded(ground_, 0.95f), true);
    }
    pen.pop_clip();
    ui_.targets.pop_clip();
    if (most > 0) {
        const float h = std::max(28.0f, room_.h * room_.h / content_h);
        const float y = room_.y + (room_.h - h) * std::clamp(k.offset / most, 0.0f, 1.0f);
        pen.fill({room_.right() + 5, y + 3, 4, h - 6}, faded(t.edge, 0.7f), 2);
    }
}

void Scroll::keep_focus_in_view(float most) {
    if (!ui_.focus_moved() || most <= 0) {
        return;
    }
    const auto& all = ui_.targets.all();
    for (std::size_t i = first_target_; i < all.size(); ++i) {
        if (all[i].name != ui_.focus()) {
            continue;
        }
        Kinetic& k = ui_.scrolls[name_];
        const float above = all[i].rect.y - 12 - room_.y;
        const float below = all[i].rect.bottom() + 12 - room_.bottom();
        if (above < 0) {
            k.jump(above, most);
        } else if (below > 0) {
            k.jump(std::min(below, above), most);
        }
        ui_.keep_awake("focus");
    }
}

} // namespace lanternleaf
