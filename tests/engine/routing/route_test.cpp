// Whole cards: what is suggested must pass the review of findings, which knows nothing of routing.
#include "routing/route.h"

#include "desk/desk.h"
#include "findings/review.h"
#include "support/make_card.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

const std::string kTop = LANTERNLEAF_SOURCE;

RouteRequest ask_for(Card card) {
    RouteRequest request;
    request.card = std::move(card);
    request.parts = make::test_parts();
    return request;
}

void is_sound(const RouteRequest& request, const RouteResult& result) {
    INFO(result.why_not);
    REQUIRE(result.clean());
    CHECK(result.why_not.empty());
    for (const Suggestion& one : result.suggestions) {
        if (!one.clean) {
            continue;
        }
        const Review found = review(one.card, request.parts);
        for (const Finding& finding : found.findings) {
            INFO(finding.text);
            CHECK((finding.level == Level::note || finding.rule == "cell-overloaded"));
        }
        for (const Light& light : found.lighting.lights) {
            CHECK(light.current_mA > 0.0);
        }
        CHECK(one.report.length_mm > 0.0);
        CHECK(one.report.ratio == Approx(one.report.length_mm / one.report.bound_mm));
    }
}

bool on_grid(double mm) {
    return std::abs(mm * 2.0 - std::round(mm * 2.0)) < 1e-9;
}

Card scattered() {
    Card card = make::bare_card();
    card.holder.at_mm = {26, 40};
    card.holder.turn_deg = 90;
    card.leds = {
        make::led("L1", "carrier-white", {70, 25}, 40), make::led("L2", "carrier-white", {110, 30}, 200),
        make::led("L3", "carrier-white", {115, 75}, 10), make::led("L4", "carrier-white", {72, 80}, 300)};
    return card;
}

} // namespace

namespace {

RouteRequest shipped_card(const std::string& name) {
    const Outcome<Parts> shipped = load_parts(kTop + "/assets");
    REQUIRE(shipped);
    const Outcome<OpenCard> open = open_card(kTop + "/assets/cards/" + name + ".card.json", shipped.value());
    REQUIRE(open);
    RouteRequest request;
    request.card = open.value().card;
    request.parts = open.value().parts;
    return request; // what is laid in it is to be replaced
}

} // namespace

TEST_CASE("Shipped cards are routed clean, with or without a resistor", "[routing]") {
    const std::string name = GENERATE(as<std::string>(), "window-candle", "harbour-lighthouse");
    INFO(name);
    const RouteRequest request = shipped_card(name);
    is_sound(request, route(request));
}

TEST_CASE("The shipped card of three crowded rows is clean, or it is told which light to move", "[routing]") {
    const RouteRequest request = shipped_card("night-tram");
    const RouteResult result = route(request);
    if (result.clean()) {
        is_sound(request, result);
    } else {
        CHECK(find_led(request.card, result.move_led) != nullptr);
        CHECK_THAT(result.why_not, Contains(result.move_led));
    }
}

TEST_CASE("Lights that may be turned get two strips, no joint and no crossing", "[routing]") {
    const RouteRequest request = ask_for(scattered());
    const RouteResult result = route(request);
    is_sound(request, result);
    const RouteReport& report = result.suggestions.front().report;
    CHECK(report.cuts == 2);
    CHECK(report.joints == 0);
    CHECK(report.crossings == 0);
    CHECK(report.ratio > 0.95); // pads have a width, so a little below 1 could be; nothing far below can
    CHECK(report.ratio < 2.0);
    for (const Laid& laid : result.suggestions.front().card.laid) {
        for (const Vec2 corner : std::get<Strip>(laid).path_mm) {
            CHECK((on_grid(corner.x) && on_grid(corner.y)));
        }
    }
}

