#include "guide/predict.h"

#include "base/tolerance.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kGoodJoints = 0.4;
constexpr double kPoorJoints = 4.0;
// Tape spreads as far down as joints do, and half as far up: all of the path scales by the tape's factor, and
// the joints once more by the rest.
constexpr double kPoorTape = 2.0;
constexpr double kLeads_ohm = 0.3;
constexpr double kHalfDigit_ohm = 0.05;

Circuit tape_only(const GuideFacts& facts, const Stage& stage, double joint_factor) {
    CircuitOptions options;
    options.with_leds = false;
    options.with_cell = false;
    options.joint_factor = joint_factor;
    Circuit circuit = build_circuit(stage.card, facts.parts, stage.conductors,
                                    fresh_cell(stage.card, facts.parts), options);
    // The probe stands on the tape: two strips on one contact are not joined until the cell lies on them.
    std::erase_if(circuit.resistors, [&](const ResistorElement& element) {
        for (const int terminal : circuit.node_of_terminal) {
            if (element.a == terminal || element.b == terminal) {
                return true;
            }
        }
        return false;
    });
    return circuit;
}

double tape_ohm(const Card& card, const Parts& parts, const Conductors& conductors, int strip, double mm) {
    const auto found = parts.tapes.find(strip_of(card, conductors, strip).tape);
    if (found == parts.tapes.end() || found->second.width_mm <= 0.0) {
        return 0.0;
    }
    return found->second.ohm_per_square * mm / found->second.width_mm;
}

int add_node(Circuit& circuit, Piece piece, double along_mm) {
    circuit.places.push_back({piece, along_mm});
    return circuit.node_count++;
}

} // namespace

int node_on_strip(Circuit& circuit, const Card& card, const Parts& parts, const Conductors& conductors,
                  int strip, double along_mm) {
    const Piece piece{PieceKind::strip, strip, 0};
    int before = -1;
    int after = -1;
    for (int node = 0; node < circuit.node_count; ++node) {
        const NodePlace& place = circuit.places[static_cast<std::size_t>(node)];
        if (!(place.piece == piece)) {
            continue;
        }
        if (std::abs(place.along_mm - along_mm) <= tolerance::kSamePlace_mm) {
            return node;
        }
        int& side = place.along_mm < along_mm ? before : after;
        const bool nearer =
            side < 0 || std::abs(place.along_mm - along_mm) <
                            std::abs(circuit.places[static_cast<std::size_t>(side)].along_mm - along_mm);
        if (nearer) {
            side = node;
        }
    }
    const int made = add_node(circuit, piece, along_mm);
    const auto link = [&](int node) {
        const double mm = std::abs(circuit.places[static_cast<std::size_t>(node)].along_mm - along_mm);
        circuit.resistors.push_back(
            {node, made,
             std::max(tape_ohm(card, parts, conductors, strip, mm), tolerance::kLeastResistance_ohm)});
    };
    if (before >= 0 && after >= 0) {
        // Of several elements between the two (a lap that touches twice), the tape is the least one.
        auto tape = circuit.resistors.end();
        for (auto it = circuit.resistors.begin(); it != circuit.resistors.end(); ++it) {
            const bool joins = (it->a == before && it->b == after) || (it->a == after && it->b == before);
            if (joins && (tape == circuit.resistors.end() || it->ohm < tape->ohm)) {
                tape = it;
            }
        }
        if (tape != circuit.resistors.end()) {
            circuit.resistors.erase(tape);
        }
    }
    if (before >= 0) {
        link(before);
    }
    if (after >= 0) {
        link(after);
    }
    return made;
}

Predictor::Predictor(const GuideFacts& facts, const Stage& stage)
    : facts_(facts), stage_(stage), circuits_{tape_only(facts, stage, 1.0),
                                              tape_only(facts, stage, kPoorJoints / kPoorTape)} {}

std::optional<Predictor::Place> Predictor::under(const PadRef& pad) const {
    if (net_under(facts_, stage_, pad) < 0) {
        return std::nullopt;
    }
    const std::string& id = id_of(facts_.card.laid[static_cast<std::size_t>(pad.strip)]);
    return Place{strip_index(stage_.card, stage_.conductors, id), pad.along_mm};
}

std::optional<OhmRange> Predictor::feed_to_pad(const PadRef& pad) const {
    const std::optional<Place> to = under(pad);
    const int feed = feed_of(facts_, stage_, pad);
    if (!to || feed == kNotFed) {
        return std::nullopt;
    }
    if (feed >= 0) {
        return pad_to_pad(facts_.pads[static_cast<std::size_t>(feed)], pad);
    }
    const Piece terminal{PieceKind::terminal, 0, contact_of(facts_, pad.want)};
    std::vector<Place> from;
    for (const Contact& contact : stage_.conductors.contacts) {
        if (contact.a == terminal && contact.b.kind == PieceKind::strip) {
            from.push_back({contact.b.index, contact.along_b_mm});
        } else if (contact.b == terminal && contact.a.kind == PieceKind::strip) {
            from.push_back({contact.a.index, contact.along_a_mm});
        }
    }
    return between(from, *to);
}

std::optional<OhmRange> Predictor::pad_to_pad(const PadRef& from, const PadRef& to) const {
    const std::optional<Place> a = under(from);
    const std::optional<Place> b = under(to);
    if (!a || !b) {
        return std::nullopt;
    }
    return between({*a}, *b);
}

std::optional<OhmRange> Predictor::between(const std::vector<Place>& from, Place to) const {
    const int net = stage_.conductors.net_of_strip[static_cast<std::size_t>(to.strip)];
    double ohm[2] = {1e300, 1e300};
    for (const Place& start : from) {
        if (stage_.conductors.net_of_strip[static_cast<std::size_t>(start.strip)] != net) {
            continue;
        }
        for (int i = 0; i < 2; ++i) {
            Circuit circuit = circuits_[i];
            const auto node = [&](Place place) {
                return node_on_strip(circuit, stage_.card, facts_.parts, stage_.conductors, place.strip,
                                     place.along_mm);
            };
            const int a = node(start);
            const int b = node(to);
            ohm[i] = std::min(ohm[i], a == b ? 0.0 : resistance_between(circuit, a, b));
        }
    }
    if (!(ohm[0] < 1e299)) {
        return std::nullopt;
    }
    OhmRange range;
    range.expected = ohm[0];
    // The 1e-9 keeps 0.3 from being taken for a hair more than 0.3.
    range.low = std::max(0.0, std::floor((kGoodJoints * ohm[0] - kHalfDigit_ohm) * 10.0 + 1e-9) / 10.0);
    range.high = std::ceil((kPoorTape * ohm[1] + kLeads_ohm) * 10.0 - 1e-9) / 10.0;
    return range;
}

} // namespace lanternleaf
