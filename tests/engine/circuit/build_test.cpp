#include "circuit/circuit.h"
#include "circuit/solve.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <set>

using namespace lanternleaf;

namespace {

int node_of(const Circuit& circuit, Piece piece, double along_mm = 0.0) {
    for (int n = 0; n < circuit.node_count; ++n) {
        const NodePlace& place = circuit.places[static_cast<std::size_t>(n)];
        if (place.piece == piece && std::fabs(place.along_mm - along_mm) < 1e-6) {
            return n;
        }
    }
    FAIL("no node there");
    return -1;
}

/// Conductors with one strip of `length_mm`, touched by the pads of `touched_mm.size()` LEDs at those places.
struct OneStrip {
    Card card = make::bare_card();
    Parts parts = make::test_parts();
    Conductors conductors;

    OneStrip(double length_mm, const std::vector<double>& touched_mm) {
        card.laid.emplace_back(make::strip("N1", Side::negative, {{0, 50}, {length_mm, 50}}));
        conductors.strips.push_back({0, make_ribbon(std::vector<Vec2>{{0, 50}, {length_mm, 50}}, 5.0)});
        for (std::size_t i = 0; i < touched_mm.size(); ++i) {
            card.leds.push_back(make::led("L" + std::to_string(i), "carrier-red", {0, 0}));
            Contact contact;
            contact.a = {PieceKind::strip, 0, 0};
            contact.b = {PieceKind::led_pad, static_cast<int>(i), 0};
            contact.along_a_mm = touched_mm[i];
            contact.ohm = 0.1;
            conductors.contacts.push_back(contact);
        }
    }

    [[nodiscard]] Circuit build(const CircuitOptions& options = {}) const {
        return build_circuit(card, parts, conductors, fresh_cell(card, parts), options);
    }

    /// Tape alone, between two places where something touches.
    [[nodiscard]] double tape_ohm(double from_mm, double to_mm) const {
        const Circuit circuit = build();
        const Piece strip{PieceKind::strip, 0, 0};
        return resistance_between(circuit, node_of(circuit, strip, from_mm), node_of(circuit, strip, to_mm));
    }
};

// IEC 60028 (1925): annealed copper at 20 C, 1/58 ohm mm2/m.
constexpr double kCopper_ohm_mm = 1e-3 / 58.0;

} // namespace

TEST_CASE("Copper tape has the resistance of its copper", "[circuit]") {
    // 35 um foil by IEC 60028: 0.4926 milliohm per square; 100 mm of 5 mm tape is 20 squares, 9.85 milliohm.
    OneStrip strip(120.0, {10.0, 110.0});
    strip.parts.tapes["copper-5"].ohm_per_square = kCopper_ohm_mm / 0.035;
    CHECK(strip.parts.tapes["copper-5"].ohm_per_square == Approx(0.49260e-3).epsilon(1e-4));
    CHECK(strip.tape_ohm(10.0, 110.0) == Approx(9.852e-3).epsilon(1e-3));
    // The catalogue's round 0.5 milliohm is the figure for 1 oz copper, 34.8 um: within 2 %.
    CHECK(OneStrip(120.0, {10.0, 110.0}).tape_ohm(10.0, 110.0) == Approx(9.852e-3).epsilon(0.02));
}

TEST_CASE("A tape of a wire's section has the wire's resistance", "[circuit]") {
    // American wire gauge tables (T. L. Floyd, Electric Circuit Fundamentals, 2nd ed., as tabulated by
    // HyperPhysics): AWG 24 84.2 ohm/km, AWG 30 338.5 ohm/km at 20 C. The diameter is the gauge's definition.
    const std::pair<int, double> gauges[] = {{24, 84.2}, {30, 338.5}};
    for (const auto& [gauge, ohm_per_km] : gauges) {
        const double diameter_mm = 0.127 * std::pow(92.0, (36.0 - gauge) / 39.0);
        const double thickness_mm = std::acos(-1.0) * diameter_mm * diameter_mm / 4.0 / 5.0; // of a 5 mm tape
        OneStrip wire(1000.0, {0.0, 1000.0});
        wire.parts.tapes["copper-5"].ohm_per_square = kCopper_ohm_mm / thickness_mm;
        CHECK(1000.0 * wire.tape_ohm(0.0, 1000.0) == Approx(ohm_per_km).epsilon(0.003));
    }
}

TEST_CASE("A strip has one node for each place that is touched", "[circuit]") {
    const OneStrip strip(100.0, {80.0, 20.0, 20.004, 50.0});
    const Circuit circuit = strip.build();
    std::vector<double> places;
    for (const NodePlace& place : circuit.places) {
        if (place.piece.kind == PieceKind::strip) {
            places.push_back(place.along_mm);
        }
    }
    CHECK(places == std::vector<double>{20.0, 50.0, 80.0}); // 4 um apart is one place
    // Pads 1 and 2 sit on the same place: 0.1 + 0.1 ohm between them, no tape.
    CHECK(resistance_between(circuit, circuit.node_of_led_pad[2], circuit.node_of_led_pad[4]) ==
          Approx(0.2).epsilon(1e-12));
    // Pad 0 to pad 3: 30 mm of 5 mm tape are 6 squares of 0.5 milliohm.
    CHECK(resistance_between(circuit, circuit.node_of_led_pad[0], circuit.node_of_led_pad[6]) ==
          Approx(0.2 + 0.003).epsilon(1e-12));
    CircuitOptions worse;
    worse.joint_factor = 3.0;
    const Circuit poor = strip.build(worse);
    CHECK(resistance_between(poor, poor.node_of_led_pad[0], poor.node_of_led_pad[6]) ==
          Approx(0.6 + 0.003).epsilon(1e-12));
}

