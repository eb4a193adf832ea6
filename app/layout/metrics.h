// Metrics: the sizes a screen is made of, for this window and this reader: type sizes, bars, targets, gaps.
// Exists so that no screen carries a size of its own. All lengths are points; the renderer alone knows
// pixels. The text scale enlarges type and what must grow with it (rows, buttons, bars), never the gaps.
#pragma once

#include "host/point.h"

namespace lanternleaf {

/// The three arrangements of a screen.
enum class Form { Landscape, Portrait, Phone };

/// Under 600 wide a phone; otherwise portrait when taller than wide, else landscape.
[[nodiscard]] Form form_of(Size window);

enum class Weight { Regular, Bold };

/// How one line of type is set: size is the em in points, lead the distance from line to line.
struct TextStyle {
    float size = 20;
    float lead = 26;
    Weight weight = Weight::Regular;

    [[nodiscard]] TextStyle bold() const { return {size, lead, Weight::Bold}; }

    [[nodiscard]] TextStyle regular() const { return {size, lead, Weight::Regular}; }

    /// The same style at another em size; the lead keeps its proportion.
    [[nodiscard]] TextStyle sized(float em) const { return {em, lead * em / size, weight}; }
};

/// The styles of the design, by use.
enum class Type {
    Hero,      ///< the safety notice
    H1,        ///< what to do now, screen titles
    H2,        ///< panel heads
    Action,    ///< the primary button
    Body,      ///< sentences, buttons, navigation
    Small,     ///< captions, rail, table heads
    CardLabel, ///< LED ids and notes on the card
    CardNote,  ///< ruler, "inside the flap"
    Figure,    ///< hours of light
    Reading,   ///< the value on the keypad
};

inline constexpr float kMinTextScale = 0.85f;
inline constexpr float kMaxTextScale = 2.0f;

/// What a small child hits surely with a finger: about one and a half times an adult's 10 mm (common practice
/// for touch screens made for children; the figure is the design's).
inline constexpr float kKidsTarget_mm = 15.0f;

/// Every size of one screen. Make it with make_metrics().
struct Metrics {
    Form form = Form::Landscape;
    Size window;
    Insets insets;
    float px_per_pt = 1;  ///< device pixels per point
    float pt_per_mm = 5;  ///< points per millimetre of glass
    float text_scale = 1; ///< the reader's text size, kMinTextScale..kMaxTextScale

    float top_h = 68;         ///< top bar
    float rail_h = 72;        ///< step rail
    float action_h = 92;      ///< action bar
    float target = 56;        ///< smallest side of anything that can be tapped
    float button_h = 56;      ///< a plain button
    float primary_h = 68;     ///< the primary button
    float hold_h = 80;        ///< the hold button
    float field_h = 62;       ///< a reading field
    float key_h = 76;         ///< a key of the keypad
    float page_margin = 20;   ///< page edge to content
    float gap = 12;           ///< between neighbours
    float panel_pad_x = 18;   ///< inside a panel, left and right
    float panel_pad_y = 16;   ///< inside a panel, above and below
    float radius = 14;        ///< panels and buttons
    float radius_small = 12;  ///< wells, fields, keys
    float turned_corner = 20; ///< the cut corner of the primary action

    [[nodiscard]] bool phone() const { return form == Form::Phone; }

    [[nodiscard]] TextStyle type(Type use) const;

    /// A length that grows with the reader's text size (icons beside text, badges).
    [[nodiscard]] float with_text(float pt) const { return pt * text_scale; }

    [[nodiscard]] float mm(float millimetres) const { return millimetres * pt_per_mm; }
};

/// Sizes for a window. text_scale is clamped to its limits; pt_per_mm and px_per_pt that are not above 0
/// become 5 and 1. `kids`: whatever can be tapped is at least kKidsTarget_mm high.
[[nodiscard]] Metrics make_metrics(Size window, Insets insets, float px_per_pt, float pt_per_mm,
                                   float text_scale, bool kids = false);

} // namespace lanternleaf