TEST_CASE("Fixed lights stay as they lie", "[routing]") {
    RouteRequest request = ask_for(scattered());
    request.fixed = {"L1", "L3"};
    const RouteResult result = route(request);
    is_sound(request, result);
    CHECK(find_led(result.suggestions.front().card, "L1")->turn_deg == 40);
    CHECK(find_led(result.suggestions.front().card, "L3")->turn_deg == 10);

    request.fixed = {"L1", "L2", "L3", "L4"};
    request.card.leds[0].turn_deg = 90;
    request.card.leds[1].turn_deg = 90;
    request.card.leds[2].turn_deg = 270;
    request.card.leds[3].turn_deg = 270;
    const RouteResult all = route(request);
    is_sound(request, all);
    CHECK(all.suggestions.front().card.leds == request.card.leds);
    CHECK(all.suggestions.front().report.turned.empty());
}

TEST_CASE("Two lights that face the same way on a way there and back are both reached", "[routing]") {
    Card card = make::bare_card();
    card.sheet.width_mm = 210;
    card.sheet.height_mm = 148;
    card.holder.at_mm = {26, 60};
    card.holder.turn_deg = 90;
    card.leds = {
        make::led("L1", "carrier-white", {90, 40}, 90), make::led("L2", "carrier-white", {150, 40}, 90),
        make::led("L3", "carrier-white", {90, 110}, 90), make::led("L4", "carrier-white", {150, 110}, 90)};
    RouteRequest request = ask_for(card);
    request.fixed = {"L1", "L2", "L3", "L4"};
    const RouteResult result = route(request);
    is_sound(request, result);
    CHECK(result.suggestions.front().card.leds == card.leds);
}

TEST_CASE("Tape goes round a keep-out in its way", "[routing]") {
    RouteRequest request = ask_for(scattered());
    const RouteResult before = route(request);
    REQUIRE(before.clean());
    // The middle of the longest run between two lights is closed.
    Vec2 at;
    double longest_mm = 0.0;
    for (const Laid& laid : before.suggestions.front().card.laid) {
        const std::vector<Vec2>& path = std::get<Strip>(laid).path_mm;
        for (std::size_t i = 1; i < path.size(); ++i) {
            const Vec2 middle = (path[i - 1] + path[i]) * 0.5;
            const bool free = std::all_of(request.card.leds.begin(), request.card.leds.end(),
                                          [&](const Led& led) { return distance(led.at_mm, middle) > 18.0; });
            if (free && distance(path[i - 1], path[i]) > longest_mm) {
                longest_mm = distance(path[i - 1], path[i]);
                at = middle;
            }
        }
    }
    REQUIRE(longest_mm > 15.0);
    request.card.sheet.keepouts.push_back(
        {"window", {at + Vec2{-3, -3}, at + Vec2{3, -3}, at + Vec2{3, 3}, at + Vec2{-3, 3}}, {}});
    const auto covers = [&](const Card& card) {
        const std::vector<Finding> findings = review(card, request.parts).findings;
        return std::any_of(findings.begin(), findings.end(),
                           [](const Finding& finding) { return finding.rule == "over-keepout"; });
    };
    Card unaware = before.suggestions.front().card;
    unaware.sheet = request.card.sheet;
    REQUIRE(covers(unaware));
    const RouteResult after = route(request);
    is_sound(request, after);
    CHECK_FALSE(covers(after.suggestions.front().card));
}

TEST_CASE("Tape crosses a crease only squarely", "[routing]") {
    Card card = scattered();
    card.sheet.folds.push_back({{93, 0}, {93, 105}, {}});
    const RouteRequest request = ask_for(card);
    is_sound(request, route(request));
}

TEST_CASE("Holders with pads, other packages and other tapes", "[routing]") {
    RouteRequest request = ask_for(scattered());
    request.card.holder.type = "slide-20";
    request.card.holder.at_mm = {28, 52};
    is_sound(request, route(request));

    request = ask_for(scattered());
    for (Led& led : request.card.leds) {
        led.type = "chip-white";
    }
    request.parts.leds["chip-white"] = request.parts.leds["carrier-white"];
    request.parts.leds["chip-white"].package = "chip-1206";
    is_sound(request, route(request));

    request = ask_for(scattered());
    request.tape = "copper-5-plain"; // no joints, so glue that does not conduct does no harm
    is_sound(request, route(request));
    request.tape = "copper-99";
    const RouteResult none = route(request);
    CHECK(none.suggestions.empty());
    CHECK_THAT(none.why_not, Contains("copper-99"));
}

