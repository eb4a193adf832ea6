#include "record/utc.h"

#include <algorithm>
#include <cstdio>

namespace lanternleaf {

namespace {

constexpr std::int64_t kDay_s = 86400;
// 0000-01-01T00:00:00Z and 9999-12-31T23:59:59Z.
constexpr std::int64_t kFirst_s = -62167219200;
constexpr std::int64_t kLast_s = 253402300799;

bool is_leap(int year) {
    return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

int days_in(int year, int month) {
    constexpr int kDays[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month == 2 && is_leap(year) ? 29 : kDays[month - 1];
}

// Days from 0000-01-01 to the first day of `year`, in the Gregorian calendar carried back (ISO 8601).
std::int64_t days_before(int year) {
    if (year == 0) {
        return 0;
    }
    const std::int64_t past = year - 1; // year 0 is a leap year, hence the one day more
    return 365 * static_cast<std::int64_t>(year) + past / 4 - past / 100 + past / 400 + 1;
}

// The digits of text[from, from + count) as a number; -1 when one of them is no digit.
int digits(const std::string& text, std::size_t from, std::size_t count) {
    int value = 0;
    for (std::size_t i = from; i < from + count; ++i) {
        if (text[i] < '0' || text[i] > '9') {
            return -1;
        }
        value = value * 10 + (text[i] - '0');
    }
    return value;
}

} // namespace

std::string utc_text(std::int64_t at_s) {
    const std::int64_t since_zero_s = std::clamp(at_s, kFirst_s, kLast_s) - kFirst_s;
    std::int64_t day = since_zero_s / kDay_s;
    int year = static_cast<int>(day / 366); // never beyond the year sought
    while (days_before(year + 1) <= day) {
        ++year;
    }
    day -= days_before(year);
    int month = 1;
    while (day >= days_in(year, month)) {
        day -= days_in(year, month);
        ++month;
    }
    const int second = static_cast<int>(since_zero_s % kDay_s);
    char text[64];
    std::snprintf(text, sizeof text, "%04d-%02d-%02dT%02d:%02d:%02dZ", year, month, static_cast<int>(day) + 1,
                  second / 3600, second / 60 % 60, second % 60);
    return text;
}

std::string utc_stamp(std::int64_t at_s) {
    std::string text = utc_text(at_s);
    std::erase_if(text, [](char c) { return c == '-' || c == ':' || c == 'Z'; });
    std::replace(text.begin(), text.end(), 'T', '-');
    return text;
}

std::optional<std::int64_t> utc_from(const std::string& text) {
    if (text.size() != 20 || text[4] != '-' || text[7] != '-' || text[10] != 'T' || text[13] != ':' ||
        text[16] != ':' || text[19] != 'Z') {
        return std::nullopt;
    }
    const int year = digits(text, 0, 4);
    const int month = digits(text, 5, 2);
    const int day = digits(text, 8, 2);
    const int hour = digits(text, 11, 2);
    const int minute = digits(text, 14, 2);
    const int second = digits(text, 17, 2);
    if (year < 0 || month < 1 || month > 12 || day < 1 || day > days_in(year, month) || hour < 0 ||
        hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59) {
        return std::nullopt;
    }
    std::int64_t days = days_before(year) + day - 1;
    for (int before = 1; before < month; ++before) {
        days += days_in(year, before);
    }
    return kFirst_s + days * kDay_s + hour * 3600 + minute * 60 + second;
}

} // namespace lanternleaf
