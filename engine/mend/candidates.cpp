// The candidates: every joint, pad, stretch, LED, crossing and near miss of the card as built, and the cell
// and switch. Nothing here knows any card; what each fault does is left to the simulation.
#include "base/at.h"
#include "base/tolerance.h"
#include "guide/phrases.h"
#include "mend/candidate_tools.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace lanternleaf {

namespace {

// Two coin-cell types of other chemistry, 1.5 V, fit a holder of this size loosely (common practice).
constexpr double kWrongCell_V = 1.55;
constexpr double kFlat_V = 2.3;
constexpr double kFlat_ohm = 400.0;
constexpr double kTired_V = 2.8; ///< what an old cell has left behind ten times its fresh resistance
constexpr double kTiredTimes = 12.0;
constexpr double kLooseCell_ohm = 300.0;
constexpr double kLeak_ohm = 250.0; ///< damp or metallic paper
constexpr double kPoorRun_ohm = 120.0;
constexpr double kLeastTear_mm = 1.0;
constexpr double kRedGroup_nm = 570.0; ///< longer: the group that lights below 2.4 V (LED data sheets)

// An LED type of the other voltage group, to stand for "the wrong one": it takes the current from the rest,
// or gets none of it.
std::string other_type(const MendModel& model, const Led& led) {
    const auto own = model.parts.leds.find(led.type);
    if (own == model.parts.leds.end()) {
        return {};
    }
    const bool low = own->second.dominant_nm > kRedGroup_nm;
    for (const auto& [id, type] : model.parts.leds) {
        const bool other_low = type.dominant_nm > kRedGroup_nm;
        if (type.package == own->second.package && type.dominant_nm > 0.0 && other_low != low) {
            return id;
        }
    }
    return {};
}

// The first's + leads to the second's - instead of to the tapes.
void add_chains(CandidateList& list) {
    const Card& card = list.model.card;
    for (const CandidateList::ChainLink& link : list.chains) {
        const std::vector<int> plus = list.contacts_of({PieceKind::led_pad, link.first, 1});
        const std::vector<int> minus = list.contacts_of({PieceKind::led_pad, link.second, 0});
        if (plus.empty() || minus.empty()) {
            continue;
        }
        const std::string& a = card.leds[at(link.first)].id;
        const std::string& b = card.leds[at(link.second)].id;
        const Vec2 between = (card.leds[at(link.first)].at_mm + card.leds[at(link.second)].at_mm) * 0.5;
        Fault& fault = list.add(FaultKind::led_in_series,
                                list.add_place(list.model.words.list({a, b}), between, {a, b}));
        fault.led = link.first;
        fault.led_b = link.second;
        for (const std::vector<int>* pads : {&plus, &minus}) {
            for (const int c : *pads) {
                fault.edits.push_back(list.contact_edit(c, kOpen_ohm));
            }
        }
        fault.edits.push_back(list.contact_edit(link.contact, kTouch_ohm));
    }
}

void add_pads(CandidateList& list, const std::vector<PadOutline>& pads, PieceKind kind) {
    const MendModel& model = list.model;
    for (const PadOutline& pad : pads) {
        const std::string name = name_of(model.card, model.conductors, pad.piece);
        const std::string part = kind == PieceKind::led_pad ? model.card.leds[at(pad.piece.index)].id
                                                            : model.card.resistors[at(pad.piece.index)].id;
        const std::vector<int> contacts = list.contacts_of(pad.piece);
        if (contacts.empty()) {
            continue;
        }
        const int place = list.add_place(shown(name), pad.at_mm, {part});
        for (const bool open : {false, true}) {
            Fault& fault = list.add(FaultKind::pad_loose, place);
            fault.led = kind == PieceKind::led_pad ? pad.piece.index : -1;
            fault.open = open;
            fault.share = 0.5;
            for (const int c : contacts) {
                fault.edits.push_back(list.contact_edit(c, open ? kOpen_ohm : -1.0));
            }
        }
    }
}

void add_led_faults(CandidateList& list) {
    MendModel& model = list.model;
    std::vector<int> diode_of(model.card.leds.size(), -1);
    for (std::size_t d = 0; d < model.circuit.diodes.size(); ++d) {
        diode_of[at(model.circuit.diodes[d].led)] = static_cast<int>(d);
    }
    for (std::size_t i = 0; i < model.card.leds.size(); ++i) {
        const Led& led = model.card.leds[i];
        const int diode = diode_of[i];
        if (diode < 0) {
            continue;
        }
        const int place = list.add_place(led.id, led.at_mm, {led.id});
        const auto add = [&](FaultKind kind) -> Fault& {
            Fault& fault = list.add(kind, place);
            fault.led = static_cast<int>(i);
            return fault;
        };
        add(FaultKind::led_turned).edits = {{ElementEdit::What::turn, diode, 0.0, 0}};
        add(FaultKind::led_dead).edits = {{ElementEdit::What::burn, diode, 0.0, 0}};
        add(FaultKind::light_hidden);
        const std::string type = other_type(model, led);
        if (!type.empty()) {
            Fault& wrong = add(FaultKind::led_wrong);
            wrong.type = type;
            wrong.edits = {{ElementEdit::What::diode_as, diode, 0.0, list.law_of(type)}};
        }
        // Both pads on one trace: one pad parted from its own, and the pads joined.
        if (const std::vector<int> own = list.contacts_of({PieceKind::led_pad, static_cast<int>(i), 1});
            !own.empty()) {
            Fault& one_side = add(FaultKind::led_one_side);
            for (const int c : own) {
                one_side.edits.push_back(list.contact_edit(c, kOpen_ohm));
            }
            one_side.edits.push_back(list.contact_edit(model.pad_link[i], kTouch_ohm));
        }
    }
    // LEDs of two types exchanged: each with its nearest of another type.
    for (std::size_t i = 0; i < model.card.leds.size(); ++i) {
        int best = -1;
        for (std::size_t j = 0; j < model.card.leds.size(); ++j) {
            const double mm = distance(model.card.leds[i].at_mm, model.card.leds[j].at_mm);
            if (model.card.leds[i].type != model.card.leds[j].type && diode_of[j] >= 0 &&
                (best < 0 || mm < distance(model.card.leds[i].at_mm, model.card.leds[at(best)].at_mm))) {
                best = static_cast<int>(j);
            }
        }
        if (best < 0 || diode_of[i] < 0 || list.has_swap(best, static_cast<int>(i))) {
            continue;
        }
        const Led& a = model.card.leds[i];
        const Led& b = model.card.leds[at(best)];
        const int place = list.add_place(model.words.list({a.id, b.id}), a.at_mm, {a.id, b.id});
        Fault& fault = list.add(FaultKind::led_swapped, place);
        fault.led = static_cast<int>(i);
        fault.led_b = best;
        fault.edits = {{ElementEdit::What::diode_as, diode_of[i], 0.0, list.law_of(b.type)},
                       {ElementEdit::What::diode_as, diode_of[at(best)], 0.0, list.law_of(a.type)}};
    }
}

void add_joints(CandidateList& list) {
    MendModel& model = list.model;
    std::map<std::string, std::vector<int>> by_tape; // of the upper strip: the one whose glue lies in the lap
    for (int c = 0; c < model.real_contacts; ++c) {
        const Contact& contact = model.conductors.contacts[at(c)];
        if (contact.overlap < 0) {
            continue;
        }
        const Overlap& overlap = model.conductors.overlaps[at(contact.overlap)];
        const Strip& lower = strip_of(model.card, model.conductors, overlap.lower);
        const Strip& upper = strip_of(model.card, model.conductors, overlap.upper);
        const int place =
            list.add_place(model.words("mend.place_joint", {{"lower", lower.id}, {"upper", upper.id}}),
                           contact.at_mm, {lower.id, upper.id});
        for (const bool open : {false, true}) {
            Fault& fault = list.add(FaultKind::joint_loose, place);
            fault.open = open;
            fault.share = 0.5;
            fault.made_in = list.laid_in(overlap.upper);
            fault.edits = {list.contact_edit(c, open ? kOpen_ohm : -1.0)};
        }
        if (!overlap.folded_end) {
            by_tape[upper.tape].push_back(c);
        }
    }
    for (const auto& [tape, contacts] : by_tape) {
        if (contacts.size() < 2) {
            continue; // one lap: the same as that joint parted, and the same cure
        }
        const Contact& first = model.conductors.contacts[at(contacts.front())];
        const int place = list.add_place(model.words("mend.place_glue", {{"tape", tape}}), first.at_mm, {});
        Fault& fault = list.add(FaultKind::glue_plain, place);
        fault.type = tape;
        for (const int c : contacts) {
            fault.edits.push_back(list.contact_edit(c, kOpen_ohm));
        }
    }
}

void add_holder_contacts(CandidateList& list) {
    MendModel& model = list.model;
    const HolderShape shape = holder_shape(model.card, model.parts);
    for (int t = 0; t < 2; ++t) {
        const std::vector<int> contacts = list.contacts_of({PieceKind::terminal, 0, t});
        if (contacts.empty()) {
            continue;
        }
        const Contact& first = model.conductors.contacts[at(contacts.front())];
        const Piece strip = first.a.kind == PieceKind::strip ? first.a : first.b;
        const std::string id = strip_of(model.card, model.conductors, strip.index).id;
        const char* where = shape.flap ? (t == 0 ? "mend.place_bed" : "mend.place_in_flap")
                                       : (t == 0 ? "mend.place_minus" : "mend.place_plus");
        const int place = list.add_place(model.words(where, {{"strip", id}}), shape.at_mm[t], {id, "holder"});
        for (const bool open : {false, true}) {
            Fault& fault = list.add(FaultKind::contact_loose, place);
            fault.open = open;
            fault.share = 0.5;
            for (const int c : contacts) {
                fault.edits.push_back(list.contact_edit(c, open ? kOpen_ohm : -1.0));
            }
        }
        Fault& liner = list.add(FaultKind::liner_left, place);
        for (const int c : contacts) {
            liner.edits.push_back(list.contact_edit(c, kOpen_ohm));
        }
    }
}

void add_cell_and_switch(CandidateList& list) {
    MendModel& model = list.model;
    const CellState fresh = fresh_cell(model.card, model.parts);
    const double count = std::max(1, model.card.cell.count);
    const HolderShape shape = holder_shape(model.card, model.parts);
    const int cell = list.add_place(model.words("mend.place_cell"), shape.at_mm[0], {"holder"});
    const int flap = list.add_place(model.words(shape.flap ? "mend.place_flap" : "mend.place_switch"),
                                    shape.at_mm[1], {"holder"});
    const auto cell_fault = [&](FaultKind kind, double open_V, double ohm, double share = 1.0) {
        Fault& fault = list.add(kind, kind == FaultKind::switch_open ? flap : cell);
        fault.share = share;
        fault.edits = {{ElementEdit::What::cell_open_V, 0, open_V, 0},
                       {ElementEdit::What::cell_ohm, 0, ohm, 0}};
    };
    cell_fault(FaultKind::cell_upside_down, -fresh.open_V, fresh.ohm);
    cell_fault(FaultKind::cell_flat, kFlat_V * count, kFlat_ohm * count, 0.5);
    cell_fault(FaultKind::cell_flat, kTired_V * count, fresh.ohm * kTiredTimes, 0.5);
    cell_fault(FaultKind::cell_wrong, kWrongCell_V * count, fresh.ohm);
    cell_fault(FaultKind::cell_loose, fresh.open_V, fresh.ohm + kLooseCell_ohm, 0.5);
    cell_fault(FaultKind::cell_loose, fresh.open_V, kOpen_ohm, 0.5);
    cell_fault(FaultKind::cell_missing, fresh.open_V, kOpen_ohm);
    cell_fault(FaultKind::tab_left, fresh.open_V, kOpen_ohm);
    cell_fault(FaultKind::switch_open, fresh.open_V, kOpen_ohm);
    list.add(FaultKind::switch_stuck, flap);
    list.add(FaultKind::sides_touch_shut, flap);
    const int paper = list.add_place(model.words("mend.place_paper"),
                                     {model.card.sheet.width_mm / 2, model.card.sheet.height_mm / 2}, {});
    list.add(FaultKind::paper_leaks, paper).edits = {list.contact_edit(list.terminal_link, kLeak_ohm)};
    for (std::size_t i = 0; i < model.card.resistors.size(); ++i) {
        const ResistorPart& part = model.card.resistors[i];
        const int place = list.add_place(part.id, part.at_mm, {part.id});
        list.add(FaultKind::resistor_wrong, place).edits = {
            {ElementEdit::What::ohm, list.first_part_element + static_cast<int>(i), part.ohm * 10.0, 0}};
    }
}

void add_stretches(CandidateList& list) {
    MendModel& model = list.model;
    for (const Stretch& stretch : list.stretches) {
        if (stretch.free_mm < kLeastTear_mm && stretch.folds + stretch.creases == 0.0) {
            continue;
        }
        const Strip& strip = strip_of(model.card, model.conductors, stretch.strip);
        const int place =
            list.add_place(model.words("mend.place_stretch",
                                       {{"strip", strip.id}, {"from", stretch.from}, {"to", stretch.to}}),
                           stretch.at_mm, {strip.id});
        Fault& fault = list.add(FaultKind::strip_broken, place);
        fault.made_in = list.laid_in(stretch.strip);
        // Folds and creases are where tape cracks; a little for every length of it (engineering judgement).
        fault.share = 1.0 * stretch.folds + 2.0 * stretch.creases + 0.3 + stretch.mm / 100.0;
        fault.edits = {{ElementEdit::What::ohm, stretch.element, kOpen_ohm, 0}};
    }
    for (std::size_t s = 0; s < model.conductors.strips.size(); ++s) {
        const Strip& strip = strip_of(model.card, model.conductors, static_cast<int>(s));
        double mm = 0.0;
        std::vector<ElementEdit> edits;
        for (const Stretch& stretch : list.stretches) {
            if (stretch.strip == static_cast<int>(s)) {
                mm += stretch.mm;
                edits.push_back({ElementEdit::What::ohm, stretch.element, stretch.mm, 0});
            }
        }
        if (mm < 30.0) {
            continue;
        }
        for (ElementEdit& edit : edits) {
            edit.value = model.circuit.resistors[at(edit.index)].ohm + kPoorRun_ohm * edit.value / mm;
        }
        const Ribbon& ribbon = model.conductors.strips[s].ribbon;
        const int place = list.add_place(strip.id, point_at(ribbon, ribbon.length_mm / 2), {strip.id});
        Fault& fault = list.add(FaultKind::run_poor, place);
        fault.type = strip.tape;
        fault.made_in = list.laid_in(static_cast<int>(s));
        fault.share = mm * (0.0001 + model.parts.tapes.at(strip.tape).ohm_per_square);
        fault.edits = std::move(edits);
    }
}

void add_touches(CandidateList& list) {
    for (const TouchPlace& link : list.links) {
        const int place = list.add_place(link.name, link.at_mm, link.parts);
        Fault& fault = list.add(link.crossing ? FaultKind::crossing_bare : FaultKind::sides_touch, place);
        fault.share = link.crossing ? 1.0 : 1.0 / (0.5 + link.mm);
        fault.edits = {list.contact_edit(link.contact, kTouch_ohm)};
    }
}

// What the card as built already does by itself, told by its findings; and nothing at all.
void add_as_built(CandidateList& list) {
    static constexpr const char* kTelling[] = {
        "short-circuit",   "led-not-reached", "led-reversed",   "crossing-bare", "patch-small",
        "outside-holder",  "joint-open",      "led-overdriven", "dim-led",       "uneven-light",
        "cell-overloaded", "foam-low",        "foam-high"};
    MendModel& model = list.model;
    const Review found = review(model.card, model.parts, model.words);
    for (const Finding& finding : found.findings) {
        const bool tells = std::any_of(std::begin(kTelling), std::end(kTelling),
                                       [&](const char* rule) { return finding.rule == rule; });
        if (!tells || finding.level == Level::note) {
            continue;
        }
        const int place = list.add_place(finding.rule, finding.at_mm, finding.parts);
        Fault& fault = list.add(FaultKind::as_built, place);
        fault.share = finding.level == Level::problem ? 2.0 : 1.0;
        fault.text = finding.text;
        fault.fix = finding.fix;
    }
    Fault& nothing = list.add(FaultKind::as_built, -1);
    nothing.share = 0.3;
    nothing.text = model.words("mend.nothing_more");
    nothing.fix = model.words("mend.nothing_more_fix");
    list.add(FaultKind::other, -1);
}

} // namespace

void find_candidates(MendModel& model, const MendOptions& options) {
    CandidateList list(model);
    add_led_faults(list);
    add_chains(list);
    add_pads(list, model.conductors.led_pads, PieceKind::led_pad);
    add_pads(list, model.conductors.resistor_pads, PieceKind::resistor_pad);
    add_joints(list);
    add_holder_contacts(list);
    add_cell_and_switch(list);
    add_stretches(list);
    add_touches(list);
    add_as_built(list);
    list.finish(options);
}

} // namespace lanternleaf
