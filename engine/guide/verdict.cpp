#include "guide/verdict.h"

#include "base/readout.h"
#include "guide/gaps.h"
#include "guide/moves.h"
#include "guide/phrases.h"
#include "guide/step_rules.h"

#include <algorithm>

namespace lanternleaf {

namespace {

bool is_trace_step(StepId step) {
    return step >= StepId::lay_negative && step <= StepId::insulate;
}

bool is_problem(const Finding& finding) {
    return finding.level == Level::problem;
}

// ---- words

std::string count_of(std::size_t count, const std::string& one, const std::string& many) {
    return count == 1 ? "the " + one : "all " + std::to_string(count) + " " + many;
}

std::string unreached_sentence(const std::vector<std::string>& pads) {
    return pads.size() == 1 ? "One pad is not reached: " + pads.front() + "."
                            : std::to_string(pads.size()) + " pads are not reached: " + listed(pads) + ".";
}

std::string reached_sentence(const GuideFacts& facts, StepId step, std::size_t pads) {
    if (step == StepId::insulate && facts.waits.empty()) {
        return "Proved: nothing crosses, so nothing needs a patch.";
    }
    if (pads == 0) {
        switch (step) {
        case StepId::lay_negative:
            return "Proved: the negative strips lie as planned.";
        case StepId::lay_positive:
            return "Proved: + and − are apart; the pads wait for step 5.";
        default:
            return "Proved: + and − are apart at every crossing.";
        }
    }
    switch (step) {
    case StepId::lay_negative:
        return "Proved: " + count_of(pads, "negative pad is reached.", "negative pads are reached.");
    case StepId::lay_positive:
        return "Proved: " + count_of(pads, "pad laid so far is reached.", "pads laid so far are reached.");
    default:
        return "Proved: " + count_of(pads, "pad is reached", "pads are reached") + " and + and − stay apart.";
    }
}

std::string lights_sentence(const std::vector<Check>& proof) {
    for (const Check& check : proof) {
        if (check.kind == CheckKind::lights) {
            return "Proved: " + check.expect_text + ".";
        }
    }
    return "Proved: the parts are in place.";
}

std::string proved_sentence(const GuideFacts& facts, const Card& card, const StepVerdict& verdict,
                            const std::vector<Check>& proof) {
    switch (verdict.step) {
    case StepId::mount_holder:
        return "Proved: the holder sits clear on the sheet.";
    case StepId::mark_pads:
        return facts.pads.empty() ? "Proved: this card has no parts to mark."
                                  : "Proved: every pad has its place on the sheet.";
    case StepId::lay_negative:
    case StepId::lay_positive:
    case StepId::insulate:
        return reached_sentence(facts, verdict.step, verdict.pads.size());
    case StepId::place_leds:
        return lights_sentence(proof);
    case StepId::pad_edges:
        if (!card.foam) {
            return "Proved: this card has no foam to fit.";
        }
        return foam_window(card, facts.parts) ? "Proved: a press closes the switch, letting go opens it."
                                              : "Proved: the edges are padded.";
    }
    return {};
}

std::string dark_sentence(const std::vector<std::string>& dark) {
    return dark.size() == 1 ? "One light stays dark: " + dark.front() + "."
                            : std::to_string(dark.size()) + " lights stay dark: " + listed(dark) + ".";
}

std::string off_sentence(const std::vector<const Check*>& off) {
    if (off.size() > 1) {
        return std::to_string(off.size()) + " readings are off.";
    }
    return "One reading is off: " + off.front()->title + ".";
}

std::string help_with(const Check& check, const Reading& reading, ReadingFit fit) {
    if (fit == ReadingFit::unreadable) {
        return "Take the reading again: " + check.title + ".";
    }
    switch (check.kind) {
    case CheckKind::resistance:
        if (reading.value && *reading.value < check.low) {
            return "Touch the probes together, then measure " + shown(check.to) + " again.";
        }
        return "Rub the joints on the way to " + shown(check.to) + " and measure again.";
    case CheckKind::open:
        return "Look for tape that touches between " + check.title + ", then check again.";
    case CheckKind::lights:
        return "Press each dark light's pads; if it stays dark, mend it.";
    case CheckKind::volts:
        if (reading.value && *reading.value > check.high) {
            return "Read the code on the cell; another kind may be in.";
        }
        return "Try a fresh cell; if it sags too, look for a short.";
    case CheckKind::height:
        return reading.value && *reading.value > check.high ? "Take a layer of foam off."
                                                            : "Add a layer of foam.";
    case CheckKind::look:
        return check.without_meter;
    }
    return {};
}

// ---- judging

void judge_pads(const GuideFacts& facts, StepVerdict& verdict, std::vector<std::string>& unreached) {
    const Stage stage = make_stage(facts, verdict.step);
    const std::vector<PadState> states = pads_of_step(facts, stage, verdict.step);
    for (const PadState& state : states) {
        verdict.pads.push_back({state.pad->name, state.reached});
        if (!state.reached) {
            unreached.push_back(shown(state.pad->name));
        }
    }
    const std::vector<Gap> gaps = find_gaps(facts, stage, states);
    std::vector<Finding> found;
    for (const Gap& gap : gaps) {
        // The joint's own finding says the same, with the tape's name.
        const bool told =
            std::any_of(verdict.findings.begin(), verdict.findings.end(), [&](const Finding& known) {
                return gap.lies_over && known.rule == "joint-open" &&
                       std::find(known.parts.begin(), known.parts.end(), gap.finding.parts[0]) !=
                           known.parts.end() &&
                       std::find(known.parts.begin(), known.parts.end(), gap.finding.parts[1]) !=
                           known.parts.end();
            });
        if (!told) {
            found.push_back(gap.finding);
            for (std::string& line : mend_gap(gap)) {
                verdict.to_do.push_back(std::move(line));
            }
        }
    }
    verdict.findings.insert(verdict.findings.begin(), found.begin(), found.end());
}

std::vector<std::string> dark_lights(const std::vector<Check>& proof) {
    std::vector<std::string> dark;
    for (const Check& check : proof) {
        for (const LightExpectation& light : check.lights) {
            if (light.state == "dark") {
                dark.push_back(light.led);
            }
        }
    }
    return dark;
}

void add_once(std::vector<std::string>& lines, const std::string& line) {
    if (!line.empty() && std::find(lines.begin(), lines.end(), line) == lines.end()) {
        lines.push_back(line);
    }
}

// The step's checks: its proof, and those that only help on the way.
std::vector<Check> checks_of(const GuideFacts& facts, StepId step, const std::vector<Check>& proof) {
    std::vector<Check> checks = proof;
    std::vector<Move> moves;
    if (step == StepId::insulate) {
        moves = crossing_moves(facts);
    } else if (is_trace_step(step)) {
        moves = trace_moves(facts, step);
    }
    for (const Move& move : moves) {
        const bool known = !move.check || std::any_of(checks.begin(), checks.end(), [&](const Check& check) {
            return check.id == move.check->id;
        });
        if (!known) {
            checks.push_back(*move.check);
        }
    }
    return checks;
}

} // namespace

StepVerdict judge_step(const Card& as_built, const Parts& parts, StepId step,
                       const std::vector<Reading>& readings, const Words& words) {
    const GuideFacts facts = make_facts(as_built, parts, words);
    StepVerdict verdict;
    verdict.step = step;
    verdict.findings = findings_of_step(facts, as_built, step);
    std::vector<std::string> unreached;
    if (is_trace_step(step)) {
        judge_pads(facts, verdict, unreached);
    }
    const std::vector<Check> proof = proof_of(facts, as_built, step);
    const std::vector<Check> checks = checks_of(facts, step, proof);
    std::vector<const Check*> off;
    std::vector<std::string> help;
    for (const Check& check : checks) {
        // The last word on a check counts.
        const auto reading = std::find_if(readings.rbegin(), readings.rend(),
                                          [&](const Reading& one) { return one.check == check.id; });
        if (reading == readings.rend()) {
            continue;
        }
        verdict.readings.push_back(judge_reading(check, *reading, words));
        const ReadingFit fit = verdict.readings.back().fit;
        if (fit == ReadingFit::off) {
            off.push_back(&check);
        }
        if (fit != ReadingFit::as_expected) {
            add_once(help, help_with(check, *reading, fit));
        }
    }

    const auto worst = std::find_if(verdict.findings.begin(), verdict.findings.end(), is_problem);
    const std::vector<std::string> dark = dark_lights(proof);
    for (const Finding& finding : verdict.findings) {
        if (is_problem(finding) && (finding.rule != "led-not-reached" || !is_trace_step(step))) {
            add_once(verdict.to_do, finding.fix);
        }
    }
    for (const std::string& line : help) {
        add_once(verdict.to_do, line);
    }
    if (worst == verdict.findings.end() && off.empty() && dark.empty()) {
        verdict.sentence = proved_sentence(facts, as_built, verdict, proof);
        return verdict;
    }
    verdict.state = VerdictState::stopped;
    if (!unreached.empty()) {
        verdict.sentence = unreached_sentence(unreached);
    } else if (!dark.empty() && (worst == verdict.findings.end() || worst->rule != "short-circuit")) {
        verdict.sentence = dark_sentence(dark);
    } else if (worst != verdict.findings.end()) {
        verdict.sentence = worst->text;
    } else {
        verdict.sentence = off_sentence(off);
    }
    return verdict;
}

} // namespace lanternleaf
