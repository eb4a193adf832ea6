// Shopping lists worked by hand. The sample card: N1 is 35 + 88 = 123 mm with one fold, S1 is 6 + 45 + 58 =
// 109 mm with two; one 14 x 14 patch; foam 1.5 mm in three layers on all four sides of 148 x 105.
#include "sheets/shopping.h"

#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

const CountNeed& line(const Shopping& list, const std::string& pack) {
    for (const CountNeed& need : list.counts) {
        if (need.pack == pack) {
            return need;
        }
    }
    FAIL("no line for " << pack);
    return list.counts.front();
}

} // namespace

TEST_CASE("One sample card", "[sheets][shopping]") {
    const Card card = make::sample_card();
    const Shopping list = shopping(card, make::test_parts(), 1, spare_rules(Audience::adults));
    REQUIRE(list.cuts.size() == 2);
    CHECK(list.cuts[0].length_mm == Approx(123.0));
    CHECK(list.cuts[0].folds == 1);
    CHECK(list.cuts[1].length_mm == Approx(109.0));
    CHECK(list.cuts[1].folds == 2);
    REQUIRE(list.tapes.size() == 1);
    CHECK(list.tapes[0].card_mm == Approx(232.0));
    CHECK(list.tapes[0].waste_mm == Approx(46.4)); // 20 % (makers' practice for copper)
    CHECK(list.tapes[0].buy_mm == Approx(278.4));
    CHECK(list.tapes[0].laps_mm == Approx(0.0)); // + over - at the patch is no joint
    CHECK(line(list, "carrier-white").words == "white light, carrier");
    CHECK(line(list, "carrier-white").buy() == 1 + 2); // 10 %, at least two
    CHECK(line(list, "CR2032").buy() == 1 + 1);
    CHECK(line(list, "patch").words == "patch, 14 mm × 14 mm");
    REQUIRE(list.foam);
    CHECK(list.foam->lengths_mm.size() == 4);
    CHECK(list.foam->card_mm == Approx(3 * (2 * 148.0 + 2 * 95.0))); // sides fit between top and bottom
    CHECK(list.foam->buy_mm == Approx(1458.0 * 1.1));
    CHECK(list.spare_kits == 0);
}

TEST_CASE("A class of twenty: 25 % lights, 30 % tape, 22 cells, 5 holders, 3 kits", "[sheets][shopping]") {
    const Card card = make::row_card(7);
    const Shopping list = shopping(card, make::test_parts(), 20, spare_rules(Audience::school_class));
    CHECK(list.spare_kits == 3);
    CHECK(line(list, "CR2032").buy() == 22); // kits are made up without cells
    CHECK(line(list, "carrier-white").batch == 7 * 23);
    CHECK(line(list, "carrier-white").spare == 35);
    CHECK(line(list, "press-flap-20").spare == 5);
    CHECK(line(list, "sheet").buy() == 23);
    // Rails: 35 + 134 and 6 + 45 + 104 mm, for 23 kits, and 30 % more.
    CHECK(list.tapes[0].buy_mm == Approx((169.0 + 155.0) * 23 * 1.3));
}

TEST_CASE("A batch of twenty among adults needs ten per cent, not eleven by rounding", "[sheets][shopping]") {
    const Shopping list = shopping(make::row_card(3), make::test_parts(), 20, spare_rules(Audience::adults));
    CHECK(line(list, "carrier-white").spare == 6);
    CHECK(line(list, "CR2032").buy() == 22);
    CHECK(line(list, "press-flap-20").buy() == 22);
}

TEST_CASE("Laps and turned ends are told, and turned ends are cut", "[sheets][shopping]") {
    Card card = make::sample_card();
    card.laid.emplace_back(make::strip("N2", Side::negative, {{108, 45}, {130, 45}}));
    std::get<Strip>(card.laid.back()).ends[0] = EndStyle::folded;
    const Shopping list = shopping(card, make::test_parts(), 1, spare_rules(Audience::adults));
    CHECK(list.tapes[0].laps_mm == Approx(10.0));  // 108 to 118
    CHECK(list.tapes[0].turned_mm == Approx(5.0)); // a width of 5 mm tape
    CHECK(list.cuts[2].length_mm == Approx(22.0 + 5.0));
    CHECK(list.tapes[0].card_mm == Approx(232.0 + 27.0));
}