TEST_CASE("Every piece has a node, touched or not", "[circuit]") {
    OneStrip strip(100.0, {});
    strip.card.leds.push_back(make::led("L1", "carrier-red", {0, 0}));
    strip.card.resistors.push_back(make::resistor("R1", 47, {0, 0}));
    const Circuit circuit = strip.build();
    CHECK(circuit.node_count == 2 + 1 + 2 + 2);
    CHECK(circuit.places.size() == 7);
    CHECK(circuit.node_of_led_pad.size() == 2);
    CHECK(circuit.node_of_resistor_pad.size() == 2);
    CHECK(node_of(circuit, {PieceKind::strip, 0, 0}, 0.0) == 2);
    CHECK(resistance_between(circuit, circuit.node_of_resistor_pad[0], circuit.node_of_resistor_pad[1]) ==
          Approx(47.0));
    REQUIRE(circuit.diodes.size() == 1);
    CHECK(circuit.diodes[0].cathode == circuit.node_of_led_pad[0]);
    CHECK(circuit.diodes[0].anode == circuit.node_of_led_pad[1]);
    CHECK(circuit.diodes[0].led == 0);
    const Solution solution = solve_operating_point(circuit);
    CHECK(solution.ok());
    CHECK(std::fabs(solution.diode_A[0]) < 1e-12);
    CircuitOptions bare;
    bare.with_leds = false;
    bare.with_cell = false;
    CHECK(strip.build(bare).diodes.empty());
    CHECK(strip.build(bare).cells.empty());
}

TEST_CASE("The cell lies the way round it is put, and stacks add up", "[circuit]") {
    Card card = make::bare_card();
    const Parts parts = make::test_parts();
    for (const CellFace down : {CellFace::negative, CellFace::positive}) {
        card.cell.face_down = down;
        const Circuit circuit =
            build_circuit(card, parts, find_conductors(card, parts), fresh_cell(card, parts));
        REQUIRE(circuit.cells.size() == 1);
        const int bed = circuit.node_of_terminal[0];
        const int flap = circuit.node_of_terminal[1];
        CHECK(circuit.cells[0].minus == (down == CellFace::negative ? bed : flap));
        CHECK(circuit.cells[0].plus == (down == CellFace::negative ? flap : bed));
        CHECK(circuit.cells[0].minus == 0); // the reference
    }
    card.cell.count = 2;
    CHECK(fresh_cell(card, parts).open_V == Approx(2 * 3.096));
    CHECK(fresh_cell(card, parts).ohm == Approx(2 * 14.3));
    CHECK(steady_cell(card, parts).open_V == Approx(2 * 3.096));
    CHECK(steady_cell(card, parts).ohm == Approx(2 * 113.0));
    Parts quiet = parts;
    quiet.cells["CR2032"].steady_ohm = 0.0;
    CHECK(steady_cell(card, quiet).ohm == Approx(2 * 14.3));
}

TEST_CASE("The sample card's loop is the sum of its parts", "[circuit]") {
    const Card card = make::sample_card();
    const Parts parts = make::test_parts();
    const Conductors conductors = find_conductors(card, parts);
    const Circuit circuit = build_circuit(card, parts, conductors, fresh_cell(card, parts));
    // By hand: bed 0.3 ohm, N1 from bed to pad, pad joint; the same for S1. A carrier pad of 4 x 7 mm turned
    // by 270 degrees lies across a 5 mm strip: the pad centres sit at (110, 45) and (110, 35), so 7 x 4 mm of
    // overlap.
    const double pad_ohm = 2.0 / 28.0;
    const double bed_to_pad =
        resistance_between(circuit, circuit.node_of_terminal[0], circuit.node_of_led_pad[0]);
    const double flap_to_pad =
        resistance_between(circuit, circuit.node_of_terminal[1], circuit.node_of_led_pad[1]);
    // 35 mm up and 80 along, some of it inside the disc: between 20 and 24 squares of half a milliohm.
    CHECK(bed_to_pad > 0.3 + pad_ohm + 20 * 0.0005);
    CHECK(bed_to_pad < 0.3 + pad_ohm + 24 * 0.0005);
    CHECK(flap_to_pad > 0.3 + pad_ohm + 18 * 0.0005);
    CHECK(flap_to_pad < 0.3 + pad_ohm + 24 * 0.0005);
    CHECK(std::isinf(resistance_between(circuit, circuit.node_of_terminal[0], circuit.node_of_terminal[1])));
    const Solution solution = solve_operating_point(circuit);
    REQUIRE(solution.ok());
    const DiodeElement led = circuit.diodes[0];
    CHECK(solution.diode_A[0] ==
          Approx(diode_current_A(led, 3.096, 14.3 + bed_to_pad + flap_to_pad)).epsilon(1e-9));
}
