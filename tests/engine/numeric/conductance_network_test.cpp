#include "numeric/conductance_network.h"

#include <catch2/catch.hpp>
#include <eigen3/Eigen/Dense>

#include <cmath>
#include <limits>
#include <random>

using namespace lanternleaf;

namespace {

struct Case {
    int nodes = 0;
    std::vector<NodeLink> links;
    std::vector<double> siemens;
    std::vector<double> drawn_A; ///< per link; only the moving ones have any
    std::vector<double> injected_A;
    std::size_t first_moving = 0;
};

Case random_case(unsigned seed, double decades) {
    std::mt19937 random(seed);
    Case made;
    made.nodes = 2 + static_cast<int>(seed % 60);
    std::uniform_real_distribution<double> exponent(-decades / 2, decades / 2);
    std::uniform_real_distribution<double> amps(-1.0, 1.0);
    std::uniform_int_distribution<int> any(kGround, made.nodes - 1);
    for (int i = 0; i < made.nodes; ++i) { // a spanning tree from ground, so that nothing hangs free
        made.links.push_back({i, std::uniform_int_distribution<int>(kGround, i - 1)(random)});
    }
    for (int i = 0; i < made.nodes; ++i) {
        made.links.push_back({any(random), any(random)});
    }
    made.first_moving = made.links.size() * (seed % 5) / 4;
    for (std::size_t i = 0; i < made.links.size(); ++i) {
        made.siemens.push_back(std::pow(10.0, exponent(random)));
        made.drawn_A.push_back(i >= made.first_moving ? amps(random) : 0.0);
    }
    for (int i = 0; i < made.nodes; ++i) {
        made.injected_A.push_back(amps(random));
    }
    return made;
}

std::vector<double> voltages(const Case& c, ConductanceNetwork& network) {
    const std::span<const double> siemens(c.siemens);
    const std::span<const double> drawn(c.drawn_A);
    std::vector<double> across(c.links.size() - c.first_moving);
    network.set_fixed(siemens.first(c.first_moving), c.injected_A);
    REQUIRE(network.solve(siemens.subspan(c.first_moving), drawn.subspan(c.first_moving), across));
    std::vector<double> volts(static_cast<std::size_t>(c.nodes));
    network.node_voltages(volts);
    for (std::size_t i = 0; i < across.size(); ++i) {
        const auto of = [&](int node) { return node < 0 ? 0.0 : volts[static_cast<std::size_t>(node)]; };
        const NodeLink& link = c.links[c.first_moving + i];
        CHECK(across[i] == Approx(of(link.a) - of(link.b)).margin(1e-12));
    }
    return volts;
}

} // namespace

TEST_CASE("Voltages agree with a dense LU factorisation", "[numeric]") {
    // Eigen's full-pivoting LU in long double is the outside judge.
    using Matrix = Eigen::Matrix<long double, Eigen::Dynamic, Eigen::Dynamic>;
    using Vector = Eigen::Matrix<long double, Eigen::Dynamic, 1>;
    for (unsigned seed = 0; seed < 200; ++seed) {
        const Case c = random_case(seed, 4.0);
        ConductanceNetwork network(c.nodes, c.links, static_cast<int>(c.first_moving));
        const std::vector<double> volts = voltages(c, network);
        Matrix matrix = Matrix::Zero(c.nodes, c.nodes);
        Vector right = Vector::Zero(c.nodes);
        for (int i = 0; i < c.nodes; ++i) {
            right(i) = c.injected_A[static_cast<std::size_t>(i)];
        }
        for (std::size_t i = 0; i < c.links.size(); ++i) {
            const auto [a, b] = c.links[i];
            if (a == b) {
                continue;
            }
            if (a >= 0) {
                matrix(a, a) += c.siemens[i];
                right(a) -= c.drawn_A[i];
            }
            if (b >= 0) {
                matrix(b, b) += c.siemens[i];
                right(b) += c.drawn_A[i];
            }
            if (a >= 0 && b >= 0) {
                matrix(a, b) -= c.siemens[i];
                matrix(b, a) -= c.siemens[i];
            }
        }
        const Vector expected = matrix.fullPivLu().solve(right);
        const double scale = static_cast<double>(expected.cwiseAbs().maxCoeff());
        for (int i = 0; i < c.nodes; ++i) {
            REQUIRE(volts[static_cast<std::size_t>(i)] ==
                    Approx(static_cast<double>(expected(i))).epsilon(1e-12).margin(1e-12 * scale));
        }
    }
}

TEST_CASE("A dead joint beside a dark LED loses nothing", "[numeric]") {
    // Divider by hand: 1 A into node 0, 1 S to ground; from node 0 through 2e-20 S to 1, 1e6 S to 2, 1e-20 S
    // to ground. V(2) = V(0) * 2/3, as 1e6 S counts for nothing. Subtracting pivots would leave 1e6 - 1e6 =
    // 0.
    const std::vector<NodeLink> links = {{0, kGround}, {0, 1}, {1, 2}, {2, kGround}};
    const std::vector<double> siemens = {1.0, 2e-20, 1e6, 1e-20};
    for (const int first_moving : {0, 2, 4}) {
        ConductanceNetwork network(3, links, first_moving);
        const auto split = static_cast<std::size_t>(first_moving);
        network.set_fixed(std::span(siemens).first(split), std::vector<double>{1.0, 0.0, 0.0});
        std::vector<double> across(4 - split);
        REQUIRE(
            network.solve(std::span(siemens).subspan(split), std::vector<double>(4 - split, 0.0), across));
        std::vector<double> volts(3);
        network.node_voltages(volts);
        CHECK(volts[2] == Approx(2.0 / 3.0).epsilon(1e-14));
        CHECK(volts[1] == Approx(2.0 / 3.0).epsilon(1e-14));
    }
}

TEST_CASE("A free part sits at 0 V and what flows within it is right", "[numeric]") {
    // Node 0 tied to ground; 1 and 2 hang free with 2 S between them and 4 A driven from 1 to 2 beside it.
    const std::vector<NodeLink> links = {{0, kGround}, {1, 2}, {1, 2}};
    ConductanceNetwork network(3, links, 2);
    network.set_fixed(std::vector<double>{5.0, 1.0}, std::vector<double>{10.0, 0.0, 0.0});
    std::vector<double> across(1);
    REQUIRE(network.solve(std::vector<double>{1.0}, std::vector<double>{4.0}, across));
    CHECK(across[0] == Approx(-2.0).epsilon(1e-15));
    std::vector<double> volts(3);
    network.node_voltages(volts);
    CHECK(volts[0] == Approx(2.0).epsilon(1e-15));
    CHECK((volts[1] == 0.0 || volts[2] == 0.0));
}

TEST_CASE("What is no number, or joins nothing, is said to be singular", "[numeric]") {
    const std::vector<NodeLink> links = {{0, kGround}, {0, 1}};
    ConductanceNetwork network(2, links, 1);
    std::vector<double> across(1);
    network.set_fixed(std::vector<double>{1.0}, std::vector<double>{0.0, 0.0});
    CHECK_FALSE(network.solve(std::vector<double>{0.0}, std::vector<double>{0.0}, across));
    CHECK_FALSE(network.solve(std::vector<double>{std::nan("")}, std::vector<double>{0.0}, across));
    CHECK_FALSE(network.solve(std::vector<double>{1.0}, std::vector<double>{std::nan("")}, across));
    CHECK(network.solve(std::vector<double>{1.0}, std::vector<double>{0.0}, across));
    ConductanceNetwork empty(0, {}, 0);
    empty.set_fixed({}, {});
    CHECK(empty.solve({}, {}, {}));
}