TEST_CASE("A resistor lies in line before every light", "[routing]") {
    RouteRequest request = ask_for(scattered());
    request.card.resistors.push_back(make::resistor("R1", 47, {50, 52}, 0));
    const RouteResult result = route(request);
    is_sound(request, result);
    CHECK(result.suggestions.front().report.cuts == 3);
    const Review with = review(result.suggestions.front().card, request.parts);
    Card less = result.suggestions.front().card;
    less.resistors.front().ohm = 0.001;
    const Review without = review(less, request.parts);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(with.lighting.lights[i].current_mA < without.lighting.lights[i].current_mA);
    }
    request.card.resistors.push_back(make::resistor("R2", 47, {90, 52}, 0));
    CHECK_THAT(route(request).why_not, Contains("2 resistors"));
}

TEST_CASE("A crowded card says so and names a light; nothing of the maker's is lost", "[routing]") {
    Card card = make::bare_card();
    for (int i = 0; i < 16; ++i) {
        std::string id = "L";
        id += std::to_string(i + 1);
        card.leds.push_back(make::led(id, "carrier-white",
                                      {80.0 + 9.0 * (i % 4), 30.0 + 9.0 * static_cast<double>(i / 4)}, 0));
    }
    const RouteRequest request = ask_for(card);
    const RouteResult result = route(request);
    CHECK_FALSE(result.clean());
    CHECK_THAT(result.why_not, Contains("crowded"));
    CHECK(find_led(card, result.move_led) != nullptr);
    CHECK_THAT(result.why_not, Contains(result.move_led));
    REQUIRE_FALSE(result.suggestions.empty());
    CHECK_FALSE(result.suggestions.front().findings.empty());
    CHECK(result.suggestions.front().card.leds.size() == card.leds.size());
    CHECK(request.card == card);
}

TEST_CASE("The same seed gives the same card; three suggestions differ", "[routing]") {
    RouteRequest request = ask_for(scattered());
    request.suggestions = 3;
    const RouteResult one = route(request);
    const RouteResult two = route(request);
    REQUIRE(one.suggestions.size() == two.suggestions.size());
    CHECK(one.suggestions.size() >= 2);
    for (std::size_t i = 0; i < one.suggestions.size(); ++i) {
        CHECK(one.suggestions[i].card == two.suggestions[i].card);
        for (std::size_t j = i + 1; j < one.suggestions.size(); ++j) {
            CHECK_FALSE(one.suggestions[i].card == one.suggestions[j].card);
        }
    }
    is_sound(request, one);
}

TEST_CASE("Progress never falls, and work stops when asked or when time is up", "[routing]") {
    RouteRequest request = ask_for(scattered());
    double last = 0.0;
    int calls = 0;
    request.watch = [&](const RouteProgress& progress) {
        CHECK(progress.done >= last);
        CHECK(progress.done <= 1.0);
        last = progress.done;
        ++calls;
        return true;
    };
    CHECK_FALSE(route(request).stopped);
    CHECK(calls > 5);
    request.watch = [](const RouteProgress&) { return false; };
    const RouteResult cancelled = route(request);
    CHECK(cancelled.stopped);
    CHECK(cancelled.suggestions.size() == 1);

    request.watch = nullptr;
    double now_ms = 0.0;
    request.clock_ms = [&] { return now_ms += 1.0; };
    request.most_ms = 5.0;
    CHECK(route(request).stopped);
}

