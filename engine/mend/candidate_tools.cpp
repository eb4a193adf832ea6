#include "mend/candidate_tools.h"

#include "base/at.h"
#include "base/tolerance.h"
#include "geometry/polygon.h"
#include "guide/phrases.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <tuple>

namespace lanternleaf {

namespace {

constexpr std::size_t kMostNearMisses = 6;

} // namespace

CandidateList::CandidateList(MendModel& made_for) : model(made_for) {
    model.real_contacts = static_cast<int>(model.conductors.contacts.size());
    add_links();
    model.circuit =
        build_circuit(model.card, model.parts, model.conductors, fresh_cell(model.card, model.parts));
    index_elements();
    find_stretches();
}

int CandidateList::sleeping(Piece a, Piece b, Vec2 at_mm, double along_a, double along_b) {
    Contact contact;
    contact.a = a;
    contact.b = b;
    contact.ohm = kSleeping_ohm;
    contact.at_mm = at_mm;
    contact.along_a_mm = along_a;
    contact.along_b_mm = along_b;
    model.conductors.contacts.push_back(contact);
    return static_cast<int>(model.conductors.contacts.size()) - 1;
}

// Each light with its nearest neighbour on the same two traces: the pair that a slip would chain.
void CandidateList::add_chains() {
    const Conductors& conductors = model.conductors;
    const std::size_t count = model.card.leds.size();
    std::vector<int> net(2 * count, -1);
    for (int c = 0; c < model.real_contacts; ++c) {
        const Contact& contact = conductors.contacts[at(c)];
        for (const auto& [pad, other] : {std::pair{contact.a, contact.b}, std::pair{contact.b, contact.a}}) {
            if (pad.kind == PieceKind::led_pad && other.kind == PieceKind::strip) {
                net[at(2 * pad.index + pad.pad)] = conductors.net_of_strip[at(other.index)];
            }
        }
    }
    const auto same_nets = [&](std::size_t i, std::size_t j) {
        return net[2 * i] >= 0 && net[2 * i + 1] >= 0 && net[2 * i] == net[2 * j] &&
               net[2 * i + 1] == net[2 * j + 1];
    };
    for (std::size_t i = 0; i < count; ++i) {
        std::size_t best = count;
        for (std::size_t j = 0; j < count; ++j) {
            if (i == j || !same_nets(i, j)) {
                continue;
            }
            const Vec2 here = model.card.leds[i].at_mm;
            best = best == count || distance(here, model.card.leds[j].at_mm) <
                                        distance(here, model.card.leds[best].at_mm)
                       ? j
                       : best;
        }
        const int first = static_cast<int>(std::min(i, best));
        const int second = static_cast<int>(std::max(i, best));
        const bool known = std::any_of(chains.begin(), chains.end(), [&](const ChainLink& link) {
            return link.first == first && link.second == second;
        });
        if (best < count && !known) {
            const Vec2 between = (model.card.leds[i].at_mm + model.card.leds[best].at_mm) * 0.5;
            chains.push_back({first, second,
                              sleeping({PieceKind::led_pad, first, 1}, {PieceKind::led_pad, second, 0},
                                       between, 0.0, 0.0)});
        }
    }
}

void CandidateList::add_links() {
    const Conductors& conductors = model.conductors;
    const auto between_strips = [&](int a, int b, Vec2 at_mm, double along_a, double along_b) {
        return sleeping({PieceKind::strip, a, 0}, {PieceKind::strip, b, 0}, at_mm, along_a, along_b);
    };
    for (const Overlap& overlap : conductors.overlaps) {
        if (overlap.conducts || overlap.patches.empty() ||
            conductors.net_of_strip[at(overlap.lower)] == conductors.net_of_strip[at(overlap.upper)]) {
            continue;
        }
        TouchPlace link;
        link.contact = between_strips(overlap.lower, overlap.upper, overlap.at_mm, overlap.along_lower_mm,
                                      overlap.along_upper_mm);
        link.crossing = true;
        link.at_mm = overlap.at_mm;
        const std::string lower = strip_of(model.card, conductors, overlap.lower).id;
        const std::string upper = strip_of(model.card, conductors, overlap.upper).id;
        link.parts = {lower, upper};
        for (const int patch : overlap.patches) {
            link.parts.push_back(id_of(model.card.laid[at(conductors.patches[at(patch)].laid_index)]));
        }
        link.name = model.words("mend.where_crosses", {{"upper", upper}, {"lower", lower}});
        links.push_back(std::move(link));
    }
    for (const NearMiss& miss : near_misses(conductors, kMostNearMisses)) {
        const std::string a = strip_of(model.card, conductors, miss.strip_a).id;
        const std::string b = strip_of(model.card, conductors, miss.strip_b).id;
        TouchPlace link;
        link.contact = between_strips(miss.strip_a, miss.strip_b, miss.at_mm,
                                      along(conductors.strips[at(miss.strip_a)].ribbon, miss.at_mm),
                                      along(conductors.strips[at(miss.strip_b)].ribbon, miss.at_mm));
        link.mm = miss.mm;
        link.at_mm = miss.at_mm;
        link.parts = {a, b};
        link.name = model.words("mend.where_close", {{"a", a}, {"b", b}});
        links.push_back(std::move(link));
    }
    for (int i = 0; i < static_cast<int>(model.card.leds.size()); ++i) {
        model.pad_link.push_back(sleeping({PieceKind::led_pad, i, 0}, {PieceKind::led_pad, i, 1},
                                          model.card.leds[at(i)].at_mm, 0.0, 0.0));
    }
    add_chains();
    terminal_link = sleeping({PieceKind::terminal, 0, 0}, {PieceKind::terminal, 0, 1}, {}, 0.0, 0.0);
}

// build_circuit adds the tape of each strip in turn, then the contacts, then the card's resistors.
void CandidateList::index_elements() {
    const Circuit& circuit = model.circuit;
    int tape_elements = 0;
    for (std::size_t n = 1; n < circuit.places.size(); ++n) {
        const NodePlace& here = circuit.places[n];
        tape_elements +=
            here.piece.kind == PieceKind::strip && circuit.places[n - 1].piece == here.piece ? 1 : 0;
    }
    first_part_element = tape_elements + static_cast<int>(model.conductors.contacts.size());
    assert(circuit.resistors.size() == at(first_part_element) + model.card.resistors.size());
    for (int c = 0; c < static_cast<int>(model.conductors.contacts.size()); ++c) {
        model.contact_element.push_back(tape_elements + c);
    }
    model.tape_under_pad.assign(2 * model.card.leds.size(), -1);
    model.tape_under_resistor.assign(2 * model.card.resistors.size(), -1);
    for (int c = 0; c < model.real_contacts; ++c) {
        const Contact& contact = model.conductors.contacts[at(c)];
        const ResistorElement& element = circuit.resistors[at(model.contact_element[at(c)])];
        const bool strip_first = circuit.places[at(element.a)].piece.kind == PieceKind::strip;
        const int tape = strip_first ? element.a : element.b;
        for (const Piece& piece : {contact.a, contact.b}) {
            if (piece.kind == PieceKind::led_pad) {
                model.tape_under_pad[at(2 * piece.index + piece.pad)] = tape;
            } else if (piece.kind == PieceKind::resistor_pad) {
                model.tape_under_resistor[at(2 * piece.index + piece.pad)] = tape;
            } else if (piece.kind == PieceKind::terminal) {
                model.tape_on_terminal[piece.pad] = tape;
            }
        }
    }
}

void CandidateList::find_stretches() {
    const Circuit& circuit = model.circuit;
    // Which nodes a real contact touches, its name there, and how far it reaches to either side of the node.
    std::vector<std::string> touched(at(circuit.node_count));
    std::vector<double> reach_mm(at(circuit.node_count), 0.0);
    for (int c = 0; c < model.real_contacts; ++c) {
        const Contact& contact = model.conductors.contacts[at(c)];
        const ResistorElement& element = circuit.resistors[at(model.contact_element[at(c)])];
        for (const auto& [node, far] : {std::pair{element.a, contact.b}, std::pair{element.b, contact.a}}) {
            if (circuit.places[at(node)].piece.kind != PieceKind::strip) {
                continue;
            }
            std::string name = shown(name_of(model.card, model.conductors, far));
            if (far.kind == PieceKind::terminal) {
                name = model.words("mend.end_holder");
            } else if (far.kind == PieceKind::strip) {
                name = model.words("mend.end_joint", {{"strip", name}});
            }
            touched[at(node)] = name;
            const Ribbon& on = model.conductors.strips[at(circuit.places[at(node)].piece.index)].ribbon;
            const double reach =
                far.kind == PieceKind::terminal ? 0.0 : contact.area_mm2 / (2.0 * on.width_mm);
            reach_mm[at(node)] = std::max(reach_mm[at(node)], reach);
        }
    }
    int element = 0;
    int from_node = -1;
    int from_element = 0;
    for (int node = 0; node < circuit.node_count; ++node) {
        const NodePlace& place = circuit.places[at(node)];
        if (place.piece.kind != PieceKind::strip) {
            continue;
        }
        const bool first = circuit.places[at(node - 1)].piece != place.piece;
        element += first ? 0 : 1;
        from_node = first ? -1 : from_node;
        if (touched[at(node)].empty()) {
            continue;
        }
        if (from_node >= 0) {
            const Ribbon& ribbon = model.conductors.strips[at(place.piece.index)].ribbon;
            const double start = circuit.places[at(from_node)].along_mm;
            // Where a pad or a lap lies on it, tape that tears is still held together.
            const double free_from = start + reach_mm[at(from_node)];
            const double free_to = place.along_mm - reach_mm[at(node)];
            Stretch stretch;
            stretch.strip = place.piece.index;
            stretch.element = from_element;
            stretch.mm = place.along_mm - start;
            stretch.from = touched[at(from_node)];
            stretch.to = touched[at(node)];
            stretch.free_mm = free_to - free_from;
            stretch.at_mm = point_at(ribbon, (free_from + free_to) / 2);
            for (const Vec2 fold : ribbon.folds_mm) {
                const double mm = along(ribbon, fold);
                if (mm > start && mm < place.along_mm) {
                    stretch.folds += 1.0;
                    stretch.at_mm = fold;
                }
            }
            for (const FoldLine& crease : model.card.sheet.folds) {
                for (const Run& run : ribbon.runs) {
                    Vec2 meets;
                    if (!segments_meet(run.from_mm, run.to_mm, crease.from_mm, crease.to_mm, &meets)) {
                        continue;
                    }
                    const double mm = along(ribbon, meets);
                    if (mm > start && mm < place.along_mm) {
                        stretch.creases += 1.0;
                        stretch.at_mm = meets;
                    }
                }
            }
            stretches.push_back(std::move(stretch));
        }
        from_node = node;
        from_element = element; // the one that leads on from here
    }
}

int CandidateList::add_place(std::string name, Vec2 at_mm, std::vector<std::string> parts) {
    model.places.push_back({std::move(name), at_mm, std::move(parts)});
    return static_cast<int>(model.places.size()) - 1;
}

Fault& CandidateList::add(FaultKind kind, int place) {
    Fault fault;
    fault.kind = kind;
    fault.place = place;
    fault.made_in = traits_of(kind).made_in;
    model.faults.push_back(std::move(fault));
    return model.faults.back();
}

std::vector<int> CandidateList::contacts_of(Piece piece) const {
    std::vector<int> found;
    for (int c = 0; c < model.real_contacts; ++c) {
        const Contact& contact = model.conductors.contacts[at(c)];
        if (contact.a == piece || contact.b == piece) {
            found.push_back(c);
        }
    }
    return found;
}

ElementEdit CandidateList::contact_edit(int contact, double ohm) const {
    const double own = model.conductors.contacts[at(contact)].ohm;
    const double value = ohm >= 0.0 ? ohm : std::max(own * kWeakTimes, kWeak_ohm);
    return {ElementEdit::What::ohm, model.contact_element[at(contact)], value, 0};
}

int CandidateList::law_of(const std::string& led_type) {
    const LedType& type = model.parts.leds.at(led_type);
    DiodeElement law;
    law.saturation_A = type.saturation_A;
    law.ideality = type.ideality;
    law.series_ohm = type.series_ohm;
    model.other_laws.push_back(law);
    return static_cast<int>(model.other_laws.size()) - 1;
}

bool CandidateList::has_swap(int a, int b) const {
    return std::any_of(model.faults.begin(), model.faults.end(), [&](const Fault& fault) {
        return fault.kind == FaultKind::led_swapped && fault.led == a && fault.led_b == b;
    });
}

StepId CandidateList::laid_in(int strip) const {
    const Strip& laid = strip_of(model.card, model.conductors, strip);
    return laid.side == Side::negative ? StepId::lay_negative : StepId::lay_positive;
}

void CandidateList::finish(const MendOptions& options) {
    std::array<double, kFaultKinds> shares{};
    for (const Fault& fault : model.faults) {
        shares[at(static_cast<int>(fault.kind))] += fault.share;
    }
    const bool lights_proved =
        std::find(options.proved.begin(), options.proved.end(), StepId::place_leds) != options.proved.end();
    double sum = 0.0;
    std::map<std::tuple<FaultKind, int, std::string>, int> causes;
    for (Fault& fault : model.faults) {
        const FaultTraits& traits = traits_of(fault.kind);
        const std::size_t kind = at(static_cast<int>(fault.kind));
        fault.prior = traits.prior_percent * options.weights[kind] * fault.share / shares[kind];
        // All the lights as predicted proves whatever they hang on, not only what step 6 puts there.
        const bool proved =
            std::find(options.proved.begin(), options.proved.end(), fault.made_in) != options.proved.end() ||
            (lights_proved && fault.made_in < StepId::place_leds);
        fault.prior *= proved ? traits.stays : 1.0;
        sum += fault.prior;
        const auto key = std::tuple{fault.kind, fault.place, fault.text};
        fault.cause = causes.try_emplace(key, static_cast<int>(causes.size())).first->second;
    }
    model.cause_count = static_cast<int>(causes.size());
    for (Fault& fault : model.faults) {
        fault.prior /= sum > 0.0 ? sum : 1.0;
    }
}

} // namespace lanternleaf
