// Kinetic: how a scrolled thing goes on after the finger has left, and how it springs back past its ends.
// Exists so that a fling ends at the same place at any frame rate: both motions are exact solutions in time,
// not steps per frame. Pure: positions in points, time in seconds.
#pragma once

namespace lanternleaf {

/// One axis of a scrolled area. `offset` is how far the content has moved up or left, 0..most.
struct Kinetic {
    float offset = 0;
    float velocity = 0; ///< points per second; positive moves the content on
    bool held = false;  ///< a finger is on it

    /// Moves with the finger; past an end only half as far, so that the end can be felt.
    void drag(float by, float most);
    /// The finger lifts with this velocity.
    void release(float points_per_s, float most);
    /// Lets dt_s pass. stop_pt_per_s is the speed at which a fling ends. True while it is still moving.
    bool advance(float dt_s, float most, float stop_pt_per_s);
    /// Jumps (wheel, keys), kept between the ends.
    void jump(float by, float most);
    [[nodiscard]] bool moving(float most) const;
};

} // namespace lanternleaf
