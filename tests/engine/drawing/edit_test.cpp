// Edits: each does what it says and nothing else, and what cannot be done changes nothing and says why.
#include "drawing/edit.h"

#include "cardfile/cardfile.h"
#include "findings/review.h"
#include "support/make_card.h"
#include "support/words_of.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

Card done(const Card& card, Edit edit) {
    Outcome<Card> made = apply_edit(card, make::test_parts(), edit);
    INFO((made ? std::string() : made.problem().sentence()));
    REQUIRE(made);
    return std::move(made).value();
}

std::string refused(const Card& card, Edit edit) {
    const Outcome<Card> made = apply_edit(card, make::test_parts(), edit);
    REQUIRE_FALSE(made);
    CHECK(made.problem().file.empty());
    CHECK(made.problem().expected.back() == '.');
    CHECK(made.problem().expected.find('\n') == std::string::npos);
    static const Words german = words_of("de");
    const std::string in_german = apply_edit(card, make::test_parts(), edit, german).problem().expected;
    CHECK(said_whole(made.problem().expected));
    CHECK(said_whole(in_german));
    CHECK(in_german != made.problem().expected);
    return made.problem().expected;
}

const Strip& strip(const Card& card, const std::string& id) {
    const Strip* found = find_strip(card, id);
    REQUIRE(found != nullptr);
    return *found;
}

} // namespace

TEST_CASE("a blank card has nothing on it but a holder that lies well, and asks who it is for") {
    for (const Vec2 size : {Vec2{148, 105}, Vec2{105, 148}, Vec2{210, 148}}) {
        const Card card = blank_card(make::test_parts(), size.x, size.y);
        const Review now = review(card, make::test_parts());
        for (const Finding& finding : now.findings) {
            const bool expected = finding.rule == "cell-in-reach" || finding.level == Level::note;
            CHECK(expected); // nobody was named, and a coin cell makes a thick letter
        }
        // The file's reader accepts what is written of it.
        const Outcome<Card> again = read_card(write_card(card), "new", make::test_parts());
        REQUIRE(again);
        CHECK(again.value().holder == card.holder);
    }
}

TEST_CASE("parts are placed, moved, turned, copied and taken away") {
    Card card = make::bare_card();
    card = done(card, {edit::PlaceLed{"carrier-white", {60, 40}, 450}});
    REQUIRE(card.leds.size() == 1);
    CHECK(card.leds[0].id == "L1");
    CHECK(card.leds[0].turn_deg == 90);
    card = done(card, {edit::CopyPart{"L1", {14, 0}}});
    CHECK(card.leds[1].id == "L2");
    CHECK(card.leds[1].at_mm == Vec2{74, 40});
    card = done(card, {edit::RemovePart{"L1"}});
    REQUIRE(card.leds.size() == 1);
    CHECK(card.leds[0].id == "L2");
    card = done(card, {edit::PlaceLed{"carrier-red", {20, 20}, 0}});
    CHECK(card.leds[1].id == "L1"); // the first free name
    card = done(card, {edit::MovePart{"L1", {25, 26}}});
    CHECK(find_led(card, "L1")->at_mm == Vec2{25, 26});
    card = done(card, {edit::TurnPart{"L1", -90}});
    CHECK(find_led(card, "L1")->turn_deg == 270);
    card = done(card, {edit::SetLedType{"L1", "carrier-green"}});
    CHECK(find_led(card, "L1")->type == "carrier-green");

    card = done(card, {edit::PlaceResistor{47, {90, 60}, 0}});
    card = done(card, {edit::SetOhm{"R1", 10}});
    CHECK(card.resistors[0].ohm == 10);
    card = done(card, {edit::MovePart{kHolderId, {40, 60}}});
    card = done(card, {edit::TurnPart{kHolderId, 90}});
    CHECK(card.holder.at_mm == Vec2{40, 60});
    CHECK(card.holder.turn_deg == 90);
    card = done(card, {edit::SetHolder{"screw-20"}});
    CHECK(card.holder.type == "screw-20");
    card = done(card, {edit::PlacePatch{{70, 70}, {14, 14}, 0}});
    card = done(card, {edit::CopyPart{"P1", {20, 0}}});
    CHECK(id_of(card.laid[1]) == "P2");
}

