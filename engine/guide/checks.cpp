#include "guide/checks.h"

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

// "holder-" -> "holder_minus": the end of a message's key.
std::string contact_name(const std::string& key) {
    if (key.rfind("holder", 0) == 0) {
        return key.back() == '-' ? "holder_minus" : "holder_plus";
    }
    return key;
}

std::string spoken_contact(const std::string& key, const Words& words) {
    return words("check." + contact_name(key));
}

std::string between(const std::string& from, const std::string& to, const Words& words) {
    return words("check.between", {{"from", from}, {"to", to}});
}

void expect_ohm(Check& check, const OhmRange& range, const Words& words) {
    check.kind = CheckKind::resistance;
    check.expected = range.expected;
    check.low = range.low;
    check.high = range.high;
    check.expect_text = words.ohm_range(range.low, range.high);
}

// A check of looking: its words are the three messages `name`, `name`_expect and `look`.
Check look_for(std::string id, const std::string& name, const std::string& look, const Words& words) {
    return look_check(std::move(id), words("check." + name), words("check." + name + "_expect"),
                      words("check." + look));
}

Check link_check(const Predictor& predictor, const PadRef& from, const PadRef& to, const Words& words) {
    Check check;
    check.id = from.name + "-to-" + to.name;
    check.from = from.name;
    check.to = to.name;
    check.title = between(shown(from.name), shown(to.name), words);
    check.kind = CheckKind::open;
    check.expect_text = words("check.no_path");
    if (const std::optional<OhmRange> range = predictor.pad_to_pad(from, to)) {
        expect_ohm(check, *range, words);
    }
    check.without_meter =
        words("check.follow_link",
              {{"from", words("check.from_pad", {{"pad", shown(from.name)}})}, {"to", shown(to.name)}});
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
            out.push_back(link_check(predictor, **same, *state.pad, facts.words));
        }
    }
}

void holder_checks(const GuideFacts& facts, std::vector<Check>& out) {
    out.push_back(look_for("holder-clear", "holder_clear",
                           has_flap(facts) ? "holder_clear_flap" : "holder_clear_round", facts.words));
    out.push_back(look_for("cell-away", "cell_away", "cell_away_look", facts.words));
}

void closing_checks(const GuideFacts& facts, const Card& card, std::vector<Check>& out) {
    const Words& words = facts.words;
    if (const std::optional<FoamWindow> window = foam_window(card, facts.parts)) {
        Check check;
        check.id = "foam-height";
        check.kind = CheckKind::height;
        check.from = "sheet";
        check.to = "top of the foam";
        check.expected = window->foam_mm;
        check.low = window->low_mm;
        check.high = window->high_mm;
        check.title = words("check.foam_height");
        check.expect_text = first_of_two(window->low_mm, words) + "–" + words.mm(window->high_mm);
        check.without_meter = words("check.foam_height_look");
        out.push_back(check);
    } else if (!card.foam) {
        Check none = look_for("no-foam", "no_foam", "no_foam_look", words);
        none.needed = false;
        out.push_back(none);
    }
    if (has_flap(facts)) {
        out.push_back(look_for("press-closes", "press_closes", "press_closes_look", words));
        out.push_back(look_for("release-opens", "release_opens", "release_opens_look", words));
    } else {
        out.push_back(look_for("switch-works", "switch_works", "switch_works_look", words));
    }
    out.push_back(look_for("cell-held", "cell_held", "cell_held_look", words));
}

std::string lit_text(const std::vector<LightExpectation>& lights, const Words& words) {
    const auto count = [&](const char* state) {
        return static_cast<int>(
            std::count_if(lights.begin(), lights.end(),
                          [state](const LightExpectation& light) { return light.state == state; }));
    };
    return words(count("dim") > 0 ? "check.lit_dim_of" : "check.lit_of",
                 {{"lit", count("lit")}, {"all", lights.size()}, {"dim", count("dim")}});
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
    const Words& words = facts.words;
    // A pad that feeds is named as it always was, with its plain sign.
    check.title = between(feed >= 0 ? check.from : spoken_contact(check.from, words), shown(pad.name), words);
    check.kind = CheckKind::open;
    check.expect_text = words("check.no_path");
    if (const std::optional<OhmRange> range = predictor.feed_to_pad(pad)) {
        expect_ohm(check, *range, words);
    }
    const std::string from = feed >= 0 ? words("check.from_pad", {{"pad", check.from}})
                                       : words("check.from_" + contact_name(check.from));
    check.without_meter = words("check.follow_strip", {{"from", from}, {"to", shown(pad.name)}});
    check.needed = needed;
    return check;
}

Check apart_check(const GuideFacts& facts) {
    Check check;
    check.kind = CheckKind::open;
    check.from = contact_key(facts, 1);
    check.to = contact_key(facts, 0);
    check.id = check.from + "-to-" + check.to;
    const std::string from = spoken_contact(check.from, facts.words);
    const std::string to = spoken_contact(check.to, facts.words);
    check.title = between(from, to, facts.words);
    check.expect_text = facts.words("check.no_path");
    check.without_meter = facts.words("check.stay_apart", {{"from", from}, {"to", to}});
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
    check.title = facts.words(has_flap(facts) ? "check.lights_pressed" : "check.lights_on");
    check.expect_text = lit_text(check.lights, facts.words);
    check.without_meter = facts.words("check.lights_look");
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
    check.title = facts.words("check.cell_volts");
    check.expect_text = facts.words.number(check.low, 2) + "–" + facts.words.volts(check.high);
    check.without_meter = facts.words("check.cell_volts_look");
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
        out.push_back(look_for("marks-match", "marks_match", "marks_match_look", facts.words));
        break;
    case StepId::lay_negative:
    case StepId::lay_positive:
        trace_checks(facts, step, out);
        break;
    case StepId::insulate:
        if (facts.waits.empty()) {
            Check none = look_for("no-crossings", "no_crossings", "no_crossings_look", facts.words);
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
