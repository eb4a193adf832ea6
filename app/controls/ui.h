// Ui: what a screen is drawn with. One object for the life of the app; begin_frame(), draw, end_frame().
// Exists so that every control shares one set of touch, key and motion rules, decided on named targets and
// not on the drawing library's own widgets. All sizes are points; colours are roles of the theme.

// clang-format off
// HOW TO WRITE A SCREEN (ui is a Ui&, r a Rect). Each control returns what happened and takes a target name.
//
//   Sizes      ui.m.gap, ui.m.button_h, ui.m.type(Type::Body) ...                      layout/metrics.h
//              Regions g = make_regions(ui.m, {.rail = true}); g.top .rail .card .panel .actions
//   Colours    ui.theme().ink .ink2 .panel .well .leaf .lamp .plum .blue ...           paint/theme.h
//   Drawing    ui.pen().fill(r, colour, radius) .outline .line .stroke .dashed .disc .ring .arc .halo
//              .shadow .gradient .fill_polygon .push_clip .pop_clip                    paint/pen.h
//   Text       ui.pen().text({x, y}, "words", style, colour)         y is the top of the line box
//              ui.pen().text_in(box, "words", style, colour, Align::Centre)    capitals in the box's middle
//              h = ui.pen().paragraph({x, y}, width, "Press joint **A** hard.", style, colour)
//              ui.fonts().width(text, style) .wrapped_height(text, style, width) .fitted(text, style, width)
//   Icons      draw_icon(ui.pen(), Icon::Meter, centre, 28, colour)  draw_mark(...)          paint/icons.h
//   Surfaces   table(ui)  panel(ui, r)  well(ui, r, colour)  divider(ui, a, b)  bar(ui, r, at_top)
//   Buttons    button  icon_button  leaf_button  primary_button  button_width          controls/button.h
//              if (button(ui, "make/differ", r, {.label = "Mine is different", .icon = Icon::Differ}))
//              {.label = "Make this card", .enabled = false, .reason = "One problem is left."}: tap = toast
//              hold_button(ui, name, r, look): true once, after 4 s       controls/hold_button.h
//   Chips      safety_chip  chip  tag  pill  tool_tile                                 controls/chip.h
//   Places     nav_bar  nav_item  nav_menu                                             controls/nav.h
//   Choices    segmented(ui, "light/view", r, segments, index): true when changed      controls/segmented.h
//   Numbers    slider(ui, name, r, look, value)  stepper(ui, name, r, look, value): true while it changes
//              keypad(ui, "reading", look, entry) -> KeypadResult, entry: KeypadEntry    controls/keypad.h
//   Names      text_field(ui, name, r, look, text) -> TextFieldHit                     controls/text_field.h
//   Over it    { SheetPaper s(ui, "layers", usual_side(ui.m), open, height, "Layers");
//                if (s.shown()) { draw in s.body() } open = open && !s.closed(); }           controls/sheet.h
//   Lists      { Scroll s(ui, "findings", r); y = s.top(); ... s.done(content_height); }   controls/scroll.h
//   Rows       findings_row  check_block  step_rail  range_bar  share_bar  brightness_bar  pips
//
//   Own hits   ui.add({.name = "board/led/L3", .role = Role::Spot, .label = "L3", .rect = r});
//              ui.tapped(name)  ui.double_tapped(name)  ui.tap_at()  ui.pressed(name)  ui.held_s(name)
//              ui.long_pressed(name) (add with .long_press = true)  ui.hovered(name)
//              Role::Canvas with .drag = DragAxis::Both: ui.drag(name) ui.pinch(name) ui.wheel(name)
//              Touch goes to what was seen: the last frame's topmost target of that name.
//   Keys       Tab, arrows, Enter and Space work for every target. Space with nothing in focus presses the
//              Role::Primary target drawn last (a foot pedal). ui.take_key(Key::Escape) takes a key once.
//   Motion     float t = ui.glide("make/panel", open ? 1 : 0, kPanel_s);      0..1; shape it with ease_out
//              ui.keep_awake("chevrons") draws another frame;  ui.wake_at(time_s) draws one frame then
//   Words      ui.toast("Saved.");   ui.toast("Strip moved.", "Undo") then ui.tapped("toast/action")
// clang-format on
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "host/host.h"
#include "host/input.h"
#include "layout/metrics.h"
#include "motion/corner_hold.h"
#include "motion/ease.h"
#include "motion/gesture.h"
#include "motion/kinetic.h"
#include "paint/fonts.h"
#include "paint/icons.h"
#include "paint/pen.h"
#include "paint/targets.h"
#include "paint/theme.h"
#include "words/words.h"

namespace lanternleaf {

/// What a drag on one target did since the last frame.
struct Drag {
    bool started = false;
    bool ended = false;
    Point move; ///< points since the last frame
    Point at;
    Point start;
    Point velocity; ///< points per second, when ended
};

struct Pinch {
    Point at;        ///< middle of the two fingers
    Point move;      ///< how far the middle moved
    float scale = 1; ///< how much wider the fingers are
};

struct ToastLine {
    std::string text;
    std::string action; ///< label of a button in it, or empty
    double until_s = 0;
};

class Ui {
public:
    Ui(Fonts& fonts, Host& host);

    // The frame
    // -------------------------------------------------------------------------------------------------
    /// Takes in what happened. `pen` draws this frame; bake() of the fonts has been called for `metrics`.
    void begin_frame(HostInput input, const Metrics& metrics, const Theme& theme, Pen& pen,
                     bool reduced_motion);
    /// Draws the toast and the focus ring on top of all.
    void end_frame();

