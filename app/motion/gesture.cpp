#include "motion/gesture.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

using Kind = GestureEvent::Kind;

GestureEvent Gesture::event(Kind kind) const {
    GestureEvent e;
    e.kind = kind;
    e.at = at_;
    e.start = start_;
    e.pointer = kind_;
    return e;
}

std::optional<double> Gesture::wake_at() const {
    if (state_ == State::Press && !long_sent_) {
        return start_s_ + rules.long_press_s;
    }
    return std::nullopt;
}

void Gesture::feed(const PointerSample& sample, std::vector<GestureEvent>& out) {
    switch (sample.phase) {
    case PointerSample::Phase::Down:
        down(sample, out);
        break;
    case PointerSample::Phase::Move:
        move(sample, out);
        break;
    case PointerSample::Phase::Up:
        up(sample, false, out);
        break;
    case PointerSample::Phase::Cancel:
        up(sample, true, out);
        break;
    }
}

void Gesture::down(const PointerSample& sample, std::vector<GestureEvent>& out) {
    // A contact of the same id, or one silent for long, has left without a word.
    const auto lost = [&](const Contact& c) {
        return c.id == sample.id || sample.time_s - c.seen_s > rules.lost_after_s;
    };
    if (std::any_of(contacts_.begin(), contacts_.end(), lost)) {
        std::erase_if(contacts_, lost);
        if (contacts_.empty() && state_ != State::Idle) {
            if (pressed()) {
                out.push_back(event(Kind::Cancel));
            }
            state_ = State::Idle;
        }
    }
    contacts_.push_back({sample.id, sample.at, sample.time_s, sample.kind});
    if (contacts_.size() == 1) {
        state_ = State::Press;
        start_ = at_ = sample.at;
        start_s_ = sample.time_s;
        drift_ = 0;
        long_sent_ = false;
        kind_ = sample.kind;
        trace_.assign(1, {sample.at, sample.time_s});
        out.push_back(event(Kind::Press));
        return;
    }
    if (pressed()) {
        if (state_ == State::Drag) {
            out.push_back(event(Kind::DragEnd));
        }
        out.push_back(event(Kind::Cancel));
        state_ = State::Spent;
    }
    if (contacts_.size() == 2) {
        state_ = State::Pinch;
        pinch_at_ = (contacts_[0].at + contacts_[1].at) * 0.5f;
        pinch_span_ = std::max(distance(contacts_[0].at, contacts_[1].at), 1.0f);
        GestureEvent e = event(Kind::PinchStart);
        e.at = e.start = pinch_at_;
        out.push_back(e);
    }
}

void Gesture::move(const PointerSample& sample, std::vector<GestureEvent>& out) {
    const auto found =
        std::find_if(contacts_.begin(), contacts_.end(), [&](const Contact& c) { return c.id == sample.id; });
    if (found == contacts_.end()) {
        return;
    }
    found->at = sample.at;
    found->seen_s = sample.time_s;
    if (state_ == State::Pinch) {
        pinch_moved(out);
        return;
    }
    if (!pressed()) {
        return;
    }
    const Point before = at_;
    at_ = sample.at;
    drift_ = std::max(drift_, distance(at_, start_));
    trace_.push_back({at_, sample.time_s});
    std::erase_if(trace_, [&](const Trace& t) { return sample.time_s - t.time_s > rules.velocity_window_s; });
    if (state_ == State::Press && drift_ > rules.drag_start_mm * rules.pt_per_mm) {
        state_ = State::Drag;
        GestureEvent e = event(Kind::DragStart);
        e.move = at_ - start_;
        out.push_back(e);
    } else if (state_ == State::Drag) {
        GestureEvent e = event(Kind::DragMove);
        e.move = at_ - before;
        out.push_back(e);
    }
}

void Gesture::pinch_moved(std::vector<GestureEvent>& out) {
    const Point middle = (contacts_[0].at + contacts_[1].at) * 0.5f;
    const float span = std::max(distance(contacts_[0].at, contacts_[1].at), 1.0f);
    GestureEvent e = event(Kind::Pinch);
    e.at = middle;
    e.start = pinch_at_;
    e.move = middle - pinch_at_;
    e.scale = span / pinch_span_;
    out.push_back(e);
    pinch_at_ = middle;
    pinch_span_ = span;
}

void Gesture::up(const PointerSample& sample, bool cancelled, std::vector<GestureEvent>& out) {
    const auto found =
        std::find_if(contacts_.begin(), contacts_.end(), [&](const Contact& c) { return c.id == sample.id; });
    if (found == contacts_.end()) {
        return;
    }
    if (!cancelled && pressed() && !(sample.at == at_)) {
        move(sample, out); // the lift itself may be the last step of a drag
    }
    std::erase_if(contacts_, [&](const Contact& c) { return c.id == sample.id; });
    if (state_ == State::Pinch) {
        out.push_back(event(Kind::PinchEnd));
        state_ = State::Spent;
    } else if (pressed()) {
        const Point speed = velocity(sample.time_s);
        const bool was_drag = state_ == State::Drag;
        if (was_drag) {
            GestureEvent e = event(Kind::DragEnd);
            e.velocity = cancelled ? Point{} : speed;
            out.push_back(e);
        }
        const bool still = drift_ <= rules.tap_drift_mm * rules.pt_per_mm;
        const bool brief = sample.time_s - start_s_ <= rules.tap_longest_s;
        const bool slow = !was_drag || length(speed) < rules.flick_mm_per_s * rules.pt_per_mm;
        out.push_back(event(!cancelled && still && brief && slow ? Kind::Tap : Kind::Cancel));
        state_ = State::Spent;
    }
    if (contacts_.empty()) {
        state_ = State::Idle;
    }
}

void Gesture::tick(double now_s, std::vector<GestureEvent>& out) {
    if (state_ == State::Press && !long_sent_ && now_s - start_s_ >= rules.long_press_s) {
        long_sent_ = true;
        out.push_back(event(Kind::LongPress));
    }
}

Point Gesture::velocity(double now_s) const {
    // Least-squares slope of the last few samples: steadier than the last step alone.
    double n = 0, st = 0, stt = 0, sx = 0, sy = 0, stx = 0, sty = 0;
    for (const Trace& t : trace_) {
        const double age = t.time_s - now_s;
        if (-age > rules.velocity_window_s) {
            continue;
        }
        n += 1, st += age, stt += age * age;
        sx += static_cast<double>(t.at.x), sy += static_cast<double>(t.at.y);
        stx += age * static_cast<double>(t.at.x), sty += age * static_cast<double>(t.at.y);
    }
    const double spread = n * stt - st * st;
    if (n < 2 || spread < 1e-9) {
        return {};
    }
    return {static_cast<float>((n * stx - st * sx) / spread),
            static_cast<float>((n * sty - st * sy) / spread)};
}

} // namespace lanternleaf
