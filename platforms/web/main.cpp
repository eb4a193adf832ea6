// The program in a browser. There is no loop to wait in: the page calls lanternleaf_turn() when an event came
// or a frame is due, and not otherwise.
//
// A frame that wrote to the library is not shown until the page has all of it in the browser's storage, and
// no frame is made meanwhile: what a person sees as done has been kept. Touches in that time (a few
// milliseconds) are taken in afterwards.
#include <algorithm>
#include <memory>
#include <optional>
#include <string>

#include <emscripten.h>
#include <SDL.h>

#include "app_window.h"
#include "host_web.h"
#include "page.h"
#include "targets_json.h"

namespace {

using namespace lanternleaf;

struct Program {
    HostWeb host{"/assets"};
    std::unique_ptr<AppWindow> window;
    bool turning = false; ///< inside lanternleaf_turn: events there need no further call
    bool keeping = false; ///< the page is putting the last frame's writes into storage
    bool shown = false;   ///< the first frame is on the glass
    std::string answer;   ///< text handed to JavaScript lives until the next call
};

Program& program() {
    static Program one;
    return one;
}

int on_event(void*, SDL_Event* event) {
    if (event->type != SDL_POLLSENTINEL && !program().turning) {
        page_wake(0);
    }
    return 0;
}

void amend(HostInput& input) {
    float values[7] = {};
    page_surroundings(values);
    input.insets = {values[0], values[1], values[2], values[3]};
    input.pt_per_mm = values[4];
    input.reduced_motion = values[5] > 0;
    input.system_dark = values[6] > 0;
}

void plan_next_turn(const AppWindow& window) {
    if (const std::optional<double> sleep = window.sleep_s()) {
        page_wake(*sleep);
    }
}

void push_key(SDL_Keycode key) {
    for (const Uint32 type : {SDL_KEYDOWN, SDL_KEYUP}) {
        SDL_Event event{};
        event.type = type;
        event.key.timestamp = SDL_GetTicks();
        event.key.keysym.sym = key;
        SDL_PushEvent(&event);
    }
}

} // namespace

extern "C" {

void lanternleaf_disturb();

EMSCRIPTEN_KEEPALIVE void lanternleaf_turn() {
    Program& p = program();
    if (!p.window) {
        return;
    }
    p.turning = true;
    SDL_Event event;
    while (SDL_PollEvent(&event) == 1) {
        p.window->take(event);
    }
    if (!p.keeping) {
        if (p.window->frame_due()) {
            p.window->make_frame();
            p.keeping = page_keep() != 0;
            if (!p.keeping) {
                p.window->show_frame();
                if (!p.shown) {
                    p.shown = true;
                    page_ready();
                }
            }
        }
        if (!p.keeping) {
            plan_next_turn(*p.window);
        }
    }
    p.turning = false;
}

/// All that was written is in storage.
EMSCRIPTEN_KEEPALIVE void lanternleaf_kept() {
    program().keeping = false;
    lanternleaf_disturb();
}

/// Something changed that is no event of SDL's: insets, the wish for less motion.
EMSCRIPTEN_KEEPALIVE void lanternleaf_disturb() {
    if (program().window) {
        program().window->disturb();
        page_wake(0);
    }
}

/// Typed on an on-screen keyboard.
EMSCRIPTEN_KEEPALIVE void lanternleaf_type(const char* text) {
    const std::string all(text);
    for (std::size_t start = 0; start < all.size();) {
        std::size_t end = std::min(all.size(), start + SDL_TEXTINPUTEVENT_TEXT_SIZE - 1);
        while (end < all.size() && (static_cast<unsigned char>(all[end]) & 0xC0U) == 0x80U) {
            --end; // never within a character
        }
        SDL_Event event{};
        event.type = SDL_TEXTINPUT;
        event.text.timestamp = SDL_GetTicks();
        all.copy(event.text.text, end - start, start);
        SDL_PushEvent(&event);
        start = end;
    }
}

EMSCRIPTEN_KEEPALIVE void lanternleaf_backspace() {
    push_key(SDLK_BACKSPACE);
}

/// The system took a finger away (a gesture of its own): nothing was tapped.
EMSCRIPTEN_KEEPALIVE void lanternleaf_touch_lost(int id) {
    if (program().window) {
        program().window->lose_finger(id);
        page_wake(0);
    }
}

/// One of the files that the person picked or dropped on the page.
EMSCRIPTEN_KEEPALIVE void lanternleaf_bring_in(const char* name, const char* bytes, int count) {
    if (program().window) {
        program().window->hold_file(name, std::string(bytes, static_cast<std::size_t>(count)));
    }
}

/// That was the last of the files that belong together.
EMSCRIPTEN_KEEPALIVE void lanternleaf_brought_in() {
    if (program().window) {
        program().window->bring_in_held();
        page_wake(0);
    }
}

EMSCRIPTEN_KEEPALIVE int lanternleaf_frames() {
    return program().window ? static_cast<int>(program().window->frames()) : 0;
}

/// What can be touched now, as JSON: for tests, which tap by name.
EMSCRIPTEN_KEEPALIVE const char* lanternleaf_targets() {
    Program& p = program();
    p.answer = p.window ? targets_json(p.window->targets()) : "[]";
    return p.answer.c_str();
}
}

int main() {
    Program& p = program();
    WindowOptions options;
    options.fonts = "/assets/fonts";
    options.assets = "/assets";
    options.library = p.host.data_folder().string();
    options.renderer_flags = 0; // the browser paces the frames
    Outcome<std::unique_ptr<AppWindow>> opened = AppWindow::open(options, p.host);
    if (!opened) {
        page_stopped(opened.problem().sentence().c_str());
        return 1;
    }
    p.window = std::move(opened).value();
    p.window->amend = amend;
    SDL_AddEventWatch(on_event, nullptr);
    page_wake(0);
    return 0;
}
