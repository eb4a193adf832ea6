// Asks ngspice, the outside judge, for the LED currents of a circuit. Exists so that several test programs
// put the same question.
#pragma once

#include "support/spice_deck.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <unistd.h>
#include <vector>

namespace lanternleaf::make {

[[nodiscard]] inline bool ngspice_installed() {
    return std::system("command -v ngspice > /dev/null 2>&1") == 0;
}

/// Amperes, one per diode; empty when ngspice did not answer as expected.
[[nodiscard]] inline std::vector<double> ngspice_diodes_A(const Circuit& circuit, const std::string& name) {
    namespace fs = std::filesystem;
    const std::string unique = "lanternleaf-" + name + "-" + std::to_string(::getpid());
    const fs::path deck = fs::temp_directory_path() / (unique + ".cir");
    const fs::path said = fs::temp_directory_path() / (unique + ".txt");
    {
        std::ofstream out(deck);
        std::vector<std::string> lines = spice_deck(circuit);
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
    std::error_code ignored;
    fs::remove(deck, ignored);
    fs::remove(said, ignored);
    return amps.size() == circuit.diodes.size() ? amps : std::vector<double>{};
}

} // namespace lanternleaf::make
