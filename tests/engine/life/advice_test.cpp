// What to do about a card: resistors, what would help, evenness, closing and letters.
#include "life/closing.h"
#include "life/evenness.h"
#include "life/helps.h"
#include "life/resistors.h"
#include "support/make_card.h"
#include "support/words_of.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

std::vector<ResistorSuggestion> suggested(const Card& card) {
    const Parts parts = make::test_parts();
    return suggest_resistors(card, parts, find_conductors(card, parts));
}

std::vector<Help> helped(const Card& card, const Parts& parts) {
    return what_helps(card, parts, find_conductors(card, parts));
}

const LetterFit& letter(const Closing& closing, const std::string& post, const std::string& name) {
    const auto found =
        std::find_if(closing.letters.begin(), closing.letters.end(), [&](const LetterFit& fit) {
            return post == fit.letter->post && name == fit.letter->name;
        });
    REQUIRE(found != closing.letters.end());
    return *found;
}

} // namespace

TEST_CASE("E12 is the series of IEC 60063", "[life][resistors]") {
    const std::vector<double> expected = {10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82, 100};
    CHECK(e12_values(10, 100) == expected);
    CHECK(e12_values(1.0, 1.5) == std::vector<double>{1.0, 1.2, 1.5});
    CHECK(e12_values(20, 21).empty());
}

TEST_CASE("A resistor at the red gives the blue its share", "[life][resistors]") {
    Card card = make::row_card(2, "carrier-green"); // the same chip as blue
    card.leds[0].type = "carrier-red";
    const std::vector<ResistorSuggestion> made = suggested(card);
    REQUIRE(made.size() == 1);
    CHECK(made[0].leds == std::vector<int>{0});
    CHECK(made[0].starved == 1);
    // Closed form, E = 3.0 V behind 15 ohm (solved to 60 digits outside this project): bare 3.5 uA
    // beside 49.6 mA, with 100 ohm 2.76 mA beside 8.70 mA. This cell is 3.096 V behind 14.3 ohm.
    CHECK(made[0].before_mA[1] < 0.01);
    CHECK(made[0].before_mA[0] > 40.0);
    CHECK(made[0].after_mA[1] > 2.0);
    CHECK(made[0].after_mA[0] > 2.0);
    const std::vector<double> e12 = e12_values(10, 1000);
    CHECK(std::find(e12.begin(), e12.end(), made[0].ohm) != e12.end());
    CHECK(made[0].ohm >= 100.0);
    CHECK(made[0].sentence.find("in series with L1") != std::string::npos);
    const Parts parts = make::test_parts();
    const std::string german =
        suggest_resistors(card, parts, find_conductors(card, parts), words_of("de"))[0].sentence;
    CHECK(german.find("in Reihe mit L1: L2 geht von ") != std::string::npos);
    // Lights of one kind, and a card with nothing starved, need none.
    CHECK(suggested(make::row_card(4)).empty());
    CHECK(suggested(make::row_card(1)).empty());
    // One that is turned is not starved: a resistor would not help it.
    Card turned = make::row_card(2);
    turned.leds[0].type = "carrier-red";
    turned.leds[1].turn_deg += 180;
    CHECK(suggested(turned).empty());
}

TEST_CASE("What helps is what was tried and found to help", "[life][helps]") {
    Parts parts = make::test_parts();
    CellType big = parts.cells.at("CR2032");
    big.diameter_mm = 24.5;
    big.series_ohm = 8.7;
    big.steady_ohm = 69;
    big.capacity_mAh = 550;
    parts.cells["CR2450"] = big;
    CellType small = parts.cells.at("CR2032");
    small.capacity_mAh = 90;
    parts.cells["CR2016"] = small;
    const std::vector<Help> made = helped(make::row_card(6), parts);
    REQUIRE_FALSE(made.empty());
    for (std::size_t i = 0; i < made.size(); ++i) {
        INFO(made[i].sentence);
        CHECK(said_whole(made[i].sentence));
        CHECK(made[i].score > 0.0);
        CHECK((made[i].after_h > made[i].before_h || made[i].after_ratio > made[i].before_ratio));
        CHECK(made[i].fresh_seen > 0.85);
        CHECK(made[i].type != "CR2016"); // less than half the charge helps nobody
        if (i > 0) {
            CHECK(made[i].score <= made[i - 1].score);
        }
    }
    const auto cell = std::find_if(made.begin(), made.end(),
                                   [](const Help& help) { return help.kind == HelpKind::other_cell; });
    REQUIRE(cell != made.end());
    CHECK(cell->type == "CR2450");
    CHECK(cell->other_holder);
    CHECK(cell->estimate);
    CHECK(cell->after_h > 1.8 * cell->before_h); // two and a half times the charge, a lower resistance
    const auto fewer = std::find_if(made.begin(), made.end(),
                                    [](const Help& help) { return help.kind == HelpKind::fewer_lights; });
    REQUIRE(fewer != made.end());
    CHECK(fewer->after_h > fewer->before_h);
    CHECK(helped(make::bare_card(), parts).empty());
}

TEST_CASE("A starved colour: a resistor or another colour comes first", "[life][helps]") {
    Card card = make::row_card(2, "carrier-green");
    card.leds[0].type = "carrier-red";
    const std::vector<Help> made = helped(card, make::test_parts());
    REQUIRE_FALSE(made.empty());
    CHECK(made[0].before_h == 0.0); // the green one is dark from the start
    CHECK(made[0].after_h > 1.0);
    CHECK(std::any_of(made.begin(), made.end(), [](const Help& help) {
        return help.kind == HelpKind::resistor && help.leds == std::vector<int>{0};
    }));
}

