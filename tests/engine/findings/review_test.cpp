// The review as a whole: order, silence on a sound card, one cause told once.
#include "cases.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>

using namespace lanternleaf;
using namespace lanternleaf::cases;

TEST_CASE("The sample card of the card file's description gets nothing worse than a note", "[findings]") {
    const Review made = review(make::sample_card(), make::test_parts());
    INFO(found_in(made));
    CHECK(made.count(Level::problem) == 0);
    CHECK(made.count(Level::caution) == 0);
    CHECK(made.lighting.lights.at(0).state == LightState::lit);
}

TEST_CASE("A row of lights and a card with a resistor are sound", "[findings]") {
    for (const Card& card :
         {make::row_card(3), with_resistor(22), on_pads("slide-20"), on_pads("screw-20")}) {
        const Review made = review(card, make::test_parts());
        INFO(found_in(made));
        CHECK(made.count(Level::problem) == 0);
        CHECK(made.count(Level::caution) == 0);
    }
}

TEST_CASE("Findings come problems first, then in table order", "[findings]") {
    const Card card = sample([](Card& c) {
        c.cell.count = 2;
        c.foam->layers = 2;
        strip(c, "S1").path_mm.back() = {150, 35};
        patch(c, "P1").size_mm = {6, 14};
    });
    const Review made = review(card, make::test_parts());
    INFO(found_in(made));
    const auto place = [](const std::string& id) {
        const auto all = rules();
        return std::find_if(all.begin(), all.end(), [&](const Rule& rule) { return id == rule.id; }) -
               all.begin();
    };
    REQUIRE(made.count(Level::problem) >= 3);
    REQUIRE(made.count(Level::caution) >= 2);
    REQUIRE(made.count(Level::note) >= 1);
    for (std::size_t i = 1; i < made.findings.size(); ++i) {
        const Finding& before = made.findings[i - 1];
        const Finding& after = made.findings[i];
        CHECK(before.level <= after.level);
        if (before.level == after.level) {
            CHECK(place(before.rule) <= place(after.rule));
        }
    }
}

TEST_CASE("A bare crossing is told as a short and a crossing, not as darkness", "[findings]") {
    const Review made = review(sample([](Card& c) { drop(c, "P1"); }), make::test_parts());
    INFO(found_in(made));
    CHECK(find(made, "short-circuit") != nullptr);
    CHECK(find(made, "crossing-bare") != nullptr);
    for (const char* rule : {"led-not-reached", "led-reversed", "clearance", "dim-led", "cell-overloaded"}) {
        CHECK(find(made, rule) == nullptr);
    }
}

TEST_CASE("Pads on one dead trace are told in one finding that names them all", "[findings]") {
    Card card = make::row_card(3);
    strip(card, "S1").path_mm.back() = {70, 35};
    card.laid.emplace_back(make::strip("S2", Side::positive, {{72, 35}, {116, 35}}));
    const Review made = review(card, make::test_parts());
    INFO(found_in(made));
    const auto about = std::count_if(made.findings.begin(), made.findings.end(),
                                     [](const Finding& one) { return one.rule == "led-not-reached"; });
    CHECK(about == 1);
    const Finding* found = find(made, "led-not-reached", "L2+");
    REQUIRE(found != nullptr);
    CHECK(found->text == "L1+, L2+ and L3+ rest on S2, which does not lead to the cell's + face: it is 2 mm "
                         "short of S1.");
    CHECK(found->at_mm.x == Approx(71).margin(0.02));
}

TEST_CASE("The patch's spare is measured", "[findings]") {
    for (const double spare_mm : {0.2, 0.7, 1.3, 1.9}) {
        const Card card = sample([&](Card& c) { patch(c, "P1").size_mm = {5 + 2 * spare_mm, 14}; });
        const Review made = review(card, make::test_parts());
        const Finding* found = find(made, "patch-small");
        INFO(found_in(made));
        REQUIRE(found != nullptr);
        std::ostringstream words;
        words << "only " << spare_mm << " mm to spare";
        CHECK(found->text.find(words.str()) != std::string::npos);
    }
}

