#include "guide/checks.h"

#include "base/readout.h"
#include "circuit/lights.h"
#include "guide/phrases.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// Loaded voltage: what two hand meters and two fresh cells may differ by, about 5 % of 3 V (common practice).
constexpr double kVolts_V = 0.15;
// A cell half used: FDK's CR2032 pulse curves give 3.040 V behind 20.1 ohm after 80 mAh where a fresh one has
// 3.096 V behind 14.3 ohm (read off the sheet).
constexpr double kHalfUsed_V = 0.056;
constexpr double kHalfUsedOhm = 20.1 / 14.3;

bool on_step(const PadRef& pad, StepId step) {
    switch (step) {
    case StepId::lay_negative:
        return pad.want == Side::negative;
    case StepId::lay_positive:
        return pad.want != Side::negative;
    case StepId::insulate:
        return true;
    default:
        return false;
    }
}

// Every strip that a pad's trace can be made of, uncut; a link pad may lead to anything.
Stage uncut(const GuideFacts& facts, Side side) {
    Card card = facts.card;
    if (side != Side::link) {
        std::erase_if(card.laid, [side](const Laid& item) {
            const Strip* strip = std::get_if<Strip>(&item);
            return strip != nullptr && strip->side != side;
        });
    }
    return make_stage(facts, std::move(card));
}

// A resistor's pad that feeds its own tape is where the probe stands, not something to reach.
bool is_feed(const GuideFacts& facts, const Stage& stage, const PadRef& pad) {
    const int feed = feed_of(facts, stage, pad);
    return feed >= 0 && &facts.pads[static_cast<std::size_t>(feed)] == &pad;
}

std::string no_meter_pad(const std::string& from, const std::string& to) {
    return "Follow one unbroken strip from " + from + " to " + to + ", every joint rubbed flat.";
}

std::string no_meter_apart(const std::string& from, const std::string& to) {
    return "Hold a spare cell and a good LED across " + from + " and " + to +
           ", both ways: it must stay dark.";
}

std::string spoken_contact(const std::string& key) {
    if (key.rfind("holder", 0) == 0) {
        return "holder's " + std::string(key.back() == '-' ? "−" : "+") + " pad";
    }
    return key;
}

Check link_check(const Predictor& predictor, const PadRef& from, const PadRef& to) {
    Check check;
    check.id = from.name + "-to-" + to.name;
    check.from = from.name;
    check.to = to.name;
    check.title = shown(from.name) + " to " + shown(to.name);
    check.kind = CheckKind::open;
    check.expect_text = "OL (no path)";
    if (const std::optional<OhmRange> range = predictor.pad_to_pad(from, to)) {
        check.kind = CheckKind::resistance;
        check.expected = range->expected;
        check.low = range->low;
        check.high = range->high;
        check.expect_text = readout_ohm_range(range->low, range->high);
    }
    check.without_meter =
        "Follow one unbroken strip from " + shown(from.name) + " to " + shown(to.name) + ".";
    return check;
}

void trace_checks(const GuideFacts& facts, StepId step, std::vector<Check>& out) {
    const Stage stage = make_stage(facts, step);
    const Predictor predictor(facts, stage);
    if (step != StepId::lay_negative) {
        out.push_back(apart_check(facts));
    }
    const std::vector<PadState> states = pads_of_step(facts, stage, step);
    for (const PadState& state : states) {
        if (state.pad->want != Side::link) {
            out.push_back(pad_check(facts, stage, predictor, *state.pad, true));
        }
    }
    // A link: from its first pad to each other one.
    std::vector<const PadRef*> firsts;
    for (const PadState& state : states) {
        if (state.pad->want != Side::link || net_under(facts, stage, *state.pad) < 0) {
            continue;
        }
        const auto same = std::find_if(firsts.begin(), firsts.end(), [&](const PadRef* first) {
            return net_under(facts, stage, *first) == net_under(facts, stage, *state.pad);
        });
        if (same == firsts.end()) {
            firsts.push_back(state.pad);
        } else {
            out.push_back(link_check(predictor, **same, *state.pad));
        }
    }
}

void holder_checks(const GuideFacts& facts, std::vector<Check>& out) {
    out.push_back(look_check("holder-clear", "Holder clear all round", "clear of folds, edges and windows",
                             has_flap(facts) ? "Look under bed and flap: no fold line, edge or window."
                                             : "Look all round it: no fold line, edge or window beneath."));
    out.push_back(look_check("cell-away", "Cell still packed", "no cell on the table",
                             "Leave every cell in its packet until step 6."));
}

