// Theme: the colours of the app by role, in a day and a night set.
// Exists so that no drawing code names a colour: it says what a thing is. Amber (lamp) means now, chosen or
// light; vermillion and near-black (plus, minus) mean polarity and nothing else; problems are plum, measuring
// is blue.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace lanternleaf {

/// A colour with 8 bits a channel; a = 255 is solid.
struct Colour {
    std::uint8_t r = 0;
    std::uint8_t g = 0;
    std::uint8_t b = 0;
    std::uint8_t a = 255;
    friend bool operator==(const Colour&, const Colour&) = default;
};

/// 0xRRGGBB as a solid colour.
[[nodiscard]] constexpr Colour rgb(std::uint32_t hex) {
    return {static_cast<std::uint8_t>(hex >> 16), static_cast<std::uint8_t>(hex >> 8 & 0xFF),
            static_cast<std::uint8_t>(hex & 0xFF), 255};
}

/// The same colour with its opacity multiplied by `opacity` (0..1).
[[nodiscard]] Colour faded(Colour colour, float opacity);
/// From a (t = 0) to b (t = 1), channel by channel.
[[nodiscard]] Colour mixed(Colour a, Colour b, float t);
/// WCAG 2.1 contrast ratio, 1..21, of two solid colours.
[[nodiscard]] double contrast(Colour a, Colour b);

/// Every role. The names are those of the visual specification.
struct Theme {
    bool night = false;
    Colour table, table_edge;        ///< the page; panel under-edge and shelf plank
    Colour sheet, sheet_edge;        ///< the card stock being worked on
    Colour panel, well;              ///< panels and bars; rail, tool bar and troughs
    Colour ink, ink2;                ///< text; secondary text and blocked steps
    Colour line, edge;               ///< decorative hairline; control outline
    Colour leaf, leaf_dk, leaf_tint; ///< primary, done, fine
    Colour on_leaf;                  ///< text and icons on leaf
    Colour leaf_text;                ///< leaf-coloured text on panel or leaf_tint
    Colour turned;                   ///< the turned corner of the primary action
    Colour lamp, lamp_dk, lamp_tint; ///< now, light
    Colour on_lamp;                  ///< dark ink on lamp, day and night
    Colour plum, plum_tint, on_plum; ///< problem, safety
    Colour ochre, ochre_tint;        ///< caution
    Colour blue, blue_tint, on_blue; ///< meter, readings, explanation
    Colour plus, plus_dk;            ///< + edge; + ticks and inner hairline
    Colour minus;                    ///< - edge and - ticks
    Colour cu, cu_hi, cu_lo;         ///< copper tape, sheen, folded layer
    Colour ag, ag_hi, ag_lo;         ///< woven fabric tape: base, weft, weave line
    Colour patch, patch_ln;          ///< insulating paper, hatch
    Colour pencil;                   ///< traced front picture (decorative)
    Colour glow, glow_green;         ///< halo of a warm and of a green light
    Colour scrim;                    ///< what darkens the page under a sheet (with its opacity)
};

[[nodiscard]] const Theme& day_theme();
[[nodiscard]] const Theme& night_theme();

/// A pair that must be told apart, with the ratio the specification states for it.
struct ContrastPair {
    std::string name;
    Colour front;
    Colour back;
    double stated = 0; ///< from the specification, rounded to one decimal
    double minimum =
        0; ///< WCAG 2.1: 4.5 for text (1.4.3), 3.0 for marks (1.4.11); 0 where a second mark covers it
};

/// Every pair the specification lists for this theme.
[[nodiscard]] std::vector<ContrastPair> contrast_pairs(const Theme& theme);

} // namespace lanternleaf
