// Trace from the screen: the template at true size under a sheet of paper, on a screen measured once with a
// bank card (ISO/IEC 7810 ID-1, 85.60 x 53.98 mm). White and bright by day and night, and deaf to the paper.
#include "conductors/conductors.h"
#include "controls/button.h"
#include "controls/slider.h"
#include "screens/draw.h"
#include "screens/screen.h"
#include "view/viewport.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace lanternleaf {

namespace {

constexpr double kBankCard_w_mm = 85.60; ///< ISO/IEC 7810, format ID-1
constexpr double kBankCard_h_mm = 53.98;
constexpr double kBankCard_r_mm = 3.18; ///< its corners: 2.88 to 3.48 mm, the middle
constexpr float kLeastPxPerMm = 2.0f;
constexpr float kMostPxPerMm = 40.0f;

// The sheet of light has its own colours: black on white, whatever the hour.
const Colour kLitWhite = rgb(0xFFFFFF);
const Colour kInk = rgb(0x101214);
const Colour kPale = rgb(0x8A8F94);
const Colour kPlus = rgb(0xD55E00);

/// Millimetres of glass from the middle of the screen, at the kept scale.
Viewport true_size(const Screen& screen) {
    const LightBox& box = screen.state.light_box;
    Viewport at;
    at.area = {0, 0, screen.ui.m.window.w, screen.ui.m.window.h};
    at.ppm = screen.state.settings.px_per_mm / static_cast<double>(screen.ui.m.px_per_pt);
    at.middle = at.area.centre();
    at.centre_mm = box.look_at_mm;
    // Up a little where there is room, so that the words before locking cover less of it; the same when
    // locked, since nothing may move under the paper.
    const float spare = at.area.h - at.px(box.card.sheet.height_mm);
    at.middle.y -= std::clamp(spare / 2 - 10, 0.0f, 92.0f);
    return at;
}

void outline(Screen& screen, const Viewport& at, const Convex& shape, Colour colour, float width) {
    std::vector<Point> points;
    for (const Vec2 corner : shape.corners()) {
        points.push_back(at.to_px(corner));
    }
    if (points.size() > 2) {
        screen.ui.pen().stroke(points, colour, width, true);
    }
}

void sign_at(Pen& pen, const Viewport& at, Vec2 mm, double arm_mm, bool plus) {
    const Point p = at.to_px(mm);
    const float arm = at.px(arm_mm);
    pen.line({p.x - arm, p.y}, {p.x + arm, p.y}, kInk, 2);
    if (plus) {
        pen.line({p.x, p.y - arm}, {p.x, p.y + arm}, kInk, 2);
    }
}

/// Both edges of a strip and its two ends as one line: mitred at folds, where the tape turns.
std::vector<Point> edge_of(const Ribbon& ribbon, const Viewport& at) {
    std::vector<Point> right;
    std::vector<Point> left;
    const double half = ribbon.width_mm / 2.0;
    for (std::size_t i = 0; i <= ribbon.runs.size() && !ribbon.runs.empty(); ++i) {
        const Run& before = ribbon.runs[i == 0 ? 0 : i - 1];
        const Run& after = ribbon.runs[std::min(i, ribbon.runs.size() - 1)];
        const Vec2 a = quarter_turn(unit(before.to_mm - before.from_mm));
        const Vec2 b = quarter_turn(unit(after.to_mm - after.from_mm));
        const Vec2 sum = a + b;
        // A strip that turns right back has no mitre; its edge is then square.
        const Vec2 out = dot(sum, sum) > 0.1 ? sum * (2.0 * half / dot(sum, sum)) : b * half;
        const Vec2 corner = i == ribbon.runs.size() ? before.to_mm : after.from_mm;
        right.push_back(at.to_px(corner + out));
        left.push_back(at.to_px(corner - out));
    }
    right.insert(right.end(), left.rbegin(), left.rend());
    return right;
}

// Sheet, creases, keep-outs, holder, pads with their signs, and the middle of every run as a thin line.
void draw_template(Screen& screen, const Viewport& at) {
    Pen& pen = screen.ui.pen();
    const LightBox& box = screen.state.light_box;
    const Card& card = box.card;
    const Conductors made = find_conductors(card, box.parts);
    const Vec2 size{card.sheet.width_mm, card.sheet.height_mm};
    outline(screen, at, Convex::of_quad({0, 0}, {size.x, 0}, size, {0, size.y}), kInk, 2);
    for (const FoldLine& fold : card.sheet.folds) {
        const Point line[] = {at.to_px(fold.from_mm), at.to_px(fold.to_mm)};
        pen.dashed(line, kInk, 1.5f, {9, 4, 2, 4});
    }
    for (const Keepout& keepout : card.sheet.keepouts) {
        std::vector<Point> points;
        for (const Vec2 corner : keepout.outline_mm) {
            points.push_back(at.to_px(corner));
        }
        pen.dashed(points, kPale, 1.5f, {3, 3}, 0, true);
    }
    for (const StripShape& strip : made.strips) {
        const Side side = std::get<Strip>(card.laid[static_cast<std::size_t>(strip.laid_index)]).side;
        const Colour colour = side == Side::positive ? kPlus : kInk;
        pen.stroke(edge_of(strip.ribbon, at), colour, 1.2f, true);
    }
    for (const PatchShape& patch : made.patches) {
        std::vector<Point> points;
        for (const Vec2 corner : patch.outline.corners()) {
            points.push_back(at.to_px(corner));
        }
        pen.dashed(points, kPale, 1.5f, {5, 4}, 0, true);
    }
    const HolderShape holder = holder_shape(card, box.parts);
    for (int i = 0; i < 2; ++i) {
        if (holder.flap) {
            pen.ring(at.to_px(holder.disc_at_mm[i]), at.px(holder.disc_radius_mm[i]), kInk, 2);
        } else {
            outline(screen, at, holder.pad[i], kInk, 2);
        }
        // The sign of the cell's face that this contact carries; a plain cross would read as a +.
        sign_at(pen, at, holder.at_mm[i], 2.5, terminal_face(card, i) == CellFace::positive);
    }
    if (!holder.body.empty()) {
        outline(screen, at, holder.body, kInk, 1.5f);
    }
    const TextStyle label = screen.ui.m.type(Type::CardLabel);
    const auto pads = [&](const std::vector<PadOutline>& outlines, bool signs) {
        for (const PadOutline& pad : outlines) {
            outline(screen, at, pad.outline, kInk, 2);
            if (!signs) {
                continue; // a resistor may lie either way
            }
            sign_at(pen, at, pad.at_mm, 1.2, pad.piece.pad == 1);
        }
    };
    pads(made.led_pads, true);
    pads(made.resistor_pads, false);
    for (const Led& led : card.leds) {
        const Point p = at.to_px(led.at_mm);
        pen.text_in(around(p, 60, label.lead), led.id, label, kInk);
    }
    for (const ResistorPart& resistor : card.resistors) {
        pen.text_in(around(at.to_px(resistor.at_mm), 60, label.lead), resistor.id, label, kInk);
    }
}

// While paper lies on the glass: nothing but the template, and two quiet corners.
void draw_locked(Screen& screen, const Viewport& at) {
    Ui& ui = screen.ui;
    const Rect& area = at.area;
    const float corner = ui.m.mm(kCorner_mm);
    ui.add({.name = "box/glass", .role = Role::Canvas, .label = ui.words("light.locked"), .rect = area});
    const double held = opposite_corners_held_s(ui.contacts, ui.m.window, corner, ui.now());
    const float share = static_cast<float>(std::clamp(held / kCornerHold_s, 0.0, 1.0));
    if (held > 0.0) {
        ui.keep_awake("corners held");
    }
    const auto arc = [&](Point centre, float from) {
        ui.pen().arc(centre, 26, from, from + kPi / 2, kPale, 3);
        if (share > 0.0f) {
            ui.pen().arc(centre, 26, from, from + kPi / 2 * share, kInk, 6);
        }
    };
    arc({area.x, area.y}, 0);
    arc({area.right(), area.bottom()}, kPi);
    arc({area.right(), area.y}, kPi / 2);
    arc({area.x, area.bottom()}, 3 * kPi / 2);
    // A key is no paper: Escape unlocks too.
    if (held >= kCornerHold_s || ui.take_key(Key::Escape)) {
        act(screen, draw::LockLightBox{false});
        ui.host().tick();
    }
}

void draw_open(Screen& screen, const Viewport& at) {
    Ui& ui = screen.ui;
    const LightBox& box = screen.state.light_box;
    ui.add({.name = "box/glass",
            .role = Role::Canvas,
            .label = ui.words("light.template"),
            .rect = at.area,
            .drag = DragAxis::Both});
    if (const Drag* drag = ui.drag("box/glass")) {
        act(screen, draw::LookAt{centre_for_pan(at, drag->move)});
    }
    const Sheet& sheet = box.card.sheet;
    const bool fits = at.px(sheet.width_mm) <= at.area.w && at.px(sheet.height_mm) <= at.area.h;
    const float w = std::min(ui.m.window.w - 24, 640.0f);
    const TextStyle body = ui.m.type(Type::Body);
    const std::string words = fits ? ui.words("light.lay_sheet") : ui.words("light.in_parts");
    const float text_h = ui.fonts().wrapped_height(words, body, w - 36);
    const float h = text_h + ui.m.primary_h + 46;
    Rect card = around({at.area.centre().x, at.area.bottom() - h / 2 - 16 - ui.m.insets.bottom}, w, h);
    ui.add({.name = "box/panel", .role = Role::Note, .label = words, .rect = card});
    ui.pen().shadow(card, ui.m.radius, Lift::Sheet);
    ui.pen().fill(card, ui.theme().panel, ui.m.radius);
    Rect inside = card.shrunk(18, 14);
    ui.pen().paragraph({inside.x, inside.y}, inside.w, words, body, ui.theme().ink);
    inside.cut_top(text_h + 14);
    Rect row = inside.cut_top(ui.m.primary_h);
    const ButtonLook lock{.label = ui.m.phone() ? ui.words("light.lock") : ui.words("light.lock_screen"),
                          .icon = Icon::Lock,
                          .bold = true};
    if (primary_button(ui, "box/lock", row.cut_right(std::min(primary_width(ui, lock), row.w * 0.5f)),
                       lock)) {
        act(screen, draw::LockLightBox{true});
        ui.toast(ui.words("light.unlock"));
    }
    row.cut_right(10);
    const ButtonLook close{.label = ui.words("sheet.close"), .icon = Icon::Cross};
    if (button(ui, "box/close",
               around(row.cut_left(std::min(row.w * 0.48f, button_width(ui, close))).centre(),
                      std::min(row.w, button_width(ui, close)), ui.m.button_h),
               close) ||
        ui.take_key(Key::Escape)) {
        act(screen, draw::CloseLightBox{});
    }
    row.cut_left(10);
    const ButtonLook measure{.label = ui.words("light.measure"), .icon = Icon::Ruler};
    const bool room = button_width(ui, measure) <= row.w;
    const Rect slot = row.cut_left(room ? button_width(ui, measure) : ui.m.target);
    const Rect r = around(slot.centre(), slot.w, ui.m.button_h);
    if (room
            ? button(ui, "box/measure", r, measure)
            : icon_button(ui, "box/measure", r, {.icon = Icon::Ruler, .spoken = ui.words("light.measure")})) {
        act(screen, draw::Calibrate{true});
    }
}

// The outline of a bank card that grows and shrinks until the card in the hand just covers it.
void draw_measuring(Screen& screen, const Rect& area) {
    Ui& ui = screen.ui;
    const double px_per_pt = static_cast<double>(ui.m.px_per_pt);
    const double draft = screen.state.light_box.draft_px_per_mm > 0.0
                             ? screen.state.light_box.draft_px_per_mm
                             : static_cast<double>(ui.m.pt_per_mm) * px_per_pt;
    const double ppm = draft / px_per_pt;
    const float margin = ui.m.page_margin + 4;
    const float w = std::min(area.w - 2 * margin, 720.0f);
    Rect column{area.centre().x - w / 2, area.y + ui.m.insets.top + 22, w,
                area.h - 44 - ui.m.insets.top - ui.m.insets.bottom};
    const TextStyle h1 = ui.m.type(Type::H1);
    column.cut_top(ui.pen().paragraph({column.x, column.y}, w, ui.words("light.measure_once"), h1, kInk) + 4);
    column.cut_top(ui.pen().paragraph({column.x, column.y}, w, ui.words("light.bank_card"),
                                      ui.m.type(Type::Body), kInk) +
                   16);
    Rect foot = column.cut_bottom(ui.m.primary_h);
    column.cut_bottom(16);
    SliderLook look;
    look.label = ui.words("light.outline_size");
    // Finer than an eye can tell: a tenth of a millimetre over the card's length.
    look.step = 0.01f;
    look.key_step = 0.01f;
    // It spans what can fit this screen, so that a finger is fine enough. On a phone the card stands upright.
    const bool upright = ui.m.phone();
    const double across_mm = upright ? kBankCard_h_mm : kBankCard_w_mm;
    const double most = std::min(static_cast<double>(area.w - 16) / across_mm, 14.0) * px_per_pt;
    look.low = static_cast<float>(std::max(static_cast<double>(kLeastPxPerMm), most * 0.25));
    look.high = static_cast<float>(std::min(static_cast<double>(kMostPxPerMm), most));
    look.value_text = ui.words("light.pixels", {{"pixels", ui.words.number(draft, 2)}});
    const float slider_h = slider_height(ui, look);
    Rect tools = column.cut_bottom(slider_h);
    column.cut_bottom(14);
    auto value = static_cast<float>(draft);
    const float side = ui.m.target;
    const Rect less = around(tools.cut_left(side).centre(), side, side);
    const Rect more = around(tools.cut_right(side).centre(), side, side);
    if (icon_button(ui, "box/smaller", less,
                    {.icon = Icon::Minus, .spoken = ui.words("light.little_smaller")})) {
        act(screen, draw::SetScale{draft * 0.998});
    }
    if (icon_button(ui, "box/larger", more,
                    {.icon = Icon::Plus, .spoken = ui.words("light.little_larger")})) {
        act(screen, draw::SetScale{draft * 1.002});
    }
    if (slider(ui, "box/scale", tools.shrunk(14, 0), look, value)) {
        act(screen, draw::SetScale{static_cast<double>(value)});
    }
    // The outline stands at one corner: one pair of edges stays put while the other two are compared.
    const float card_w = static_cast<float>((upright ? kBankCard_h_mm : kBankCard_w_mm) * ppm);
    const float card_h = static_cast<float>((upright ? kBankCard_w_mm : kBankCard_h_mm) * ppm);
    const float x = std::min(column.x, std::max(area.x + 8, area.centre().x - card_w / 2));
    const Rect card{x, column.y, card_w, card_h};
    const float radius = static_cast<float>(kBankCard_r_mm * ppm);
    ui.add({.name = "box/card", .role = Role::Note, .label = ui.words("light.bank_outline"), .rect = card});
    ui.pen().fill(card, rgb(0xEDF2F6), radius);
    ui.pen().outline(card, kInk, 2, radius);
    const TextStyle small = ui.m.type(Type::Small);
    ui.pen().text_in(card, ui.words("light.bank_size"), small, kInk);

    const ButtonLook keep{.label = ui.words("light.fits"), .icon = Icon::Tick, .bold = true};
    if (primary_button(ui, "box/fits", foot.cut_right(std::min(primary_width(ui, keep), foot.w * 0.55f)),
                       keep)) {
        if (screen.state.light_box.draft_px_per_mm <= 0.0) {
            act(screen, draw::SetScale{draft});
        }
        act(screen, draw::KeepScale{});
    }
    foot.cut_right(10);
    const ButtonLook back{.label = ui.words("notice.back"), .icon = Icon::Back};
    const float back_w = std::min(foot.w, button_width(ui, back));
    if (button(ui, "box/back", around(foot.cut_left(back_w).centre(), back_w, ui.m.button_h), back) ||
        ui.take_key(Key::Escape)) {
        if (screen.state.settings.px_per_mm > 0.0) {
            act(screen, draw::Calibrate{false});
        } else {
            act(screen, draw::CloseLightBox{});
        }
    }
}

} // namespace

void draw_light_box(Screen& screen) {
    Ui& ui = screen.ui;
    const LightBox& box = screen.state.light_box;
    const Rect area{0, 0, ui.m.window.w, ui.m.window.h};
    ui.pen().fill(area, kLitWhite);
    if (box.calibrating) {
        draw_measuring(screen, area);
        return;
    }
    const Viewport at = true_size(screen);
    draw_template(screen, at);
    if (box.locked) {
        draw_locked(screen, at);
    } else {
        draw_open(screen, at);
    }
}

} // namespace lanternleaf
