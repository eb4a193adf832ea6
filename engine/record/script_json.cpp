#include "record/event_json.h"
#include "record/script.h"

namespace lanternleaf {

using cardfile::Cursor;
using cardfile::Members;
using cardfile::Tree;

namespace {

constexpr std::size_t kMostItems = 10'000;

void refuse_unknown(const Cursor& object, const Members& in) {
    const std::string left = in.extras();
    if (!left.empty()) {
        object.refuse_saying("expected only keys that a script has, found also " +
                             cardfile::shortened(left, 60));
    }
}

std::vector<Change> changes_from(Members& in, const char* key) {
    std::vector<Change> changes;
    if (const auto list = in.maybe(key)) {
        for (const Cursor& one : list->items(kMostItems, "changes")) {
            changes.push_back(change_from_json(one));
        }
    }
    return changes;
}

Observed observed_from(Members& in) {
    Observed observed;
    if (const auto list = in.maybe("readings")) {
        for (const Cursor& one : list->items(kMostItems, "readings")) {
            observed.readings.push_back(reading_from_json(one));
        }
    }
    if (const auto seen = in.maybe("seen")) {
        for (const auto& [led, state] : cardfile::entries(*seen, kMostItems)) {
            observed.seen.push_back({led, light_state_from_json(state), 0.0});
        }
    }
    return observed;
}

void read_if_stopped(const Cursor& json, ScriptStep& step) {
    Members in(json);
    step.fixes = changes_from(in, "fixes");
    step.observed_after = observed_from(in);
    if (const auto why = in.maybe("regardless")) {
        step.regardless = why->text();
    }
    refuse_unknown(json, in);
}

void read_step(const Cursor& json, BuildScript& script) {
    Members in(json);
    const Cursor number = in.need("step");
    ScriptStep& step = script.steps[number.integer(1, kStepCount) - 1];
    if (step.given) {
        number.refuse("each step once");
    }
    step.given = true;
    if (const auto note = in.maybe("note")) {
        step.note = note->text();
    }
    step.changes = changes_from(in, "changes");
    step.observed = observed_from(in);
    if (const auto stopped = in.maybe("if_stopped")) {
        read_if_stopped(*stopped, step);
    }
    refuse_unknown(json, in);
}

BuildScript script_from(const Cursor& json, const std::string& file) {
    Members in(json);
    read_version(in);
    static_cast<void>(in.need("kind").choice<bool>({{"script", true}}));
    BuildScript script;
    script.file = file;
    if (const auto who = in.maybe("for")) {
        script.audience = audience_from_json(*who);
    }
    static_cast<void>(in.maybe("$schema"));
    static_cast<void>(in.maybe("note"));
    if (const auto steps = in.maybe("steps")) {
        for (const Cursor& one : steps->items(kStepCount, "steps")) {
            read_step(one, script);
        }
    }
    refuse_unknown(json, in);
    return script;
}

} // namespace

Outcome<BuildScript> read_script(const std::string& text, const std::string& file) {
    try {
        const Tree tree = cardfile::parse_tree(text);
        return script_from(Cursor(tree, ""), file);
    } catch (const cardfile::Refused& refused) {
        return Problem{file, refused.problem.place, refused.problem.expected};
    }
}

} // namespace lanternleaf
