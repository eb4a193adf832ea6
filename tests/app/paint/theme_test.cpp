// Contrast of every pair the design lists. The formula is WCAG 2.1's ("contrast ratio", "relative
// luminance"); its minima are 4.5:1 for text (success criterion 1.4.3) and 3:1 for controls and graphics
// (1.4.11).
#include "paint/theme.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("the contrast formula gives WCAG's own ends") {
    CHECK(contrast(rgb(0x000000), rgb(0xFFFFFF)) == Approx(21.0));
    CHECK(contrast(rgb(0x777777), rgb(0x777777)) == Approx(1.0));
    // #767676 on white is the well-known lightest grey that passes 4.5:1 (common practice; 4.54).
    CHECK(contrast(rgb(0x767676), rgb(0xFFFFFF)) == Approx(4.54).margin(0.01));
    CHECK(contrast(rgb(0x777777), rgb(0xFFFFFF)) < 4.5);
}

TEST_CASE("every listed pair has its stated contrast and passes its minimum") {
    for (const Theme* theme : {&day_theme(), &night_theme()}) {
        const auto pairs = contrast_pairs(*theme);
        CHECK(pairs.size() == 26);
        for (const ContrastPair& pair : pairs) {
            CAPTURE(theme->night, pair.name);
            const double ratio = contrast(pair.front, pair.back);
            CHECK(ratio == Approx(pair.stated).margin(0.06));
            CHECK(ratio >= pair.minimum);
        }
    }
}

TEST_CASE("amber and vermillion keep their meaning in both themes") {
    CHECK(day_theme().lamp == night_theme().lamp);
    CHECK(contrast(day_theme().on_lamp, day_theme().lamp) >= 4.5);
    CHECK(contrast(day_theme().on_plum, day_theme().plum) >= 4.5);
    CHECK(contrast(night_theme().on_plum, night_theme().plum) >= 4.5);
}

TEST_CASE("colours fade and mix channel by channel") {
    CHECK(faded(rgb(0x102030), 0.5f).a == 128);
    CHECK(mixed(rgb(0x000000), rgb(0xFFFFFF), 0.5f) == Colour{128, 128, 128, 255});
    CHECK(mixed(rgb(0x112233), rgb(0x445566), 0) == rgb(0x112233));
}