TEST_CASE("Neighbours are compared by what the eye can tell", "[life][evenness]") {
    // One brightness bin of Lite-On and OSRAM is a factor of 1.58 to 1.6: 0.63.
    CHECK(likeness_of(0.95) == Likeness::same);
    CHECK(likeness_of(0.85) == Likeness::barely);
    CHECK(likeness_of(0.64) == Likeness::slightly);
    CHECK(likeness_of(0.62) == Likeness::visibly);
    CHECK(likeness_of(0.2) == Likeness::much);
    const Card card = make::row_card(3);
    const std::vector<double> mcd = {100, 50, 48};
    const std::vector<NeighbourLight> even = evenness_of(card, mcd);
    CHECK(even[0].neighbour == 1);
    CHECK(even[0].ratio == Approx(0.5));
    CHECK_FALSE(even[0].dimmer);
    CHECK(even[2].neighbour == 1);
    CHECK(even[2].likeness == Likeness::same);
    CHECK(worst_ratio(even) == Approx(0.5));
    CHECK(evenness_of(make::row_card(1), std::vector<double>{3.0})[0].neighbour == -1);
}

TEST_CASE("Closed thickness and the foam window", "[life][closing]") {
    const Parts parts = make::test_parts();
    const Card card = make::row_card(2); // CR2032 3.2 mm, 0.3 mm of paper on each side, foam 3 x 1.5 mm
    const Closing closing = close_up(card, parts);
    CHECK(closing.holder_mm == Approx(3.8));
    CHECK(closing.foam_low_mm == Approx(3.8));
    CHECK(closing.foam_high_mm == Approx(5.3));
    CHECK(closing.foam_fits);
    CHECK(closing.risk == SwitchRisk::none);
    CHECK(closing.closed_mm == Approx(4.5 + 4 * 0.25 + 0.2));
    Card low = card;
    low.foam->layers = 2;
    CHECK(close_up(low, parts).risk == SwitchRisk::pressed);
    CHECK(close_up(low, parts).foam_layers == 3);
    Card bare = card;
    bare.foam.reset();
    CHECK(close_up(bare, parts).risk == SwitchRisk::no_foam);
    Card close = card;
    close.foam->thickness_mm = 1.3;
    CHECK(close_up(close, parts).risk == SwitchRisk::close);
    Card slide = card;
    slide.holder.type = "slide-20";
    CHECK(close_up(slide, parts).risk == SwitchRisk::slide);
    const auto says = [](const Closing& made, const char* words) {
        return std::any_of(made.advice.begin(), made.advice.end(),
                           [&](const std::string& line) { return line.find(words) != std::string::npos; });
    };
    CHECK(says(closing, "pull tab"));
    CHECK(says(close_up(low, parts), "runs flat"));
    CHECK(says(close_up(slide, parts), "Switch it off"));
    for (const char* language : {"de", "es"}) {
        for (const Card& one : {card, low, bare, close, slide}) {
            const Closing told = close_up(one, parts, {}, words_of(language));
            CHECK(std::all_of(told.advice.begin(), told.advice.end(), said_whole));
        }
    }
    Card folded = card;
    folded.sheet.width_mm = 148;
    folded.sheet.folds.push_back({{74, 0}, {74, 105}, {}});
    CHECK(close_up(folded, parts).width_mm == 74);
    CHECK(close_up(folded, parts).height_mm == 105);
}

TEST_CASE("What the posts take as a letter", "[life][letters]") {
    Parts parts = make::test_parts();
    Card card = make::sample_card();
    card.sheet.folds.clear();
    const Closing closing = close_up(card, parts);
    // 5 mm: Royal Mail letter, Deutsche Post Standardbrief, Canada Post standard. A CR2032 card is thicker.
    CHECK_FALSE(letter(closing, "United Kingdom", "letter").fits);
    CHECK_FALSE(letter(closing, "Germany", "Standardbrief").fits);
    CHECK_FALSE(letter(closing, "Canada", "standard").fits);
    CHECK(letter(closing, "United Kingdom", "large letter").fits);
    CHECK(letter(closing, "Germany", "Kompaktbrief").fits);
    // USPS: at most 1/4 in, and what is rigid or uneven is nonmachinable.
    CHECK_FALSE(letter(closing, "United States", "letter").fits);
    CHECK(letter(closing, "United States", "nonmachinable letter").fits);
    CHECK(std::string(letter(closing, "United States", "letter").letter->as_of).find("2021-01-24") !=
          std::string::npos);
    // A CR2016 in a slim holder: 1.6 + 0.6 mm, with foam of 2.5 mm, makes 3.7 mm and passes.
    parts.cells.at("CR2032").height_mm = 1.6;
    card.foam = Foam{2.5, 1, {Edge::top}, {}};
    CHECK(close_up(card, parts).closed_mm == Approx(3.7));
    CHECK(letter(close_up(card, parts), "United Kingdom", "letter").fits);
    // Square is no letter in Germany.
    card.sheet.width_mm = 100;
    card.sheet.height_mm = 100;
    CHECK(letter(close_up(card, parts), "Germany", "Kompaktbrief").why_not.find("square") !=
          std::string::npos);
}
