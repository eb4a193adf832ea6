// Resistance between two places of a circuit: one ampere through the resistors that can carry it.
#include "base/tolerance.h"
#include "circuit/solve.h"
#include "numeric/conductance_network.h"

#include <cassert>
#include <cmath>
#include <limits>

namespace lanternleaf {

namespace {

/// Follows `parent` to its root, shortening the way for the next one.
int root_of(std::vector<int>& parent, int node) {
    while (parent[static_cast<std::size_t>(node)] != node) {
        int& up = parent[static_cast<std::size_t>(node)];
        up = parent[static_cast<std::size_t>(up)];
        node = up;
    }
    return node;
}

} // namespace

double resistance_between(const Circuit& circuit, int from, int to) {
    assert(from >= 0 && from < circuit.node_count && to >= 0 && to < circuit.node_count);
    if (from == to) {
        return 0.0;
    }
    const auto count = static_cast<std::size_t>(circuit.node_count);
    std::vector<int> parent(count);
    for (std::size_t i = 0; i < count; ++i) {
        parent[i] = static_cast<int>(i);
    }
    const auto carries = [](const ResistorElement& r) { return std::isfinite(r.ohm); };
    for (const ResistorElement& r : circuit.resistors) {
        if (carries(r)) {
            parent[static_cast<std::size_t>(root_of(parent, r.a))] = root_of(parent, r.b);
        }
    }
    const int part = root_of(parent, from);
    if (root_of(parent, to) != part) {
        return std::numeric_limits<double>::infinity();
    }

    // Only the part that joins the two; `to` is ground.
    std::vector<int> place(count, kGround);
    int places = 0;
    for (std::size_t i = 0; i < count; ++i) {
        if (static_cast<int>(i) != to && root_of(parent, static_cast<int>(i)) == part) {
            place[i] = places++;
        }
    }
    std::vector<NodeLink> links;
    std::vector<double> siemens;
    for (const ResistorElement& r : circuit.resistors) {
        if (carries(r) && root_of(parent, r.a) == part) {
            links.push_back({place[static_cast<std::size_t>(r.a)], place[static_cast<std::size_t>(r.b)]});
            siemens.push_back(1.0 / std::fmax(r.ohm, tolerance::kLeastResistance_ohm));
        }
    }
    ConductanceNetwork network(places, links, static_cast<int>(links.size()));
    std::vector<double> amps(static_cast<std::size_t>(places), 0.0);
    amps[static_cast<std::size_t>(place[static_cast<std::size_t>(from)])] = 1.0;
    network.set_fixed(siemens, amps);
    const bool sound = network.solve({}, {}, {});
    assert(sound);
    (void)sound;
    network.node_voltages(amps);
    return amps[static_cast<std::size_t>(place[static_cast<std::size_t>(from)])];
}

} // namespace lanternleaf
