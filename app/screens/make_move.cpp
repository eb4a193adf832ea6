// The move panel: what the hands do now, in words and a picture, why, and the check to take after it.
#include "controls/bars.h"
#include "controls/button.h"
#include "controls/check_block.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "paint/move_picture.h"
#include "screens/make.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace lanternleaf {

namespace {

void draw_place_in_step(Screen& screen, const MakeView& view, const Rect& row, bool step_too) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    float x = row.x;
    // Where the letters are large the rail alone tells the step.
    const float both =
        ui.fonts().width(view.step_text, body) + ui.fonts().width(view.move_text, body.bold()) + 24;
    if (step_too && both <= row.w) {
        x += ui.pen().text_in({x, row.y, row.w, row.h}, view.step_text, body, ui.theme().ink2, Align::Left) +
             11;
        ui.pen().line({x, row.y + 4}, {x, row.bottom() - 4}, ui.theme().line, 2);
        x += 13;
    }
    x += ui.pen().text_in({x, row.y, row.w, row.h}, view.move_text, body.bold(), ui.theme().ink, Align::Left);
    if (view.pips > 1 && row.right() - x > 120) {
        pips(ui, {x + 16, row.y, row.right() - x - 16, row.h}, view.pips, view.pip_now, true);
    }
}

MovePictureSpec spec_of(const Screen& screen, const MakeView& view) {
    return picture_of(*view.move, screen.state.build->record.as_built, screen.state.build->parts,
                      screen.ui.words);
}

CheckLook check_look(const CheckView& check, const Words& words) {
    CheckLook look;
    look.title = words("make.check", {{"check", check.title}});
    look.expect = words("make.expect", {{"range", check.expect}});
    look.blank = words("make.blank", {{"unit", check.unit}});
    look.no_meter = words("make.no_meter_look");
    if (check.answered) {
        look.value = check.has_value    ? check.answer.substr(0, check.answer.find(", "))
                     : check.from_meter ? "OL"
                                        : words("make.seen");
    }
    return look;
}

// The picture moves for a few seconds after the move changed, then rests.
MovePictureLook picture_look(Ui& ui, const MakeView& view) {
    MovePictureLook look;
    look.caption_em = ui.m.type(Type::Small).size;
    if (!ui.reduced_motion) {
        const float goal = static_cast<float>(view.pip_now & 1);
        const float ran = std::abs(ui.glide("make/picture", goal, 4.8f) - (1.0f - goal));
        look.phase = ran >= 1.0f ? 0.0f : std::fmod(ran * 2.0f, 1.0f);
    }
    return look;
}

float draw_why(Screen& screen, const std::string& why, const Rect& r, float y) {
    if (why.empty()) {
        return 0;
    }
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const float label = ui.pen().text({r.x, y}, ui.words("make.why"), body.bold(), ui.theme().leaf_text);
    return ui.pen().paragraph({r.x + label + 10, y}, r.w - label - 10, why, body, ui.theme().ink);
}

// What earlier builds of the card say of this move.
float draw_lessons(Screen& screen, const MakeView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle small = ui.m.type(Type::Small);
    const float top = y;
    for (std::size_t i = 0; i < view.lessons.size(); ++i) {
        y += 8;
        const float height =
            std::max(26.0f, ui.fonts().wrapped_height(view.lessons[i], small, r.w - 50)) + 12;
        const Rect box{r.x, y, r.w, height};
        well(ui, box, ui.theme().blue_tint);
        draw_icon(ui.pen(), Icon::Repeat, {box.x + 20, box.centre().y}, 22, ui.theme().blue);
        ui.pen().paragraph({box.x + 40, y + 6}, r.w - 50, view.lessons[i], small, ui.theme().ink);
        ui.add({.name = "make/lesson/" + std::to_string(i + 1),
                .role = Role::Note,
                .label = view.lessons[i],
                .rect = box});
        y += height;
    }
    return y - top;
}

// A move whose part differs from bag to bag, roll to roll, sheet to sheet: what can be put to the test here.
std::optional<learning::Begin> test_of(const Screen& screen, const MakeView& view) {
    if (view.move == nullptr || !screen.state.build) {
        return std::nullopt;
    }
    const Card& card = screen.state.build->record.as_built;
    const std::string part = view.move->parts.empty() ? std::string() : view.move->parts.front();
    if (view.move->kind == MoveKind::place_led) {
        const Led* led = find_led(card, part);
        return learning::Begin{PartSort::led, led == nullptr ? std::string() : led->type};
    }
    if (view.move->kind == MoveKind::joint) {
        const Strip* strip = find_strip(card, part);
        return learning::Begin{PartSort::tape, strip == nullptr ? std::string() : strip->tape};
    }
    if (view.move->kind == MoveKind::foam) {
        return learning::Begin{PartSort::foam, ""};
    }
    return std::nullopt;
}

