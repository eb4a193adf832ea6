// Short builders for builds in tests: the events of one build of the sample card, one of every kind. Exists
// so that tests of journals, records and crashes speak of the same build.
#pragma once

#include "cardfile/cardfile.h"
#include "record/journal.h"
#include "support/make_card.h"

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <unistd.h>
#include <vector>

namespace lanternleaf::make {

inline constexpr std::int64_t kMorning_s = 1777888800; // 2026-05-04T10:00:00Z

inline Event started(const Card& card, const std::string& id = "one-window-20260504-100000") {
    Event event = event_at(kMorning_s, EventKind::started, 0, id);
    event.card = write_card(card);
    return event;
}

inline Event verdict(int step, VerdictState state, const std::string& sentence = "as measured") {
    Event event = event_at(kMorning_s + 60 * step, EventKind::verdict, step, sentence);
    event.state = state;
    return event;
}

inline Event moved(int step, const std::string& move) {
    return event_at(kMorning_s + 60 * step, EventKind::move_done, step, move);
}

inline Event measured(int step, const std::string& check, double value) {
    Event event = event_at(kMorning_s, EventKind::reading, step);
    event.reading.check = check;
    event.reading.value = value;
    return event;
}

inline Event changed(int step, Change change) {
    Event event = event_at(kMorning_s, EventKind::change, step);
    event.change = std::move(change);
    return event;
}

inline Change change_of(ChangeKind kind, const std::string& part) {
    Change change;
    change.kind = kind;
    change.part = part;
    return change;
}

/// One event of every kind, in an order that can be.
inline std::vector<Event> every_event() {
    std::vector<Event> events = {started(sample_card()),
                                 event_at(kMorning_s, EventKind::audience, 0, "class"),
                                 event_at(kMorning_s, EventKind::step_opened, 1),
                                 moved(1, "1/holder/measure"),
                                 moved(1, "1/holder/press"),
                                 event_at(kMorning_s, EventKind::move_undone, 1, "1/holder/press")};
    for (int step = 1; step <= 5; ++step) {
        events.push_back(verdict(step, VerdictState::proved));
    }
    Event open = event_at(kMorning_s, EventKind::reading, 4);
    open.reading.check = "flap-to-bed";
    open.reading.open = true;
    Event lights = event_at(kMorning_s, EventKind::reading, 6);
    lights.reading.check = "lights";
    lights.reading.seen = {{"L1", "dim", 0.125}};
    lights.reading.meter = false;
    lights.reading.simulated = true;
    Event look = event_at(kMorning_s, EventKind::reading, 5);
    look.reading.check = "burnished";
    look.reading.yes = false;
    look.reading.meter = false;
    Change tear = change_of(ChangeKind::tear, "S1");
    tear.at_mm = {60, 50.125};
    tear.mm = 1.5;
    Event mended = event_at(kMorning_s, EventKind::mended, 6, "L1 lies the wrong way round");
    mended.fault = "led-turned";
    Event photo = event_at(kMorning_s, EventKind::photo, 4, "Traces, \"before\"");
    photo.photo = "photo-1.jpg";
    Event taken_away = event_at(kMorning_s, EventKind::photo_removed);
    taken_away.photo = "photo-1.jpg";
    Event learnt = event_at(kMorning_s, EventKind::learnt, 4, "The glue of copper 5 conducts.");
    learnt.parts =
        R"({"lanternleaf":1,"kind":"parts","tapes":{"copper-5":{"width_mm":5,"ohm_per_square":0.0005,)"
        R"("adhesive":"conductive","joint_ohm_mm2":40,"measured_at":"2026-05-04T10:00:00Z",)"
        R"("source":"measured"}}})";
    for (const Event& event :
         {photo,
          taken_away,
          learnt,
          event_at(kMorning_s, EventKind::mend_told, 6, "light dark L1"),
          mended,
          open,
          look,
          measured(3, "bed-to-L1-", 0.1),
          changed(6, change_of(ChangeKind::led_turned, "L1")),
          changed(4, tear),
          event_at(kMorning_s, EventKind::adult, 6),
          event_at(kMorning_s, EventKind::cell_in, 6),
          lights,
          verdict(6, VerdictState::stopped, "L1 is dark."),
          event_at(kMorning_s, EventKind::cell_out, 6),
          event_at(kMorning_s, EventKind::regardless, 6, "for the display case"),
          event_at(kMorning_s, EventKind::note, 0, "Grün, \"quoted\",\nand a second line \xF0\x9F\x92\xA1"),
          event_at(kMorning_s, EventKind::regardless, 7),
          event_at(kMorning_s, EventKind::finished, 0, "0 of 1 lit"),
          event_at(kMorning_s, EventKind::note, 0, "after the end")}) {
        events.push_back(event);
    }
    return events;
}

/// The journal's text, as adding the events one by one would write it.
inline std::string journal_text(const std::vector<Event>& events) {
    std::string text;
    int number = 0;
    for (const Event& event : events) {
        text += write_event(event, ++number) + "\n";
    }
    return text;
}

/// A folder of this test's own, emptied before and taken away after.
class TempFolder {
public:
    explicit TempFolder(const std::string& name)
        : path_(std::filesystem::temp_directory_path() / (name + "-" + std::to_string(::getpid()))) {
        std::filesystem::remove_all(path_);
        std::filesystem::create_directories(path_);
    }

    ~TempFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }

    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;

    [[nodiscard]] std::string at(const std::string& name) const { return (path_ / name).string(); }

private:
    std::filesystem::path path_;
};

inline void put_file(const std::string& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

inline std::string get_file(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

} // namespace lanternleaf::make