TEST_CASE("a strip grows, bends, and gives its corners back") {
    Card card = make::bare_card();
    card = done(card, {edit::LayStrip{Side::negative, "copper-5", {{30, 80}, {30, 45}}}});
    CHECK(strip(card, "N1").path_mm.size() == 2);
    card = done(card, {edit::InsertCorner{"N1", 2, {100, 45}}});
    card = done(card, {edit::InsertCorner{"N1", 2, {60, 60}}});
    CHECK(strip(card, "N1").path_mm == std::vector<Vec2>{{30, 80}, {30, 45}, {60, 60}, {100, 45}});
    card = done(card, {edit::MoveCorner{"N1", 2, {60, 45}}});
    card = done(card, {edit::RemoveCorner{"N1", 2}});
    CHECK(strip(card, "N1").path_mm == std::vector<Vec2>{{30, 80}, {30, 45}, {100, 45}});
    // Laying goes to the right; right of that is down on the table.
    card = done(card, {edit::MoveRun{"N1", 1, 5}});
    CHECK(strip(card, "N1").path_mm == std::vector<Vec2>{{30, 80}, {30, 50}, {100, 50}});
    card = done(card, {edit::MoveStrip{"N1", {1, -1}}});
    CHECK(strip(card, "N1").path_mm == std::vector<Vec2>{{31, 79}, {31, 49}, {101, 49}});
    card = done(card, {edit::SetSide{"N1", Side::positive}});
    card = done(card, {edit::SetTape{"N1", "fabric-5"}});
    card = done(card, {edit::SetEnd{"N1", 1, EndStyle::folded}});
    CHECK(strip(card, "N1").side == Side::positive);
    CHECK(strip(card, "N1").tape == "fabric-5");
    CHECK(strip(card, "N1").ends[1] == EndStyle::folded);
}

TEST_CASE("a cut strip stays joined, and joined pieces are the strip again") {
    const Card whole = make::sample_card();
    const Card cut = done(whole, {edit::SplitStrip{"S1", {90, 36}}});
    REQUIRE(cut.laid.size() == 4);
    CHECK(strip(cut, "S1").path_mm.back() == Vec2{90, 35});
    CHECK(strip(cut, "S2").path_mm.front() == Vec2{85, 35});
    CHECK(strip(cut, "S2").path_mm.back() == Vec2{118, 35});
    // The joint is a full width of tape: the light still has its way, and nothing is said of a short joint.
    const Review now = review(cut, make::test_parts());
    CHECK(now.count(Level::problem) == 0);
    CHECK(now.count(Level::caution) == 0);
    const Card joined = done(cut, {edit::JoinStrips{"S1", "S2"}});
    CHECK(joined == whole);
}

TEST_CASE("strips whose ends meet at a corner join into one fold, whichever way they were laid") {
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("N1", Side::negative, {{100, 45}, {30, 45}}));
    card.laid.emplace_back(make::strip("N2", Side::negative, {{30, 80}, {30, 45}}));
    const Card joined = done(card, {edit::JoinStrips{"N1", "N2"}});
    REQUIRE(joined.laid.size() == 1);
    CHECK(strip(joined, "N1").path_mm == std::vector<Vec2>{{100, 45}, {30, 45}, {30, 80}});
}

TEST_CASE("a patch at a crossing goes between the two and covers it with room to spare") {
    Card card = make::sample_card();
    std::erase_if(card.laid, [](const Laid& laid) { return id_of(laid) == "P1"; });
    REQUIRE(review(card, make::test_parts()).count(Level::problem) > 0);
    const Card patched = done(card, {edit::PatchCrossing{"S1", "N1", {60, 45}}});
    REQUIRE(patched.laid.size() == 3);
    CHECK(id_of(patched.laid[1]) == "P1");
    CHECK(review(patched, make::test_parts()).count(Level::problem) == 0);
    CHECK(review(patched, make::test_parts()).count(Level::caution) == 0);
    // Again: the old patch is taken away, not covered.
    CHECK(done(patched, {edit::PatchCrossing{"N1", "S1", {60, 45}}}).laid.size() == 3);
}

