// FramePacer: decides when the next frame has to be drawn, and counts those that were.
// Exists so that an idle tablet draws nothing: three frames after anything came in (layout settles in two),
// then only while something asked to stay awake during the last frame, or once at a moment something asked to
// be woken.
#pragma once

#include <optional>

namespace lanternleaf {

class FramePacer {
public:
    static constexpr int kFramesAfterInput = 3;

    /// Something came in: touch, key, window change.
    void input() { owed_ = kFramesAfterInput; }

    /// Called after each frame with what the frame asked for. A frame that stays awake owes one more.
    void drew(bool stay_awake, std::optional<double> wake_at_s) {
        ++frames_;
        owed_ = owed_ > 0 ? owed_ - 1 : 0;
        awake_ = stay_awake;
        wake_at_s_ = wake_at_s;
    }

    [[nodiscard]] bool due(double now_s) const {
        return owed_ > 0 || awake_ || (wake_at_s_ && now_s >= *wake_at_s_);
    }

    /// Seconds the loop may sleep waiting for input: 0 when a frame is due, nothing for as long as it likes.
    [[nodiscard]] std::optional<double> sleep_s(double now_s) const {
        if (due(now_s)) {
            return 0.0;
        }
        return wake_at_s_ ? std::optional<double>(*wake_at_s_ - now_s) : std::nullopt;
    }

    [[nodiscard]] long frames() const { return frames_; }

private:
    int owed_ = kFramesAfterInput; ///< the first frames come without input
    bool awake_ = false;
    std::optional<double> wake_at_s_;
    long frames_ = 0;
};

} // namespace lanternleaf
