// Gesture: turns pointer samples into presses, taps, long presses, drags and pinches.
// Exists so that touch rules live in one state machine that needs no window. Distances are millimetres of
// glass, not pixels. A second finger withdraws the press; a finger whose lift was lost is lifted when the
// next one comes down.
#pragma once

#include <optional>
#include <vector>

#include "host/input.h"

namespace lanternleaf {

/// The touch rules. The figures are our own proposals, to be tuned on devices.
struct GestureRules {
    float pt_per_mm = 5;
    float drag_start_mm = 2.5f; ///< a press that moved this far may be a drag
    float tap_drift_mm = 5;     ///< a press that never moved further may still be a tap
    double tap_longest_s = 1.5; ///< a press held longer is no tap
    double long_press_s = 0.45;
    double lost_after_s = 5; ///< a finger silent for this long is taken to have left when another comes down
    float flick_mm_per_s = 40; ///< a slower release within the tap's limits is a tap, a faster one a drag
    double velocity_window_s = 0.08;
};

struct GestureEvent {
    enum class Kind {
        Press,      ///< first contact
        LongPress,  ///< still down in place after long_press_s
        DragStart,  ///< moved more than drag_start_mm; `move` is the whole way so far
        DragMove,   ///< `move` since the last event
        DragEnd,    ///< lifted after a drag; `velocity` in points per second
        Tap,        ///< lifted within the tap's limits. After a DragStart, a DragEnd comes first
        Cancel,     ///< the press is withdrawn: second finger, lost contact, too long, too far
        PinchStart, ///< two contacts; `at` is their middle
        Pinch,      ///< `scale` and `move` since the last event
        PinchEnd,
    };
    Kind kind = Kind::Press;
    Point at;
    Point start; ///< where the press began
    Point move;
    Point velocity;
    float scale = 1;
    PointerKind pointer = PointerKind::Finger;
};

/// The state machine. Feed samples in order, then call tick() once a frame.
class Gesture {
public:
    GestureRules rules;

    void feed(const PointerSample& sample, std::vector<GestureEvent>& out);
    /// Lets time pass: long presses.
    void tick(double now_s, std::vector<GestureEvent>& out);

    [[nodiscard]] bool pressed() const { return state_ == State::Press || state_ == State::Drag; }

    [[nodiscard]] bool dragging() const { return state_ == State::Drag; }

    [[nodiscard]] Point at() const { return at_; }

    [[nodiscard]] Point start() const { return start_; }

    /// Seconds since the press; 0 when nothing is pressed.
    [[nodiscard]] double held_s(double now_s) const { return pressed() ? now_s - start_s_ : 0; }

    /// The moment something will happen without new samples, if any.
    [[nodiscard]] std::optional<double> wake_at() const;

private:
    enum class State { Idle, Press, Drag, Pinch, Spent };

    struct Contact {
        int id = 0;
        Point at;
        double seen_s = 0;
        PointerKind kind = PointerKind::Finger;
    };

    struct Trace {
        Point at;
        double time_s = 0;
    };

    void down(const PointerSample& sample, std::vector<GestureEvent>& out);
    void move(const PointerSample& sample, std::vector<GestureEvent>& out);
    void up(const PointerSample& sample, bool cancelled, std::vector<GestureEvent>& out);
    void pinch_moved(std::vector<GestureEvent>& out);
    [[nodiscard]] GestureEvent event(GestureEvent::Kind kind) const;
    [[nodiscard]] Point velocity(double now_s) const;

    State state_ = State::Idle;
    std::vector<Contact> contacts_;
    std::vector<Trace> trace_;
    Point start_;
    Point at_;
    double start_s_ = 0;
    float drift_ = 0;
    bool long_sent_ = false;
    Point pinch_at_;
    float pinch_span_ = 1;
    PointerKind kind_ = PointerKind::Finger;
};

} // namespace lanternleaf
