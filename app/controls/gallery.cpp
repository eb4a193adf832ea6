#include "controls/gallery.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "controls/bars.h"
#include "controls/button.h"
#include "controls/check_block.h"
#include "controls/chip.h"
#include "controls/findings_row.h"
#include "controls/hold_button.h"
#include "controls/nav.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "controls/segmented.h"
#include "controls/sheet.h"
#include "controls/slider.h"
#include "controls/step_rail.h"
#include "controls/text_field.h"
#include "layout/regions.h"

namespace lanternleaf {

namespace {

const std::array<NavPlace, 5> kPlaces{{{"nav/shelf", "Shelf", Icon::Shelf},
                                       {"nav/draw", "Draw", Icon::Draw},
                                       {"nav/make", "Make", Icon::Make},
                                       {"nav/mend", "Mend", Icon::Mend},
                                       {"nav/log", "Log", Icon::Log}}};

const std::array<Bead, 7> kBeads{{{"Mount the\ncell holder", "Holder", RailState::Done},
                                  {"Mark\nthe pads", "Pads", RailState::Done},
                                  {"Lay the\nnegative trace", "− trace", RailState::Done},
                                  {"Lay the\npositive trace", "+ trace", RailState::Now},
                                  {"Insulate the\ncrossings", "Patches", RailState::Blocked},
                                  {"Place\nthe LEDs", "LEDs", RailState::Blocked},
                                  {"Pad\nthe edges", "Foam", RailState::Blocked}}};

const FindingLook& finding(int which) {
    static const std::array<FindingLook, 3> looks{
        {{FindingMark::Problem,
          1,
          "Problem",
          "L1+, L2+ and L7+ are not joined to the flap yet.",
          {{.label = "Suggest", .icon = Icon::Suggest}, {.label = "Show"}}},
         {FindingMark::Caution, 2, "Caution", "+ crosses − at 106 × 46 mm. A patch is added for step 5.", {}},
         {FindingMark::Fine, 0, "Fine", "All 7 − pads are joined and all lights face the right way.", {}}}};
    return looks[static_cast<std::size_t>(which)];
}

void draw_top(Ui& ui, const Regions& regions, GalleryState& state) {
    bar(ui, regions.top, true);
    Rect r = regions.content(regions.top).shrunk(ui.m.phone() ? 8.0f : 16.0f, 0);
    const std::string safety = ui.m.phone() ? "Safety" : "Coin cells & children";
    if (!ui.m.phone()) {
        const Rect moon = r.cut_right(ui.m.target);
        ui.add({.name = "theme", .role = Role::Button, .label = "Day or night", .rect = moon});
        draw_icon(ui.pen(), ui.theme().night ? Icon::Sun : Icon::Moon, moon.centre(), ui.m.with_text(27),
                  ui.theme().ink);
        r.cut_right(6);
    }
    const float w = safety_chip_width(ui, safety);
    const Rect chip_box = r.cut_right(w);
    if (safety_chip(ui, around(chip_box.centre(), w, ui.m.button_h), safety)) {
        ui.toast("Opens the notice.");
    }
    if (ui.m.form == Form::Landscape) {
        draw_mark(ui.pen(), {r.x + 25, r.centre().y}, 38, ui.theme());
        if (const int hit = nav_bar(ui, kPlaces, state.place, r, r.x + 63); hit >= 0) {
            state.place = hit;
        }
    } else if (nav_menu(ui, {r.x, r.y, r.w - 8, r.h}, "Harbour lighthouse")) {
        state.sheet = true;
    }
}

/// Every icon with its name.
float draw_icons(Ui& ui, const Rect& r) {
    const TextStyle style = ui.m.type(Type::CardNote);
    const float cell_w = ui.m.with_text(76);
    const float cell_h = ui.m.with_text(62);
    const int columns = std::max(1, static_cast<int>(r.w / cell_w));
    const int count = static_cast<int>(Icon::Count);
    for (int i = 1; i < count; ++i) {
        const auto icon = static_cast<Icon>(i);
        const int at = i - 1;
        const float x = r.x + (static_cast<float>(at % columns) + 0.5f) * r.w / static_cast<float>(columns);
        const float y = r.y + static_cast<float>(at / columns) * cell_h;
        draw_icon(ui.pen(), icon, {x, y + 18}, ui.m.with_text(30), ui.theme().ink);
        ui.pen().text({x, y + 36}, icon_name(icon), style, ui.theme().ink2, Align::Centre);
    }
    return std::ceil(static_cast<float>(count - 1) / static_cast<float>(columns)) * cell_h;
}

/// The left column: words, buttons, chips, numbers. Gives its height.
float draw_left(Ui& ui, const Rect& r, float y, GalleryState& state) {
    const Theme& t = ui.theme();
    const Metrics& m = ui.m;
    const float from = y;
    const Segment views[] = {{"Front", Icon::Photo, "front"}, {"Traces", Icon::Strip, "traces"}};
    const float seg_w = std::min(r.w, segmented_width(ui, views));
    ui.pen().text({r.x, y + 8}, "After dark", m.type(Type::H1), t.ink);
    if (segmented(ui, "view", {r.right() - seg_w, y, seg_w, m.button_h}, views, state.view)) {
        ++state.taps;
    }
    y += m.button_h + m.gap;
    float x = r.x;
    const auto flow = [&](float w) {
        if (x > r.x && x + w > r.right()) {
            x = r.x;
            y += m.button_h + 8;
        }
        const Rect box{x, y, w, m.button_h};
        x += w + 8;
        return box;
    };
    state.taps += icon_button(ui, "zoom-out", flow(m.target), {.icon = Icon::ZoomOut, .spoken = "Zoom out"});
    state.taps +=
        icon_button(ui, "redo", flow(m.target),
                    {.icon = Icon::Redo, .enabled = false, .reason = "Nothing to redo.", .spoken = "Redo"});
    const ButtonLook layers{.label = "Layers", .icon = Icon::Layers};
    if (button(ui, "layers", flow(button_width(ui, layers)), layers)) {
        state.sheet = true;
    }
    const ButtonLook locked{.label = "Make this card",
                            .enabled = false,
                            .reason = "One problem is left: L1+ is not joined.",
                            .bold = true};
    (void)button(ui, "locked", flow(button_width(ui, locked)), locked);
    const ButtonLook chosen{.label = "Chosen", .icon = Icon::Select, .selected = true};
    state.taps += button(ui, "chosen", flow(button_width(ui, chosen)), chosen);
    const ButtonLook answer{.label = "They came on", .icon = Icon::Bulb};
    state.taps += leaf_button(ui, "answer", flow(button_width(ui, answer) + 30), answer);
    if (chip(ui, "layer/picture", flow(chip_width(ui, "Picture")), "Picture", state.picture)) {
        state.picture = !state.picture;
    }
    if (chip(ui, "layer/notes", flow(chip_width(ui, "Notes")), "Notes", state.notes)) {
        state.notes = !state.notes;
    }
    tag(ui, flow(92).shrunk(0, 10), "L5−", false);
    tag(ui, flow(92).shrunk(0, 10), "L6−", true);
    pill(ui, flow(64).shrunk(0, 14), "Start", true);
    pill(ui, flow(44).shrunk(0, 16), "L3", false);
    (void)tool_tile(ui, "tool/led", flow(110).shrunk(0, -7), {.label = "Light", .icon = Icon::Led});
    (void)tool_tile(ui, "tool/patch", flow(110).shrunk(0, -7),
                    {.label = "Patch", .icon = Icon::Patch, .selected = true});
    y += m.button_h + m.gap;

    const SliderLook hours{.label = "Hours of light",
                           .high = 32,
                           .step = 0.5f,
                           .marks = {{0, "0 h"}, {8, "8 h"}, {16, "16 h"}, {24, "24 h"}, {32, "32 h"}}};
    (void)slider(ui, "hours", {r.x, y, r.w, slider_height(ui, hours)}, hours, state.hours);
    y += slider_height(ui, hours) + m.gap;
    char copies[16];
    std::snprintf(copies, sizeof copies, "%.0f cards", state.copies);
    (void)stepper(ui, "copies", {r.x, y, std::min(r.w, 240.0f), m.button_h},
                  {.label = "Copies", .value_text = copies, .low = 1, .high = 30}, state.copies);
    (void)text_field(ui, "maker", {r.x + 256, y, std::max(80.0f, r.w - 256), m.button_h}, {.label = "Maker"},
                     state.maker);
    y += m.button_h + m.gap;
    for (int i = 0; i < 3; ++i) {
        brightness_bar(ui, {r.x + static_cast<float>(i) * 34, y, 26, 76},
                       std::array{0.0f, 0.72f, 0.95f}[static_cast<std::size_t>(i)], i == 2);
    }
    share_bar(ui, {r.x + 120, y + 8, std::max(60.0f, r.w - 130), 14}, 0.71f, t.plum);
    range_bar(ui, "range", {r.x + 120, y + 34, 110, 20},
              {.spoken = "expect 0.1 to 0.6", .low = 0.1f, .high = 0.6f, .value = 0.35f});
    divider(ui, {r.x + 250, y + 44}, {r.right() - 10, y + 44});
    y += 88;
    y += draw_icons(ui, {r.x, y, r.w, 0});
    return y - from;
}

/// The panel: a step as Make shows it, and findings under it. Gives its height.
float draw_right(Ui& ui, const Rect& r, float y, GalleryState& state) {
    const Theme& t = ui.theme();
    const Metrics& m = ui.m;
    const float from = y;
    const TextStyle body = m.type(Type::Body);
    const float w = ui.pen().text({r.x, y}, "Step 4 of 7", body, t.ink2);
    ui.pen().fill({r.x + w + 12, y + 4, 1.5f, 20}, t.line);
    const float w2 = ui.pen().text({r.x + w + 25, y}, "Move 3 of 8", body.bold(), t.ink);
    pips(ui, {r.x + w + w2 + 40, y + 4, r.w - w - w2 - 40, 17}, 8, 2, true);
    y += body.lead + 6;
    y += ui.pen().paragraph({r.x, y}, r.w, "Fold right at the corner below L3", m.type(Type::H1), t.ink);
    y += ui.pen().paragraph(
             {r.x, y}, r.w,
             "Fold the tape back on itself, then swing it to the right so the shiny side stays up.", body,
             t.ink) +
         8;
    const float why = ui.pen().text({r.x, y}, "Why", body.bold(), t.leaf_text) + 10;
    y += ui.pen().paragraph({r.x + why, y}, r.w - why,
                            "One unbroken piece has no joint to work loose when the card is opened and shut.",
                            body, t.ink) +
         12;
    const CheckLook check{.title = "Check: flap to L3+",
                          .expect = "expect **0.1–0.6 Ω**",
                          .value = state.reading.open ? "" : state.reading.entry,
                          .blank = "–.– Ω",
                          .no_meter = "I have no meter:\nlook for…"};
    const float check_h = check_block_height(ui, r.w, check);
    if (check_block(ui, "check", {r.x, y, r.w, check_h}, check) == CheckHit::Keypad) {
        state.reading.open = true;
    }
    y += check_h + m.gap;
    for (int i = 0; i < 3; ++i) {
        const float h = findings_row_height(ui, r.w, finding(i));
        (void)findings_row(ui, "finding/" + std::to_string(i), {r.x, y, r.w, h}, finding(i));
        y += h + m.gap;
    }
    return y - from;
}

} // namespace

void draw_gallery(Ui& ui, GalleryState& state) {
    const Metrics& m = ui.m;
    const Regions regions = make_regions(m, {.rail = true});
    table(ui);
    draw_top(ui, regions, state);
    (void)step_rail(ui, regions.rail, kBeads);
    {
        Scroll scroll(ui, "gallery/left", regions.card.shrunk(0, 8), ui.theme().table);
        const float y = scroll.top() + 8;
        scroll.done(draw_left(ui, regions.card.shrunk(2, 0), y, state) + 16);
    }
    panel(ui, regions.panel);
    {
        const Rect inner = regions.panel.shrunk(m.panel_pad_x, m.panel_pad_y);
        Scroll scroll(ui, "gallery/panel", inner);
        scroll.done(draw_right(ui, inner, scroll.top(), state));
    }
    bar(ui, regions.actions, false);
    Rect foot = regions.content(regions.actions).shrunk(m.page_margin, 0);
    if (m.phone()) {
        foot.cut_top(8);
        foot.h = m.button_h;
        (void)button(ui, "differ", {foot.x, foot.y, (foot.w - 8) / 2, m.button_h},
                     {.label = "Mine is different"});
        (void)button(ui, "wrong", {foot.centre().x + 4, foot.y, (foot.w - 8) / 2, m.button_h},
                     {.label = "Something is wrong"});
        state.taps += primary_button(ui, "done", {foot.x, foot.bottom() + 8, foot.w, m.primary_h},
                                     {.label = "Done: next move", .icon = Icon::Tick});
    } else {
        const ButtonLook back{.label = "Move 2", .icon = Icon::Back};
        const ButtonLook differ{.label = "Mine is different", .icon = Icon::Differ};
        const float y = foot.centre().y - m.button_h / 2;
        Rect line{foot.x, y, foot.w, m.button_h};
        state.taps += button(ui, "back", line.cut_left(button_width(ui, back)), back);
        line.cut_left(14);
        if (m.form == Form::Landscape &&
            button(ui, "differ", line.cut_left(button_width(ui, differ)), differ)) {
            ui.toast("Strip moved.", "Undo");
        }
        line.cut_left(14);
        Rect hold =
            line.cut_left(m.form == Form::Landscape ? std::min(430.0f, line.w * 0.5f) : line.w * 0.6f);
        hold = {hold.x, foot.centre().y - m.hold_h / 2, hold.w, m.hold_h};
        if (hold_button(ui, "adult", hold,
                        {.label = "I am an adult",
                         .idle = "Hold for four seconds.",
                         .one_more = "keep holding: 1 second more",
                         .more = "keep holding: {n} seconds more"})) {
            state.adult = true;
        }
        line.cut_left(14);
        state.taps +=
            primary_button(ui, "done", {line.x, foot.centre().y - m.primary_h / 2, line.w, m.primary_h},
                           {.label = "Done: next", .icon = Icon::Tick});
    }
    {
        SheetPaper sheet(ui, "places", usual_side(m), state.sheet, 430, "Places");
        if (sheet.shown()) {
            Rect body = sheet.body();
            for (std::size_t i = 0; i < kPlaces.size(); ++i) {
                NavPlace place = kPlaces[i];
                place.name = "places/" + std::to_string(i);
                if (nav_item(ui, place, body.cut_top(60), static_cast<int>(i) == state.place)) {
                    state.place = static_cast<int>(i);
                    state.sheet = false;
                }
            }
        }
        state.sheet = state.sheet && !sheet.closed();
    }
    const KeypadLook pad{.title = "Reading: flap to L3+",
                         .expect = "expect 0.1–0.6 Ω",
                         .unit = "Ω",
                         .save = "Save {value}",
                         .over = "Meter shows OL",
                         .note = "5 Ω or more: loose joint",
                         .low = 0.1,
                         .high = 0.6,
                         .full = 1.25,
                         .low_text = "0.1",
                         .high_text = "0.6",
                         .over_panel = regions.panel};
    (void)keypad(ui, "reading", pad, state.reading);
}

} // namespace lanternleaf
