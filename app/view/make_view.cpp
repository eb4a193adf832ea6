#include "view/make_view.h"

#include "base/readout.h"

#include <algorithm>
#include <cstdlib>

namespace lanternleaf {

namespace {

const char* unit_of(CheckKind kind) {
    switch (kind) {
    case CheckKind::resistance:
    case CheckKind::open:
        return "Ω";
    case CheckKind::volts:
        return "V";
    case CheckKind::height:
        return "mm";
    case CheckKind::lights:
    case CheckKind::look:
        break;
    }
    return "";
}

std::vector<RailBead> rail_of(const OpenBuild& build) {
    std::vector<RailBead> rail;
    for (int step = 1; step <= kStepCount; ++step) {
        const StepRecord& record = build.record.steps[step - 1];
        RailBead bead;
        bead.step = step;
        bead.full = title_of(static_cast<StepId>(step));
        split_label(bead.full, bead.upper, bead.lower);
        bead.brief = brief_title(step);
        if (step == build.record.step && !build.record.finished) {
            bead.state = build.face == MakeFace::verdict ? BeadKind::stopped : BeadKind::now;
        } else if (record.proved) {
            bead.state = BeadKind::done;
        } else if (record.regardless) {
            bead.state = BeadKind::regardless;
        }
        rail.push_back(std::move(bead));
    }
    return rail;
}

void fill_move(MakeView& view, const OpenBuild& build, const Move& move) {
    view.move = &move;
    view.heading = move.title;
    view.sentence = move.sentence;
    view.why = move.why;
    for (const MoveLesson& lesson : build.lessons) {
        if (lesson.move == move.id) {
            view.lessons.push_back(lesson.sentence);
        }
    }
    view.adult_only = move.adult_only;
    if (move.length_mm > 0.0) {
        view.length_text = readout_mm(move.length_mm);
    }
    if (move.check) {
        view.check = check_view(build, *move.check);
    }
    const bool last = build.move + 1 == static_cast<int>(open_step(build).moves.size());
    view.primary = move.kind == MoveKind::adult_notice ? "Read the caution"
                   : last                              ? "Done: prove the step"
                                                       : "Done: next move";
}

void fill_proof(MakeView& view, const OpenBuild& build, const AppState& state) {
    const Step& step = open_step(build);
    view.heading = step.moves.empty() ? "Nothing to do here" : "Prove it before you go on";
    view.sentence = step.goal;
    for (const Check& check : step.proof) {
        if (check.kind == CheckKind::lights) {
            for (const LightExpectation& light : check.lights) {
                const auto tapped =
                    std::find_if(state.seen.begin(), state.seen.end(),
                                 [&](const LightExpectation& s) { return s.led == light.led; });
                view.lights.push_back(
                    {light.led, tapped == state.seen.end() ? "" : tapped->state, light.state});
            }
        }
        view.proof.push_back(check_view(build, check));
        view.unanswered += check.needed && !view.proof.back().answered ? 1 : 0;
    }
    view.primary = "Prove step " + std::to_string(static_cast<int>(step.id));
}

void fill_verdict(MakeView& view, const OpenBuild& build) {
    const StepVerdict& verdict = *build.verdict;
    view.heading = verdict.sentence;
    view.findings = verdict.findings;
    view.to_do = verdict.to_do;
    int reached = 0;
    for (const StepVerdict::PadReach& pad : verdict.pads) {
        view.pads.push_back({pad.pad, pad.reached});
        reached += pad.reached ? 1 : 0;
    }
    if (!view.pads.empty()) {
        view.pads_text =
            "Pads reached: " + std::to_string(reached) + " of " + std::to_string(view.pads.size());
    }
    if (!verdict.findings.empty()) {
        view.sentence = verdict.findings.front().text;
    } else {
        for (const ReadingVerdict& reading : verdict.readings) {
            if (reading.fit != ReadingFit::as_expected) {
                view.sentence = reading.text;
                break;
            }
        }
    }
    view.repair = repair_for(build.record.as_built, build.parts, verdict);
    view.close_up = close_up_for(build.record.as_built, build.parts, verdict);
    view.measure_again = verdict.findings.empty();
    if (view.close_up) {
        view.sentence = view.close_up->far + " misses " + view.close_up->near + " by " +
                        readout_mm(view.close_up->gap_mm) + ".";
    }
    view.primary = view.repair          ? view.repair->done + ": check again"
                   : view.measure_again ? "Measure again"
                                        : "I put it right: check again";
}

} // namespace

void split_label(const std::string& label, std::string& upper, std::string& lower) {
    std::size_t best = std::string::npos;
    const auto off_middle = [&label](std::size_t at) {
        return std::abs(static_cast<long>(at) * 2 - static_cast<long>(label.size()));
    };
    for (std::size_t at = label.find(' '); at != std::string::npos; at = label.find(' ', at + 1)) {
        if (best == std::string::npos || off_middle(at) < off_middle(best)) {
            best = at;
        }
    }
    upper = best == std::string::npos ? label : label.substr(0, best);
    lower = best == std::string::npos ? "" : label.substr(best + 1);
}

const char* brief_title(int step) {
    static const char* const kBrief[] = {"Holder", "Pads", "− trace", "+ trace", "Patches", "Lights", "Foam"};
    return step >= 1 && step <= kStepCount ? kBrief[step - 1] : "";
}

CheckView check_view(const OpenBuild& build, const Check& check) {
    CheckView view;
    view.id = check.id;
    view.kind = check.kind;
    view.title = check.title;
    view.expect = check.expect_text;
    view.unit = unit_of(check.kind);
    view.without_meter = check.without_meter;
    view.needed = check.needed;
    view.low = check.low;
    view.high = check.high;
    if (const Reading* reading = last_reading(build, check.id)) {
        const ReadingVerdict fit = judge_reading(check, *reading);
        view.answered = true;
        view.as_expected = fit.fit == ReadingFit::as_expected;
        view.answer = fit.text;
        view.has_value = reading->value.has_value();
        view.from_meter = reading->meter;
        view.value = reading->value.value_or(0.0);
    }
    return view;
}

MakeView make_view(const AppState& state) {
    MakeView view;
    if (!state.build) {
        return view;
    }
    const OpenBuild& build = *state.build;
    const Step& step = open_step(build);
    view.title = build.record.title;
    view.build = "Build " + std::to_string(build.shelf.number);
    view.rail = rail_of(build);
    view.step_text =
        "Step " + std::to_string(static_cast<int>(step.id)) + " of " + std::to_string(kStepCount);
    view.pips = static_cast<int>(step.moves.size());
    view.pip_now = build.move;
    if (build.move > 0) {
        view.back = "Move " + std::to_string(build.move);
    }
    const Move* move = open_move(build);
    if (build.face == MakeFace::verdict && build.verdict) {
        view.back = "Back";
        fill_verdict(view, build);
    } else if (move != nullptr && build.face == MakeFace::move) {
        view.move_text = "Move " + std::to_string(build.move + 1) + " of " + std::to_string(view.pips);
        fill_move(view, build, *move);
    } else {
        view.move_text = "All moves done";
        fill_proof(view, build, state);
    }
    return view;
}

} // namespace lanternleaf
