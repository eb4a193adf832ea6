#include "numeric/wright_omega.h"

#include <cmath>

namespace lanternleaf {

double wright_omega(double z) {
    // Far left omega is exp(z) (1 - exp(z) + ...): below -38 the second term is under half a unit in the last
    // place.
    if (z < -38.0) {
        return std::exp(z);
    }
    // Far right the start below is exact to the last place already, and squares would overflow further out.
    if (z > 1e8) {
        return z - std::log(z);
    }
    double w;
    if (z < -1.0) {
        const double x = std::exp(z);
        w = x / (1.0 + x);
    } else if (z < 2.0) {
        // Taylor series about z = 1, where w = 1: w' = w/(1+w) = 1/2, w'' = w/(1+w)^3 = 1/8.
        const double t = z - 1.0;
        w = 1.0 + t * (0.5 + t * (1.0 / 16.0 - t / 192.0));
    } else {
        const double l = std::log(z);
        w = z - l + l / z;
    }
    // Each pass multiplies the correct digits by about four; from these starts the second one is at rounding.
    for (int pass = 0; pass < 3; ++pass) {
        const double r = z - w - std::log(w);
        const double t = (1.0 + w) * (1.0 + w + 2.0 / 3.0 * r);
        const double step = r / (1.0 + w) * (t - 0.5 * r) / (t - r);
        w += w * step;
        if (std::fabs(step) < 1e-4) {
            break; // what is left is below step^4
        }
    }
    return w;
}

} // namespace lanternleaf
