#include "numeric/wright_omega.h"

#include <catch2/catch.hpp>

#include <cmath>

using lanternleaf::wright_omega;

TEST_CASE("Wright's omega at its known places", "[numeric]") {
    // w + ln w = z by definition: z = 1 gives 1, z = 1 + e gives e. At 0 it is the omega constant W(1), to
    // twenty digits 0.56714329040978387300 (NIST Digital Library of Mathematical Functions, 4.13; from
    // memory).
    CHECK(wright_omega(1.0) == Approx(1.0).epsilon(1e-15));
    CHECK(wright_omega(1.0 + std::exp(1.0)) == Approx(std::exp(1.0)).epsilon(1e-15));
    CHECK(wright_omega(0.0) == Approx(0.56714329040978387300).epsilon(1e-15));
}

TEST_CASE("Wright's omega solves its equation over the whole range", "[numeric]") {
    for (double z = -700.0; z < 700.0; z += 0.0371) {
        const long double w = wright_omega(z);
        // The error in w that a residual means: dw = w/(1+w) dz.
        const long double off = (static_cast<long double>(z) - w - std::log(w)) / (1.0L + w);
        if (std::fabs(static_cast<double>(off)) >
            4e-16 * (1.0 + std::fabs(z) / (1.0 + static_cast<double>(w)))) {
            FAIL("z = " << z << ": relative error " << static_cast<double>(off));
        }
    }
    for (const double z : {1e3, 1e6, 1e12, 1e300}) {
        const long double w = wright_omega(z);
        CHECK(static_cast<double>((static_cast<long double>(z) - w - std::log(w)) / w) ==
              Approx(0.0).margin(4e-16));
    }
    CHECK(wright_omega(-1000.0) == 0.0);
}