TEST_CASE("In pieces the search finds what it finds in one go, and may be left early", "[routing]") {
    RouteRequest request = ask_for(scattered());
    request.suggestions = 3;
    const RouteResult whole = route(request);
    RouteSearch search(request);
    int pieces = 1;
    double done = 0.0;
    while (search.step()) {
        ++pieces;
        CHECK(search.progress().done >= done);
        done = search.progress().done;
    }
    CHECK(pieces >= 3);
    CHECK(search.progress().done == Approx(1.0));
    const RouteResult sum = search.take();
    CHECK_FALSE(sum.stopped);
    REQUIRE(sum.suggestions.size() == whole.suggestions.size());
    for (std::size_t i = 0; i < sum.suggestions.size(); ++i) {
        CHECK(sum.suggestions[i].card == whole.suggestions[i].card);
    }
    RouteSearch left(request);
    REQUIRE(left.step());
    const RouteResult some = left.take();
    CHECK(some.stopped);
    REQUIRE(some.suggestions.size() == 1);
    CHECK(some.suggestions[0].card == whole.suggestions[0].card);
}

TEST_CASE("A card without lights is told what it lacks", "[routing]") {
    const RouteResult result = route(ask_for(make::bare_card()));
    CHECK(result.suggestions.empty());
    CHECK_THAT(result.why_not, Contains("no light"));
}

TEST_CASE("Strips that are kept stay, and are crossed over a patch where they must be", "[routing]") {
    // A strip of the maker's own (for a second holder, say) shuts the lights off from the cell.
    RouteRequest request = ask_for(scattered());
    request.card.laid.emplace_back(make::strip("K1", Side::link, {{50, 2.5}, {50, 102.5}}));
    request.card.laid.emplace_back(make::strip("N1", Side::negative, {{60, 50}, {90, 50}}));
    request.keep = {"K1"};
    const RouteResult result = route(request);
    is_sound(request, result);
    const Card& card = result.suggestions.front().card;
    REQUIRE(find_strip(card, "K1") != nullptr);
    CHECK(*find_strip(card, "K1") == std::get<Strip>(request.card.laid[0]));
    CHECK(result.suggestions.front().report.crossings == 2);
    for (const Laid& laid : card.laid) {
        if (const Patch* patch = std::get_if<Patch>(&laid)) {
            CHECK(patch->size_mm.x >= 14.0);
            CHECK(patch->size_mm.y >= 14.0);
        }
    }
}

TEST_CASE("What the parts do by themselves is not held against the laying", "[routing]") {
    RouteRequest request = ask_for(scattered());
    request.card.leds[2].type = "carrier-red"; // takes the current from the white ones, however they are laid
    const RouteResult result = route(request);
    CHECK(result.clean());
    CHECK(review(result.suggestions.front().card, request.parts).count(Level::caution) > 0);
}

TEST_CASE("Random cards with room come out clean", "[routing]") {
    // A light in each of eight fields of 45 x 45 mm, anywhere in it and turned anyhow; the generator is the
    // standard's minstd_rand, the same everywhere.
    std::minstd_rand random(20);
    const auto below = [&](double limit) { return limit * static_cast<double>(random()) / 2147483647.0; };
    for (int round = 0; round < 6; ++round) {
        Card card = make::bare_card();
        card.sheet.width_mm = 260;
        card.sheet.height_mm = 110;
        card.holder.at_mm = {26, 40};
        card.holder.turn_deg = 90;
        for (int i = 0; i < 8; ++i) {
            std::string id = "L";
            id += std::to_string(i + 1);
            const Vec2 field{70.0 + 46.0 * (i % 4), 22.0 + 50.0 * static_cast<double>(i / 4)};
            card.leds.push_back(make::led(id, "carrier-white",
                                          field + Vec2{std::round(below(22.0)), std::round(below(20.0))},
                                          std::round(below(359.0))));
        }
        RouteRequest request = ask_for(card);
        request.seed = static_cast<std::uint64_t>(round);
        INFO("card " << round);
        is_sound(request, route(request));
    }
}