ButtonLook test_look(const Screen& screen, PartSort sort) {
    const char* key = sort == PartSort::led    ? "learn.ask_minus"
                      : sort == PartSort::tape ? "learn.tape"
                                               : "learn.foam";
    return {.label = screen.ui.words(key),
            .icon = sort == PartSort::led    ? Icon::Led
                    : sort == PartSort::tape ? Icon::Strip
                                             : Icon::Foam};
}

void test_button(Screen& screen, const learning::Begin& test, const Rect& r) {
    if (button(screen.ui, "make/test-part", r, test_look(screen, test.sort))) {
        const LearnCommand begin = test;
        screen.say(command::Learn{begin});
    }
}

float draw_test(Screen& screen, const MakeView& view, const Rect& r, float y) {
    const std::optional<learning::Begin> test = test_of(screen, view);
    if (!test) {
        return 0;
    }
    const float width = std::min(r.w, button_width(screen.ui, test_look(screen, test->sort)));
    test_button(screen, *test, {r.x, y + 10, width, screen.ui.m.button_h});
    return screen.ui.m.button_h + 10;
}

void draw_wide(Screen& screen, const MakeView& view, const Rect& panel_rect) {
    Ui& ui = screen.ui;
    const Rect inside = panel_rect.shrunk(ui.m.panel_pad_x, ui.m.panel_pad_y);
    Scroll scroll(ui, "make/panel", inside_panel(panel_rect));
    Rect r{inside.x, scroll.top() + ui.m.panel_pad_y - 4, inside.w, 4000};
    draw_place_in_step(screen, view, r.cut_top(ui.m.with_text(30)), true);
    r.cut_top(6);
    r.cut_top(draw_heading(ui, r, r.y, view.heading, Type::H1));
    r.cut_top(4);
    r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.sentence, ui.m.type(Type::Body), ui.theme().ink));
    r.cut_top(draw_lessons(screen, view, r, r.y));
    r.cut_top(draw_test(screen, view, r, r.y));
    r.cut_top(12);
    // Words and check have their room first; the picture takes what is left, within reason.
    const float check_h = view.check ? check_height(screen, *view.check, r.w) : 0;
    const float why_h =
        view.why.empty() ? 0 : ui.fonts().wrapped_height(view.why, ui.m.type(Type::Body), r.w - 54) + 14;
    const float left = panel_rect.bottom() - ui.m.panel_pad_y - r.y - check_h - why_h - 14;
    const float picture_h = std::clamp(left, 120.0f, view.check ? 210.0f : 250.0f);
    draw_move_picture(ui.pen(), ui.theme(), r.cut_top(picture_h), spec_of(screen, view),
                      picture_look(ui, view));
    r.cut_top(12);
    const float why = draw_why(screen, view.why, r, r.y);
    r.cut_top(why > 0 ? why + 14 : 0);
    if (view.check) {
        const Rect pinned{r.x, std::max(r.y, panel_rect.bottom() - ui.m.panel_pad_y - check_h), r.w, check_h};
        draw_check(screen, *view.check, pinned);
        r.cut_top(pinned.bottom() - r.y);
    }
    scroll.done(r.y + ui.m.panel_pad_y - scroll.top());
}

void draw_columns(Screen& screen, const MakeView& view, const Rect& panel_rect) {
    Ui& ui = screen.ui;
    Rect inside = panel_rect.shrunk(ui.m.panel_pad_x, 14);
    Rect right = inside.cut_right(inside.w * 0.51f);
    inside.cut_right(20);
    Scroll scroll(ui, "make/panel", {inside.x - 6, inside.y, inside.w + 12, inside.h});
    Rect r{inside.x, scroll.top(), inside.w, 4000};
    draw_place_in_step(screen, view, r.cut_top(ui.m.with_text(30)), true);
    pips(ui, r.cut_top(26), view.pips, view.pip_now, false);
    r.cut_top(10);
    r.cut_top(draw_heading(ui, r, r.y, view.heading, Type::H1));
    r.cut_top(4);
    r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.sentence, ui.m.type(Type::Body), ui.theme().ink));
    r.cut_top(draw_lessons(screen, view, r, r.y));
    r.cut_top(draw_test(screen, view, r, r.y));
    r.cut_top(8);
    r.cut_top(draw_why(screen, view.why, r, r.y));
    scroll.done(r.y - scroll.top());
    if (view.check) {
        draw_check(screen, *view.check, right.cut_bottom(check_height(screen, *view.check, right.w)));
        right.cut_bottom(14);
    }
    draw_move_picture(ui.pen(), ui.theme(), right, spec_of(screen, view), picture_look(ui, view));
}

