// Events: what SDL reports, as HostInput.
// Exists so that touch, mouse and keys come in by one door and each contact once: SDL's own imitation of
// mouse by touch and touch by mouse is switched off.
#pragma once

#include <SDL.h>

#include "host/input.h"

namespace lanternleaf {

/// Sets the hints that must be set before the video system starts.
void set_touch_hints();

/// Collects events between two frames.
class EventReader {
public:
    explicit EventReader(SDL_Window* window) : window_(window) {}

    /// Takes one event in. True when it may change what is to be seen.
    bool take(const SDL_Event& event);
    /// A finger ended without lifting: the system took it for a gesture of its own.
    void lose_finger(int id);
    /// All that came in since the last call, with the window's size and scale as they are now.
    [[nodiscard]] HostInput input();

    bool quit = false;
    bool hidden = false; ///< minimised or in the background: draw nothing

private:
    [[nodiscard]] Point finger_at(const SDL_TouchFingerEvent& finger) const;
    bool take_key(const SDL_KeyboardEvent& event);

    SDL_Window* window_;
    HostInput pending_;
    double last_s_ = 0;
};

/// Seconds of the steady clock all samples are stamped with.
[[nodiscard]] double steady_s();

} // namespace lanternleaf
