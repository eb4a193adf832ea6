#include "base/readout.h"
#include "desk/desk.h"
#include "mend/session.h"
#include "verbs/json_figure.h"
#include "verbs/plain_text.h"
#include "verbs/verb.h"

#include <charconv>
#include <nlohmann/json.hpp>
#include <ostream>

namespace lanternleaf {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kMostCauses = 6;
constexpr double kLeastShown = 0.005; ///< what rounds to 0 % is not told

std::vector<Cause> told_causes(const MendSession& session) {
    std::vector<Cause> list = causes(session, kMostCauses);
    while (list.size() > 1 && list.back().probability < kLeastShown) {
        list.pop_back();
    }
    return list;
}

/// "L1=dark,L2=lit" as pairs; a Problem at the first that is not NAME=VALUE.
Outcome<std::vector<std::pair<std::string, std::string>>> pairs_of(const std::string& text,
                                                                   const char* option, const char* expected) {
    std::vector<std::pair<std::string, std::string>> found;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t end = std::min(text.find(',', from), text.size());
        const std::string one = text.substr(from, end - from);
        const std::size_t equals = one.find('=');
        if (equals == std::string::npos || equals == 0 || equals + 1 == one.size()) {
            return Problem{option, one, expected};
        }
        found.emplace_back(one.substr(0, equals), one.substr(equals + 1));
        from = end + 1;
    }
    return found;
}

bool number_of(std::string_view text, double& value) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc() && end == text.data() + text.size() && value >= -1e9 && value <= 1e12;
}

// "flap:L3+=8ohm", "L3+:L3-=2.6V", "cell=2.9V", "flap:bed=OL".
Outcome<Metered> metered_of(const std::string& places, const std::string& value) {
    const Problem wrong{
        "--reading", places + "=" + value,
        "expected PLACE:PLACE=VALUE such as flap:L3+=8ohm, L3+:L3-=2.6V, cell=2.9V or flap:bed=OL"};
    Metered metered;
    const std::size_t colon = places.find(':');
    metered.from = places.substr(0, colon);
    metered.to = colon == std::string::npos ? "" : places.substr(colon + 1);
    if (metered.to.empty() && metered.from != "cell") {
        return wrong;
    }
    if (value == "OL") {
        metered.open = true;
        return metered.from == "cell" ? Outcome<Metered>(wrong) : Outcome<Metered>(metered);
    }
    std::string_view figure = value;
    if (figure.ends_with("ohm") && metered.from != "cell") {
        figure.remove_suffix(3);
    } else if (figure.ends_with("V")) {
        metered.unit = MeterUnit::volt;
        figure.remove_suffix(1);
    } else {
        return wrong;
    }
    return number_of(figure, metered.value) ? Outcome<Metered>(metered) : Outcome<Metered>(wrong);
}

Problem from_option(const char* option, Problem problem) {
    problem.file = option;
    return problem;
}

Outcome<MendOptions> options_of(const Arguments& args) {
    MendOptions options;
    if (args.has("--proved")) {
        double steps = 0.0;
        if (!number_of(args.at("--proved"), steps) || steps < 0.0 || steps > kStepCount ||
            steps != static_cast<int>(steps)) {
            return Problem{"--proved", args.at("--proved"), "expected how many steps are proved, 0 to 7"};
        }
        for (int step = 1; step <= static_cast<int>(steps); ++step) {
            options.proved.push_back(static_cast<StepId>(step));
        }
    }
    return options;
}

/// Everything that was seen, pressed, measured and answered.
Outcome<MendSession> all_observed(MendSession session, const Arguments& args) {
    std::vector<std::pair<const char*, Observation>> told;
    if (args.has("--seen")) {
        constexpr const char* kExpected = "expected LIGHT=lit, dim, dark or flickers, such as L1=dark,L2=lit";
        const auto seen = pairs_of(args.at("--seen"), "--seen", kExpected);
        if (!seen) {
            return seen.problem();
        }
        for (const auto& [led, state] : seen.value()) {
            const Look look = look_from(state);
            if (look == Look::unseen) {
                return Problem{"--seen", led + "=" + state, kExpected};
            }
            told.emplace_back("--seen", SeenLight{led, look});
        }
    }
    if (args.has("--pressed")) {
        const std::string& text = args.at("--pressed");
        if (text != "yes" && text != "no") {
            return Problem{"--pressed", text, "expected yes or no: does pressing change anything?"};
        }
        told.emplace_back("--pressed", PressingChanges{text == "yes"});
    }
    if (args.has("--reading")) {
        const auto readings = pairs_of(args.at("--reading"), "--reading",
                                       "expected PLACE:PLACE=VALUE such as flap:L3+=8ohm or cell=2.9V");
        if (!readings) {
            return readings.problem();
        }
        for (const auto& [places, value] : readings.value()) {
            const Outcome<Metered> metered = metered_of(places, value);
            if (!metered) {
                return metered.problem();
            }
            told.emplace_back("--reading", metered.value());
        }
    }
    if (args.has("--answer")) {
        constexpr const char* kExpected = "expected TEST=NUMBER as the report names them, such as warm=1";
        const auto answers = pairs_of(args.at("--answer"), "--answer", kExpected);
        if (!answers) {
            return answers.problem();
        }
        for (const auto& [test, number] : answers.value()) {
            double outcome = 0.0;
            if (!number_of(number, outcome) || outcome < 0.0 || outcome > 255.0 ||
                outcome != static_cast<int>(outcome)) {
                return Problem{"--answer", test + "=" + number, kExpected};
            }
            told.emplace_back("--answer", TestAnswer{test, static_cast<int>(outcome)});
        }
    }
    for (const auto& [option, observation] : told) {
        Outcome<MendSession> next = observe(session, observation);
        if (!next) {
            return from_option(option, next.problem());
        }
        session = std::move(next).value();
    }
    return session;
}

