#include "guide/verdict.h"

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

std::string reached_sentence(const GuideFacts& facts, StepId step, std::size_t pads) {
    const Words& words = facts.words;
    if (step == StepId::insulate && facts.waits.empty()) {
        return words("step.proved_no_crossing");
    }
    switch (step) {
    case StepId::lay_negative:
        return pads == 0 ? words("step.proved_negative_laid") : words("step.proved_negative", {{"n", pads}});
    case StepId::lay_positive:
        return pads == 0 ? words("step.proved_positive_laid") : words("step.proved_positive", {{"n", pads}});
    default:
        return pads == 0 ? words("step.proved_apart") : words("step.proved_insulated", {{"n", pads}});
    }
}

std::string lights_sentence(const std::vector<Check>& proof, const Words& words) {
    for (const Check& check : proof) {
        if (check.kind == CheckKind::lights) {
            return words("step.proved_lights", {{"lit", check.expect_text}});
        }
    }
    return words("step.proved_parts");
}

std::string proved_sentence(const GuideFacts& facts, const Card& card, const StepVerdict& verdict,
                            const std::vector<Check>& proof) {
    const Words& words = facts.words;
    switch (verdict.step) {
    case StepId::mount_holder:
        return words("step.proved_holder");
    case StepId::mark_pads:
        return words(facts.pads.empty() ? "step.proved_no_parts" : "step.proved_marks");
    case StepId::lay_negative:
    case StepId::lay_positive:
    case StepId::insulate:
        return reached_sentence(facts, verdict.step, verdict.pads.size());
    case StepId::place_leds:
        return lights_sentence(proof, words);
    case StepId::pad_edges:
        if (!card.foam) {
            return words("step.proved_no_foam");
        }
        return words(foam_window(card, facts.parts) ? "step.proved_press" : "step.proved_padded");
    }
    return {};
}

std::string off_sentence(const std::vector<const Check*>& off, const Words& words) {
    if (off.size() > 1) {
        return words("step.readings_off", {{"n", off.size()}});
    }
    return words("step.reading_off", {{"check", off.front()->title}});
}

std::string help_with(const Check& check, const Reading& reading, ReadingFit fit, const Words& words) {
    if (fit == ReadingFit::unreadable) {
        return words("step.do_read_again", {{"check", check.title}});
    }
    switch (check.kind) {
    case CheckKind::resistance:
        if (reading.value && *reading.value < check.low) {
            return words("step.do_zero_probes", {{"pad", shown(check.to)}});
        }
        return words("step.do_rub_joints", {{"pad", shown(check.to)}});
    case CheckKind::open:
        return words("step.do_find_touch", {{"check", check.title}});
    case CheckKind::lights:
        return words("step.do_press_dark");
    case CheckKind::volts:
        if (reading.value && *reading.value > check.high) {
            return words("step.do_read_code");
        }
        return words("step.do_fresh_cell");
    case CheckKind::height:
        return words(reading.value && *reading.value > check.high ? "step.do_foam_off" : "step.do_foam_on");
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
            for (std::string& line : mend_gap(gap, facts.words)) {
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
            add_once(help, help_with(check, *reading, fit, words));
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
        verdict.sentence =
            words("step.not_reached", {{"n", unreached.size()}, {"pads", words.list(unreached)}});
    } else if (!dark.empty() && (worst == verdict.findings.end() || worst->rule != "short-circuit")) {
        verdict.sentence = words("step.stay_dark", {{"n", dark.size()}, {"lights", words.list(dark)}});
    } else if (worst != verdict.findings.end()) {
        verdict.sentence = worst->text;
    } else {
        verdict.sentence = off_sentence(off, words);
    }
    return verdict;
}

} // namespace lanternleaf
