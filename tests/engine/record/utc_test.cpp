#include "record/utc.h"

#include <catch2/catch.hpp>
#include <ctime>

using namespace lanternleaf;

namespace {

// The C library's calendar as an outside judge.
std::string by_c_library(std::int64_t at_s) {
    const std::time_t time = static_cast<std::time_t>(at_s);
    std::tm parts{};
    gmtime_r(&time, &parts);
    char text[64];
    std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &parts);
    return text;
}

} // namespace

TEST_CASE("Moments read as the C library says, over four centuries", "[record]") {
    // 13 days and some seconds a step, from 1700 to 2200: every kind of leap year, and both sides of 1970.
    for (std::int64_t at_s = -8520336000; at_s < 7258118400; at_s += 13 * 86400 + 4321) {
        INFO(at_s);
        REQUIRE(utc_text(at_s) == by_c_library(at_s));
        REQUIRE(utc_from(utc_text(at_s)) == at_s);
    }
}

TEST_CASE("Known moments", "[record]") {
    CHECK(utc_text(0) == "1970-01-01T00:00:00Z");
    CHECK(utc_text(1000000000) == "2001-09-09T01:46:40Z"); // widely noted as the billionth second
    CHECK(utc_text(951782400) == "2000-02-29T00:00:00Z");
    CHECK(utc_from("1600-02-29T23:59:59Z").has_value());
}

TEST_CASE("A moment in a file name", "[record]") {
    CHECK(utc_stamp(1000000000) == "20010909-014640");
}

TEST_CASE("The ends of the calendar are held", "[record]") {
    CHECK(utc_text(INT64_MIN) == "0000-01-01T00:00:00Z");
    CHECK(utc_text(INT64_MAX) == "9999-12-31T23:59:59Z");
    CHECK(utc_from("0000-01-01T00:00:00Z") == -62167219200);
    CHECK(utc_from("9999-12-31T23:59:59Z") == 253402300799);
}

TEST_CASE("What is no moment is refused", "[record]") {
    for (const char* text :
         {"", "2026-05-04", "2026-05-04T10:00:00", "2026-05-04 10:00:00Z", "2026-13-04T10:00:00Z",
          "2026-00-04T10:00:00Z", "2026-02-29T10:00:00Z", "1900-02-29T10:00:00Z", "2026-05-00T10:00:00Z",
          "2026-05-04T24:00:00Z", "2026-05-04T10:60:00Z", "2026-05-04T10:00:60Z", "2026-05-04T10:00:00z",
          "202a-05-04T10:00:00Z", "2026-05-04T10:00:00Z ", "-026-05-04T10:00:00Z", "2026-+5-04T10:00:00Z"}) {
        INFO(text);
        CHECK_FALSE(utc_from(text).has_value());
    }
}
