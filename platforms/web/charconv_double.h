// charconv_double: std::to_chars and std::from_chars for float and double, which the browser build's C++
// library (version 13) declares for whole numbers only. Included before everything in that build, and empty
// elsewhere. to_chars gives the fewest digits that read back as the same number, as the standard asks
// ([charconv.to.chars]); both never look at the locale's decimal point, which is always "." in a browser.
#pragma once

#ifdef __cplusplus
#include <charconv>

#if defined(_LIBCPP_VERSION) && _LIBCPP_VERSION < 14000
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>
#include <system_error>

namespace std {

inline to_chars_result to_chars(char* first, char* last, double value, chars_format format) {
    char text[32];
    for (int digits = 0; digits <= 16; ++digits) {
        snprintf(text, sizeof text, "%.*e", digits, value);
        if (strtod(text, nullptr) == value) {
            break;
        }
    }
    std::string out;
    const char* e = strchr(text, 'e');
    if (format == chars_format::scientific || e == nullptr) { // no exponent: "inf" or "nan"
        out = text;
    } else {
        // "-1.2345e+02" as plain digits
        const int exponent = atoi(e + 1);
        std::string digits;
        for (const char* c = text; c != e; ++c) {
            if (*c >= '0' && *c <= '9') {
                digits += *c;
            }
        }
        const int whole = exponent + 1; // digits before the point
        if (whole <= 0) {
            digits.insert(0, static_cast<size_t>(1 - whole), '0');
        } else if (digits.size() < static_cast<size_t>(whole)) {
            char all[320]; // as many digits: then the nearest to the number
            snprintf(all, sizeof all, "%.0f", value < 0 ? -value : value);
            digits = all;
        }
        const size_t point = whole <= 0 ? 1 : static_cast<size_t>(whole);
        if (digits.size() > point) {
            digits.insert(point, 1, '.');
        }
        out = (text[0] == '-' ? "-" : "") + digits;
    }
    if (out.size() > static_cast<size_t>(last - first)) {
        return {last, errc::value_too_large};
    }
    memcpy(first, out.data(), out.size());
    return {first + out.size(), errc{}};
}

/// The shorter of the two forms, plain digits when they are equally long.
inline to_chars_result to_chars(char* first, char* last, double value) {
    char plain[400]; // the longest: a sign and 309 digits, or "0." and 324 places
    char scientific[32];
    const to_chars_result p = to_chars(plain, plain + sizeof plain, value, chars_format::fixed);
    const to_chars_result s =
        to_chars(scientific, scientific + sizeof scientific, value, chars_format::scientific);
    const bool short_plain = p.ec == errc{} && p.ptr - plain <= s.ptr - scientific;
    const char* from = short_plain ? plain : scientific;
    const size_t length = static_cast<size_t>(short_plain ? p.ptr - plain : s.ptr - scientific);
    if (length > static_cast<size_t>(last - first)) {
        return {last, errc::value_too_large};
    }
    memcpy(first, from, length);
    return {first + length, errc{}};
}

/// Digits, a point, an exponent; a minus but no plus and no space before them ([charconv.from.chars]).
inline from_chars_result from_chars(const char* first, const char* last, double& value) {
    const char* c = first;
    const auto skip_digits = [&c, last] {
        const char* start = c;
        while (c != last && *c >= '0' && *c <= '9') {
            ++c;
        }
        return c - start;
    };
    if (c != last && *c == '-') {
        ++c;
    }
    auto digits = skip_digits();
    if (c != last && *c == '.') {
        ++c;
        digits += skip_digits();
    }
    if (digits == 0) {
        return {first, errc::invalid_argument};
    }
    if (c != last && (*c == 'e' || *c == 'E')) {
        const char* before = c;
        ++c;
        if (c != last && (*c == '+' || *c == '-')) {
            ++c;
        }
        if (skip_digits() == 0) {
            c = before;
        }
    }
    value = strtod(std::string(first, c).c_str(), nullptr);
    return {c, errc{}};
}

inline from_chars_result from_chars(const char* first, const char* last, float& value) {
    double wide = value;
    const from_chars_result result = from_chars(first, last, wide);
    value = static_cast<float>(wide);
    return result;
}

} // namespace std
#endif
#endif
