#include "mend/cause_words.h"

namespace lanternleaf {

namespace {

// A scrap that bridges a crack, and a patch that spares 5 mm round a crossing (common practice).
constexpr double kBridge_mm = 15.0;
constexpr double kPatch_mm = 16.0;
constexpr double kWrongCellType_V = 1.5; ///< what is printed on the other chemistry of this size

Change change_at(ChangeKind kind, const std::string& part, Vec2 at_mm, double mm) {
    Change change;
    change.kind = kind;
    change.part = part;
    change.at_mm = at_mm;
    change.mm = mm;
    return change;
}

Change foam(const Card& card, int more) {
    Change change;
    change.kind = ChangeKind::foam_layers;
    change.count = card.foam ? card.foam->layers + more : 0;
    return change;
}

// A cause's three sentences, "mend.NAME_title", "_why" and "_fix"; `name` ends in "_". A title that has
// grades is put in by its own key.
void say(Cause& out, const Words& words, const std::string& name, Fills fills, const char* title = nullptr) {
    out.title = words(title == nullptr ? name + "title" : std::string(title), fills);
    out.sentence = words(name + "why", fills);
    out.fix = words(name + "fix", fills);
}

void led_words(const MendModel& model, const Fault& fault, Cause& out) {
    const Words& words = model.words;
    const FaultPlace& place = model.places[static_cast<std::size_t>(fault.place)];
    const std::string& id = place.parts.front();
    switch (fault.kind) {
    case FaultKind::led_turned:
        say(out, words, "mend.led_turned_", {{"led", id}});
        out.found = change_at(ChangeKind::led_turned, id, {}, 0.0);
        return;
    case FaultKind::led_dead:
        say(out, words, "mend.led_dead_", {{"led", id}});
        return;
    case FaultKind::led_wrong:
        say(out, words, "mend.led_wrong_", {{"led", id}});
        out.found = change_at(ChangeKind::led_swapped, id, {}, 0.0);
        out.found->type = fault.type;
        return;
    case FaultKind::led_swapped:
        say(out, words, "mend.led_swapped_", {{"leds", place.name}});
        return;
    case FaultKind::led_one_side:
        say(out, words, "mend.led_one_side_", {{"led", id}});
        return;
    case FaultKind::led_in_series:
        say(out, words, "mend.led_in_series_", {{"leds", place.name}});
        return;
    default:
        say(out, words, "mend.light_hidden_", {{"led", id}});
        return;
    }
}

void cell_words(const MendModel& model, const Fault& fault, Cause& out) {
    const Words& words = model.words;
    const std::string& type = model.card.cell.type;
    const char* up = model.card.cell.face_down == CellFace::negative ? "+" : "−";
    switch (fault.kind) {
    case FaultKind::cell_upside_down:
        say(out, words, "mend.cell_upside_down_", {{"up", up}});
        out.found = change_at(ChangeKind::cell_upside_down, "", {}, 0.0);
        return;
    case FaultKind::cell_flat:
        say(out, words, "mend.cell_flat_", {{"cell", type}});
        return;
    case FaultKind::cell_wrong:
        say(out, words, "mend.cell_wrong_", {{"cell", type}, {"volts", words.number(kWrongCellType_V, 1)}});
        return;
    case FaultKind::cell_loose:
        say(out, words, "mend.cell_loose_", {});
        return;
    case FaultKind::cell_missing:
        say(out, words, "mend.cell_missing_", {{"cell", type}, {"up", up}});
        return;
    default:
        say(out, words, "mend.tab_left_", {});
        return;
    }
}

void touch_words(const MendModel& model, const Fault& fault, Cause& out) {
    const Words& words = model.words;
    const FaultPlace& place = out.places.empty() ? FaultPlace{} : out.places.front();
    switch (fault.kind) {
    case FaultKind::sides_touch:
        say(out, words, "mend.sides_touch_", {{"where", place.name}});
        return;
    case FaultKind::crossing_bare:
        say(out, words, "mend.crossing_bare_", {{"where", place.name}, {"strip", place.parts[1]}});
        if (place.parts.size() > 2) {
            out.found = change_at(ChangeKind::patch_missing, place.parts[2], {}, 0.0);
        }
        out.mend = change_at(ChangeKind::patch_added, place.parts[0], place.at_mm, kPatch_mm);
        return;
    case FaultKind::sides_touch_shut:
        say(out, words, "mend.sides_touch_shut_", {});
        return;
    default:
        say(out, words, "mend.paper_leaks_", {});
        return;
    }
}

void tape_words(const MendModel& model, const Fault& fault, Cause& out) {
    const Words& words = model.words;
    const FaultPlace& place = out.places.front();
    switch (fault.kind) {
    case FaultKind::pad_loose:
        say(out, words, "mend.pad_loose_", {{"pad", place.name}},
            fault.open ? "mend.pad_open" : "mend.pad_weak");
        return;
    case FaultKind::joint_loose:
        say(out, words, "mend.joint_loose_", {{"lower", place.parts.front()}, {"upper", place.parts.back()}},
            fault.open ? "mend.joint_open" : "mend.joint_weak");
        out.mend = change_at(ChangeKind::bridged, place.parts.back(), place.at_mm, kBridge_mm);
        return;
    case FaultKind::glue_plain:
        say(out, words, "mend.glue_plain_", {{"tape", fault.type}});
        return;
    case FaultKind::contact_loose:
        say(out, words, "mend.contact_loose_", {{"place", place.name}});
        return;
    case FaultKind::liner_left:
        say(out, words, "mend.liner_left_", {{"place", place.name}});
        return;
    case FaultKind::run_poor:
        say(out, words, "mend.run_poor_", {{"strip", place.name}});
        return;
    default:
        say(out, words, "mend.strip_broken_", {{"place", place.name}, {"length", words.mm(kBridge_mm)}});
        out.found = change_at(ChangeKind::tear, place.parts.front(), place.at_mm, 1.0);
        out.mend = change_at(ChangeKind::bridged, place.parts.front(), place.at_mm, kBridge_mm);
        return;
    }
}

} // namespace

Cause describe_fault(const MendModel& model, int index) {
    const Fault& fault = model.faults[static_cast<std::size_t>(index)];
    Cause out;
    out.kind = fault.kind;
    if (fault.place >= 0) {
        out.places.push_back(model.places[static_cast<std::size_t>(fault.place)]);
    }
    const Words& words = model.words;
    switch (fault.kind) {
    case FaultKind::led_turned:
    case FaultKind::led_dead:
    case FaultKind::led_wrong:
    case FaultKind::led_swapped:
    case FaultKind::led_one_side:
    case FaultKind::led_in_series:
    case FaultKind::light_hidden:
        led_words(model, fault, out);
        break;
    case FaultKind::pad_loose:
    case FaultKind::joint_loose:
    case FaultKind::glue_plain:
    case FaultKind::contact_loose:
    case FaultKind::strip_broken:
    case FaultKind::run_poor:
    case FaultKind::liner_left:
        tape_words(model, fault, out);
        break;
    case FaultKind::sides_touch:
    case FaultKind::crossing_bare:
    case FaultKind::sides_touch_shut:
    case FaultKind::paper_leaks:
        touch_words(model, fault, out);
        break;
    case FaultKind::switch_open:
        say(out, words, "mend.switch_open_", {});
        if (model.card.foam && model.card.foam->layers > 0) {
            out.mend = foam(model.card, -1);
        }
        break;
    case FaultKind::switch_stuck:
        say(out, words, "mend.switch_stuck_", {});
        if (model.card.foam) {
            out.mend = foam(model.card, 1);
        }
        break;
    case FaultKind::cell_upside_down:
    case FaultKind::cell_flat:
    case FaultKind::cell_wrong:
    case FaultKind::cell_loose:
    case FaultKind::cell_missing:
    case FaultKind::tab_left:
        cell_words(model, fault, out);
        break;
    case FaultKind::resistor_wrong:
        say(out, words, "mend.resistor_wrong_", {{"resistor", out.places.front().name}});
        break;
    case FaultKind::as_built:
        out.title = fault.text; // a finding says it
        out.sentence = words("mend.as_built_why");
        out.fix = fault.fix;
        break;
    case FaultKind::other:
        say(out, words, "mend.other_", {});
        break;
    }
    return out;
}

} // namespace lanternleaf
