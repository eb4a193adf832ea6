#include "history/lessons.h"

#include "base/readout.h"
#include "guide/sequence.h"
#include "history/story.h"

#include <algorithm>
#include <optional>

namespace lanternleaf {

namespace {

// Where a change stands: the kind of move at which the hands could do otherwise.
std::optional<MoveKind> move_of(ChangeKind kind) {
    switch (kind) {
    case ChangeKind::joint_cut:
        return MoveKind::fold;
    case ChangeKind::tear:
    case ChangeKind::bridged:
        return MoveKind::run;
    case ChangeKind::tape_swapped:
    case ChangeKind::strip_moved:
        return MoveKind::start_strip;
    case ChangeKind::led_turned:
    case ChangeKind::led_swapped:
    case ChangeKind::led_moved:
        return MoveKind::place_led;
    case ChangeKind::patch_missing:
    case ChangeKind::patch_moved:
        return MoveKind::patch;
    case ChangeKind::patch_added:
        return MoveKind::carry_across;
    case ChangeKind::cells_stacked:
    case ChangeKind::cell_upside_down:
    case ChangeKind::cell_swapped:
        return MoveKind::cell_in;
    case ChangeKind::foam_layers:
        return MoveKind::foam;
    case ChangeKind::holder_swapped:
        return std::nullopt; // chosen with the answer to who will have the card: no slip to learn from
    }
    return std::nullopt;
}

bool has_place(ChangeKind kind) {
    return kind == ChangeKind::joint_cut || kind == ChangeKind::tear || kind == ChangeKind::bridged ||
           kind == ChangeKind::patch_added;
}

std::string words_of(const Change& change, int times, const Words& words) {
    const std::string& part = change.part;
    const bool back = times % 2 == 0; // turned twice lies as planned: laid the wrong way round and put right
    const char* key = "";
    switch (change.kind) {
    case ChangeKind::joint_cut:
        key = "history.joint_cut";
        break;
    case ChangeKind::tear:
        key = "history.tear";
        break;
    case ChangeKind::bridged:
        key = "history.bridged";
        break;
    case ChangeKind::tape_swapped:
        key = "history.tape_swapped";
        break;
    case ChangeKind::strip_moved:
        key = "history.strip_moved";
        break;
    case ChangeKind::led_turned:
        key = back ? "history.led_turned_back" : "history.led_turned";
        break;
    case ChangeKind::led_swapped:
        key = "history.led_swapped";
        break;
    case ChangeKind::led_moved:
        key = "history.led_moved";
        break;
    case ChangeKind::patch_missing:
        key = "history.patch_missing";
        break;
    case ChangeKind::patch_moved:
        key = "history.patch_moved";
        break;
    case ChangeKind::patch_added:
        key = part.empty() ? "history.patch_added_tape" : "history.patch_added";
        break;
    case ChangeKind::cells_stacked:
        key = "history.cells_put_in";
        break;
    case ChangeKind::cell_upside_down:
        key = back ? "history.cell_turned_back" : "history.cell_turned";
        break;
    case ChangeKind::cell_swapped:
        key = "history.cell_swapped";
        break;
    case ChangeKind::foam_layers:
        key = "history.foam_layers";
        break;
    case ChangeKind::holder_swapped:
        return {};
    }
    return words(key, {{"part", part}, {"type", change.type}, {"n", change.count}});
}

std::string part_of(const Change& change) {
    switch (change.kind) {
    case ChangeKind::cells_stacked:
    case ChangeKind::cell_upside_down:
    case ChangeKind::cell_swapped:
        return "cell";
    case ChangeKind::foam_layers:
        return "foam";
    default:
        return change.part;
    }
}

void add_changes(const Record& record, const Words& words, std::vector<Lesson>& out) {
    for (const ChangeMade& made : record.changes) {
        const std::optional<MoveKind> kind = move_of(made.change.kind);
        if (!kind) {
            continue;
        }
        Lesson lesson;
        lesson.kind = *kind;
        lesson.part = part_of(made.change);
        lesson.step = step_of(made.change.kind, record.card, made.change.part);
        lesson.has_place = has_place(made.change.kind);
        lesson.at_mm = made.change.at_mm;
        lesson.topic = std::string(name_of(made.change.kind)) + " " + lesson.part;
        if (lesson.has_place) { // a strip may tear in two places
            for (const double mm : {lesson.at_mm.x, lesson.at_mm.y}) {
                lesson.topic += ' ';
                lesson.topic += readout_number(mm / 10.0, 0);
            }
        }
        const auto same = [&](const Lesson& one) { return one.topic == lesson.topic; };
        const auto there = std::find_if(out.begin(), out.end(), same);
        const auto times =
            std::count_if(record.changes.begin(), record.changes.end(), [&](const ChangeMade& other) {
                return other.change.kind == made.change.kind && other.change.part == made.change.part;
            });
        lesson.words = words_of(made.change, static_cast<int>(times), words);
        if (there == out.end()) {
            out.push_back(std::move(lesson));
        } else {
            *there = std::move(lesson);
        }
    }
}

// What was found in Mend between two moments, in words; empty when nothing was.
std::string mended_between(const Record& record, std::int64_t from_s, std::int64_t to_s) {
    std::string text;
    for (const MendMade& made : record.mends) {
        if (made.at_s >= from_s && made.at_s <= to_s) {
            text = made.text;
        }
    }
    return text;
}

// A reading that was off at first and as expected at last.
void add_readings(const Record& record, const std::vector<Event>& events, const std::vector<Step>& steps,
                  const Words& words, std::vector<Lesson>& out) {
    struct Off {
        std::string check;
        std::string value;
        std::int64_t at_s = 0;
    };

    std::vector<Off> offs;
    for (const Event& event : events) {
        if (event.kind != EventKind::reading || event.reading.simulated || event.step < 1 ||
            event.step > kStepCount) {
            continue;
        }
        const Check* check = check_in(steps[static_cast<std::size_t>(event.step - 1)], event.reading.check);
        if (check == nullptr || (check->kind != CheckKind::resistance && check->kind != CheckKind::open)) {
            continue;
        }
        const StoryReading told = tell_reading(event.reading, check, words);
        const auto before = std::find_if(offs.begin(), offs.end(),
                                         [&](const Off& one) { return one.check == event.reading.check; });
        if (!told.fits && before == offs.end()) {
            offs.push_back({event.reading.check, told.value, event.at_s});
        } else if (told.fits && before != offs.end()) {
            const std::string mended = mended_between(record, before->at_s, event.at_s);
            Lesson lesson;
            lesson.step = event.step;
            lesson.kind = MoveKind::run;
            lesson.check = event.reading.check;
            lesson.part = check->to.substr(0, check->to.find_first_of("+-."));
            lesson.topic = "reading " + event.reading.check;
            lesson.words = words(mended.empty() ? "history.read_at_first" : "history.read_at_first_mended",
                                 {{"check", check->title},
                                  {"before", before->value},
                                  {"mended", mended},
                                  {"after", told.value}});
            out.push_back(std::move(lesson));
            offs.erase(before);
        }
    }
}

// Words of a sentence that are ids of the card: "S2" in "S2 hardly touches S1".
std::vector<std::string> parts_named(const std::string& text, const Card& card) {
    std::vector<std::string> ids;
    for (const Led& led : card.leds) {
        ids.push_back(led.id);
    }
    for (const Laid& laid : card.laid) {
        std::visit([&](const auto& one) { ids.push_back(one.id); }, laid);
    }
    for (const ResistorPart& resistor : card.resistors) {
        ids.push_back(resistor.id);
    }
    std::vector<std::string> named;
    std::string word;
    for (const char c : text + " ") {
        if ((c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_') {
            word += c;
        } else {
            if (std::find(ids.begin(), ids.end(), word) != ids.end()) {
                named.push_back(word);
            }
            word.clear();
        }
    }
    return named;
}

MoveKind move_of_fault(const std::string& fault) {
    const std::string first = fault.substr(0, fault.find(' '));
    if (first == "joint-loose" || first == "glue-plain") {
        return MoveKind::joint;
    }
    if (first == "crossing-bare" || first == "sides-touch") {
        return MoveKind::patch;
    }
    if (first.rfind("led-", 0) == 0 || first == "pad-loose") {
        return MoveKind::place_led;
    }
    if (first.rfind("cell-", 0) == 0 || first == "tab-left") {
        return MoveKind::cell_in;
    }
    return first == "contact-loose" ? MoveKind::start_strip : MoveKind::run;
}

void add_mends(const Record& record, const Words& words, std::vector<Lesson>& out) {
    for (const MendMade& made : record.mends) {
        Lesson lesson;
        lesson.kind = move_of_fault(made.fault);
        const std::vector<std::string> named = parts_named(made.text, record.as_built);
        if (lesson.kind == MoveKind::cell_in) {
            lesson.part = "cell";
        } else if (!named.empty()) {
            lesson.part = named.front();
        } else {
            continue;
        }
        lesson.topic = "mended " + made.fault + " " + lesson.part;
        lesson.words = words("history.this_was_mended", {{"what", made.text}});
        // What was found is told once: the turning that goes with it adds nothing.
        const auto told = [&](const Lesson& one) {
            return one.part == lesson.part && one.kind == lesson.kind && one.check.empty();
        };
        out.erase(std::remove_if(out.begin(), out.end(), told), out.end());
        out.push_back(std::move(lesson));
    }
}

} // namespace

std::vector<Lesson> lessons_of(const Record& record, const std::vector<Event>& events, const Parts& shipped,
                               const Words& words) {
    std::vector<Lesson> lessons;
    if (record.walked) {
        return lessons;
    }
    // Readings are held against the plan: that is what the next build will be held against too.
    const std::vector<Step> steps = make_steps(record.card, merged(shipped, record.card.own_parts), words);
    add_changes(record, words, lessons);
    add_mends(record, words, lessons);
    add_readings(record, events, steps, words, lessons);
    return lessons;
}

} // namespace lanternleaf
