// A Circuit as a netlist for ngspice, the outside judge of the solver. ngspice keeps its own, older k and q,
// so agreement ends near 4e-6.
#pragma once

#include "circuit/circuit.h"

#include <cstdio>
#include <string>
#include <vector>

namespace lanternleaf::make {

/// The lines of a netlist, title first and ".end" last; LED i is "d<i>", node n is "n<n>", the reference "0".
inline std::vector<std::string> spice_deck(const Circuit& circuit) {
    std::vector<std::string> lines = {"a card"};
    const auto node = [](int n) { return n == 0 ? std::string("0") : "n" + std::to_string(n); };
    const auto number = [](double value) {
        char text[32];
        std::snprintf(text, sizeof text, "%.17g", value);
        return std::string(text);
    };
    for (std::size_t i = 0; i < circuit.resistors.size(); ++i) {
        const ResistorElement& r = circuit.resistors[i];
        lines.push_back("r" + std::to_string(i) + " " + node(r.a) + " " + node(r.b) + " " + number(r.ohm));
    }
    for (std::size_t i = 0; i < circuit.cells.size(); ++i) {
        const CellElement& c = circuit.cells[i];
        const std::string name = std::to_string(i);
        lines.push_back("v" + name + " inside" + name + " " + node(c.minus) + " " + number(c.open_V));
        lines.push_back("rcell" + name + " inside" + name + " " + node(c.plus) + " " + number(c.ohm));
    }
    for (std::size_t i = 0; i < circuit.diodes.size(); ++i) {
        const DiodeElement& d = circuit.diodes[i];
        const std::string name = std::to_string(i);
        lines.push_back("d" + name + " " + node(d.anode) + " " + node(d.cathode) + " m" + name);
        lines.push_back(".model m" + name + " d(is=" + number(d.saturation_A) + " n=" + number(d.ideality) +
                        " rs=" + number(d.series_ohm) + ")");
    }
    lines.push_back(".options temp=25 tnom=25 reltol=1e-6 abstol=1e-15 vntol=1e-9 gmin=1e-15");
    lines.push_back(".end");
    return lines;
}

} // namespace lanternleaf::make