TEST_CASE("Lights go by colour and package, resistors by ohms, tape by kind", "[sheets][shopping]") {
    Card card = make::sample_card();
    card.leds.push_back(make::led("L2", "carrier-red", {100, 40}, 270));
    card.leds.push_back(make::led("L3", "carrier-red", {90, 40}, 270));
    card.resistors.push_back(make::resistor("R1", 47, {90, 60}));
    card.resistors.push_back(make::resistor("R2", 47, {90, 70}));
    card.resistors.push_back(make::resistor("R3", 100, {90, 80}));
    card.laid.emplace_back(make::strip("X1", Side::link, {{5, 5}, {25, 5}}, "fabric-5"));
    const Shopping list = shopping(card, make::test_parts(), 1, spare_rules(Audience::adults));
    CHECK(line(list, "carrier-white").per_card == 1);
    CHECK(line(list, "carrier-red").per_card == 2);
    CHECK(line(list, "resistor").words == "resistor, 47 Ω");
    CHECK(line(list, "resistor").per_card == 2);
    REQUIRE(list.tapes.size() == 2);
    CHECK(list.tapes[1].type == "fabric-5");
    CHECK(list.tapes[1].buy_mm == Approx(24.0));
}

TEST_CASE("Costs by hand", "[sheets][shopping]") {
    const SpareRules rules = spare_rules(Audience::adults);
    const Shopping list = shopping(make::sample_card(), make::test_parts(), 20, rules);
    Prices prices;
    prices.currency = "EUR";
    prices.packs["copper-5"] = {5.0, 2.0, true};        // a 2 m roll
    prices.packs["carrier-white"] = {8.0, 10.0, false}; // ten
    prices.packs["foam"] = {3.0, 5.0, false};           // by the piece: not how foam is counted
    const Costs made = costs(list, rules, prices);
    REQUIRE(made.lines.size() == 2);
    CHECK(made.lines[0].per_card == Approx(0.2784 * 5.0 / 2.0));
    CHECK(made.lines[0].packs == 3); // 5.568 m
    CHECK(made.lines[1].per_card == Approx(0.80));
    CHECK(made.lines[1].packs == 3); // 20 + 2 spare
    CHECK(made.per_card == Approx(0.696 + 0.80));
    CHECK(made.outlay == Approx(15.0 + 24.0));
    CHECK(made.unpriced == std::vector<std::string>{"CR2032", "press-flap-20", "patch", "sheet", "foam"});
}

TEST_CASE("Just a full roll is one roll", "[sheets][shopping]") {
    SpareRules rules;
    rules.tape_waste_percent = 0;
    Prices prices;
    prices.packs["copper-5"] = {1.0, 2.32, true};
    CHECK(costs(shopping(make::sample_card(), make::test_parts(), 10, rules), rules, prices).lines[0].packs ==
          1);
}

TEST_CASE("A price file is read, or refused in one sentence", "[sheets][shopping]") {
    const auto read = [](const std::string& packs) {
        return read_prices(R"({"lanternleaf":1,"kind":"prices","currency":"EUR","packs":{)" + packs + "}}",
                           "p.json");
    };
    const Outcome<Prices> good =
        read(R"("copper-5":{"price":4.2,"holds_m":16.5},"CR2032":{"price":4,"holds":5})");
    REQUIRE(good);
    CHECK(good.value().packs.at("copper-5") == PackPrice{4.2, 16.5, true});
    CHECK(good.value().packs.at("CR2032") == PackPrice{4.0, 5.0, false});
    for (const char* bad :
         {R"("a":{"price":-1,"holds":5})", R"("a":{"price":1,"holds":0})", R"("a":{"price":1})",
          R"("a":{"price":1,"holds":5,"holds_m":1})", R"("a":{"price":"1","holds":5})"}) {
        const Outcome<Prices> refused = read(bad);
        INFO(bad);
        REQUIRE_FALSE(refused);
        CHECK(refused.problem().file == "p.json");
        CHECK(refused.problem().place.rfind("/packs/a", 0) == 0);
        CHECK(refused.problem().sentence().find('\n') == std::string::npos);
    }
    CHECK_FALSE(read_prices(R"({"lanternleaf":1,"kind":"card"})", "p.json"));
    CHECK_FALSE(read_prices("{", "p.json"));
}
