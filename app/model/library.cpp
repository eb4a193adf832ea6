#include "model/library.h"

#include "cardfile/cardfile.h"
#include "files/files.h"
#include "learn/own_parts.h"
#include "model/device_tag.h"
#include "record/journal.h"
#include "record/utc.h"

#include <algorithm>

namespace lanternleaf {

namespace {

const char* const kCardEnding = ".card.json";
const char* const kJournalEnding = ".build.jsonl";
constexpr int kMostInOneSecond = 1000;

std::string builds_folder(const Surroundings& around) {
    return around.library + "/builds";
}

std::string front_picture(const std::string& folder, const std::string& name) {
    const std::string front = name + "-front.png";
    const std::vector<std::string> there = files_in(folder, front);
    return std::find(there.begin(), there.end(), front) == there.end() ? "" : folder + "/" + front;
}

void add_cards(const Parts& known, const std::string& folder, const std::vector<ShelfBuild>& builds,
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
        const Outcome<OpenCard> card = open_card(shelf.path, known);
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

std::string id_of(const std::string& path) {
    const std::string file = path.substr(path.find_last_of('/') + 1);
    return file.substr(0, file.size() - std::char_traits<char>::length(kJournalEnding));
}

// A journal that nobody has yet: made only when it was not there, so that two programs that start the same
// card in the same second get two builds; the tag does the same for two devices.
Outcome<JournalFile> new_journal(const Surroundings& around, const std::string& name) {
    const std::string tag = device_tag(around);
    const std::string first =
        builds_folder(around) + "/" + name + "-" + stamp(around.now_s) + (tag.empty() ? "" : "-" + tag);
    for (int again = 1;; ++again) {
        const std::string path = first + (again == 1 ? "" : "-" + std::to_string(again)) + kJournalEnding;
        Outcome<JournalFile> journal = JournalFile::create(path);
        if (journal || again == kMostInOneSecond || !path_exists(path)) {
            return journal;
        }
    }
}

} // namespace

Parts known_parts(const Surroundings& around) {
    return merged(around.shipped, load_own_parts(around.library, around.shipped).parts);
}

std::string stamp(std::int64_t seconds) {
    std::string text;
    for (const char c : utc_text(seconds)) {
        if (c >= '0' && c <= '9') {
            text += text.size() == 8 ? std::string("-") + c : std::string(1, c);
        }
    }
    return text;
}

std::string card_name(const std::string& path) {
    const std::size_t slash = path.find_last_of('/');
    std::string name = slash == std::string::npos ? path : path.substr(slash + 1);
    const std::size_t ending = name.rfind(kCardEnding);
    return ending == std::string::npos ? name : name.substr(0, ending);
}

std::vector<ShelfCard> list_cards(const Surroundings& around, const std::vector<ShelfBuild>& builds) {
    std::vector<ShelfCard> cards;
    const Parts known = known_parts(around);
    add_cards(known, around.library + "/cards", builds, cards);
    add_cards(known, around.assets + "/cards", builds, cards);
    return cards;
}

Outcome<std::string> start_build(const Surroundings& around, const std::string& card_path, Audience audience,
                                 const AudienceChoice& way, const Membership& of, const Card* plan) {
    const Parts known = known_parts(around);
    const Outcome<OpenCard> card = open_card(card_path, known);
    if (!card) {
        return card.problem();
    }
    Card planned = plan != nullptr ? *plan : card.value().card;
    planned.own_parts = carried_by(planned, known); // the build must be understood without this library
    for (const std::string& folder : {around.library, builds_folder(around)}) {
        if (const Outcome<Done> made = make_folder(folder); !made) {
            return made.problem();
        }
    }
    Outcome<JournalFile> journal = new_journal(around, card_name(card_path));
    if (!journal) {
        return journal.problem();
    }
    const std::string path = journal.value().path();
    std::vector<Event> events(2);
    events[0].kind = EventKind::started;
    events[0].text = id_of(path);
    events[0].batch = of.batch;
    events[0].maker = of.maker;
    events[0].card = write_card(planned);
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
        note.text = english()("model.without_cell");
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
    build.words = around.words;
    derive(build);
    return build;
}

Outcome<OpenBuild> take_up_build(const Surroundings& around, const ShelfBuild& shelf) {
    // The lock first, then the reading: what is read can then no longer be out of date.
    Outcome<JournalFile> journal = JournalFile::open(shelf.path);
    Outcome<OpenBuild> build = open_build(around, shelf);
    if (!build) {
        return build;
    }
    if (journal) {
        build.value().journal = std::make_shared<JournalFile>(std::move(journal).value());
    } else {
        build.value().looking_only =
            journal.problem().expected == kJournalBusy
                ? around.words("model.looking_only")
                : around.words("model.looking_only_because", {{"problem", journal.problem().sentence()}});
    }
    return build;
}

Outcome<Done> confirm(const Surroundings& around, OpenBuild& build, Event event) {
    if (!build.looking_only.empty()) {
        return Problem{"", "", build.looking_only};
    }
    event.at_s = around.now_s;
    Record next = build.record;
    if (const Outcome<Done> fits = apply_event(next, build.parts, event); !fits) {
        return fits.problem();
    }
    std::shared_ptr<JournalFile> journal = build.journal;
    if (!journal) {
        Outcome<JournalFile> opened = JournalFile::open(build.shelf.path);
        if (!opened) {
            return opened.problem();
        }
        journal = std::make_shared<JournalFile>(std::move(opened).value());
    }
    if (journal->count() != static_cast<int>(build.events.size())) {
        return Problem{build.shelf.path, "", "has gone on since it was opened here; open the build again"};
    }
    if (const Outcome<Done> added = journal->add(event); !added) {
        return added.problem();
    }
    build.record = std::move(next);
    build.parts = merged(around.shipped, build.record.card.own_parts); // more may have been learnt
    build.events.push_back(std::move(event));
    derive(build);
    return Done{};
}

void derive(OpenBuild& build) {
    build.steps = make_steps(build.record.as_built, build.parts, build.words);
    build.whole = find_conductors(build.record.as_built, build.parts);
    const int step = std::min(build.record.step, kStepCount);
    build.now = review(card_after(build.record.as_built, build.parts, static_cast<StepId>(step)), build.parts,
                       build.words);
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