    /// Gives and forgets what the frame asked for: reasons to draw on, and the time to draw again.
    [[nodiscard]] const std::vector<std::string>& awake_reasons() const { return awake_; }

    [[nodiscard]] std::optional<double> wake_time() const { return wake_at_; }

    // Drawing
    // ---------------------------------------------------------------------------------------------------
    Metrics m;
    HostInput in;
    Targets targets; ///< of this frame, growing while it is drawn
    bool reduced_motion = false;

    [[nodiscard]] const Theme& theme() const { return *theme_; }

    /// Another theme for the rest of this frame: a place that is always night.
    void use_theme(const Theme& theme) { theme_ = &theme; }

    [[nodiscard]] Pen& pen() { return *pen_; }

    [[nodiscard]] const Fonts& fonts() const { return *fonts_; }

    [[nodiscard]] Host& host() { return *host_; }

    [[nodiscard]] float dt() const { return in.dt_s; }

    [[nodiscard]] double now() const { return in.now_s; }

    // Targets and what was done to them
    // -------------------------------------------------------------------------
    void add(Target target) { targets.add(std::move(target)); }

    [[nodiscard]] bool tapped(std::string_view name) const;

    [[nodiscard]] bool double_tapped(std::string_view name) const { return double_tap_ == name; }

    [[nodiscard]] Point tap_at() const { return tap_at_; }

    /// A finger, mouse button or key is on it now (or was, a moment ago): draw it pressed.
    [[nodiscard]] bool pressed(std::string_view name) const;
    /// Seconds it has been held without a break; 0 when it is not.
    [[nodiscard]] double held_s(std::string_view name) const;

    [[nodiscard]] bool long_pressed(std::string_view name) const { return long_press_ == name; }

    [[nodiscard]] bool hovered(std::string_view name) const;
    /// Null when it is not being dragged.
    [[nodiscard]] const Drag* drag(std::string_view name) const;
    [[nodiscard]] const Pinch* pinch(std::string_view name) const;
    /// Wheel notches over this container.
    [[nodiscard]] Point wheel(std::string_view name) const;

    // Keyboard
    // --------------------------------------------------------------------------------------------------
    /// Has the keyboard focus, and the keyboard is in use: draw the ring (end_frame does).
    [[nodiscard]] bool focused(std::string_view name) const { return focus_shown_ && focus_ == name; }

    void set_focus(std::string_view name);

    [[nodiscard]] const std::string& focus() const { return focus_; }

    [[nodiscard]] bool focus_moved() const { return focus_moved_; }

    /// True once for a key that went down this frame and was not used for focus.
    bool take_key(Key key);
    /// The text field that takes typing; empty for none. Its keys are not used for focus.
    std::string typing_in;
    /// Every finger on the glass now, whatever it means.
    std::vector<GlassContact> contacts;
    /// The canvas that takes the arrow keys while it has the focus (something on it is selected); set it in
    /// each frame.
    std::string arrows_in;

    /// How to speak to this person; the frame sets it before anything is drawn.
    Words words = english();

    // Motion and words
    // ------------------------------------------------------------------------------------------
    void keep_awake(std::string_view reason);
    void wake_at(double time_s);
    /// A value on its way to goal, kept under this name; with reduced motion it is there at once. First seen:
    /// at goal.
    float glide(std::string_view name, float goal, float over_s);
    /// Puts a gliding value somewhere at once; glide() goes on from there.
    void set_glide(std::string_view name, float value);
    /// Where a gliding value is now; 0 when there is none of that name.
    [[nodiscard]] float glide_value(std::string_view name) const;

    [[nodiscard]] bool has_glide(std::string_view name) const { return glides_.find(name) != glides_.end(); }

    void toast(std::string_view text, std::string_view action = {});

    [[nodiscard]] const std::optional<ToastLine>& toast_line() const { return toast_; }

    Gesture gesture;
    std::map<std::string, Kinetic, std::less<>> scrolls; ///< how far each scroll area is

private:
    void take_pointers();
    void take_keys();
    void take(const GestureEvent& event);
    void activate(std::string_view name);

    const Theme* theme_ = nullptr;
    Pen* pen_ = nullptr;
    Fonts* fonts_;
    Host* host_;
    Targets seen_; ///< of the last frame: what the person saw when touching

    std::vector<std::string> taps_;
    Point tap_at_;
    std::string double_tap_;
    std::string last_tap_;
    double last_tap_s_ = -10;
    Point last_tap_at_;
    std::string press_; ///< pressed by a pointer
    bool press_drawn_ = false;
    std::string flash_; ///< drawn pressed for a moment after a tap
    double flash_until_s_ = 0;
    std::string long_press_;
    std::string drag_owner_;
    std::optional<Drag> drag_;
    std::string pinch_owner_;
    std::optional<Pinch> pinch_;
    std::string key_hold_; ///< pressed by a key
    Key key_hold_key_ = Key::Space;
    double key_hold_s_ = 0;

    std::string focus_;
    bool focus_shown_ = false;
    bool focus_moved_ = false;
    std::vector<Key> keys_left_;

    std::vector<std::string> awake_;
    std::optional<double> wake_at_;
    std::map<std::string, Glide, std::less<>> glides_;
    std::optional<ToastLine> toast_;
};

/// For controls: adds the target, and on a tap says whether it was activated. A disabled one shows its reason
/// instead.
bool offer(Ui& ui, Target target, std::string_view reason = {});

} // namespace lanternleaf
