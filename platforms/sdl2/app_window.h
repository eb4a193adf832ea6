// AppWindow: the app in an SDL window, one turn at a time.
// Exists so that a loop that waits (a desk) and one that is called back (a browser) turn the very same thing:
// events in, a frame when the pacer says so, that frame on the glass.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include <SDL.h>

#include "base/outcome.h"
#include "host/host.h"
#include "host/input.h"
#include "paint/targets.h"

namespace lanternleaf {

struct WindowOptions {
    std::filesystem::path fonts;  ///< folder with the two faces
    std::filesystem::path assets; ///< folder with parts.json, cards/, safety/
    std::string library;          ///< the maker's own folder; empty: the usual place
    int width = 1180;
    int height = 820;
    Uint32 renderer_flags = SDL_RENDERER_PRESENTVSYNC;
    std::string open;    ///< card or build to open, or empty
    std::string targets; ///< a file that always tells what can be touched now (targets_json.h); empty: none
    bool log_frames = false; ///< one line on the error stream for each frame drawn, and a sum at the end
};

class AppWindow {
public:
    /// The problem is what kept the window from opening. `host` outlives the window.
    [[nodiscard]] static Outcome<std::unique_ptr<AppWindow>> open(const WindowOptions& options, Host& host);
    ~AppWindow();
    AppWindow(const AppWindow&) = delete;
    AppWindow& operator=(const AppWindow&) = delete;

    /// Called before each frame to add what the device knows better than SDL: insets, size of a millimetre.
    std::function<void(HostInput&)> amend;

    /// Takes one event in, files dropped on the window too; a frame becomes due when it may change what is
    /// seen.
    void take(const SDL_Event& event);
    /// The system took a finger away for a gesture of its own: it tapped nothing.
    void lose_finger(int id);
    /// A file from outside, one of those that came together; bring_in_held() then takes them: a card with its
    /// pictures goes on the shelf, anything else is refused with a sentence.
    void hold_file(const std::string& file_name, std::string content);
    void bring_in_held();
    /// A frame becomes due for another reason.
    void disturb();
    [[nodiscard]] bool quit() const;
    [[nodiscard]] bool frame_due() const;
    /// Seconds until a frame is due: 0 now, nothing when only an event can make one due.
    [[nodiscard]] std::optional<double> sleep_s() const;

    /// Runs one frame of the app and carries out what was meant; nothing is shown yet.
    void make_frame();
    /// Puts the frame made last on the glass.
    void show_frame();

    [[nodiscard]] long frames() const; ///< made so far
    [[nodiscard]] const Targets& targets() const;

private:
    struct Parts;
    explicit AppWindow(std::unique_ptr<Parts> parts);

    std::unique_ptr<Parts> parts_;
};

} // namespace lanternleaf
