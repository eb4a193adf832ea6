// Photos in a build's journal: kept, removed, and never a way out of the build's folder.
#include "support/make_build.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

Event photo(const std::string& file, EventKind kind = EventKind::photo) {
    Event event = event_at(make::kMorning_s, kind, kind == EventKind::photo ? 4 : 0);
    event.photo = file;
    event.text = kind == EventKind::photo ? "Traces" : "";
    return event;
}

} // namespace

TEST_CASE("A photo stays in the record until it is removed", "[record]") {
    Outcome<Record> record = fold({make::started(make::sample_card()), photo("photo-1.jpg")}, make::kParts);
    REQUIRE(record.ok());
    REQUIRE(record.value().photos.size() == 1);
    CHECK(record.value().photos[0].file == "photo-1.jpg");
    CHECK(record.value().photos[0].caption == "Traces");
    CHECK(record.value().photos[0].step == 4);
    CHECK_THAT(write_record(record.value(), make::kParts), Contains("\"file\": \"photo-1.jpg\""));

    CHECK_FALSE(apply_event(record.value(), make::kParts, photo("photo-1.jpg")).ok()); // one file, one photo
    CHECK_FALSE(
        apply_event(record.value(), make::kParts, photo("photo-2.jpg", EventKind::photo_removed)).ok());
    REQUIRE(apply_event(record.value(), make::kParts, photo("photo-1.jpg", EventKind::photo_removed)).ok());
    CHECK(record.value().photos.empty());
}

TEST_CASE("A finished build still takes a photo", "[record]") {
    std::vector<Event> events = {make::started(make::sample_card())};
    for (int step = 1; step <= kStepCount; ++step) {
        events.push_back(make::verdict(step, VerdictState::proved));
    }
    events.push_back(event_at(make::kMorning_s, EventKind::finished, 0, "1 of 1 lit"));
    events.push_back(photo("photo-1.jpg"));
    const Outcome<Record> record = fold(events, make::kParts);
    REQUIRE(record.ok());
    CHECK(record.value().photos.size() == 1);
}

TEST_CASE("No photo's name leads out of the build's folder", "[record]") {
    for (const char* name : {"", "..", "../x.jpg", "/etc/passwd", "a/b.jpg", "a\\b.jpg", ".hidden", "a..jpg",
                             "Photo.jpg", "photo 1.jpg", "photo.", "C:x.jpg", "ph\xc3\xb6to.jpg"}) {
        INFO(name);
        CHECK_FALSE(is_photo_name(name));
        Event event = photo(name);
        const Outcome<Event> read = read_event(write_event(event, 2), "b.jsonl", 2);
        REQUIRE_FALSE(read.ok());
        CHECK_THAT(read.problem().sentence(), Contains("b.jsonl") && Contains("line 2"));
        CHECK_FALSE(fold({make::started(make::sample_card()), event}, make::kParts).ok());
    }
    CHECK_FALSE(is_photo_name(std::string(61, 'a')));
    CHECK(is_photo_name("photo-12.jpg"));
}
