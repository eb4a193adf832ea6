// Against rows of the CIE 1931 1 nm table (2 degree observer) that the 5 nm table in the code does not hold,
// and against the figures published for wavelengths of common LEDs.
#include "colour/cie1931.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("Luminosity at the wavelengths of LEDs", "[colour]") {
    // CIE 1931 y-bar, which is the photopic V(lambda) of 1924.
    CHECK(colour_match(555).y == Approx(1.0).margin(1e-5));
    CHECK(colour_match(590).y == Approx(0.757).margin(1e-5));
    CHECK(colour_match(625).y == Approx(0.321).margin(1e-5));
    CHECK(colour_match(470).y == Approx(0.09098).margin(1e-5));
    CHECK(colour_match(379).y == 0.0);
    CHECK(colour_match(781).y == 0.0);
    CHECK(colour_match(780).x > 0.0);
}

TEST_CASE("Between its rows the table follows the 1 nm table", "[colour]") {
    struct Row {
        double nm, x, y, z;
    };

    // Rows of the 1 nm table (psychtoolbox-3-common, T_xyz1931.mat).
    for (const Row& row :
         {Row{469, 0.2068115, 0.0872328, 1.3387362}, Row{507, 0.00383656, 0.4443096, 0.1901196},
          Row{527, 0.1311145, 0.8224962, 0.05074664}, Row{529, 0.1538542, 0.8494916, 0.04489859},
          Row{623, 0.794186, 0.3447768, 0.00013596}, Row{626, 0.7295836, 0.3093381, 8.613333e-05}}) {
        INFO(row.nm);
        const Xyz got = colour_match(row.nm);
        CHECK(got.x == Approx(row.x).margin(5e-4));
        CHECK(got.y == Approx(row.y).margin(3e-4));
        CHECK(got.z == Approx(row.z).margin(2.4e-3));
    }
}

TEST_CASE("The matching functions have equal areas", "[colour]") {
    // Column sums of the 1 nm table 360-830 nm: 106.8655, 106.8569, 106.8923 (an equal-energy light is
    // white).
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;
    for (int nm = 380; nm <= 780; ++nm) {
        const Xyz c = colour_match(nm);
        x += c.x;
        y += c.y;
        z += c.z;
    }
    CHECK(x == Approx(106.8655).margin(0.02));
    CHECK(y == Approx(106.8569).margin(0.02));
    CHECK(z == Approx(106.8923 - 0.044).margin(0.02));
}

TEST_CASE("Chromaticities of spectral colours", "[colour]") {
    struct Row {
        double nm, x, y;
    };

    // x = X / (X + Y + Z) from the 1 nm table.
    for (const Row& row : {Row{465, 0.1355, 0.0399}, Row{470, 0.1241, 0.0578}, Row{475, 0.1096, 0.0868},
                           Row{520, 0.0743, 0.8338}, Row{525, 0.1142, 0.8262}, Row{530, 0.1547, 0.8059},
                           Row{570, 0.4441, 0.5547}, Row{590, 0.5752, 0.4242}, Row{605, 0.6482, 0.3514},
                           Row{620, 0.6915, 0.3083}, Row{625, 0.7006, 0.2993}, Row{645, 0.7230, 0.2769}}) {
        INFO(row.nm);
        const Chromaticity c = chromaticity_of_nm(row.nm);
        CHECK(c.x == Approx(row.x).margin(1e-4));
        CHECK(c.y == Approx(row.y).margin(1e-4));
    }
    CHECK(chromaticity_of({}).x == 0.0);
}
