// HostInput: all that a device tells the app before a frame, as plain values.
// Exists so that a frame is a function of values: a test, a recording and a window feed the app in the same
// way. Positions are points, times are seconds of the host's own clock; the app never asks for the time
// itself.
#pragma once

#include <string>
#include <vector>

#include "host/point.h"

namespace lanternleaf {

enum class PointerKind { Finger, Mouse, Pen };

/// One thing a finger, mouse or pen did. Each contact has an id of its own from Down to Up or Cancel.
struct PointerSample {
    enum class Phase { Down, Move, Up, Cancel };
    Phase phase = Phase::Move;
    PointerKind kind = PointerKind::Finger;
    int id = 0;
    Point at;
    double time_s = 0;
};

/// Keys the app knows by name; letters and digits arrive as text.
enum class Key {
    Tab,
    Left,
    Right,
    Up,
    Down,
    Enter,
    Space,
    Escape,
    Backspace,
    Delete,
    Home,
    End,
    PageUp,
    PageDown,
    Undo,
    Redo
};

struct KeyPress {
    Key key = Key::Space;
    bool down = true;
    bool repeat = false;
    bool shift = false;
};

/// What the device is and what happened since the last frame.
struct HostInput {
    Size window;                 ///< points
    Insets insets;               ///< points
    float px_per_pt = 1;         ///< device pixels per point
    float pt_per_mm = 5;         ///< points per millimetre of glass
    bool reduced_motion = false; ///< the system's setting
    bool system_dark = false;    ///< the system's setting

    std::vector<PointerSample> pointers; ///< in the order they happened
    std::vector<KeyPress> keys;
    std::string text;         ///< typed UTF-8 since the last frame
    Point wheel;              ///< notches; y > 0 is away from the user
    bool wheel_zooms = false; ///< Ctrl was held
    Point hover;              ///< where a mouse rests
    bool hovering = false;    ///< false after a finger: nothing looks hovered then

    double now_s = 0;
    float dt_s = 1.0f / 60; ///< since the last frame, never above 0.1
};

} // namespace lanternleaf
