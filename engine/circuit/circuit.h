// Circuit: the card as nodes and elements, ready to be solved. Plain structs; four kinds of element.
// Exists so that the solver knows nothing of paper and the card knows nothing of equations.
#pragma once

#include "conductors/conductors.h"

#include <limits>
#include <string>
#include <vector>

namespace lanternleaf {

/// An ohmic path: tape, joint, contact or a real resistor.
struct ResistorElement {
    int a = 0;
    int b = 0;
    double ohm = 0.0;
};

/// An LED from anode to cathode: I = saturation_A (exp((V - I series_ohm)/(ideality Vt)) - 1).
struct DiodeElement {
    int anode = 0;
    int cathode = 0;
    double saturation_A = 0.0;
    double ideality = 1.0;
    double series_ohm = 0.0;
    int led = -1; ///< index into Card::leds
};

/// The cell (or stack): open_V behind ohm, from minus to plus.
struct CellElement {
    int plus = 0;
    int minus = 0;
    double open_V = 0.0;
    double ohm = 0.0;
};

/// Where a node sits on the card, so that a reading can be asked for "at L3+".
struct NodePlace {
    Piece piece;
    double along_mm = 0.0; ///< arc length on a strip
};

struct Circuit {
    int node_count = 0; ///< nodes are 0 .. node_count-1; node 0 is the reference
    std::vector<ResistorElement> resistors;
    std::vector<DiodeElement> diodes;
    std::vector<CellElement> cells;
    std::vector<NodePlace> places;    ///< one per node
    std::vector<int> node_of_led_pad; ///< [2*i], [2*i+1]
    std::vector<int> node_of_resistor_pad;
    int node_of_terminal[2] = {0, 0};
};

/// Which cell state to solve for. Defaults: fresh, pressed for seconds.
struct CellState {
    double open_V = 0.0;
    double ohm = 0.0;
};

/// A fresh cell of the card's type, times count: seconds after the press...
[[nodiscard]] CellState fresh_cell(const Card& card, const Parts& parts);
/// ...and after being left on (steady resistance, where the part gives one).
[[nodiscard]] CellState steady_cell(const Card& card, const Parts& parts);

struct CircuitOptions {
    bool with_leds = true;
    bool with_cell = true;
    /// Joint, pad and contact resistances are multiplied by this (a hand's joints are better or worse than
    /// the figure in the parts file; see guide/ for the range that readings are judged by).
    double joint_factor = 1.0;
};

/// Nets, strip lengths and contacts -> circuit. Every piece gets at least one node.
[[nodiscard]] Circuit build_circuit(const Card& card, const Parts& parts, const Conductors& conductors,
                                    const CellState& cell, const CircuitOptions& options = {});

} // namespace lanternleaf
