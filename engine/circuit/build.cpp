// Conductors -> circuit. A strip becomes a chain of nodes, one for each place along it where something
// touches, with the tape's resistance between neighbours; a pad or a holder contact is one node.
#include "base/at.h"
#include "base/tolerance.h"
#include "circuit/circuit.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace lanternleaf {

namespace {

/// The nodes of one strip: first_node, first_node + 1, ... at rising places.
struct StripNodes {
    int first_node = 0;
    std::vector<double> along_mm;
};

/// The different places of a list, rising; places closer than kSamePlace_mm to the one before are that one.
std::vector<double> different_places(std::vector<double> places_mm) {
    std::sort(places_mm.begin(), places_mm.end());
    std::vector<double> kept;
    for (const double place : places_mm) {
        if (kept.empty() || place - kept.back() > tolerance::kSamePlace_mm) {
            kept.push_back(place);
        }
    }
    if (kept.empty()) {
        kept.push_back(0.0); // a strip that nothing touches still has a voltage
    }
    return kept;
}

int node_at(const StripNodes& strip, double along_mm) {
    // The last kept place not beyond this one: different_places took this one in or put it there.
    const auto after = std::upper_bound(strip.along_mm.begin(), strip.along_mm.end(), along_mm);
    const auto index = std::max<std::ptrdiff_t>(after - strip.along_mm.begin() - 1, 0);
    return strip.first_node + static_cast<int>(index);
}

class Builder {
public:
    Builder(const Card& card, const Parts& parts, const Conductors& conductors)
        : card_(card), parts_(parts), conductors_(conductors) {}

    Circuit build(const CellState& cell, const CircuitOptions& options) {
        add_terminals();
        add_strips();
        add_pads();
        add_contacts(options.joint_factor);
        for (std::size_t i = 0; i < card_.resistors.size(); ++i) {
            add_resistor(circuit_.node_of_resistor_pad[2 * i], circuit_.node_of_resistor_pad[2 * i + 1],
                         card_.resistors[i].ohm);
        }
        if (options.with_leds) {
            add_leds();
        }
        if (options.with_cell && card_.cell.count > 0) {
            CellElement element;
            element.plus = circuit_.node_of_terminal[terminal_of(card_, CellFace::positive)];
            element.minus = circuit_.node_of_terminal[terminal_of(card_, CellFace::negative)];
            element.open_V = cell.open_V;
            element.ohm = std::fmax(cell.ohm, tolerance::kLeastResistance_ohm);
            circuit_.cells.push_back(element);
        }
        return std::move(circuit_);
    }

private:
    int add_node(Piece piece, double along_mm = 0.0) {
        circuit_.places.push_back({piece, along_mm});
        return circuit_.node_count++;
    }

    void add_resistor(int a, int b, double ohm) {
        if (a != b) {
            circuit_.resistors.push_back({a, b, std::fmax(ohm, tolerance::kLeastResistance_ohm)});
        }
    }

    // The reference, node 0, is the contact that carries the cell's - face: voltages read as a meter with its
    // black lead there would show them.
    void add_terminals() {
        for (const CellFace face : {CellFace::negative, CellFace::positive}) {
            const int terminal = terminal_of(card_, face);
            circuit_.node_of_terminal[terminal] = add_node({PieceKind::terminal, 0, terminal});
        }
    }