TEST_CASE("a patch at a slanting crossing is turned with the strip below") {
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("N1", Side::negative, {{60, 20}, {110, 70}}));
    card.laid.emplace_back(make::strip("S1", Side::positive, {{60, 45}, {120, 45}}));
    const Card patched = done(card, {edit::PatchCrossing{"N1", "S1", {85, 45}}});
    CHECK(std::get<Patch>(patched.laid[1]).turn_deg == Approx(45));
    for (const Finding& finding : review(patched, make::test_parts()).findings) {
        CHECK(finding.rule != "crossing-bare");
        CHECK(finding.rule != "patch-small");
    }
}

TEST_CASE("the sheet, its creases, keep-outs, picture, foam, cell, audience and title are set") {
    Card card = make::bare_card();
    card = done(card, {edit::SetSheetSize{200, 140}});
    card = done(card, {edit::SetFolds{{{{100, 0}, {100, 140}, {}}}}});
    card = done(card, {edit::SetKeepouts{{{"window", {{10, 10}, {30, 10}, {30, 30}}, {}}}}});
    card = done(card, {edit::SetArt{Art{"tree.png", {0, 0}, 200, {}}}});
    card = done(card, {edit::SetFoam{Foam{2, 2, {Edge::left}, {}}}});
    card = done(card, {edit::SetAudience{Audience::children}});
    card = done(card, {edit::SetCell{"CR2032", 1, CellFace::positive}});
    card = done(card, {edit::SetTitle{"Tree"}});
    const Outcome<Card> read = read_card(write_card(card), "tree", make::test_parts());
    REQUIRE(read);
    CHECK(read.value() == card);
}

TEST_CASE("what cannot be done is refused in one sentence") {
    const Card card = make::sample_card();
    refused(card, {edit::RemovePart{kHolderId}});
    refused(card, {edit::RemovePart{"L9"}});
    refused(card, {edit::PlaceLed{"no-such", {1, 1}, 0}});
    refused(card, {edit::PlaceLed{"carrier-white", {std::nan(""), 1}, 0}});
    refused(card, {edit::PlaceResistor{0, {1, 1}, 0}});
    refused(card, {edit::LayStrip{Side::negative, "copper-5", {{30, 80}}}});
    refused(card, {edit::LayStrip{Side::negative, "no-such", {{30, 80}, {30, 20}}}});
    refused(card, {edit::MoveCorner{"N1", 7, {1, 1}}});
    refused(card, {edit::MoveCorner{"N1", 0, {30, 45}}}); // onto its neighbour
    refused(card, {edit::SplitStrip{"N1", {30, 80}}});
    refused(card, {edit::JoinStrips{"N1", "S1"}});
    refused(card, {edit::JoinStrips{"N1", "N1"}});
    refused(card, {edit::SetSheetSize{0, 100}});
    refused(card, {edit::SetSheetSize{std::nan(""), 100}});
    refused(card, {edit::SetArt{Art{"../elsewhere.png", {0, 0}, 10, {}}}});
    refused(card, {edit::SetFoam{Foam{0, 1, {}, {}}}});
    refused(card, {edit::SetTitle{"  "}});
    refused(card, {edit::PatchCrossing{"N1", "N1", {60, 45}}});
    refused(card, {edit::ReplaceLaid{{Laid{make::strip("L1", Side::negative, {{0, 0}, {9, 9}})}}}});
}

TEST_CASE("a list of edits is done whole or not at all, and bears its own name") {
    const Card card = make::sample_card();
    const Card both =
        done(card, {EditList{"turn twice", {{edit::TurnPart{"L1", 0}}, {edit::MovePart{"L1", {9, 9}}}}}});
    CHECK(both.leds[0].turn_deg == 0);
    CHECK(both.leds[0].at_mm == Vec2{9, 9});
    CHECK(label_of({EditList{"turn twice", {}}}) == "turn twice");
    refused(card, {EditList{"half", {{edit::TurnPart{"L1", 0}}, {edit::TurnPart{"L9", 0}}}}});
    CHECK(label_of({edit::LayStrip{Side::positive, "copper-5", {}}}) == "lay a + strip");
    CHECK(label_of({edit::SetSide{"N1", Side::link}}, words_of("es")) == "hacer de N1 una tira de enlace");
}
