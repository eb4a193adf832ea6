// Whole cards against ngspice, a circuit simulator that shares no line with this project: the circuit is
// written as a netlist and `ngspice -b` asked for every LED's current.
#include "circuit/solve.h"
#include "support/make_card.h"
#include "support/spice_deck.h"

#include <catch2/catch.hpp>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace lanternleaf;

namespace {

bool ngspice_installed() {
    return std::system("command -v ngspice > /dev/null 2>&1") == 0;
}

/// Currents in amperes, one per diode; empty when ngspice did not answer as expected.
std::vector<double> ngspice_currents_A(const Circuit& circuit, const std::string& name) {
    namespace fs = std::filesystem;
    const fs::path folder =
        fs::temp_directory_path() / ("lanternleaf-ngspice-" + std::to_string(std::rand()));
    fs::create_directories(folder);
    const fs::path deck = folder / (name + ".cir");
    const fs::path said = folder / (name + ".txt");
    {
        std::ofstream out(deck);
        std::vector<std::string> lines = make::spice_deck(circuit);
        lines.pop_back(); // .end
        for (const std::string& line : lines) {
            out << line << '\n';
        }
        out << ".control\nset numdgt=12\nop\n";
        for (std::size_t i = 0; i < circuit.diodes.size(); ++i) {
            out << "print @d" << i << "[id]\n";
        }
        out << "quit\n.endc\n.end\n";
    }
    const std::string command = "ngspice -b '" + deck.string() + "' > '" + said.string() + "' 2>&1";
    (void)std::system(command.c_str()); // judged by what it printed
    std::vector<double> amps;
    std::ifstream in(said);
    for (std::string line; std::getline(in, line);) {
        const std::string expected = "@d" + std::to_string(amps.size()) + "[id] = ";
        if (line.rfind(expected, 0) == 0) {
            amps.push_back(std::strtod(line.c_str() + expected.size(), nullptr));
        }
    }
    if (amps.size() != circuit.diodes.size()) {
        std::ifstream again(said);
        std::ostringstream text;
        text << again.rdbuf();
        UNSCOPED_INFO(text.str());
        amps.clear();
    }
    std::error_code ignored;
    fs::remove_all(folder, ignored);
    return amps;
}

struct Case {
    std::string name;
    Card card;
};

std::vector<Case> five_cards() {
    std::vector<Case> cases;
    cases.push_back({"sample", make::sample_card()});
    cases.push_back({"twelve-white", make::row_card(12)});
    Card mixed = make::row_card(6);
    mixed.leds[1].type = "carrier-red";
    mixed.leds[4].type = "carrier-green";
    cases.push_back({"mixed", mixed});
    Card stacked = make::row_card(5, "carrier-green");
    stacked.cell.count = 2;
    stacked.leds[3].turn_deg = 90; // turned round: 6 V backwards
    cases.push_back({"stacked", stacked});
    // A resistor between the flap and the rest of the + trace, on fabric tape with its weaker joints.
    Card guarded = make::row_card(4, "carrier-red");
    guarded.laid[0] = make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {128, 45}}, "fabric-5");
    guarded.laid[2] = make::strip("S1", Side::positive, {{54, 80}, {60, 80}, {60, 35}, {62, 35}}, "fabric-5");
    guarded.laid.emplace_back(make::strip("S2", Side::positive, {{68, 35}, {128, 35}}, "fabric-5"));
    guarded.resistors.push_back(make::resistor("R1", 47, {65, 35}));
    cases.push_back({"guarded", guarded});
    return cases;
}

} // namespace

TEST_CASE("LED currents of five cards are those of ngspice", "[circuit][ngspice]") {
    if (!ngspice_installed()) {
        WARN("ngspice is not installed: the comparison with it was skipped");
        return;
    }
    const Parts parts = make::test_parts();
    double worst = 0.0;
    for (const auto& [name, card] : five_cards()) {
        INFO(name);
        const Circuit circuit =
            build_circuit(card, parts, find_conductors(card, parts), fresh_cell(card, parts));
        const Solution solution = solve_operating_point(circuit);
        REQUIRE(solution.ok());
        double most_A = 0.0;
        for (const double amps : solution.diode_A) {
            most_A = std::fmax(most_A, amps);
        }
        CHECK(most_A > 1e-3); // the card lights: a comparison of dark cards would prove nothing
        const std::vector<double> spice_A = ngspice_currents_A(circuit, name);
        REQUIRE(spice_A.size() == solution.diode_A.size());
        for (std::size_t i = 0; i < spice_A.size(); ++i) {
            // 0.1 % is asked for; 2e-5 is what its k and q leave. A dark LED is compared to a picoampere.
            CHECK(solution.diode_A[i] == Approx(spice_A[i]).epsilon(2e-5).margin(1e-12));
            if (spice_A[i] > 1e-9) {
                worst = std::fmax(worst, std::fabs(solution.diode_A[i] / spice_A[i] - 1.0));
            }
        }
    }
    CHECK(worst > 0.0);
    CHECK(worst < 1e-3);
}