Json point(Vec2 at_mm) {
    return Json::array({json_figure(at_mm.x), json_figure(at_mm.y)});
}

Json change_json(const std::optional<Change>& change) {
    if (!change) {
        return nullptr;
    }
    return {{"kind", name_of(change->kind)}, {"part", change->part}, {"at_mm", point(change->at_mm)},
            {"mm", json_figure(change->mm)}, {"type", change->type}, {"count", change->count}};
}

Json test_json(const std::optional<MendTest>& test) {
    if (!test) {
        return nullptr;
    }
    Json outcomes = Json::array();
    for (const int k : test->offered) {
        outcomes.push_back({{"answer", k}, {"text", test->outcomes[static_cast<std::size_t>(k)]}});
    }
    Json places = Json::array();
    for (const Vec2 at_mm : test->at_mm) {
        places.push_back(point(at_mm));
    }
    return {{"id", test->id},
            {"title", test->title},
            {"sentence", test->sentence},
            {"seconds", json_figure(effort_of(*test))},
            {"outcomes", outcomes},
            {"at_mm", places},
            {"parts", test->parts}};
}

std::string mend_report(const Card& card, const MendSession& session, const std::optional<MendTest>& test) {
    Json list = Json::array();
    for (const Cause& cause : told_causes(session)) {
        Json places = Json::array();
        for (const FaultPlace& place : cause.places) {
            places.push_back({{"name", place.name}, {"at_mm", point(place.at_mm)}, {"parts", place.parts}});
        }
        list.push_back({{"kind", name_of(cause.kind)},
                        {"probability", json_figure(cause.probability)},
                        {"title", cause.title},
                        {"sentence", cause.sentence},
                        {"fix", cause.fix},
                        {"places", places},
                        {"found", change_json(cause.found)},
                        {"mend", change_json(cause.mend)}});
    }
    return json_text({{"title", card.title},
                      {"answers", session.evidence.count()},
                      {"causes", list},
                      {"next_test", test_json(test)}});
}

void print_mend(std::ostream& out, const Card& card, const MendSession& session,
                const std::optional<MendTest>& test) {
    out << printable(card.title)
        << "\n\nTake the cell out first. If it is warm, leave it out.\n\nLikely causes, after "
        << counted(static_cast<int>(session.evidence.count()), "answer") << "\n";
    for (const Cause& cause : told_causes(session)) {
        out << "\n  " << readout_percent(cause.probability) << "  " << printable(cause.title) << "\n    "
            << printable(cause.sentence) << "\n    To do: " << printable(cause.fix) << "\n";
    }
    if (!test) {
        out << "\nNo further test tells more.\n";
        return;
    }
    out << "\nNext best test, about " << readout_number(effort_of(*test), 0)
        << " s: " << printable(test->title) << " (" << printable(test->id) << ")\n  "
        << printable(test->sentence) << "\n";
    for (const int k : test->offered) {
        out << "    " << k << "  " << printable(test->outcomes[static_cast<std::size_t>(k)]) << "\n";
    }
}

} // namespace

Outcome<ExitStatus> mend_verb(const Arguments& args, std::ostream& out, const VerbSurroundings& around) {
    const Outcome<OpenCard> open = asked_card(args, around);
    if (!open) {
        return open.problem();
    }
    const Outcome<MendOptions> options = options_of(args);
    if (!options) {
        return options.problem();
    }
    const Card& card = open.value().card;
    const Outcome<MendSession> session =
        all_observed(start_mend(card, open.value().parts, options.value()), args);
    if (!session) {
        return session.problem();
    }
    MendTools tools;
    tools.meter = args.has("--meter") || args.has("--reading");
    const std::optional<MendTest> test = next_test(session.value(), tools);
    if (args.has("--json")) {
        out << mend_report(card, session.value(), test);
    } else {
        print_mend(out, card, session.value(), test);
    }
    return ExitStatus::well;
}

} // namespace lanternleaf
