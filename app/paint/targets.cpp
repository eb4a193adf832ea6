#include "paint/targets.h"

#include <cmath>
#include <utility>

namespace lanternleaf {

bool is_container(Role role) {
    return role == Role::Scroll || role == Role::Canvas || role == Role::Sheet || role == Role::Scrim;
}

void Targets::clear() {
    targets_.clear();
    clips_.clear();
}

void Targets::push_clip(const Rect& r) {
    clips_.push_back(clips_.empty() ? r : common(r, clips_.back()));
}

void Targets::pop_clip() {
    clips_.pop_back();
}

Target& Targets::add(Target target) {
    target.visible = clips_.empty() ? target.rect : common(target.rect, clips_.back());
    targets_.push_back(std::move(target));
    return targets_.back();
}

const Target* Targets::find(std::string_view name) const {
    for (const Target& t : targets_) {
        if (t.name == name) {
            return &t;
        }
    }
    return nullptr;
}

const Target* Targets::at(Point p, float reach) const {
    // From the top down to the first target that holds the point.
    std::size_t hit = targets_.size();
    for (std::size_t i = targets_.size(); i-- > 0;) {
        const Target& t = targets_[i];
        if (t.role != Role::Note && t.visible.holds(p)) {
            hit = i;
            break;
        }
    }
    const bool found = hit < targets_.size();
    if (found && !is_container(targets_[hit].role) && targets_[hit].role != Role::Spot) {
        return &targets_[hit];
    }
    // Only page, a container or a spot of the card: a small target close by, drawn above that container, is
    // meant.
    std::size_t floor = 0;
    if (found) {
        for (std::size_t i = hit + 1; i-- > 0;) {
            if (is_container(targets_[i].role) && targets_[i].visible.holds(p)) {
                floor = i;
                break;
            }
        }
    }
    const Target* best = found ? &targets_[hit] : nullptr;
    float best_distance =
        found && targets_[hit].role == Role::Spot ? distance(p, targets_[hit].rect.centre()) : 1e9f;
    for (std::size_t i = floor; i < targets_.size(); ++i) {
        const Target& t = targets_[i];
        if (is_container(t.role) || t.role == Role::Note || t.visible.empty()) {
            continue;
        }
        const Rect grown =
            t.visible.shrunk(std::min(0.0f, (t.rect.w - reach) / 2), std::min(0.0f, (t.rect.h - reach) / 2));
        const float d = distance(p, t.rect.centre());
        if (grown.holds(p) && d < best_distance) {
            best = &t;
            best_distance = d;
        }
    }
    return best;
}

const Target* Targets::draggable_at(Point p, bool horizontal) const {
    for (std::size_t i = targets_.size(); i-- > 0;) {
        const Target& t = targets_[i];
        if (!t.visible.holds(p) || t.role == Role::Note) {
            continue;
        }
        if (t.drag == DragAxis::Both || t.drag == (horizontal ? DragAxis::X : DragAxis::Y)) {
            return &t;
        }
        if (t.role == Role::Scrim || t.role == Role::Sheet) {
            return nullptr;
        }
    }
    return nullptr;
}

const Target* Targets::container_at(Point p, Role role) const {
    for (std::size_t i = targets_.size(); i-- > 0;) {
        const Target& t = targets_[i];
        if (is_container(t.role) && t.visible.holds(p)) {
            if (t.role == role) {
                return &t;
            }
            if (t.role == Role::Scrim || t.role == Role::Sheet) {
                return nullptr;
            }
        }
    }
    return nullptr;
}

bool Targets::reachable(const Target& target) const {
    if (target.visible.empty()) {
        return false;
    }
    const Target* top = at(target.visible.centre());
    return top != nullptr && top->name == target.name;
}

bool Targets::can_focus(const Target& target) const {
    if (is_container(target.role) || target.role == Role::Note) {
        return false;
    }
    // What a scroll area hides can be reached too: it scrolls into view. What a sheet covers cannot.
    if (target.visible.w >= target.rect.w / 2 && target.visible.h >= target.rect.h / 2) {
        return reachable(target);
    }
    const std::size_t index = static_cast<std::size_t>(&target - targets_.data());
    for (std::size_t i = index + 1; i < targets_.size(); ++i) {
        if (targets_[i].role == Role::Scrim) {
            return false;
        }
    }
    return true;
}

std::string Targets::next_focus(std::string_view from, int step) const {
    const std::size_t n = targets_.size();
    std::size_t start = n;
    for (std::size_t i = 0; i < n; ++i) {
        if (targets_[i].name == from) {
            start = i;
        }
    }
    if (start == n) {
        start = step > 0 ? n - 1 : 0; // no focus yet: forwards begins with the first, backwards with the last
    }
    for (std::size_t k = 1; k <= n; ++k) {
        const std::size_t i = step > 0 ? (start + k) % n : (start + n - k % n) % n;
        if (can_focus(targets_[i])) {
            return targets_[i].name;
        }
    }
    return {};
}

std::string Targets::focus_towards(std::string_view from, float dx, float dy) const {
    const Target* here = find(from);
    if (here == nullptr) {
        return next_focus(from, dx + dy > 0 ? 1 : -1);
    }
    const Point a = here->rect.centre();
    const Target* best = here;
    float best_cost = 1e9f;
    for (const Target& t : targets_) {
        if (&t == here || !can_focus(t)) {
            continue;
        }
        const Point way = t.rect.centre() - a;
        const float ahead = way.x * dx + way.y * dy;
        const float aside = std::abs(way.x * dy) + std::abs(way.y * dx);
        // Only what lies more ahead than aside; straight on is better than near but off to the side.
        if (ahead > 1 && aside <= ahead * 2 && ahead + 2 * aside < best_cost) {
            best = &t;
            best_cost = ahead + 2 * aside;
        }
    }
    return best->name;
}

} // namespace lanternleaf