void closing_checks(const GuideFacts& facts, const Card& card, std::vector<Check>& out) {
    if (const std::optional<FoamWindow> window = foam_window(card, facts.parts)) {
        Check check;
        check.id = "foam-height";
        check.kind = CheckKind::height;
        check.from = "sheet";
        check.to = "top of the foam";
        check.expected = window->foam_mm;
        check.low = window->low_mm;
        check.high = window->high_mm;
        check.title = "Foam height";
        check.expect_text = readout_number(window->low_mm, 1) + "–" + readout_mm(window->high_mm);
        check.without_meter = "Lay a ruler across the foam: it just clears holder and cell.";
        out.push_back(check);
    } else if (!card.foam) {
        Check none =
            look_check("no-foam", "No foam on this card", "nothing to pad", "This card has no foam.");
        none.needed = false;
        out.push_back(none);
    }
    if (has_flap(facts)) {
        out.push_back(look_check("press-closes", "Press: lights on", "lights come on",
                                 "Close the card and press the spot: the lights come on."));
        out.push_back(look_check("release-opens", "Let go: lights off", "all dark",
                                 "Let go and look in the dark: every light is off."));
    } else {
        out.push_back(look_check("switch-works", "Switch on and off", "on, then all dark",
                                 "Close the card and switch on, then off."));
    }
    out.push_back(look_check("cell-held", "Cell held fast", "it stays put",
                             "Shake the closed card over the table: the cell stays put."));
}

std::string lit_text(const std::vector<LightExpectation>& lights) {
    const auto count = [&](const char* state) {
        return std::count_if(lights.begin(), lights.end(),
                             [state](const LightExpectation& light) { return light.state == state; });
    };
    std::string text = std::to_string(count("lit")) + " of " + std::to_string(lights.size()) + " lit";
    if (count("dim") > 0) {
        text += ", " + std::to_string(count("dim")) + " dim";
    }
    return text;
}

// Neither pad of the resistor touches tape on the whole card.
bool lies_on_no_tape(const GuideFacts& facts, int resistor) {
    const auto touches = [resistor](const Piece& piece) {
        return piece.kind == PieceKind::resistor_pad && piece.index == resistor;
    };
    return std::none_of(facts.conductors.contacts.begin(), facts.conductors.contacts.end(),
                        [&](const Contact& contact) { return touches(contact.a) || touches(contact.b); });
}

} // namespace

std::vector<PadState> pads_of_step(const GuideFacts& facts, const Stage& stage, StepId step) {
    std::vector<PadState> states;
    const Stage whole[3] = {uncut(facts, Side::negative), uncut(facts, Side::positive),
                            uncut(facts, Side::link)};
    const auto due = [&](const PadRef& pad, const Stage& at) {
        return tape_is_down(facts, at, pad) &&
               (reached(facts, at, pad) || !reached(facts, whole[static_cast<int>(pad.want)], pad));
    };
    std::optional<Stage> after_negative;
    if (step == StepId::insulate) {
        after_negative = make_stage(facts, StepId::lay_negative);
    }
    for (const PadRef& pad : facts.pads) {
        if (pad.piece.kind == PieceKind::resistor_pad && lies_on_no_tape(facts, pad.piece.index)) {
            continue; // a resistor kept beside the traces is no part of them
        }
        if (!on_step(pad, step) || !due(pad, stage) || is_feed(facts, stage, pad)) {
            continue;
        }
        if (step == StepId::insulate && pad.want == Side::negative && due(pad, *after_negative)) {
            continue;
        }
        states.push_back({&pad, reached(facts, stage, pad)});
    }
    return states;
}

Check pad_check(const GuideFacts& facts, const Stage& stage, const Predictor& predictor, const PadRef& pad,
                bool needed) {
    Check check;
    const int feed = feed_of(facts, stage, pad);
    check.from = feed >= 0 ? facts.pads[static_cast<std::size_t>(feed)].name
                           : contact_key(facts, contact_of(facts, pad.want));
    check.to = pad.name;
    check.id = check.from + "-to-" + check.to;
    const std::string from = spoken_contact(check.from);
    check.title = from + " to " + shown(pad.name);
    check.kind = CheckKind::open;
    check.expect_text = "OL (no path)";
    if (const std::optional<OhmRange> range = predictor.feed_to_pad(pad)) {
        check.kind = CheckKind::resistance;
        check.expected = range->expected;
        check.low = range->low;
        check.high = range->high;
        check.expect_text = readout_ohm_range(range->low, range->high);
    }
    check.without_meter = no_meter_pad((feed >= 0 ? "" : "the ") + from, shown(pad.name));
    check.needed = needed;
    return check;
}

