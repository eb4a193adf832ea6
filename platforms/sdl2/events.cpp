#include "events.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <utility>

namespace lanternleaf {

namespace {

constexpr int kMouseId = -1;

double stamp_s(Uint32 ticks) {
    return static_cast<double>(ticks) / 1000;
}

std::optional<Key> key_of(const SDL_Keysym& sym) {
    const bool ctrl = (sym.mod & (KMOD_CTRL | KMOD_GUI)) != 0;
    switch (sym.sym) {
    case SDLK_TAB:
        return Key::Tab;
    case SDLK_LEFT:
        return Key::Left;
    case SDLK_RIGHT:
        return Key::Right;
    case SDLK_UP:
        return Key::Up;
    case SDLK_DOWN:
        return Key::Down;
    case SDLK_RETURN:
    case SDLK_KP_ENTER:
        return Key::Enter;
    case SDLK_SPACE:
        return Key::Space;
    case SDLK_ESCAPE:
    case SDLK_AC_BACK:
        return Key::Escape;
    case SDLK_BACKSPACE:
        return Key::Backspace;
    case SDLK_DELETE:
        return Key::Delete;
    case SDLK_HOME:
        return Key::Home;
    case SDLK_END:
        return Key::End;
    case SDLK_PAGEUP:
        return Key::PageUp;
    case SDLK_PAGEDOWN:
        return Key::PageDown;
    case SDLK_z:
        return ctrl ? std::optional<Key>((sym.mod & KMOD_SHIFT) != 0 ? Key::Redo : Key::Undo) : std::nullopt;
    case SDLK_y:
        return ctrl ? std::optional<Key>(Key::Redo) : std::nullopt;
    default:
        return std::nullopt;
    }
}

} // namespace

void set_touch_hints() {
    SDL_SetHint(SDL_HINT_TOUCH_MOUSE_EVENTS, "0");
    SDL_SetHint(SDL_HINT_MOUSE_TOUCH_EVENTS, "0");
    SDL_SetHint(SDL_HINT_IME_SHOW_UI, "1");
    SDL_SetHint(SDL_HINT_VIDEO_ALLOW_SCREENSAVER, "1");
    SDL_SetHint(SDL_HINT_RENDER_SCALE_QUALITY, "linear");
}

double steady_s() {
    return static_cast<double>(SDL_GetTicks64()) / 1000;
}

Point EventReader::finger_at(const SDL_TouchFingerEvent& finger) const {
    int w = 0;
    int h = 0;
    SDL_GetWindowSize(window_, &w, &h);
    return {finger.x * static_cast<float>(w), finger.y * static_cast<float>(h)};
}

bool EventReader::take_key(const SDL_KeyboardEvent& event) {
    const auto key = key_of(event.keysym);
    if (key) {
        const bool shift = (event.keysym.mod & KMOD_SHIFT) != 0;
        pending_.keys.push_back({*key, event.type == SDL_KEYDOWN, event.repeat != 0, shift});
    }
    return key.has_value();
}

bool EventReader::take(const SDL_Event& event) {
    using Phase = PointerSample::Phase;
    const auto sample = [&](Phase phase, PointerKind kind, int id, Point at) {
        pending_.pointers.push_back({phase, kind, id, at, stamp_s(event.common.timestamp)});
    };
    switch (event.type) {
    case SDL_QUIT:
    case SDL_APP_TERMINATING:
        quit = true;
        return true;
    case SDL_FINGERDOWN:
    case SDL_FINGERMOTION:
    case SDL_FINGERUP: {
        const Phase phase = event.type == SDL_FINGERDOWN ? Phase::Down
                            : event.type == SDL_FINGERUP ? Phase::Up
                                                         : Phase::Move;
        // SDL's finger ids are 64 bits wide; the low ones tell fingers of one touch apart.
        sample(phase, PointerKind::Finger, static_cast<int>(event.tfinger.fingerId & 0x7FFFFFFF),
               finger_at(event.tfinger));
        pending_.hovering = false;
        return true;
    }
    case SDL_MOUSEBUTTONDOWN:
    case SDL_MOUSEBUTTONUP:
        if (event.button.button != SDL_BUTTON_LEFT || event.button.which == SDL_TOUCH_MOUSEID) {
            return false;
        }
        SDL_CaptureMouse(event.type == SDL_MOUSEBUTTONDOWN ? SDL_TRUE : SDL_FALSE);
        sample(event.type == SDL_MOUSEBUTTONDOWN ? Phase::Down : Phase::Up, PointerKind::Mouse, kMouseId,
               {static_cast<float>(event.button.x), static_cast<float>(event.button.y)});
        return true;
    case SDL_MOUSEMOTION:
        if (event.motion.which == SDL_TOUCH_MOUSEID) {
            return false;
        }
        pending_.hover = {static_cast<float>(event.motion.x), static_cast<float>(event.motion.y)};
        pending_.hovering = true;
        if ((event.motion.state & SDL_BUTTON_LMASK) != 0) {
            sample(Phase::Move, PointerKind::Mouse, kMouseId, pending_.hover);
        }
        return true;
    case SDL_MOUSEWHEEL:
        pending_.wheel = pending_.wheel + Point{event.wheel.preciseX, event.wheel.preciseY};
        pending_.wheel_zooms = (SDL_GetModState() & KMOD_CTRL) != 0;
        return true;
    case SDL_KEYDOWN:
    case SDL_KEYUP:
        return take_key(event.key);
    case SDL_TEXTINPUT:
        pending_.text += event.text.text;
        return true;
    case SDL_APP_WILLENTERBACKGROUND:
    case SDL_APP_DIDENTERBACKGROUND:
        hidden = true;
        return false;
    case SDL_APP_DIDENTERFOREGROUND:
        hidden = false;
        return true;
    case SDL_WINDOWEVENT:
        if (event.window.event == SDL_WINDOWEVENT_MINIMIZED || event.window.event == SDL_WINDOWEVENT_HIDDEN) {
            hidden = true;
        } else if (event.window.event == SDL_WINDOWEVENT_LEAVE) {
            pending_.hovering = false;
        } else if (event.window.event == SDL_WINDOWEVENT_RESTORED ||
                   event.window.event == SDL_WINDOWEVENT_SHOWN ||
                   event.window.event == SDL_WINDOWEVENT_EXPOSED) {
            hidden = false;
        }
        return !hidden;
    case SDL_RENDER_TARGETS_RESET:
    case SDL_RENDER_DEVICE_RESET:
        return true;
    default:
        return false;
    }
}

void EventReader::lose_finger(int id) {
    pending_.pointers.push_back({PointerSample::Phase::Cancel, PointerKind::Finger, id, {}, steady_s()});
}

HostInput EventReader::input() {
    HostInput out = pending_;
    int w = 0;
    int h = 0;
    int pixel_w = 0;
    int pixel_h = 0;
    SDL_GetWindowSize(window_, &w, &h);
    SDL_GetWindowSizeInPixels(window_, &pixel_w, &pixel_h);
    out.window = {static_cast<float>(w), static_cast<float>(h)};
    out.px_per_pt = w > 0 ? static_cast<float>(pixel_w) / static_cast<float>(w) : 1.0f;
    float dpi = 0;
    const int display = SDL_GetWindowDisplayIndex(window_);
    if (display >= 0 && SDL_GetDisplayDPI(display, nullptr, &dpi, nullptr) == 0 && dpi > 50 && dpi < 900) {
        out.pt_per_mm = dpi / 25.4f / out.px_per_pt;
    }
    out.now_s = steady_s();
    out.dt_s = static_cast<float>(std::clamp(out.now_s - last_s_, 0.0, 0.1));
    last_s_ = out.now_s;

    pending_.pointers.clear();
    pending_.keys.clear();
    pending_.text.clear();
    pending_.wheel = {};
    pending_.wheel_zooms = false;
    return out;
}

} // namespace lanternleaf
