#include "model/library.h"

#include "cardfile/cardfile.h"
#include "files/files.h"
#include "record/journal.h"
#include "record/utc.h"

#include <algorithm>
#include <map>

namespace lanternleaf {

namespace {

const char* const kCardEnding = ".card.json";
const char* const kJournalEnding = ".build.jsonl";

std::string builds_folder(const Surroundings& around) {
    return around.library + "/builds";
}

// "20260504-100000": the moment of starting as it stands in file names, so that they sort by time.
std::string stamp(std::int64_t seconds) {
    std::string text;
    for (const char c : utc_text(seconds)) {
        if (c >= '0' && c <= '9') {
            text += text.size() == 8 ? std::string("-") + c : std::string(1, c);
        }
    }
    return text;
}

// Where "-YYYYMMDD-HHMMSS" begins in a build's id; its length when there is none.
std::size_t date_in(const std::string& id) {
    static const std::string kForm = "-dddddddd-dddddd";
    for (std::size_t at = id.size() < kForm.size() ? 0 : id.size() - kForm.size() + 1; at-- > 0;) {
        const auto fits = [](char c, char form) { return form == '-' ? c == '-' : c >= '0' && c <= '9'; };
        if (std::equal(kForm.begin(), kForm.end(), id.begin() + static_cast<std::ptrdiff_t>(at),
                       [&](char form, char c) { return fits(c, form); })) {
            return at;
        }
    }
    return id.size();
}

std::string front_picture(const std::string& folder, const std::string& name) {
    const std::string front = name + "-front.png";
    const std::vector<std::string> there = files_in(folder, front);
    return std::find(there.begin(), there.end(), front) == there.end() ? "" : folder + "/" + front;
}

void add_cards(const Surroundings& around, const std::string& folder, const std::vector<ShelfBuild>& builds,
               std::vector<ShelfCard>& out) {
    for (const std::string& file : files_in(folder, kCardEnding)) {
        ShelfCard shelf;
        shelf.path = folder + "/" + file;
        shelf.name = card_name(file);
        shelf.picture = front_picture(folder, shelf.name);
        const auto same = [&shelf](const ShelfCard& other) { return other.name == shelf.name; };
        if (std::any_of(out.begin(), out.end(), same)) {
            continue; // the maker's own card of that name stands in for the shipped one
        }
        const Outcome<OpenCard> card = open_card(shelf.path, around.shipped);
        if (card) {
            shelf.title = card.value().card.title;
            shelf.lights = static_cast<int>(card.value().card.leds.size());
            shelf.problems = review(card.value().card, card.value().parts).count(Level::problem);
        } else {
            shelf.title = shelf.name;
            shelf.trouble = card.problem().sentence();
        }
        shelf.times_built =
            static_cast<int>(std::count_if(builds.begin(), builds.end(), [&shelf](const ShelfBuild& build) {
                return build.finished && build.card_name == shelf.name;
            }));
        out.push_back(std::move(shelf));
    }
}

Outcome<std::vector<Event>> events_of(const std::string& path) {
    Outcome<std::string> text = read_file(path);
    if (!text) {
        return text.problem();
    }
    return read_journal(text.value(), path);
}

} // namespace

std::string card_name(const std::string& path) {
    const std::size_t slash = path.find_last_of('/');
    std::string name = slash == std::string::npos ? path : path.substr(slash + 1);
    const std::size_t ending = name.rfind(kCardEnding);
    return ending == std::string::npos ? name : name.substr(0, ending);
}

std::vector<ShelfCard> list_cards(const Surroundings& around, const std::vector<ShelfBuild>& builds) {
    std::vector<ShelfCard> cards;
    add_cards(around, around.library + "/cards", builds, cards);
    add_cards(around, around.assets + "/cards", builds, cards);
    return cards;
}

std::vector<ShelfBuild> list_builds(const Surroundings& around) {
    std::vector<ShelfBuild> builds;
    const std::string folder = builds_folder(around);
    for (const std::string& file : files_in(folder, kJournalEnding)) {
        ShelfBuild shelf;
        shelf.path = folder + "/" + file;
        shelf.id = file.substr(0, file.size() - std::char_traits<char>::length(kJournalEnding));
        // An id is NAME-YYYYMMDD-HHMMSS, perhaps with -2 behind it: the card's name is what stands before the
        // date.
        shelf.card_name = shelf.id.substr(0, date_in(shelf.id));
        shelf.title = shelf.card_name;
        const Outcome<std::vector<Event>> events = events_of(shelf.path);
        if (!events) {
            shelf.trouble = events.problem().sentence();
        } else if (const Outcome<Record> record = fold(events.value(), around.shipped); !record) {
            shelf.trouble = record.problem().sentence();
        } else {
            if (record.value().abandoned) {
                continue;
            }
            shelf.title = record.value().title;
            shelf.step = record.value().step;
            shelf.finished = record.value().finished;
            shelf.started_s = record.value().started_s;
            shelf.last_s = events.value().empty() ? 0 : events.value().back().at_s;
        }
        for (const std::string& place : {around.library + "/cards", around.assets + "/cards"}) {
            if (shelf.picture.empty()) {
                shelf.picture = front_picture(place, shelf.card_name);
                shelf.card_folder = place;
            }
        }
        builds.push_back(std::move(shelf));
    }
    std::sort(builds.begin(), builds.end(), [](const ShelfBuild& a, const ShelfBuild& b) {
        return a.started_s != b.started_s ? a.started_s < b.started_s : a.id < b.id;
    });
    std::map<std::string, int> made;
    for (ShelfBuild& build : builds) {
        build.number = ++made[build.card_name];
    }
    std::reverse(builds.begin(), builds.end());
    return builds;
}

Outcome<std::string> start_build(const Surroundings& around, const std::string& card_path, Audience audience,
                                 const AudienceChoice& way, const Card* plan) {
    const Outcome<OpenCard> card = open_card(card_path, around.shipped);
    if (!card) {
        return card.problem();
    }
    for (const std::string& folder : {around.library, builds_folder(around)}) {
        if (const Outcome<Done> made = make_folder(folder); !made) {
            return made.problem();
        }
    }
    const std::vector<std::string> there = files_in(builds_folder(around), kJournalEnding);
    const std::string first_id = card_name(card_path) + "-" + stamp(around.now_s);
    std::string id = first_id;
    for (int again = 2; std::find(there.begin(), there.end(), id + kJournalEnding) != there.end(); ++again) {
        id = first_id + "-" + std::to_string(again);
    }
    const std::string path = builds_folder(around) + "/" + id + kJournalEnding;
    Outcome<JournalFile> journal = JournalFile::open(path);
    if (!journal) {
        return journal.problem();
    }
    std::vector<Event> events(2);
    events[0].kind = EventKind::started;
    events[0].text = id;
    events[0].card = write_card(plan != nullptr ? *plan : card.value().card);
    events[1].kind = EventKind::audience;
    events[1].text = name_of(audience);
    if (plan == nullptr && !way.holder.empty() && way.holder != card.value().card.holder.type) {
        Event change;
        change.kind = EventKind::change;
        change.step = 1;
        change.change.kind = ChangeKind::holder_swapped;
        change.change.type = way.holder;
        events.push_back(change);
    }
    if (!way.gives_cell) {
        Event note;
        note.kind = EventKind::note;
        note.text = "The card is given without its cell.";
        events.push_back(note);
    }
    for (Event& event : events) {
        event.at_s = around.now_s;
        if (const Outcome<Done> added = journal.value().add(event); !added) {
            return added.problem();
        }
    }
    return path;
}

Outcome<OpenBuild> open_build(const Surroundings& around, const ShelfBuild& shelf) {
    Outcome<std::vector<Event>> events = events_of(shelf.path);
    if (!events) {
        return events.problem();
    }
    Outcome<Record> record = fold(events.value(), around.shipped);
    if (!record) {
        return record.problem();
    }
    OpenBuild build;
    build.shelf = shelf;
    build.record = std::move(record).value();
    build.events = std::move(events).value();
    build.parts = merged(around.shipped, build.record.card.own_parts);
    derive(build);
    return build;
}

Outcome<Done> confirm(const Surroundings& around, OpenBuild& build, Event event) {
    event.at_s = around.now_s;
    Record next = build.record;
    if (const Outcome<Done> fits = apply_event(next, build.parts, event); !fits) {
        return fits.problem();
    }
    Outcome<JournalFile> journal = JournalFile::open(build.shelf.path);
    if (!journal) {
        return journal.problem();
    }
    if (const Outcome<Done> added = journal.value().add(event); !added) {
        return added.problem();
    }
    build.record = std::move(next);
    build.events.push_back(std::move(event));
    derive(build);
    return Done{};
}

void derive(OpenBuild& build) {
    build.steps = make_steps(build.record.as_built, build.parts);
    build.whole = find_conductors(build.record.as_built, build.parts);
    const int step = std::min(build.record.step, kStepCount);
    build.now =
        review(card_after(build.record.as_built, build.parts, static_cast<StepId>(step)), build.parts);
    const std::vector<Move>& moves = build.steps[static_cast<std::size_t>(step - 1)].moves;
    const std::vector<std::string>& done = build.record.steps[step - 1].moves_done;
    build.move = 0;
    while (build.move < static_cast<int>(moves.size()) &&
           std::find(done.begin(), done.end(), moves[static_cast<std::size_t>(build.move)].id) !=
               done.end()) {
        ++build.move;
    }
}

} // namespace lanternleaf
