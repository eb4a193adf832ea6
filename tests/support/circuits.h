// Circuits made by hand for tests of the solver, with the LED figures that the exact cases are stated for.
// Exists so that a solver test needs no card.
#pragma once

#include "circuit/circuit.h"

#include <string>
#include <vector>

namespace lanternleaf::make {

/// Shockley figures fitted to data-sheet curves: red Avago HLMP-EG, yellow-green OSRAM LG R971, blue (and
/// green) Avago ASMT-YTD7, white OSRAM LW TWTG.
inline DiodeElement red(int anode, int cathode) {
    return {anode, cathode, 1.33e-18, 2.0465, 5.036, -1};
}

inline DiodeElement yellow_green(int anode, int cathode) {
    return {anode, cathode, 4.4495e-25, 1.4592, 12.435, -1};
}

inline DiodeElement blue(int anode, int cathode) {
    return {anode, cathode, 2.4829e-18, 3.1389, 12.365, -1};
}

inline DiodeElement white(int anode, int cathode) {
    return {anode, cathode, 7.0312e-17, 3.3929, 7.258, -1};
}

/// A circuit with `nodes` nodes and one cell from node 0 (minus) to node 1 (plus).
inline Circuit with_cell(int nodes, double open_V, double ohm) {
    Circuit circuit;
    circuit.node_count = nodes;
    circuit.cells.push_back({1, 0, open_V, ohm});
    circuit.node_of_terminal[0] = 0;
    circuit.node_of_terminal[1] = 1;
    return circuit;
}

/// `count` LEDs across two rails with `rail_ohm` in each rail between neighbours, the first behind a contact
/// of 0.3 ohm: 2 count + 1 nodes. Nodes 1 .. count are the + rail, count+1 .. 2 count the - rail.
inline Circuit ladder(int count, DiodeElement (*led)(int, int), double open_V = 3.0, double ohm = 15.0,
                      double rail_ohm = 0.05) {
    Circuit circuit = with_cell(2 * count + 1, open_V, ohm);
    circuit.resistors.push_back({0, count + 1, 0.3});
    for (int i = 1; i <= count; ++i) {
        if (i > 1) {
            circuit.resistors.push_back({i - 1, i, rail_ohm});
            circuit.resistors.push_back({count + i - 1, count + i, rail_ohm});
        }
        circuit.diodes.push_back(led(i, count + i));
        circuit.diodes.back().led = i - 1;
    }
    return circuit;
}

} // namespace lanternleaf::make
