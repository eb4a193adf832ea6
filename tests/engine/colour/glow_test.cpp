// Colours worked out outside this project from the CIE 1931 1 nm table with the matrix and gamma of IEC
// 61966-2-1; within one step of 255.
#include "colour/glow.h"

#include <catch2/catch.hpp>
#include <cstdlib>

using namespace lanternleaf;

namespace {

void is_near(Rgb got, const char* hex) {
    const std::string text = hex_of(got);
    INFO(text << " against " << hex);
    for (const std::size_t at : {std::size_t{1}, std::size_t{3}, std::size_t{5}}) {
        const int is = std::stoi(text.substr(at, 2), nullptr, 16);
        const int should = std::stoi(std::string(hex).substr(at, 2), nullptr, 16);
        CHECK(std::abs(is - should) <= 1);
    }
}

} // namespace

TEST_CASE("Spectral colours at the edge of sRGB", "[colour]") {
    struct Row {
        double nm;
        const char* hex;
    };

    for (const Row& row :
         {Row{465, "#001DFF"}, Row{470, "#0062FF"}, Row{475, "#008DFF"}, Row{520, "#00FFA8"},
          Row{525, "#00FFA0"}, Row{530, "#00FF96"}, Row{570, "#FBFF00"}, Row{590, "#FF8400"},
          Row{605, "#FF3900"}, Row{620, "#FF0036"}, Row{625, "#FF003F"}, Row{645, "#FF004F"}}) {
        INFO(row.nm);
        is_near(srgb_of(colour_match(row.nm)), row.hex);
    }
}

TEST_CASE("The colours that are no wavelength", "[colour]") {
    is_near(glow_of("white", 455), "#FFF5F4");
    is_near(glow_of("warm-white", 455), "#FFAD59");
    is_near(glow_of("pink", 455), "#FF65B5");
    // The chip's own 455 nm is a deep blue: none of them takes it.
    CHECK(glow_of("white", 455).red == Approx(1.0));
}

TEST_CASE("A red glow is red, a green one green", "[colour]") {
    const Rgb red = glow_of("red", 623);
    CHECK(red.red == Approx(1.0));
    CHECK(red.green < 0.1);
    CHECK(red.blue == Approx(0.0).margin(1e-9));
    is_near(glow_of("green", 525), "#00FFA0");
    is_near(glow_of("amber", 590), "#FF8400");
    CHECK(hex_of(glow_of("green", 1200)) == "#000000"); // no light the eye could see
}
