// The resistance table against a full solve of the changed network (conductance_network, tested against
// closed forms elsewhere).
#include "mend/model.h"
#include "support/lamp_rows.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("Changed elements and closed links read as a full solve reads them", "[mend]") {
    std::mt19937 random(4);
    const Card card = make::random_rows(6, random);
    const auto model = make_mend_model(card, make::test_parts(), {});
    Circuit circuit = model->circuit;
    circuit.diodes.clear();
    circuit.cells.clear();
    const auto full = [&](int a, int b, const std::vector<ElementEdit>& edits) {
        Circuit changed = circuit;
        for (std::size_t c = static_cast<std::size_t>(model->real_contacts);
             c < model->contact_element.size(); ++c) {
            changed.resistors[static_cast<std::size_t>(model->contact_element[c])].ohm = 1e15;
        }
        for (ResistorElement& r : changed.resistors) {
            for (const int terminal : changed.node_of_terminal) {
                r.ohm = r.a == terminal || r.b == terminal ? 1e15 : r.ohm;
            }
        }
        for (const ElementEdit& edit : edits) {
            ResistorElement& r = changed.resistors[static_cast<std::size_t>(edit.index)];
            r.ohm = edit.value >= kOpen_ohm ? 1e15 : edit.value;
        }
        return resistance_between(changed, a, b);
    };
    std::vector<int> nodes;
    for (const int node : model->tape_under_pad) {
        nodes.push_back(node);
    }
    nodes.push_back(model->tape_on_terminal[0]);
    nodes.push_back(model->tape_on_terminal[1]);
    int compared = 0;
    for (const Fault& fault : model->faults) {
        const bool at_terminal = fault.kind == FaultKind::contact_loose ||
                                 fault.kind == FaultKind::liner_left || fault.kind == FaultKind::paper_leaks;
        const bool ohmic = !fault.edits.empty() && fault.edits.front().what == ElementEdit::What::ohm;
        if (at_terminal || !ohmic) {
            continue;
        }
        std::vector<ChangedOhm> changed;
        for (const ElementEdit& edit : fault.edits) {
            changed.push_back({edit.index, edit.value});
        }
        for (std::size_t i = 0; i < nodes.size(); i += 2) {
            for (std::size_t j = i + 1; j < nodes.size(); j += 3) {
                const double table = model->ohms.between(nodes[i], nodes[j], changed);
                const double solved = full(nodes[i], nodes[j], fault.edits);
                CAPTURE(name_of(fault.kind), nodes[i], nodes[j], table, solved);
                if (solved > kNoPath_ohm) {
                    CHECK(table > kNoPath_ohm);
                } else {
                    CHECK(table == Approx(solved).epsilon(1e-3).margin(1e-4));
                }
                ++compared;
            }
        }
    }
    CHECK(compared > 500);
}

TEST_CASE("Classes of readings", "[mend]") {
    CHECK(class_of_ohm(0.3, 0.2) == OhmClass::fine);
    CHECK(class_of_ohm(8.0, 0.2) == OhmClass::high);
    CHECK(class_of_ohm(1e9, 0.2) == OhmClass::none);
    CHECK(class_of_volts(2.8, 2.9) == VoltClass::fine);
    CHECK(class_of_volts(1.9, 2.9) == VoltClass::low);
    CHECK(class_of_volts(0.0, 2.9) == VoltClass::none);
    CHECK(class_of_volts(-2.9, 2.9) == VoltClass::reversed);
}