Check apart_check(const GuideFacts& facts) {
    Check check;
    check.kind = CheckKind::open;
    check.from = contact_key(facts, 1);
    check.to = contact_key(facts, 0);
    check.id = check.from + "-to-" + check.to;
    check.title = spoken_contact(check.from) + " to " + spoken_contact(check.to);
    check.expect_text = "OL (no path)";
    check.without_meter = no_meter_apart(spoken_contact(check.from), spoken_contact(check.to));
    return check;
}

Check lights_check(const GuideFacts& facts, const Card& as_built) {
    Check check;
    check.id = "lights";
    check.kind = CheckKind::lights;
    const Lighting lighting = light_up(as_built, facts.parts, find_conductors(as_built, facts.parts),
                                       fresh_cell(as_built, facts.parts));
    for (const Light& light : lighting.lights) {
        check.lights.push_back(
            {as_built.leds[static_cast<std::size_t>(light.led)].id, name_of(light.state), light.brightness});
    }
    check.title = has_flap(facts) ? "Lights while pressed" : "Lights while on";
    check.expect_text = lit_text(check.lights);
    check.without_meter = "Look at each light in turn and tap what you see.";
    return check;
}

Check volts_check(const GuideFacts& facts, const Card& as_built) {
    const Conductors conductors = find_conductors(as_built, facts.parts);
    const CellState fresh = fresh_cell(as_built, facts.parts);
    const CellState used{fresh.open_V - kHalfUsed_V * as_built.cell.count, fresh.ohm * kHalfUsedOhm};
    Check check;
    check.id = "cell-volts";
    check.kind = CheckKind::volts;
    check.from = contact_key(facts, 1);
    check.to = contact_key(facts, 0);
    check.expected = light_up(as_built, facts.parts, conductors, fresh).cell_V;
    check.low = std::max(0.0, light_up(as_built, facts.parts, conductors, used).cell_V - kVolts_V);
    check.high = check.expected + kVolts_V;
    check.title = "Cell while lit";
    check.expect_text = readout_number(check.low, 2) + "–" + readout_volts(check.high);
    check.without_meter = "Watch for ten seconds: the lights must not fade.";
    return check;
}

Check look_check(std::string id, std::string title, std::string expect, std::string look) {
    Check check;
    check.id = std::move(id);
    check.kind = CheckKind::look;
    check.title = std::move(title);
    check.expect_text = std::move(expect);
    check.without_meter = std::move(look);
    return check;
}

std::vector<Check> proof_of(const GuideFacts& facts, const Card& as_built, StepId step) {
    std::vector<Check> out;
    switch (step) {
    case StepId::mount_holder:
        holder_checks(facts, out);
        break;
    case StepId::mark_pads:
        out.push_back(look_check("marks-match", "Marks match the picture", "every − and + as drawn",
                                 "Hold the sheet beside the picture and compare every mark."));
        break;
    case StepId::lay_negative:
    case StepId::lay_positive:
        trace_checks(facts, step, out);
        break;
    case StepId::insulate:
        if (facts.waits.empty()) {
            Check none = look_check("no-crossings", "Nothing crosses", "nothing to insulate",
                                    "On this card no tape crosses another.");
            none.needed = false;
            out.push_back(none);
        } else {
            trace_checks(facts, step, out);
        }
        break;
    case StepId::place_leds:
        out.push_back(lights_check(facts, as_built));
        out.push_back(volts_check(facts, as_built));
        break;
    case StepId::pad_edges:
        closing_checks(facts, as_built, out);
        break;
    }
    return out;
}

std::optional<FoamWindow> foam_window(const Card& card, const Parts& parts) {
    const auto holder = parts.holders.find(card.holder.type);
    const auto cell = parts.cells.find(card.cell.type);
    if (!card.foam || holder == parts.holders.end() || cell == parts.cells.end() ||
        holder->second.kind != HolderKind::flap) {
        return std::nullopt;
    }
    FoamWindow window;
    window.foam_mm = card.foam->layers * card.foam->thickness_mm;
    window.low_mm = card.cell.count * cell->second.height_mm + 2.0 * holder->second.paper_mm;
    window.high_mm = window.low_mm + holder->second.travel_mm;
    return window;
}

const Check* check_in(const Step& step, const std::string& id) {
    for (const Check& check : step.proof) {
        if (check.id == id) {
            return &check;
        }
    }
    for (const Move& move : step.moves) {
        if (move.check && move.check->id == id) {
            return &*move.check;
        }
    }
    return nullptr;
}

} // namespace lanternleaf
