// One event of a batch as one line, and back.
#include "batch/batch_event.h"
#include "cardfile/cardfile.h"
#include "files/line_file.h"
#include "record/event_json.h"
#include "record/utc.h"

#include <optional>

namespace lanternleaf {

using cardfile::Cursor;
using cardfile::Members;
using cardfile::Tree;

namespace {

BatchEventKind kind_from(const Cursor& name) {
    for (int i = 0; i < kBatchEventKindCount; ++i) {
        const auto kind = static_cast<BatchEventKind>(i);
        if (name.text() == name_of(kind)) {
            return kind;
        }
    }
    name.refuse("an event of a batch that this version knows");
}

bool is_first(BatchEventKind kind) {
    return kind == BatchEventKind::started || kind == BatchEventKind::opened;
}

// The key under which an event's text stands; null when that kind has none.
const char* key_of_text(BatchEventKind kind) {
    switch (kind) {
    case BatchEventKind::started:
    case BatchEventKind::opened:
        return "id";
    case BatchEventKind::joined:
    case BatchEventKind::shown_as:
        return "maker";
    case BatchEventKind::note:
        return "text";
    case BatchEventKind::cells_out:
    case BatchEventKind::cells_back:
    case BatchEventKind::closed:
    case BatchEventKind::reopened:
        break;
    }
    return nullptr;
}

std::string nickname_in(const Cursor& json) {
    if (tidy_nickname(json.text()) != json.text() || json.text().empty()) {
        json.refuse("a nickname of at most 16 characters");
    }
    return json.text();
}

// What the app asks an adult for is in the journal only when an adult answered.
void need_adult(Members& in) {
    const Cursor adult = in.need("adult");
    if (!flag_from_json(adult)) {
        adult.refuse("true: an adult counts the cells");
    }
}

void read_more(Members& in, BatchEvent& event) {
    switch (event.kind) {
    case BatchEventKind::started:
        event.card = in.need("card").name();
        event.title = in.need("title").text();
        event.count = in.need("count").integer(1, kMostInBatch);
        event.purpose =
            in.need("for").choice<BatchFor>({{"repeater", BatchFor::repeater}, {"group", BatchFor::group}});
        event.cells_each = in.need("cells_each").integer(1, 10);
        if (const auto who = in.maybe("audience")) {
            static_cast<void>(audience_from_json(*who));
            event.audience = who->text();
        }
        if (const auto holder = in.maybe("holder")) {
            event.holder = holder->name();
        }
        if (const auto gives = in.maybe("gives_cell")) {
            event.gives_cell = flag_from_json(*gives);
        }
        break;
    case BatchEventKind::joined:
        static_cast<void>(nickname_in(in.need("maker")));
        break;
    case BatchEventKind::shown_as:
        static_cast<void>(nickname_in(in.need("maker")));
        event.as = nickname_in(in.need("as"));
        break;
    case BatchEventKind::cells_out:
    case BatchEventKind::cells_back:
        event.count = in.need("cells").integer(-10 * kMostInBatch, 10 * kMostInBatch);
        need_adult(in);
        break;
    case BatchEventKind::closed:
        event.out = in.need("out").integer(0, 1'000'000);
        event.back = in.need("back").integer(0, 1'000'000);
        event.in_cards = in.need("in_cards").integer(0, 1'000'000);
        event.missing = in.need("missing").integer(-1'000'000, 1'000'000);
        need_adult(in);
        break;
    case BatchEventKind::opened:
    case BatchEventKind::note:
    case BatchEventKind::reopened:
        break;
    }
}

BatchEvent event_from_line(const Cursor& json, int line_number) {
    Members in(json);
    if (in.maybe("lanternleaf") || line_number == 1) {
        read_version(in); // first of all: whatever else a newer file holds may be meant otherwise
    }
    if (line_number == 1) {
        static_cast<void>(in.need("kind").choice<bool>({{"batch", true}}));
    }
    const Cursor number = in.need("n");
    if (number.integer(1, 100'000'000) != line_number) {
        number.refuse("the running number " + std::to_string(line_number));
    }
    BatchEvent event;
    const Cursor name = in.need("event");
    event.kind = kind_from(name);
    if (is_first(event.kind) != (line_number == 1)) {
        name.refuse(line_number == 1 ? "the start of a batch" : "an event after the start of the batch");
    }
    const Cursor at = in.need("at");
    const std::optional<std::int64_t> at_s = utc_from(at.text());
    if (!at_s) {
        at.refuse("a time such as 2026-05-04T10:00:00Z");
    }
    event.at_s = *at_s;
    if (const char* key = key_of_text(event.kind)) {
        const Cursor text = in.need(key);
        event.text = text.text();
        if (is_first(event.kind) && !is_batch_id(event.text)) {
            text.refuse("a batch's id of small letters, digits and dashes");
        }
    }
    read_more(in, event);
    return event;
}

} // namespace

std::string write_batch_event(const BatchEvent& event, int number) {
    Tree json = Tree::object();
    if (is_first(event.kind)) {
        json["lanternleaf"] = kFileVersion;
        json["kind"] = "batch";
    }
    json["n"] = number;
    json["at"] = utc_text(event.at_s);
    json["event"] = name_of(event.kind);
    if (const char* key = key_of_text(event.kind)) {
        json[key] = event.text;
    }
    switch (event.kind) {
    case BatchEventKind::started:
        json["card"] = event.card;
        json["title"] = event.title;
        json["count"] = event.count;
        json["for"] = name_of(event.purpose);
        json["cells_each"] = event.cells_each;
        if (!event.audience.empty()) {
            json["audience"] = event.audience;
        }
        if (!event.holder.empty()) {
            json["holder"] = event.holder;
        }
        if (!event.gives_cell) {
            json["gives_cell"] = false;
        }
        break;
    case BatchEventKind::shown_as:
        json["as"] = event.as;
        break;
    case BatchEventKind::cells_out:
    case BatchEventKind::cells_back:
        json["cells"] = event.count;
        json["adult"] = true;
        break;
    case BatchEventKind::closed:
        json["out"] = event.out;
        json["back"] = event.back;
        json["in_cards"] = event.in_cards;
        json["missing"] = event.missing;
        json["adult"] = true;
        break;
    case BatchEventKind::opened:
    case BatchEventKind::joined:
    case BatchEventKind::note:
    case BatchEventKind::reopened:
        break;
    }
    return json.dump(-1, ' ', false, Tree::error_handler_t::replace);
}

Outcome<BatchEvent> read_batch_event(const std::string& line, const std::string& file, int line_number) {
    try {
        const Tree tree = cardfile::parse_tree(line);
        return event_from_line(Cursor(tree, ""), line_number);
    } catch (const cardfile::Refused& refused) {
        return Problem{file, place_in_journal(refused.problem.place, line_number), refused.problem.expected};
    }
}

Outcome<std::vector<BatchEvent>> read_batch_journal(const std::string& text, const std::string& file) {
    const std::size_t end = whole_lines_end(text);
    std::vector<BatchEvent> events;
    for (std::size_t start = 0; start < end;) {
        const std::size_t newline = text.find('\n', start);
        Outcome<BatchEvent> event =
            read_batch_event(text.substr(start, newline - start), file, static_cast<int>(events.size()) + 1);
        if (!event) {
            return event.problem();
        }
        events.push_back(std::move(event).value());
        start = newline + 1;
    }
    return events;
}

} // namespace lanternleaf
