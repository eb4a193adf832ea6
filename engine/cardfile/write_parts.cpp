#include "cardfile/write_parts.h"

#include "cardfile/cardfile.h"
#include "cardfile/json_text.h"

namespace lanternleaf::cardfile {

namespace {

Tree tree_of(const std::vector<PadShape>& pads) {
    Tree list = Tree::array();
    for (const PadShape& pad : pads) {
        Tree made = {
            {"name", pad.name}, {"at_mm", pair_tree(pad.at_mm)}, {"size_mm", pair_tree(pad.size_mm)}};
        append_extras(made, pad.extras);
        list.push_back(std::move(made));
    }
    return list;
}

Tree tree_of(const Package& package, bool is_resistor = false) {
    Tree made = Tree::object();
    if (package.body_mm != Vec2{}) {
        made["body_mm"] = pair_tree(package.body_mm);
    }
    made["pads"] = tree_of(package.pads);
    if (package.pad_ohm_mm2 != 0.0 || !is_resistor) {
        made["pad_ohm_mm2"] = package.pad_ohm_mm2; // only a resistor's package may leave it out
    }
    append_extras(made, package.extras);
    return made;
}

Tree tree_of(const std::vector<std::pair<double, double>>& table) {
    Tree mcd = Tree::array();
    for (const auto& [mA, millicandela] : table) {
        mcd.push_back(Tree::array({mA, millicandela}));
    }
    return mcd;
}

Tree tree_of(const ForwardSpread& forward) {
    Tree made = {{"at_mA", forward.at_mA},
                 {"least_V", forward.least_V},
                 {"typical_V", forward.typical_V},
                 {"most_V", forward.most_V}};
    append_extras(made, forward.extras);
    return made;
}

Tree tree_of(const LedPhase& phase) {
    Tree made = {{"colour", phase.colour},           {"saturation_A", phase.saturation_A},
                 {"ideality", phase.ideality},       {"series_ohm", phase.series_ohm},
                 {"dominant_nm", phase.dominant_nm}, {"mcd", tree_of(phase.mcd)}};
    append_extras(made, phase.extras);
    return made;
}

void append_moment(Tree& object, const std::string& measured_at) {
    if (!measured_at.empty()) {
        object["measured_at"] = measured_at;
    }
}

Tree tree_of(const LedType& led) {
    Tree made = {{"package", led.package},
                 {"colour", led.colour},
                 {"saturation_A", led.saturation_A},
                 {"ideality", led.ideality},
                 {"series_ohm", led.series_ohm},
                 {"max_mA", led.max_mA},
                 {"max_reverse_V", led.max_reverse_V},
                 {"dominant_nm", led.dominant_nm},
                 {"mcd", tree_of(led.mcd)}};
    if (led.forward) {
        made["forward"] = tree_of(*led.forward);
    }
    if (led.forward_mV_per_K != 0.0) {
        made["forward_mV_per_K"] = led.forward_mV_per_K;
    }
    if (!led.phases.empty()) {
        Tree phases = Tree::array();
        for (const LedPhase& phase : led.phases) {
            phases.push_back(tree_of(phase));
        }
        made["phases"] = std::move(phases);
    }
    if (led.driver_least_V != 0.0) {
        made["driver_least_V"] = led.driver_least_V;
    }
    if (led.mark) {
        Tree mark = {{"means", led.mark->negative ? "negative" : "positive"}, {"looks", led.mark->looks}};
        append_extras(mark, led.mark->extras);
        made["mark"] = std::move(mark);
    }
    append_moment(made, led.measured_at);
    made["source"] = led.source;
    append_extras(made, led.extras);
    return made;
}

Tree tree_of(const CellType& cell) {
    Tree made = {{"diameter_mm", cell.diameter_mm},
                 {"height_mm", cell.height_mm},
                 {"open_V", cell.open_V},
                 {"series_ohm", cell.series_ohm},
                 {"capacity_mAh", cell.capacity_mAh},
                 {"max_continuous_mA", cell.max_continuous_mA}};
    if (cell.max_pulse_mA != 0.0) {
        made["max_pulse_mA"] = cell.max_pulse_mA;
    }
    if (cell.steady_ohm != 0.0) {
        made["steady_ohm"] = cell.steady_ohm;
    }
    if (!cell.curve.empty()) {
        made["curve"] = cell.curve;
    }
    made["source"] = cell.source;
    append_extras(made, cell.extras);
    return made;
}

Tree tree_of(const TapeType& tape) {
    Tree made = {{"width_mm", tape.width_mm},
                 {"ohm_per_square", tape.ohm_per_square},
                 {"adhesive", tape.adhesive == Adhesive::conductive ? "conductive" : "non-conductive"},
                 {"joint_ohm_mm2", tape.joint_ohm_mm2}};
    append_moment(made, tape.measured_at);
    made["source"] = tape.source;
    append_extras(made, tape.extras);
    return made;
}

Tree tree_of(const FoamType& foam) {
    Tree made = {{"thickness_mm", foam.thickness_mm}};
    if (foam.squeezed_mm != 0.0) {
        made["squeezed_mm"] = foam.squeezed_mm;
    }
    append_moment(made, foam.measured_at);
    made["source"] = foam.source;
    append_extras(made, foam.extras);
    return made;
}

Tree tree_of(const HolderType& holder) {
    const bool flap = holder.kind == HolderKind::flap;
    Tree made = {{"kind", flap ? "flap" : "pads"}, {"cell_diameter_mm", holder.cell_diameter_mm}};
    if (flap) {
        made["bed_radius_mm"] = holder.bed_radius_mm;
        made["flap_offset_mm"] = holder.flap_offset_mm;
        made["flap_radius_mm"] = holder.flap_radius_mm;
    } else {
        made["pads"] = tree_of(holder.pads);
    }
    if (holder.body_mm != Vec2{}) {
        made["body_mm"] = pair_tree(holder.body_mm);
    }
    if (flap || holder.paper_mm != 0.0) {
        made["paper_mm"] = holder.paper_mm;
    }
    if (flap || holder.travel_mm != 0.0) {
        made["travel_mm"] = holder.travel_mm;
    }
    made["contact_ohm"] = holder.contact_ohm;
    made["closure"] = holder.closure == Closure::finger ? "finger" : "tool";
    made["source"] = holder.source;
    append_extras(made, holder.extras);
    return made;
}

template <class T>
void append_sort(Tree& object, const char* key, const std::map<std::string, T>& types) {
    if (types.empty()) {
        return;
    }
    Tree made = Tree::object();
    for (const auto& [id, type] : types) {
        made[id] = tree_of(type);
    }
    object[key] = std::move(made);
}

} // namespace

Tree pair_tree(Vec2 pair) {
    return Tree::array({pair.x, pair.y});
}

void append_parts(Tree& object, const Parts& parts) {
    append_sort(object, "packages", parts.packages);
    append_sort(object, "leds", parts.leds);
    append_sort(object, "cells", parts.cells);
    append_sort(object, "tapes", parts.tapes);
    append_sort(object, "holders", parts.holders);
    append_sort(object, "foams", parts.foams);
    if (parts.resistor) {
        Tree made = {{"package", tree_of(*parts.resistor, true)}};
        append_extras(made, parts.resistor_extras);
        object["resistor"] = std::move(made);
    }
    append_extras(object, parts.extras);
}

} // namespace lanternleaf::cardfile

namespace lanternleaf {

std::string write_parts(const Parts& parts) {
    cardfile::Tree root = {{"lanternleaf", kFileVersion}, {"kind", "parts"}};
    cardfile::append_parts(root, parts);
    return cardfile::pretty(root);
}

} // namespace lanternleaf