    void add_strips() {
        std::vector<std::vector<double>> touched_mm(conductors_.strips.size());
        for (const Contact& contact : conductors_.contacts) {
            if (contact.a.kind == PieceKind::strip) {
                touched_mm[at(contact.a.index)].push_back(contact.along_a_mm);
            }
            if (contact.b.kind == PieceKind::strip) {
                touched_mm[at(contact.b.index)].push_back(contact.along_b_mm);
            }
        }
        strips_.resize(conductors_.strips.size());
        for (std::size_t s = 0; s < strips_.size(); ++s) {
            StripNodes& strip = strips_[s];
            strip.first_node = circuit_.node_count;
            strip.along_mm = different_places(std::move(touched_mm[s]));
            for (const double place : strip.along_mm) {
                add_node({PieceKind::strip, static_cast<int>(s), 0}, place);
            }
            const Strip& laid = strip_of(card_, conductors_, static_cast<int>(s));
            const auto tape = parts_.tapes.find(laid.tape);
            assert(tape != parts_.tapes.end() && tape->second.width_mm > 0.0);
            const double ohm_per_mm =
                tape == parts_.tapes.end() ? 0.0 : tape->second.ohm_per_square / tape->second.width_mm;
            for (std::size_t i = 1; i < strip.along_mm.size(); ++i) {
                const int node = strip.first_node + static_cast<int>(i);
                add_resistor(node - 1, node, ohm_per_mm * (strip.along_mm[i] - strip.along_mm[i - 1]));
            }
        }
    }

    void add_pads() {
        for (int i = 0; i < static_cast<int>(2 * card_.leds.size()); ++i) {
            circuit_.node_of_led_pad.push_back(add_node({PieceKind::led_pad, i / 2, i % 2}));
        }
        for (int i = 0; i < static_cast<int>(2 * card_.resistors.size()); ++i) {
            circuit_.node_of_resistor_pad.push_back(add_node({PieceKind::resistor_pad, i / 2, i % 2}));
        }
    }

    [[nodiscard]] int node_of(Piece piece, double along_mm) const {
        switch (piece.kind) {
        case PieceKind::strip:
            return node_at(strips_[at(piece.index)], along_mm);
        case PieceKind::led_pad:
            return circuit_.node_of_led_pad[at(2 * piece.index + piece.pad)];
        case PieceKind::resistor_pad:
            return circuit_.node_of_resistor_pad[at(2 * piece.index + piece.pad)];
        case PieceKind::terminal:
            break;
        }
        return circuit_.node_of_terminal[piece.pad];
    }

    void add_contacts(double joint_factor) {
        for (const Contact& contact : conductors_.contacts) {
            add_resistor(node_of(contact.a, contact.along_a_mm), node_of(contact.b, contact.along_b_mm),
                         contact.ohm * joint_factor);
        }
    }

    void add_leds() {
        for (std::size_t i = 0; i < card_.leds.size(); ++i) {
            const auto found = parts_.leds.find(card_.leds[i].type);
            assert(found != parts_.leds.end());
            if (found == parts_.leds.end()) {
                continue;
            }
            DiodeElement diode;
            diode.cathode = circuit_.node_of_led_pad[2 * i];
            diode.anode = circuit_.node_of_led_pad[2 * i + 1];
            diode.saturation_A = found->second.saturation_A;
            diode.ideality = found->second.ideality;
            diode.series_ohm = found->second.series_ohm;
            diode.led = static_cast<int>(i);
            circuit_.diodes.push_back(diode);
        }
    }

    const Card& card_;
    const Parts& parts_;
    const Conductors& conductors_;
    Circuit circuit_;
    std::vector<StripNodes> strips_;
};

const CellType* cell_type(const Card& card, const Parts& parts) {
    const auto found = parts.cells.find(card.cell.type);
    assert(found != parts.cells.end());
    return found == parts.cells.end() ? nullptr : &found->second;
}

} // namespace

CellState fresh_cell(const Card& card, const Parts& parts) {
    const CellType* const type = cell_type(card, parts);
    if (type == nullptr) {
        return {};
    }
    return {card.cell.count * type->open_V, card.cell.count * type->series_ohm};
}

CellState steady_cell(const Card& card, const Parts& parts) {
    const CellType* const type = cell_type(card, parts);
    if (type == nullptr) {
        return {};
    }
    const double ohm = type->steady_ohm > 0.0 ? type->steady_ohm : type->series_ohm;
    return {card.cell.count * type->open_V, card.cell.count * ohm};
}

Circuit build_circuit(const Card& card, const Parts& parts, const Conductors& conductors,
                      const CellState& cell, const CircuitOptions& options) {
    return Builder(card, parts, conductors).build(cell, options);
}

} // namespace lanternleaf
