// The keypad and sheets: typing by touch and by keys, saving, closing, and keeping touches out of what lies
// under.
#include "controls/keypad.h"

#include <catch2/catch.hpp>

#include "controls/gallery.h"
#include "controls/text_field.h"
#include "support/headless_app.h"

using namespace lanternleaf;

namespace {

struct Pad {
    KeypadEntry entry{true, ""};
    KeypadResult last = KeypadResult::None;
    int under = 0;
    HeadlessApp app;

    explicit Pad(Size window = {1180, 820}) : app([this](Ui& ui) { draw(ui); }, window) { app.frame(30); }

    void draw(Ui& ui) {
        under +=
            offer(ui, {.name = "under", .role = Role::Button, .label = "under", .rect = {20, 400, 100, 60}});
        const KeypadLook look{.title = "Reading",
                              .expect = "expect 0.1–0.6 Ω",
                              .unit = "Ω",
                              .save = "Save {value}",
                              .over = "Meter shows OL",
                              .low = 0.1,
                              .high = 0.6,
                              .full = 1.2};
        if (const KeypadResult r = keypad(ui, "pad", look, entry); r != KeypadResult::None) {
            last = r;
        }
    }
};

} // namespace

TEST_CASE("an entry is a number with one point") {
    KeypadEntry e;
    for (const char c : std::string(".3.5")) {
        e.type(c);
    }
    CHECK(e.entry == "0.35");
    CHECK(*e.value() == Approx(0.35));
    e.erase();
    CHECK(*e.value() == Approx(0.3));
    KeypadEntry zero;
    zero.type('0');
    zero.type('7');
    CHECK(zero.entry == "7");
    KeypadEntry none;
    CHECK_FALSE(none.value().has_value());
    none.erase();
    KeypadEntry longest;
    for (int i = 0; i < 20; ++i) {
        longest.type('9');
    }
    CHECK(longest.entry == "999999");
}

TEST_CASE("a reading is tapped and saved, on every form") {
    const Size window = GENERATE(Size{1180, 820}, Size{820, 1180}, Size{390, 844});
    Pad pad(window);
    pad.app.tap("pad/save");
    CHECK(pad.last == KeypadResult::None); // nothing typed: says what is expected
    CHECK(pad.app.toast() == "expect 0.1–0.6 Ω");
    pad.app.tap("pad/0");
    pad.app.tap("pad/point");
    pad.app.tap("pad/4");
    pad.app.tap("pad/del");
    pad.app.tap("pad/3");
    CHECK(pad.entry.entry == "0.3");
    CHECK(pad.app.need("pad/save").label == "Save 0.3 Ω");
    pad.app.tap("pad/save");
    CHECK(pad.last == KeypadResult::Save);
    CHECK_FALSE(pad.entry.open);
    pad.app.frame(30);
    CHECK(pad.app.find("pad/save") == nullptr);
}

TEST_CASE("a real keyboard types, erases and saves") {
    Pad pad;
    pad.app.type("0,45");
    pad.app.key(Key::Backspace);
    CHECK(pad.entry.entry == "0.4");
    pad.app.key(Key::Enter);
    CHECK(pad.last == KeypadResult::Save);
}

TEST_CASE("OL, cross, scrim and Escape each end it") {
    Pad over;
    over.app.tap("pad/over");
    CHECK(over.last == KeypadResult::Over);
    Pad cross;
    cross.app.tap("pad/close");
    CHECK(cross.last == KeypadResult::Close);
    Pad escape;
    escape.app.key(Key::Escape);
    CHECK(escape.last == KeypadResult::Close);
    Pad scrim;
    scrim.app.tap_at({70, 430}); // where the button under it lies
    CHECK(scrim.last == KeypadResult::Close);
    CHECK(scrim.under == 0);
    scrim.app.frame(30);
    scrim.app.tap("under");
    CHECK(scrim.under == 1);
}

TEST_CASE("Tab stays inside an open sheet, but for what the scrim leaves free") {
    Pad pad;
    for (int i = 0; i < 40; ++i) {
        pad.app.key(Key::Tab);
        CHECK(pad.app.ui().focus() != "under");
    }
}

TEST_CASE("a name is typed, corrected by whole letters, and done") {
    std::string name;
    int done = 0;
    HeadlessApp app([&](Ui& ui) {
        done += text_field(ui, "maker", {20, 20, 300, 56}, {.label = "Maker", .longest = 12}, name) ==
                TextFieldHit::Done;
    });
    app.type("ignored");
    CHECK(name.empty());
    app.tap("maker");
    CHECK(app.host.keyboard);
    app.type("Zoë");
    app.key(Key::Backspace);
    CHECK(name == "Zo");
    app.key(Key::Space); // a space arrives as text; the key itself must press nothing
    app.type("é and far too long");
    CHECK(name == "Zo");
    app.key(Key::Enter);
    CHECK(done == 1);
    CHECK_FALSE(app.host.keyboard);
    app.type("x");
    CHECK(name == "Zo");
}
