#include "controls/ui.h"

#include <algorithm>
#include <utility>

#include "controls/toast.h"

namespace lanternleaf {

namespace {

constexpr double kToast_s = 4.0; ///< long enough for a sentence read aloud

} // namespace

Ui::Ui(Fonts& fonts, Host& host) : fonts_(&fonts), host_(&host) {}

void Ui::begin_frame(HostInput input, const Metrics& metrics, const Theme& theme, Pen& pen, bool reduced) {
    in = std::move(input);
    m = metrics;
    theme_ = &theme;
    pen_ = &pen;
    reduced_motion = reduced;
    awake_.clear();
    wake_at_.reset();
    taps_.clear();
    double_tap_.clear();
    long_press_.clear();
    focus_moved_ = false;
    if (drag_ && drag_->ended) {
        drag_.reset();
        drag_owner_.clear();
    }
    if (drag_) {
        drag_->started = false;
        drag_->move = {};
    }
    pinch_.reset();
    std::swap(seen_, targets);
    targets.clear();
    take_pointers();
    take_keys();
    arrows_in.clear();
    if (const auto next = gesture.wake_at()) {
        wake_at(*next);
    }
    if (now() < flash_until_s_) {
        wake_at(flash_until_s_);
    }
}

void Ui::end_frame() {
    if (toast_ && now() >= toast_->until_s) {
        toast_.reset();
    }
    if (toast_) {
        draw_toast(*this, *toast_);
        wake_at(toast_->until_s);
        if (tapped("toast/action")) {
            toast_.reset();
        }
    }
    if (focus_shown_) {
        const Target* t = targets.find(focus_);
        if (t == nullptr) {
            focus_.clear();
        } else if (!t->visible.empty()) {
            // A ring of ink 3 wide, 3 clear of the target, on a pale one so that it shows on any ground.
            pen().outline(t->rect.shrunk(-7), faded(theme().panel, 0.9f), 5, m.radius + 7);
            pen().outline(t->rect.shrunk(-6), theme().ink, 3, m.radius + 6);
        }
    }
}

bool Ui::tapped(std::string_view name) const {
    return std::find(taps_.begin(), taps_.end(), name) != taps_.end();
}

bool Ui::pressed(std::string_view name) const {
    return (press_drawn_ && press_ == name) || key_hold_ == name ||
           (flash_ == name && now() < flash_until_s_);
}

double Ui::held_s(std::string_view name) const {
    if (press_drawn_ && press_ == name) {
        return gesture.held_s(now());
    }
    return !key_hold_.empty() && key_hold_ == name ? now() - key_hold_s_ : 0;
}

bool Ui::hovered(std::string_view name) const {
    if (!in.hovering) {
        return false;
    }
    const Target* t = seen_.at(in.hover, 0);
    return t != nullptr && t->name == name;
}

const Drag* Ui::drag(std::string_view name) const {
    return drag_ && drag_owner_ == name ? &*drag_ : nullptr;
}

const Pinch* Ui::pinch(std::string_view name) const {
    return pinch_ && pinch_owner_ == name ? &*pinch_ : nullptr;
}

Point Ui::wheel(std::string_view name) const {
    if (in.wheel == Point{}) {
        return {};
    }
    for (const Role role : {Role::Scroll, Role::Canvas}) {
        if (const Target* t = seen_.container_at(in.hover, role); t != nullptr && t->name == name) {
            return in.wheel;
        }
    }
    return {};
}

void Ui::set_focus(std::string_view name) {
    focus_moved_ = focus_moved_ || focus_ != name;
    focus_ = name;
}

bool Ui::take_key(Key key) {
    const auto found = std::find(keys_left_.begin(), keys_left_.end(), key);
    if (found == keys_left_.end()) {
        return false;
    }
    keys_left_.erase(found);
    return true;
}

void Ui::keep_awake(std::string_view reason) {
    awake_.emplace_back(reason);
}

void Ui::wake_at(double time_s) {
    wake_at_ = wake_at_ ? std::min(*wake_at_, time_s) : time_s;
}

float Ui::glide(std::string_view name, float goal, float over_s) {
    const auto [found, fresh] = glides_.try_emplace(std::string(name), Glide{goal, goal});
    Glide& g = found->second;
    g.goal = goal;
    if (!fresh && g.value != goal && g.advance(dt(), over_s, reduced_motion)) {
        keep_awake(name);
    }
    return g.value;
}

void Ui::set_glide(std::string_view name, float value) {
    glides_[std::string(name)] = Glide{value, value};
}

float Ui::glide_value(std::string_view name) const {
    const auto found = glides_.find(name);
    return found == glides_.end() ? 0 : found->second.value;
}

void Ui::toast(std::string_view text, std::string_view action) {
    toast_ = ToastLine{std::string(text), std::string(action), now() + kToast_s};
}

bool offer(Ui& ui, Target target, std::string_view reason) {
    const std::string name = target.name;
    const bool enabled = target.enabled;
    ui.add(std::move(target));
    if (!ui.tapped(name)) {
        return false;
    }
    if (!enabled) {
        if (!reason.empty()) {
            ui.toast(reason);
        }
        return false;
    }
    return true;
}

} // namespace lanternleaf
