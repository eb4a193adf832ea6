// The Light sheet's words and curves, from cards that come with the app.
#include "view/light_view.h"

#include "desk/desk.h"
#include "model/update.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lanternleaf;

namespace {

// A demo card with Light open over it, as from the Log.
AppState opened(const std::string& name) {
    Surroundings around;
    around.assets = std::string(LANTERNLEAF_SOURCE) + "/assets";
    around.library = "/nonexistent";
    around.shipped = load_parts(around.assets).value();
    AppState state = open_app(around);
    Outcome<OpenCard> card = open_card(around.assets + "/cards/" + name + ".card.json", around.shipped);
    REQUIRE(card.ok());
    Record record;
    record.as_built = card.value().card;
    state.log = record;
    state.place = Place::log;
    update(state, around, command::OpenLight{});
    REQUIRE(state.light.has_value());
    return state;
}

} // namespace

TEST_CASE("Lights of one type whose curves coincide share a curve; every light has one", "[view]") {
    const AppState state = opened("harbour-lighthouse");
    const LightView view = make_light_view(*state.light);
    REQUIRE(view.trouble.empty());
    std::vector<int> times(state.light->card.leds.size(), 0);
    for (const LightCurve& curve : view.curves) {
        CHECK(curve.seen.size() == static_cast<std::size_t>(kLightSamples));
        for (const int led : curve.leds) {
            ++times[static_cast<std::size_t>(led)];
            const LedType& type = type_of(state.light->card, state.light->parts, led);
            CHECK(curve.what == (type.colour == "warm-white" ? "warm white" : type.colour));
        }
    }
    CHECK(times == std::vector<int>(times.size(), 1));
    CHECK(view.curves.size() >= 3); // warm white, white and green never share one
    CHECK(view.curves.size() <= 5);
}

TEST_CASE("Fresh, the brightest light is 100 %; the shares fall with the hours", "[view]") {
    AppState state = opened("harbour-lighthouse");
    const LightView fresh = make_light_view(*state.light);
    double most = 0.0;
    for (const LightShare& share : fresh.lights) {
        most = std::fmax(most, share.seen);
        CHECK(share.halo <= share.seen + 1e-12);
        CHECK(share.halo > 0.0);
    }
    // The curves may be of the maker whose cell starts a little lower than the reference.
    CHECK(most == Approx(1.0).margin(0.03));
    CHECK(fresh.at_head == "On a fresh cell");

    Surroundings around;
    update(state, around, command::SetLightHours{6.5});
    const LightView later = make_light_view(*state.light);
    CHECK(later.after == "after **6.5 h** of light");
    CHECK(later.at_head == "At 6.5 h");
    for (std::size_t i = 0; i < later.lights.size(); ++i) {
        CHECK(later.lights[i].seen < fresh.lights[i].seen);
    }
    for (const LightCurve& curve : later.curves) {
        const LightShare& first = later.lights[static_cast<std::size_t>(curve.leds.front())];
        CHECK(curve.now == Approx(first.seen));
        // The plotted curve passes through the share shown beside it: drawn straight between samples.
        const double place = 6.5 / later.most_h * (kLightSamples - 1);
        const auto below = static_cast<std::size_t>(place);
        const double part = place - std::floor(place);
        CHECK(curve.seen[below] * (1 - part) + curve.seen[below + 1] * part ==
              Approx(curve.now).margin(0.01));
    }
}

TEST_CASE("The slider's hours stay on the slider, which ends on a tick past the last dim light", "[view]") {
    AppState state = opened("night-tram");
    Surroundings around;
    update(state, around, command::SetLightHours{1e9});
    CHECK(state.light->hours == state.light->most_h);
    update(state, around, command::SetLightHours{-3.0});
    CHECK(state.light->hours == 0.0);
    const LightView view = make_light_view(*state.light);
    REQUIRE(view.ticks.size() >= 2);
    CHECK(view.ticks.size() <= 6);
    CHECK(view.ticks.back().first == Approx(view.most_h));
    for (const MarkHours& marks : state.light->life.typical(state.light->use, state.light->maker).marks) {
        const double dim_h = marks[static_cast<std::size_t>(Mark::plainly_dim)];
        CHECK((dim_h < view.most_h || !std::isfinite(dim_h)));
    }
}

TEST_CASE("A card that lights nothing says so and plots nothing", "[view]") {
    AppState state = opened("window-candle");
    Record bare;
    bare.as_built = state.light->card;
    bare.as_built.laid.clear();
    state.log = bare;
    Surroundings around;
    around.shipped = load_parts(std::string(LANTERNLEAF_SOURCE) + "/assets").value();
    update(state, around, command::OpenLight{});
    const LightView view = make_light_view(*state.light);
    CHECK(view.trouble == "Nothing on this card would light yet.");
    CHECK(view.curves.empty());
    CHECK(view.lights.empty());
}

TEST_CASE("Without a card Light stays closed and says why", "[view]") {
    Surroundings around;
    AppState state;
    update(state, around, command::OpenLight{});
    CHECK_FALSE(state.light.has_value());
    CHECK(state.said == "Open a card first: its light is worked out from its plan.");
}

TEST_CASE("Hours, ids and counts are written as a maker reads them", "[view]") {
    CHECK(hour_range_text({22.0, 31.0}, 3000.0) == "22–31 h");
    CHECK(hour_range_text({22.0, 22.2}, 3000.0) == "22 h");
    CHECK(hour_range_text({0.5, 0.75}, 3000.0) == "about 30 min to about 45 min");
    CHECK(hour_range_text({kNever_h, kNever_h}, 3000.0) == "more than 3000 h");
    CHECK(hour_range_text({40.0, kNever_h}, 3000.0) == "40 h to more");
    CHECK(about_count(14'321.0) == "14 000");
    CHECK(about_count(987.0) == "980");
    CHECK(about_count(1'234'567.0) == "1 200 000");
    CHECK(about_count(7.9) == "7");
    CHECK(about_count(0.0) == "0");
    Card card;
    for (const char* id : {"L1", "L2", "L3", "L4", "L5", "L6"}) {
        Led led;
        led.id = id;
        card.leds.push_back(led);
    }
    CHECK(ids_text(card, {0, 1}) == "L1 L2");
    CHECK(ids_text(card, {0, 2, 3, 4}) == "L1 L3–L5");
    CHECK(ids_text(card, {5}) == "L6");
}
