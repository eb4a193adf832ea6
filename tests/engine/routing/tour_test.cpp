// The shortest path against every order there is, and against a case that can be seen.
#include "routing/tour.h"

#include "routing/random.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>

using namespace lanternleaf;
using namespace lanternleaf::routing_stages;

namespace {

double by_every_order(const std::vector<Vec2>& places) {
    std::vector<int> order(places.size());
    std::iota(order.begin(), order.end(), 0);
    double best = 1e300;
    do {
        double sum = 0.0;
        for (std::size_t i = 1; i < order.size(); ++i) {
            sum += distance(places[static_cast<std::size_t>(order[i - 1])],
                            places[static_cast<std::size_t>(order[i])]);
        }
        best = std::min(best, sum);
    } while (std::next_permutation(order.begin() + 1, order.end()));
    return best;
}

} // namespace

TEST_CASE("Up to 13 places the tour is the shortest there is", "[routing]") {
    Random random(7);
    for (int round = 0; round < 20; ++round) {
        std::vector<Vec2> places;
        for (int i = 0; i < 2 + round % 6; ++i) {
            places.push_back({200.0 * random.share(), 100.0 * random.share()});
        }
        const Tour tour = short_tour(places);
        CHECK(tour.exact == true);
        CHECK(tour.order.front() == 0);
        CHECK(tour.length_mm == Approx(by_every_order(places)));
        CHECK(quick_tour(places).length_mm >= tour.length_mm - 1e-9);
    }
}

TEST_CASE("Many places on a line are visited from end to end", "[routing]") {
    std::vector<Vec2> places;
    for (int i = 0; i < 30; ++i) {
        places.push_back({10.0 * ((i * 7) % 30), 0.0});
    }
    CHECK(quick_tour(places).length_mm == Approx(290.0));
    CHECK_FALSE(short_tour(places).exact);
    CHECK(quick_tour({}).order.empty());
    CHECK(short_tour(std::vector<Vec2>{{1, 2}}).length_mm == 0.0);
}
