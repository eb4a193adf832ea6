// One event as one line of a journal, and back.
#include "cardfile/cardfile.h"
#include "record/event_json.h"
#include "record/journal.h"
#include "record/utc.h"

namespace lanternleaf {

using cardfile::Cursor;
using cardfile::Members;
using cardfile::Tree;

namespace {

// The key under which an event's text stands; null when that kind has none.
const char* text_key(EventKind kind) {
    switch (kind) {
    case EventKind::started:
        return "id";
    case EventKind::audience:
        return "for";
    case EventKind::move_done:
    case EventKind::move_undone:
        return "move";
    case EventKind::verdict:
        return "sentence";
    case EventKind::regardless:
    case EventKind::abandoned:
        return "why";
    case EventKind::finished:
        return "outcome";
    case EventKind::adult:
    case EventKind::cell_in:
    case EventKind::cell_out:
    case EventKind::note:
    case EventKind::mended:
    case EventKind::learnt:
        return "text";
    case EventKind::mend_told:
        return "told";
    case EventKind::photo:
        return "caption";
    case EventKind::photo_removed:
    case EventKind::reading:
    case EventKind::change:
    case EventKind::step_opened:
        return nullptr;
    }
    return nullptr;
}

// Whether an event says nothing without its text.
bool needs_text(EventKind kind) {
    return kind == EventKind::started || kind == EventKind::audience || kind == EventKind::move_done ||
           kind == EventKind::move_undone || kind == EventKind::note || kind == EventKind::mend_told ||
           kind == EventKind::mended || kind == EventKind::learnt;
}

bool needs_step(EventKind kind) {
    return kind == EventKind::move_done || kind == EventKind::move_undone || kind == EventKind::reading ||
           kind == EventKind::verdict || kind == EventKind::regardless || kind == EventKind::step_opened;
}

std::string one_line(const Tree& json) {
    return json.dump(-1, ' ', false, Tree::error_handler_t::replace);
}

void read_started(Members& in, Event& event) {
    read_version(in);
    static_cast<void>(in.need("kind").choice<bool>({{"build", true}}));
    if (const auto walked = in.maybe("walked")) {
        event.walked = flag_from_json(*walked);
    }
    if (const auto batch = in.maybe("batch")) {
        event.batch = batch->name();
    }
    if (const auto maker = in.maybe("maker")) {
        event.maker = maker->name();
    }
    const Cursor card = in.need("card");
    if (!card.value().is_object()) {
        card.refuse("a card");
    }
    event.card = one_line(card.value());
}

Event event_from(const Cursor& json, int line_number) {
    Members in(json);
    if (in.maybe("lanternleaf")) {
        read_version(in); // first of all: whatever else a newer file holds may be meant otherwise
    }
    Event event;
    const Cursor number = in.need("n");
    if (number.integer(1, 100'000'000) != line_number) {
        number.refuse("the running number " + std::to_string(line_number));
    }
    const Cursor name = in.need("event");
    if (!event_kind_from(name.text(), event.kind)) {
        name.refuse("an event that this version knows");
    }
    const Cursor at = in.need("at");
    const std::optional<std::int64_t> at_s = utc_from(at.text());
    if (!at_s) {
        at.refuse("a time such as 2026-05-04T10:00:00Z");
    }
    event.at_s = *at_s;
    if (needs_step(event.kind)) {
        event.step = in.need("step").integer(1, kStepCount);
    } else if (const auto step = in.maybe("step")) {
        event.step = step->integer(0, kStepCount);
    }
    if (const char* key = text_key(event.kind); key != nullptr) {
        if (needs_text(event.kind)) {
            event.text = in.need(key).text();
        } else if (const auto text = in.maybe(key)) {
            event.text = text->text();
        }
    }
    if (event.kind == EventKind::started) {
        read_started(in, event);
    } else if (event.kind == EventKind::audience) {
        static_cast<void>(audience_from_json(in.need("for")));
    } else if (event.kind == EventKind::reading) {
        event.reading = reading_from_json(in.need("reading"));
    } else if (event.kind == EventKind::change) {
        event.change = change_from_json(in.need("change"));
    } else if (event.kind == EventKind::mended) {
        event.fault = in.need("fault").text();
    } else if (event.kind == EventKind::learnt) {
        const Cursor parts = in.need("parts");
        if (!parts.value().is_object()) {
            parts.refuse("a parts file");
        }
        event.parts = one_line(parts.value());
    } else if (event.kind == EventKind::photo || event.kind == EventKind::photo_removed) {
        const Cursor file = in.need("file");
        event.photo = file.text();
        if (!is_photo_name(event.photo)) {
            file.refuse("the name of a picture in the build's folder, such as \"photo-1.jpg\"");
        }
    } else if (event.kind == EventKind::verdict) {
        event.state = in.need("state").choice<VerdictState>(
            {{"proved", VerdictState::proved}, {"stopped", VerdictState::stopped}});
    }
    return event;
}

} // namespace

std::string place_in_journal(const std::string& place, int line_number) {
    const std::string line = "line " + std::to_string(line_number);
    const std::string alone = "line 1";
    if (place.compare(0, alone.size(), alone) == 0) {
        return line + place.substr(alone.size());
    }
    return place.empty() ? line : line + ", " + place;
}

std::string write_event(const Event& event, int number) {
    Tree json = Tree::object();
    if (event.kind == EventKind::started) {
        json["lanternleaf"] = kFileVersion;
        json["kind"] = "build";
    }
    json["n"] = number;
    json["at"] = utc_text(event.at_s);
    json["event"] = name_of(event.kind);
    if (event.step != 0) {
        json["step"] = event.step;
    }
    const char* key = text_key(event.kind);
    if (key != nullptr && (needs_text(event.kind) || !event.text.empty())) {
        json[key] = event.text;
    }
    if (event.kind == EventKind::started) {
        if (event.walked) {
            json["walked"] = true;
        }
        if (!event.batch.empty()) {
            json["batch"] = event.batch;
        }
        if (!event.maker.empty()) {
            json["maker"] = event.maker;
        }
        json["card"] = Tree::parse(event.card, nullptr, false);
    } else if (event.kind == EventKind::reading) {
        json["reading"] = reading_json(event.reading);
    } else if (event.kind == EventKind::change) {
        json["change"] = change_json(event.change);
    } else if (event.kind == EventKind::mended) {
        json["fault"] = event.fault;
    } else if (event.kind == EventKind::learnt) {
        json["parts"] = Tree::parse(event.parts, nullptr, false);
    } else if (event.kind == EventKind::photo || event.kind == EventKind::photo_removed) {
        json["file"] = event.photo;
    } else if (event.kind == EventKind::verdict) {
        json["state"] = name_of(event.state);
    }
    return one_line(json);
}

Outcome<Event> read_event(const std::string& line, const std::string& file, int line_number) {
    try {
        const Tree tree = cardfile::parse_tree(line);
        return event_from(Cursor(tree, ""), line_number);
    } catch (const cardfile::Refused& refused) {
        return Problem{file, place_in_journal(refused.problem.place, line_number), refused.problem.expected};
    }
}

} // namespace lanternleaf
