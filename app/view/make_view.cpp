#include "view/make_view.h"

#include "batch/confirm_list.h"

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
        bead.full = title_of(static_cast<StepId>(step), build.words);
        split_label(bead.full, bead.upper, bead.lower);
        bead.brief = brief_title(step, build.words);
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
        view.length_text = build.words.mm(move.length_mm);
    }
    if (move.check) {
        view.check = check_view(build, *move.check);
    }
    const bool last = build.move + 1 == static_cast<int>(open_step(build).moves.size());
    view.primary = build.words(move.kind == MoveKind::adult_notice ? "make_view.read_caution"
                               : last                              ? "make_view.done_last"
                                                                   : "make_view.done_next");
}

// A build of a batch can be confirmed by lists, up to the moves that only an adult does.
void fill_list(MakeView& view, const OpenBuild& build, const Words& words) {
    view.can_list = !build.record.batch.empty() && view.move != nullptr && !view.move->adult_only;
    if (!view.can_list || !build.by_list) {
        return;
    }
    const std::vector<std::string>& done =
        build.record.steps[std::min(build.record.step, kStepCount) - 1].moves_done;
    for (const ConfirmLine& line : confirm_list(open_step(build), words)) {
        ConfirmRow row{line.text, line.detail, true};
        for (const std::string& move : line.moves) {
            row.done = row.done && std::find(done.begin(), done.end(), move) != done.end();
        }
        if (!row.done && view.list_now < 0) {
            view.list_now = static_cast<int>(view.list.size());
        }
        view.list.push_back(std::move(row));
    }
    if (view.list_now < 0) { // past an adult's move the rest is gone through move by move
        view.list.clear();
        view.can_list = false;
        return;
    }
    view.back = view.back.empty() ? "" : words("confirm.back");
    view.heading = words("confirm.heading");
    view.sentence = words("confirm.sentence");
    view.primary = words("confirm.next");
    view.move_text = open_step(build).title;
}

void fill_proof(MakeView& view, const OpenBuild& build, const AppState& state) {
    const Step& step = open_step(build);
    view.heading = build.words(step.moves.empty() ? "make_view.nothing_to_do" : "make_view.prove_first");
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
    view.primary = build.words("make_view.prove_step", {{"step", static_cast<int>(step.id)}});
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
            build.words("make_view.pads_reached", {{"reached", reached}, {"all", view.pads.size()}});
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
    view.repair = repair_for(build.record.as_built, build.parts, verdict, build.words);
    view.close_up = close_up_for(build.record.as_built, build.parts, verdict);
    view.measure_again = verdict.findings.empty();
    if (view.close_up) {
        view.sentence = build.words("make_view.misses", {{"far", view.close_up->far},
                                                         {"near", view.close_up->near},
                                                         {"gap", build.words.mm(view.close_up->gap_mm)}});
    }
    view.primary = view.repair          ? build.words("make_view.check_again", {{"done", view.repair->done}})
                   : view.measure_again ? build.words("make_view.measure_again")
                                        : build.words("make_view.put_right");
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

std::string brief_title(int step, const Words& words) {
    static const char* const kBrief[] = {
        "make_view.brief_holder", "make_view.brief_pads",   "make_view.brief_minus", "make_view.brief_plus",
        "make_view.brief_patch",  "make_view.brief_lights", "make_view.brief_foam"};
    return step >= 1 && step <= kStepCount ? words(kBrief[step - 1]) : "";
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
        const ReadingVerdict fit = judge_reading(check, *reading, build.words);
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
    view.build = build.words("make_view.build", {{"number", build.shelf.number}});
    view.rail = rail_of(build);
    view.step_text =
        build.words("make_view.step", {{"step", static_cast<int>(step.id)}, {"steps", kStepCount}});
    view.pips = static_cast<int>(step.moves.size());
    view.pip_now = build.move;
    if (build.move > 0) {
        view.back = build.words("make_view.back_to", {{"number", build.move}});
    }
    const Move* move = open_move(build);
    if (build.face == MakeFace::verdict && build.verdict) {
        view.back = build.words("make_view.back");
        fill_verdict(view, build);
    } else if (move != nullptr && build.face == MakeFace::move) {
        view.move_text = build.words("make_view.move", {{"number", build.move + 1}, {"moves", view.pips}});
        fill_move(view, build, *move);
        fill_list(view, build, build.words);
    } else {
        view.move_text = build.words("make_view.all_moves_done");
        fill_proof(view, build, state);
    }
    return view;
}

} // namespace lanternleaf
