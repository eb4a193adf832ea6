// HeadlessApp: the app without a window, for tests: frames, taps by name, drags, keys, rotation, pictures.
// Exists so that a test of a screen reads like what a person does. Time is simulated: a test never sleeps.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "controls/shell.h"

namespace lanternleaf {

/// A device that only remembers what it was asked.
class FakeHost final : public Host {
public:
    std::filesystem::path data = "/nonexistent";
    std::filesystem::path assets = "/nonexistent";
    std::vector<std::string> shared;       ///< names of the files handed over
    std::vector<std::string> shared_bytes; ///< and what was in them
    bool picks = false;                    ///< whether it has a picker
    int pictures_asked = 0;
    int cards_asked = 0;
    bool screen_on = false;
    bool keyboard = false;
    int ticks = 0;
    bool quitting = false;
    std::string time = "2026-06-14T10:42:00";

    [[nodiscard]] std::filesystem::path data_folder() const override { return data; }

    [[nodiscard]] std::filesystem::path assets_folder() const override { return assets; }

    Outcome<std::string> share_file(std::string_view file_name, std::string_view bytes,
                                    std::string_view) override {
        shared.emplace_back(file_name);
        shared_bytes.emplace_back(bytes);
        return std::string(file_name) + " is in your hands.";
    }

    [[nodiscard]] bool can_pick() const override { return picks; }

    void pick_picture() override { ++pictures_asked; }

    void pick_card() override { ++cards_asked; }

    void keep_screen_on(bool on) override { screen_on = on; }

    void show_keyboard(bool shown, const Rect&) override { keyboard = shown; }

    void tick() override { ++ticks; }

    [[nodiscard]] std::string local_time() const override { return time; }

    void quit() override { quitting = true; }
};

class HeadlessApp {
public:
    /// `draw` is the whole frame; it is called again and again.
    explicit HeadlessApp(std::function<void(Ui&)> draw, Size window = {1180, 820});

    Appearance look;
    FakeHost host;

    /// Draws `count` frames, 1/60 s apart.
    void frame(int count = 1);
    /// Lets time pass, drawing only the frames that are due. Gives how many were drawn.
    long idle(double seconds);

    /// Lets time pass without a frame, as when the device was busy.
    void skip(double seconds) { now_s_ += seconds; }

    /// Presses and lifts at the target's centre. Fails the test when there is no such target or it cannot be
    /// reached.
    void tap(std::string_view name);
    void tap_at(Point p);
    void hold(std::string_view name, double seconds);
    /// Presses at the target's centre, moves by so much in twelve steps over 0.2 s, lifts.
    void drag(std::string_view name, float dx, float dy);
    /// Two fingers round a point, from one distance to another.
    void pinch(Point centre, float from, float to);
    void key(Key key, bool shift = false);
    void hold_key(Key key, double seconds);
    void type(std::string_view text);
    void wheel(Point at, float notches);
    void resize(Size window);

    void rotate() { resize({input_.window.h, input_.window.w}); }

    /// One raw sample, for tests of odd touches; no frame is drawn.
    void pointer(PointerSample::Phase phase, Point at, int id = 1);

    [[nodiscard]] const Targets& targets() { return shell_.ui().targets; }

    [[nodiscard]] const Target* find(std::string_view name) { return targets().find(name); }

    /// The target; fails the test when there is none.
    [[nodiscard]] const Target& need(std::string_view name);

    [[nodiscard]] std::string toast() {
        return shell_.ui().toast_line() ? shell_.ui().toast_line()->text : std::string();
    }

    [[nodiscard]] Ui& ui() { return shell_.ui(); }

    [[nodiscard]] Shell& shell() { return shell_; }

    [[nodiscard]] HostInput& input() { return input_; }

    /// Turns pixels on (slower: the atlas becomes a bitmap). Call before the first frame that is to be seen.
    void show();
    [[nodiscard]] Bitmap picture();
    /// Writes the last frame to a PNG file.
    void picture(const std::filesystem::path& file);

private:
    Point centre_of(std::string_view name);

    std::function<void(Ui&)> draw_;
    Shell shell_;
    HostInput input_;
    Bitmap atlas_;
    double now_s_ = 100;
};

/// The fonts, read once for all tests of a program.
[[nodiscard]] const FontFiles& test_fonts();

} // namespace lanternleaf