void draw_phone(Screen& screen, const MakeView& view, const Rect& panel_rect) {
    Ui& ui = screen.ui;
    Rect inside = panel_rect.shrunk(12, 8);
    // Foot first: the three small buttons stay whatever the words need.
    Rect foot = inside.cut_bottom(ui.m.target);
    inside.cut_bottom(8);
    const bool meter =
        view.check && view.check->kind != CheckKind::look && view.check->kind != CheckKind::lights;
    const std::optional<learning::Begin> test = view.check ? std::nullopt : test_of(screen, view);
    const float third = view.check ? (foot.w - 16) * 0.26f : test ? (foot.w - 8) * 0.3f : foot.w;
    if (button(ui, "make/why", foot.cut_left(third), {.label = ui.words("make.why")})) {
        screen.say(command::OpenSheet{SheetKind::why});
    }
    if (test) {
        foot.cut_left(8);
        test_button(screen, *test, foot);
    }
    if (view.check) {
        foot.cut_left(8);
        if (meter) {
            const Rect field = foot.cut_left((foot.w - 8) * 0.52f);
            if (button(ui, "make/measure", field, {.label = view.check->expect, .icon = Icon::Meter})) {
                screen.say(command::OpenKeypad{view.check->id});
            }
            foot.cut_left(8);
        }
        if (button(ui, "make/no-meter", foot,
                   {.label = meter ? ui.words("make.no_meter") : ui.words("make.look_for"),
                    .icon = Icon::Eye})) {
            screen.say(command::OpenNoMeter{view.check->id});
        }
    }
    Scroll scroll(ui, "make/panel", {panel_rect.x + 2, inside.y, panel_rect.w - 8, inside.h});
    Rect r{inside.x, scroll.top(), inside.w, 4000};
    draw_place_in_step(screen, view, r.cut_top(ui.m.with_text(28)), false);
    r.cut_top(2);
    r.cut_top(draw_heading(ui, r, r.y, view.heading, Type::H1));
    r.cut_top(2);
    r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.sentence, ui.m.type(Type::Body), ui.theme().ink));
    r.cut_top(draw_lessons(screen, view, r, r.y));
    r.cut_top(8);
    draw_move_picture(ui.pen(), ui.theme(), r.cut_top(std::max(112.0f, inside.bottom() - r.y)),
                      spec_of(screen, view), picture_look(ui, view));
    scroll.done(r.y - scroll.top());
}

} // namespace

float check_height(const Screen& screen, const CheckView& check, float width) {
    return check_block_height(screen.ui, width, check_look(check, screen.ui.words));
}

void draw_check(Screen& screen, const CheckView& check, const Rect& r) {
    Ui& ui = screen.ui;
    if (check.kind != CheckKind::look && check.kind != CheckKind::lights) {
        switch (check_block(ui, "make/check", r, check_look(check, ui.words))) {
        case CheckHit::Keypad:
            screen.say(command::OpenKeypad{check.id});
            break;
        case CheckHit::NoMeter:
            screen.say(command::OpenNoMeter{check.id});
            break;
        case CheckHit::None:
            break;
        }
        return;
    }
    well(ui, r, ui.theme().blue_tint);
    Rect inside = r.shrunk(14, 10);
    const TextStyle body = ui.m.type(Type::Body);
    const Rect head = inside.cut_top(ui.m.with_text(32));
    draw_icon(ui.pen(), Icon::Eye, {head.x + 13, head.centre().y}, 26, ui.theme().blue);
    ui.pen().text_in(
        {head.x + 38, head.y, head.w - 38, head.h},
        ui.fonts().fitted(ui.words("make.look", {{"check", check.title}}), body.bold(), head.w - 38),
        body.bold(), ui.theme().blue, Align::Left);
    inside.cut_top(6);
    if (button(ui, "make/check/no-meter",
               inside.cut_top(std::min(inside.h, 62 * std::max(1.0f, ui.m.text_scale))),
               {.label = check.answered ? check.answer : ui.words("make.what_to_look_for"),
                .icon = Icon::Eye})) {
        screen.say(command::OpenNoMeter{check.id});
    }
}

void draw_move_panel(Screen& screen, const MakeView& view, const Rect& r) {
    switch (screen.ui.m.form) {
    case Form::Landscape:
        draw_wide(screen, view, r);
        break;
    case Form::Portrait:
        draw_columns(screen, view, r);
        break;
    case Form::Phone:
        draw_phone(screen, view, r);
        break;
    }
}

} // namespace lanternleaf