TEST_CASE("The steady solution is the one a fresh solve gives", "[findings]") {
    const Card card = on_pads("slide-20");
    const Parts parts = make::test_parts();
    const Review made = review(card, parts);
    const Lighting alone = light_up(card, parts, made.conductors, steady_cell(card, parts));
    REQUIRE(made.steady_lighting.lights.size() == 1);
    CHECK(made.steady_lighting.lights[0].current_mA == Approx(alone.lights[0].current_mA).epsilon(1e-6));
    CHECK(made.steady_lighting.cell_mA < made.lighting.cell_mA);
}

TEST_CASE("An empty sheet has no problem", "[findings]") {
    const Review made = review(make::bare_card(), make::test_parts());
    INFO(found_in(made));
    CHECK(made.count(Level::problem) == 0);
    CHECK(made.count(Level::caution) == 0);
}

TEST_CASE("A review is the same when made twice", "[findings]") {
    for (const Fires& one : all_fires()) {
        CHECK(found_in(review(one.card, one.parts)) == found_in(review(one.card, one.parts)));
    }
}

TEST_CASE("The resistor that is advised cures an overdriven light", "[findings]") {
    Parts parts = make::test_parts();
    parts.leds["carrier-red"].max_mA = 20;
    const Review made = review(with_resistor(1, "carrier-red"), parts);
    const Finding* found = find(made, "led-overdriven", "L1");
    REQUIRE(found != nullptr);
    const std::size_t at = found->fix.find_first_of("0123456789");
    const double advised_ohm = std::stod(found->fix.substr(at));
    INFO(found->fix);
    CHECK(advised_ohm < 100);
    CHECK(find(review(with_resistor(advised_ohm, "carrier-red"), parts), "led-overdriven") == nullptr);
}

TEST_CASE("Nobody is told to join the two sides", "[findings]") {
    // The holder has slipped so that the flap meets N1: N1 is truly positive, and S1 lies over it on a patch.
    const Review made = review(sample([](Card& c) { c.holder.at_mm = {8, 80}; }), make::test_parts());
    const Finding* found = find(made, "led-not-reached", "L1+");
    INFO(found_in(made));
    REQUIRE(found != nullptr);
    CHECK(found->fix.find("N1") == std::string::npos);
}

TEST_CASE("Any card gets findings with finite places and numbers", "[findings]") {
    // A fixed sequence of pseudo-random cards (the 64-bit generator of Knuth's MMIX): everything jolted
    // about.
    unsigned long long state = 20240607;
    const auto random = [&](double low, double high) {
        state = state * 6364136223846793005ULL + 1442695040888963407ULL;
        return low + (high - low) * static_cast<double>(state >> 11) / 9007199254740992.0;
    };
    for (int round = 0; round < 300; ++round) {
        Card card = make::row_card(3);
        card.sheet.folds.push_back({{random(0, 148), 0}, {random(0, 148), 105}, {}});
        card.sheet.keepouts.push_back(
            {"", {{random(0, 148), 10}, {random(0, 148), random(20, 90)}, {random(0, 148), 90}}, {}});
        card.holder.turn_deg = random(0, 360);
        card.holder.type = round % 3 == 0 ? "slide-20" : "press-flap-20";
        card.cell.face_down = round % 4 == 0 ? CellFace::positive : CellFace::negative;
        for (Led& led : card.leds) {
            led.at_mm = led.at_mm + Vec2{random(-6, 6), random(-6, 6)};
            led.turn_deg = random(0, 360);
        }
        for (const char* id : {"N1", "S1"}) {
            for (Vec2& point : strip(card, id).path_mm) {
                point = point + Vec2{random(-9, 9), random(-9, 9)};
            }
        }
        card.laid.emplace_back(make::strip("K1", Side::link, {{random(0, 148), 40}, {random(0, 148), 40}}));
        const Review made = review(card, make::test_parts());
        for (const Finding& finding : made.findings) {
            INFO(round << " " << finding.rule << ": " << finding.text);
            CHECK(std::abs(finding.at_mm.x) < 400);
            CHECK(std::abs(finding.at_mm.y) < 400);
            CHECK(finding.text.find("e+") == std::string::npos);
            CHECK(finding.text.size() < 300);
        }
    }
}
