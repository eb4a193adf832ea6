#include "mend/told.h"

#include "base/overloaded.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace lanternleaf {

namespace {

std::string figure(double value) {
    char text[32];
    const auto [end, error] = std::to_chars(text, text + sizeof text, value);
    return error == std::errc() ? std::string(text, end) : std::string("0");
}

std::optional<double> number_from(const std::string& text) {
    double value = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool whole = error == std::errc() && end == text.data() + text.size() && std::isfinite(value);
    return whole ? std::optional<double>(value) : std::nullopt;
}

std::vector<std::string> words_of(const std::string& line) {
    std::vector<std::string> words;
    std::size_t from = 0;
    while (from <= line.size()) {
        const std::size_t end = std::min(line.find(' ', from), line.size());
        words.push_back(line.substr(from, end - from));
        from = end + 1;
    }
    return words;
}

std::optional<Observation> metered_from(const std::vector<std::string>& words) {
    if (words.size() < 4 || (words[2] != "ohm" && words[2] != "V")) {
        return std::nullopt;
    }
    Metered metered;
    metered.unit = words[2] == "V" ? MeterUnit::volt : MeterUnit::ohm;
    metered.from = words[3];
    metered.to = words.size() > 4 ? words[4] : "";
    if (words[1] == "OL") {
        metered.open = true;
        return metered;
    }
    const std::optional<double> value = number_from(words[1]);
    if (!value) {
        return std::nullopt;
    }
    metered.value = *value;
    return metered;
}

std::optional<Observation> test_from(const std::vector<std::string>& words, const std::string& line) {
    // An id may hold blanks: all that follows the answer is the id.
    const std::size_t before = words[0].size() + 1 + (words.size() > 1 ? words[1].size() + 1 : 0);
    if (words.size() < 3 || words[2].empty()) {
        return std::nullopt;
    }
    if (words[1] == "cannot-tell") {
        return TestAnswer{line.substr(before), -1};
    }
    const std::optional<double> outcome = number_from(words[1]);
    if (words[0] == "read") {
        const bool open = words[1] == "OL";
        return open || outcome
                   ? std::optional<Observation>(TestReading{line.substr(before), outcome.value_or(0.0), open})
                   : std::nullopt;
    }
    if (!outcome || *outcome < 0.0 || *outcome > 255.0 || *outcome != std::floor(*outcome)) {
        return std::nullopt;
    }
    return TestAnswer{line.substr(before), static_cast<int>(*outcome)};
}

} // namespace

std::string write_told(const Observation& observation) {
    return std::visit(
        Overloaded{
            [](const SeenLight& seen) { return std::string("light ") + name_of(seen.look) + " " + seen.led; },
            [](const PressingChanges& pressing) {
                return std::string("pressing ") + (!pressing.changes   ? "unknown"
                                                   : *pressing.changes ? "yes"
                                                                       : "no");
            },
            [](const TestAnswer& answer) {
                return std::string("test ") +
                       (answer.outcome < 0 ? "cannot-tell" : std::to_string(answer.outcome)) + " " +
                       answer.test;
            },
            [](const Metered& metered) {
                std::string line = std::string("meter ") + (metered.open ? "OL" : figure(metered.value));
                line += metered.unit == MeterUnit::ohm ? " ohm " : " V ";
                line += metered.from;
                return metered.to.empty() ? line : line + " " + metered.to;
            },
            [](const TestReading& read) {
                return std::string("read ") + (read.open ? "OL" : figure(read.value)) + " " + read.test;
            },
        },
        observation);
}

Outcome<Observation> read_told(const std::string& line) {
    const std::vector<std::string> words = words_of(line);
    std::optional<Observation> found;
    if (words[0] == "light" && words.size() == 3) {
        const Look look = look_from(words[1]);
        if (look != Look::unseen || words[1] == name_of(Look::unseen)) {
            found = SeenLight{words[2], look};
        }
    } else if (words[0] == "pressing" && words.size() == 2) {
        if (words[1] == "unknown") {
            found = PressingChanges{};
        } else if (words[1] == "yes" || words[1] == "no") {
            found = PressingChanges{words[1] == "yes"};
        }
    } else if (words[0] == "test" || words[0] == "read") {
        found = test_from(words, line);
    } else if (words[0] == "meter") {
        found = metered_from(words);
    }
    if (!found) {
        return Problem{"", line, "expected something told in Mend, such as \"light dark L3\""};
    }
    return *found;
}

Outcome<MendSession> observe_told(const MendSession& session, const std::string& line) {
    if (line == kLightsAgain) {
        MendSession cleared = session;
        std::fill(cleared.evidence.looks.begin(), cleared.evidence.looks.end(), Look::unseen);
        weigh(cleared);
        return cleared;
    }
    const Outcome<Observation> observation = read_told(line);
    return observation ? observe(session, observation.value()) : Outcome<MendSession>(observation.problem());
}

} // namespace lanternleaf
