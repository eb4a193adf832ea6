// The input half of Ui: gestures and keys become taps, drags and focus on the targets the person saw.
#include <algorithm>
#include <cmath>

#include "controls/ui.h"

namespace lanternleaf {

namespace {

constexpr double kDoubleTap_s = 0.35;
constexpr float kDoubleTap_mm = 8;

} // namespace

void Ui::take_pointers() {
    gesture.rules.pt_per_mm = m.pt_per_mm;
    std::vector<GestureEvent> events;
    for (const PointerSample& sample : in.pointers) {
        gesture.feed(sample, events);
        const auto same = [&](const GlassContact& contact) { return contact.id == sample.id; };
        const auto known = std::find_if(contacts.begin(), contacts.end(), same);
        if (sample.phase == PointerSample::Phase::Down && known == contacts.end()) {
            contacts.push_back({sample.id, sample.at, sample.time_s});
        } else if (sample.phase == PointerSample::Phase::Move && known != contacts.end()) {
            known->at = sample.at;
        } else if (sample.phase == PointerSample::Phase::Up || sample.phase == PointerSample::Phase::Cancel) {
            std::erase_if(contacts, same);
        }
    }
    gesture.tick(now(), events);
    for (const GestureEvent& event : events) {
        take(event);
    }
}

void Ui::take(const GestureEvent& event) {
    using Kind = GestureEvent::Kind;
    switch (event.kind) {
    case Kind::Press: {
        focus_shown_ = false;
        const Target* t = seen_.at(event.at, m.target);
        press_ = t != nullptr ? t->name : std::string();
        press_drawn_ = t != nullptr;
        drag_.reset();
        drag_owner_.clear();
        if (t != nullptr && t->role == Role::Slider && t->enabled) {
            drag_owner_ = t->name;
            drag_ = Drag{true, false, {}, event.at, event.start, {}};
        } else if (const Target* s = seen_.container_at(event.at, Role::Scroll)) {
            // A touch stops a moving list at once; it is then no tap on what happens to be under the finger.
            const auto found = scrolls.find(s->name);
            if (found != scrolls.end() && found->second.velocity != 0) {
                found->second.velocity = 0;
                press_.clear();
                press_drawn_ = false;
            }
        }
        break;
    }
    case Kind::LongPress: {
        const Target* t = seen_.find(press_);
        if (t != nullptr && t->long_press && t->enabled) {
            long_press_ = press_;
            press_.clear();
            press_drawn_ = false;
        }
        break;
    }
    case Kind::DragStart: {
        if (drag_owner_.empty()) {
            const bool horizontal = std::abs(event.move.x) > std::abs(event.move.y);
            if (const Target* t = seen_.draggable_at(event.start, horizontal)) {
                drag_owner_ = t->name;
                drag_ = Drag{true, false, {}, event.at, event.start, {}};
                // What lies in a moving list is not pressed any more; a tap may still come if it hardly
                // moved.
                press_drawn_ = press_drawn_ && press_ == t->name;
            }
        }
        if (drag_) {
            drag_->move = drag_->move + event.move;
            drag_->at = event.at;
        }
        break;
    }
    case Kind::DragMove:
        if (drag_) {
            drag_->move = drag_->move + event.move;
            drag_->at = event.at;
        }
        break;
    case Kind::DragEnd:
        if (drag_) {
            drag_->ended = true;
            drag_->velocity = event.velocity;
        }
        break;
    case Kind::Tap:
        tap_at_ = event.start;
        if (!press_.empty() && seen_.find(press_) != nullptr) {
            if (press_ == last_tap_ && now() - last_tap_s_ < kDoubleTap_s &&
                distance(event.start, last_tap_at_) < m.mm(kDoubleTap_mm)) {
                double_tap_ = press_;
            }
            last_tap_ = press_;
            last_tap_s_ = now();
            last_tap_at_ = event.start;
            set_focus(press_);
            activate(press_);
        }
        [[fallthrough]];
    case Kind::Cancel:
        if (drag_ && !drag_->ended) {
            drag_->ended = true; // a slider taken hold of at once and let go
        }
        press_.clear();
        press_drawn_ = false;
        break;
    case Kind::PinchStart: {
        const Target* t = seen_.container_at(event.at, Role::Canvas);
        pinch_owner_ = t != nullptr ? t->name : std::string();
        break;
    }
    case Kind::Pinch:
        if (!pinch_) {
            pinch_ = Pinch{event.at, {}, 1};
        }
        pinch_->at = event.at;
        pinch_->move = pinch_->move + event.move;
        pinch_->scale *= event.scale;
        break;
    case Kind::PinchEnd:
        break;
    }
}

void Ui::activate(std::string_view name) {
    taps_.emplace_back(name);
    flash_ = name;
    flash_until_s_ = now() + static_cast<double>(kPress_s);
}

void Ui::take_keys() {
    keys_left_.clear();
    if (!key_hold_.empty()) {
        const Target* t = seen_.find(key_hold_);
        if (t == nullptr || !seen_.reachable(*t)) {
            key_hold_.clear(); // what was held has gone
        }
    }
    for (const KeyPress& press : in.keys) {
        if (!press.down) {
            if (!key_hold_.empty() && press.key == key_hold_key_) {
                key_hold_.clear();
            }
            continue;
        }
        const bool typing = !typing_in.empty();
        const Target* here = seen_.find(focus_);
        const bool shown = focus_shown_ && here != nullptr && seen_.reachable(*here);
        const bool adjusts =
            (shown && here->role == Role::Slider) || (!arrows_in.empty() && focus_.starts_with(arrows_in));
        const auto move = [&](float dx, float dy) {
            set_focus(seen_.focus_towards(focus_, dx, dy));
            focus_shown_ = true;
        };
        if (press.key == Key::Tab) {
            set_focus(seen_.next_focus(focus_, press.shift ? -1 : 1));
            focus_shown_ = true;
            typing_in.clear();
        } else if (!typing && (press.key == Key::Up || press.key == Key::Down) && !adjusts) {
            move(0, press.key == Key::Up ? -1.0f : 1.0f);
        } else if (!typing && (press.key == Key::Left || press.key == Key::Right) && !adjusts) {
            move(press.key == Key::Left ? -1.0f : 1.0f, 0);
        } else if (!typing && (press.key == Key::Enter || press.key == Key::Space)) {
            if (press.repeat) {
                continue; // a key kept down holds, it does not tap again
            }
            std::string name = shown ? focus_ : std::string();
            if (name.empty()) {
                for (const Target& t : seen_.all()) {
                    if (t.role == Role::Primary && seen_.reachable(t)) {
                        name = t.name;
                    }
                }
            }
            if (name.empty()) {
                keys_left_.push_back(press.key);
            } else {
                key_hold_ = name;
                key_hold_key_ = press.key;
                key_hold_s_ = now();
                activate(name);
                if (const Target* t = seen_.find(name)) {
                    tap_at_ = t->visible.centre();
                }
            }
        } else {
            keys_left_.push_back(press.key);
        }
    }
}

} // namespace lanternleaf
