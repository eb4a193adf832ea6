#include "support/headless_app.h"

#include <algorithm>
#include <utility>

#include <catch2/catch.hpp>

namespace lanternleaf {

using Phase = PointerSample::Phase;

const FontFiles& test_fonts() {
    static const FontFiles files = [] {
        Outcome<FontFiles> read = read_font_files(LANTERNLEAF_FONTS);
        if (!read) {
            FAIL(read.problem().sentence());
        }
        return std::move(read).value();
    }();
    return files;
}

HeadlessApp::HeadlessApp(std::function<void(Ui&)> draw, Size window)
    : draw_(std::move(draw)), shell_(test_fonts(), host) {
    input_.window = window;
    frame(2);
}

void HeadlessApp::frame(int count) {
    for (int i = 0; i < count; ++i) {
        now_s_ += 1.0 / 60;
        input_.now_s = now_s_;
        input_.dt_s = 1.0f / 60;
        shell_.frame(input_, look, draw_);
        input_.pointers.clear();
        input_.keys.clear();
        input_.text.clear();
        input_.wheel = {};
    }
}

long HeadlessApp::idle(double seconds) {
    const long before = shell_.pacer().frames();
    const double end = now_s_ + seconds;
    while (now_s_ < end) {
        if (shell_.pacer().due(now_s_ + 1.0 / 60)) {
            frame();
        } else {
            now_s_ += 1.0 / 60;
        }
    }
    return shell_.pacer().frames() - before;
}

const Target& HeadlessApp::need(std::string_view name) {
    const Target* t = find(name);
    if (t == nullptr) {
        std::string known;
        for (const Target& one : targets().all()) {
            known += one.name + " ";
        }
        FAIL("no target " << name << "; there are: " << known);
    }
    return *t;
}

Point HeadlessApp::centre_of(std::string_view name) {
    const Target& t = need(name);
    if (!targets().reachable(t)) {
        const Target* top = targets().at(t.visible.centre());
        FAIL("target " << name << " cannot be reached; over it lies "
                       << (top != nullptr ? top->name : "nothing"));
    }
    return t.visible.centre();
}

void HeadlessApp::pointer(Phase phase, Point at, int id) {
    PointerSample sample;
    sample.phase = phase;
    sample.at = at;
    sample.id = id;
    sample.time_s = now_s_ + 1.0 / 60;
    input_.pointers.push_back(sample);
}

void HeadlessApp::tap_at(Point p) {
    pointer(Phase::Down, p);
    frame(3);
    pointer(Phase::Up, p);
    frame(2);
}

void HeadlessApp::tap(std::string_view name) {
    tap_at(centre_of(name));
}

void HeadlessApp::hold(std::string_view name, double seconds) {
    const Point p = centre_of(name);
    pointer(Phase::Down, p);
    frame(static_cast<int>(seconds * 60) + 1);
    pointer(Phase::Up, p);
    frame(2);
}

void HeadlessApp::drag(std::string_view name, float dx, float dy) {
    const Point from = centre_of(name);
    pointer(Phase::Down, from);
    frame();
    for (int i = 1; i <= 12; ++i) {
        const float t = static_cast<float>(i) / 12;
        pointer(Phase::Move, from + Point{dx * t, dy * t});
        frame();
    }
    pointer(Phase::Up, from + Point{dx, dy});
    frame(2);
}

void HeadlessApp::pinch(Point centre, float from, float to) {
    pointer(Phase::Down, centre - Point{from / 2, 0}, 1);
    pointer(Phase::Down, centre + Point{from / 2, 0}, 2);
    frame();
    for (int i = 1; i <= 12; ++i) {
        const float half = (from + (to - from) * static_cast<float>(i) / 12) / 2;
        pointer(Phase::Move, centre - Point{half, 0}, 1);
        pointer(Phase::Move, centre + Point{half, 0}, 2);
        frame();
    }
    pointer(Phase::Up, centre - Point{to / 2, 0}, 1);
    pointer(Phase::Up, centre + Point{to / 2, 0}, 2);
    frame(2);
}

void HeadlessApp::key(Key key, bool shift) {
    input_.keys.push_back({key, true, false, shift});
    frame();
    input_.keys.push_back({key, false, false, shift});
    frame(2);
}

void HeadlessApp::hold_key(Key key, double seconds) {
    input_.keys.push_back({key, true, false, false});
    frame(static_cast<int>(seconds * 60) + 1);
    input_.keys.push_back({key, false, false, false});
    frame(2);
}

void HeadlessApp::type(std::string_view text) {
    input_.text = text;
    frame(2);
}

void HeadlessApp::wheel(Point at, float notches) {
    input_.hover = at;
    input_.wheel = {0, notches};
    frame(2);
}

void HeadlessApp::resize(Size window) {
    input_.window = window;
    frame(3);
}

void HeadlessApp::show() {
    shell_.make_atlas_texture = [this]() -> void* {
        atlas_ = atlas_bitmap();
        return &atlas_;
    };
    // Another text size and back, so that the atlas is baked again.
    const float scale = std::exchange(look.text_scale, look.text_scale * 0.99f);
    frame();
    look.text_scale = scale;
    frame(2);
}

Bitmap HeadlessApp::picture() {
    return shell_.picture(look.night ? night_theme().table : day_theme().table);
}

void HeadlessApp::picture(const std::filesystem::path& file) {
    const Outcome<Done> written = write_png(picture(), file);
    if (!written) {
        FAIL(written.problem().sentence());
    }
}

} // namespace lanternleaf
