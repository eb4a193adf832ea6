// Random cards that a hand could lay: lights in two rows of parallel rails, each rail in several lapped
// pieces, one patched crossing. Exists so that the search for faults is measured on cards that nobody chose.
#pragma once

#include "support/make_card.h"

#include <random>

namespace lanternleaf::make {

namespace detail {

/// A rail from x to x, cut into pieces that lap by 6 to 10 mm, at places halfway between lights.
inline void lay_rail(Card& card, const std::string& name, Side side, double y_mm, double from_mm,
                     double to_mm, const std::vector<double>& cuts_mm, std::vector<Vec2> lead_in,
                     std::mt19937& random) {
    int piece = 1;
    double start = from_mm;
    const auto id = [&] { return std::string(name).append(std::to_string(piece++)); };
    for (std::size_t i = 0; i <= cuts_mm.size(); ++i) {
        const double lap = 3.0 + static_cast<double>(random() % 3);
        const double end = i < cuts_mm.size() ? cuts_mm[i] + lap : to_mm;
        std::vector<Vec2> path = i == 0 ? lead_in : std::vector<Vec2>{};
        if (i > 0) {
            path.push_back({start, y_mm});
        }
        path.push_back({end, y_mm});
        card.laid.emplace_back(strip(id(), side, path));
        start = i < cuts_mm.size() ? cuts_mm[i] - lap : 0.0;
    }
}

} // namespace detail

/// `lights` carrier LEDs in one row (up to 4) or two; every choice from `random`.
inline Card random_rows(int lights, std::mt19937& random) {
    Card card = bare_card();
    const auto chance = [&](int in) { return static_cast<int>(random() % static_cast<unsigned>(in)) == 0; };
    const int above = lights > 4 ? lights / 2 : 0;
    const int below = lights - above;
    const double pitch = 16.0 + static_cast<double>(random() % 5);
    const double first = 84.0 + static_cast<double>(random() % 6);
    const auto cuts = [&](int count) {
        std::vector<double> places;
        for (int i = 1; i < count; ++i) {
            if (chance(3)) {
                places.push_back(first + pitch * (i - 0.5));
            }
        }
        return places;
    };
    const double end = first + pitch * (below - 1) + 9.0;
    const double turn = end + 9.0;
    // The - rail of the row above goes on from the end of the one below, beyond its + rail.
    detail::lay_rail(card, "N", Side::negative, 45, 30, above > 0 ? turn + 2.5 : end, cuts(below),
                     {{30, 80}, {30, 45}}, random);
    card.laid.emplace_back(patch("P1", {60, 45}));
    detail::lay_rail(card, "S", Side::positive, 35, 60, end, cuts(below), {{54, 80}, {60, 80}, {60, 35}},
                     random);
    if (above > 0) {
        card.laid.emplace_back(strip("M1", Side::negative, {{turn, 47.5}, {turn, 10}, {first - 9.0, 10}}));
        const double riser = first - 9.0;
        card.laid.emplace_back(strip("T1", Side::positive,
                                     {{riser, 37.5}, {riser, 20}, {first + pitch * (above - 1) + 7.0, 20}}));
    }
    for (int i = 0; i < lights; ++i) {
        const bool up = i >= below;
        const double x = first + pitch * (up ? i - below : i);
        card.leds.push_back(led(std::string("L").append(std::to_string(i + 1)),
                                chance(8) ? "carrier-green" : "carrier-white", {x, up ? 15.0 : 40.0},
                                up ? 90 : 270));
    }
    card.sheet.width_mm = turn + 12.0;
    return card;
}

} // namespace lanternleaf::make
