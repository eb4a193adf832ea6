#include "motion/kinetic.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr float kDrag_per_s = 3.1f;    ///< a fling loses all but 1/e of its speed in 0.32 s
constexpr float kSpring_per_s = 14.0f; ///< the way back from past an end, 95 % done in 0.2 s

} // namespace

void Kinetic::drag(float by, float most) {
    velocity = 0;
    const bool outside = (offset <= 0 && by < 0) || (offset >= most && by > 0);
    offset += outside ? by / 2 : by;
}

void Kinetic::release(float points_per_s, float most) {
    held = false;
    velocity = offset < 0 || offset > most ? 0 : points_per_s;
}

bool Kinetic::advance(float dt_s, float most, float stop_pt_per_s) {
    if (held || dt_s <= 0) {
        return held;
    }
    if (velocity != 0) {
        // v(t) = v0 e^-kt, so the way covered is v0/k (1 - e^-kt). A step that would pass the end is cut
        // there.
        const float kept = std::exp(-kDrag_per_s * dt_s);
        // A fling is over when it reaches the stop speed; that moment may lie within this step.
        const float speed = std::abs(velocity);
        if (speed * kept <= stop_pt_per_s) {
            const float to_go = std::max(0.0f, speed - stop_pt_per_s) / kDrag_per_s;
            offset += velocity > 0 ? to_go : -to_go;
            velocity = 0;
        } else {
            offset += velocity * (1 - kept) / kDrag_per_s;
            velocity *= kept;
        }
        if (offset < 0 || offset > most) {
            offset = std::clamp(offset, 0.0f, most);
            velocity = 0;
        }
    } else if (offset < 0 || offset > most) {
        const float end = std::clamp(offset, 0.0f, most);
        offset = end + (offset - end) * std::exp(-kSpring_per_s * dt_s);
        if (std::abs(offset - end) < 0.5f) {
            offset = end;
        }
    }
    return moving(most);
}

void Kinetic::jump(float by, float most) {
    velocity = 0;
    offset = std::clamp(offset + by, 0.0f, std::max(0.0f, most));
}

bool Kinetic::moving(float most) const {
    return held || velocity != 0 || offset < 0 || offset > most;
}

} // namespace lanternleaf
