#include "conductors/conductors.h"
#include "find_moves.h"
#include "geometry/ribbon.h"
#include "guide/change.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

Card changed(const Card& card, const Change& change) {
    const Outcome<Card> made = apply_change(card, make::kParts, change);
    REQUIRE(made.ok());
    return made.value();
}

bool joined(const Card& card, const std::string& a, const std::string& b) {
    const Conductors conductors = find_conductors(card, make::kParts);
    int nets[2] = {-1, -2};
    for (std::size_t i = 0; i < conductors.strips.size(); ++i) {
        const std::string& id = strip_of(card, conductors, static_cast<int>(i)).id;
        if (id == a) {
            nets[0] = conductors.net_of_strip[i];
        }
        if (id == b) {
            nets[1] = conductors.net_of_strip[i];
        }
    }
    return nets[0] == nets[1];
}

double overlap_mm2(const Card& card) {
    double most = 0.0;
    for (const Overlap& overlap : find_conductors(card, make::kParts).overlaps) {
        if (overlap.patches.empty()) {
            most = std::max(most, overlap.area_mm2);
        }
    }
    return most;
}

} // namespace

TEST_CASE("a cut corner becomes a lapped joint of the length given", "[guide]") {
    const Card card = make::sample_card();
    const double mm = GENERATE(1.0, 3.0, 5.0);
    const Card cut = changed(card, {ChangeKind::joint_cut, "N1", {31, 46}, mm, "", 0});
    REQUIRE(find_strip(cut, "N1b") != nullptr);
    CHECK(id_of(cut.laid[0]) == "N1");
    CHECK(id_of(cut.laid[1]) == "N1b");                             // right on top of the first
    CHECK(find_strip(cut, "N1")->path_mm.back().y == Approx(42.5)); // flush with the corner's far edge
    CHECK(joined(cut, "N1", "N1b"));
    CHECK(overlap_mm2(cut) == Approx(5.0 * mm).margin(1e-6));
    CHECK(find_strip(cut, "N1b")->path_mm.back() == Vec2{118, 45});
}

TEST_CASE("a cut corner may miss", "[guide]") {
    const Card cut = changed(make::sample_card(), {ChangeKind::joint_cut, "N1", {30, 45}, -1.5, "", 0});
    CHECK_FALSE(joined(cut, "N1", "N1b"));
    // From the first piece's edge at x = 32.5, 1.5 mm on.
    CHECK(find_strip(cut, "N1b")->path_mm.front().x == Approx(34));
    // A second thought: bridged, it conducts again.
    const Card mended = changed(cut, {ChangeKind::bridged, "N1", {33, 45}, 15, "", 0});
    REQUIRE(find_strip(mended, "N1r") != nullptr);
    CHECK(joined(mended, "N1", "N1b"));
}

TEST_CASE("a cut of a strip without folds laps in line", "[guide]") {
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {120, 80}}));
    const Card cut = changed(card, {ChangeKind::joint_cut, "N1", {70, 80}, 12, "", 0});
    CHECK(joined(cut, "N1", "N1b"));
    CHECK(overlap_mm2(cut) == Approx(60));
}

TEST_CASE("a tear parts a strip, a bridge joins it again", "[guide]") {
    const Card card = make::sample_card();
    const Card torn = changed(card, {ChangeKind::tear, "N1", {80, 45}, 0, "", 0});
    REQUIRE(find_strip(torn, "N1b") != nullptr);
    CHECK_FALSE(joined(torn, "N1", "N1b"));
    CHECK(find_strip(torn, "N1")->path_mm.back().x == Approx(79.5));
    CHECK(find_strip(torn, "N1b")->path_mm.front().x == Approx(80.5));
    const Card mended = changed(torn, {ChangeKind::bridged, "N1", {80, 45.4}, 16, "", 0});
    const Strip* repair = find_strip(mended, "N1r");
    REQUIRE(repair != nullptr);
    CHECK(repair->side == Side::negative);
    CHECK(repair->tape == "copper-5");
    CHECK(repair->path_mm.front().x == Approx(72));
    CHECK(repair->path_mm.back().x == Approx(88));
    CHECK(repair->path_mm.front().y == Approx(45)); // along the strip, not where the finger was
    CHECK(joined(mended, "N1", "N1b"));
    // Off the middle it still reaches both ends.
    CHECK(joined(changed(torn, {ChangeKind::bridged, "N1", {83, 45}, 16, "", 0}), "N1", "N1b"));
}

TEST_CASE("a later change finds the nearest piece, and ids stay unique", "[guide]") {
    Card card = make::sample_card();
    card = changed(card, {ChangeKind::tear, "N1", {80, 45}, 1, "", 0});
    card = changed(card, {ChangeKind::tear, "N1", {100, 45}, 1, "", 0});
    REQUIRE(find_strip(card, "N1c") != nullptr);
    CHECK(find_strip(card, "N1b")->path_mm.back().x == Approx(99.5));
    CHECK(find_strip(card, "N1c")->path_mm.front().x == Approx(100.5));
    card = changed(card, {ChangeKind::bridged, "N1", {80, 45}, 15, "", 0});
    card = changed(card, {ChangeKind::bridged, "N1", {100, 45}, 15, "", 0});
    CHECK(find_strip(card, "N1r2") != nullptr);
    CHECK(joined(card, "N1", "N1c"));
    std::vector<std::string> ids;
    for (const Laid& item : card.laid) {
        ids.push_back(id_of(item));
    }
    std::sort(ids.begin(), ids.end());
    CHECK(std::adjacent_find(ids.begin(), ids.end()) == ids.end());
}

TEST_CASE("a tear at the very end only shortens the strip", "[guide]") {
    const Card torn = changed(make::sample_card(), {ChangeKind::tear, "N1", {118, 45}, 1, "", 0});
    CHECK(find_strip(torn, "N1b") == nullptr);
    CHECK(find_strip(torn, "N1")->path_mm.back().x == Approx(117.5));
}

TEST_CASE("other tape, other place", "[guide]") {
    const Card card = make::sample_card();
    const Card swapped = changed(card, {ChangeKind::tape_swapped, "S1", {}, 0, "fabric-5", 0});
    CHECK(find_strip(swapped, "S1")->tape == "fabric-5");
    CHECK(find_strip(swapped, "N1")->tape == "copper-5");
    const Card moved = changed(card, {ChangeKind::strip_moved, "N1", {0, 3}, 0, "", 0});
    CHECK(find_strip(moved, "N1")->path_mm[1] == Vec2{30, 48});
    // Pieces go with their strip.
    const Card torn = changed(card, {ChangeKind::tear, "N1", {80, 45}, 1, "", 0});
    const Card both = changed(torn, {ChangeKind::strip_moved, "N1", {0, 3}, 0, "", 0});
    CHECK(find_strip(both, "N1b")->path_mm.back() == Vec2{118, 48});
}

TEST_CASE("changes to LEDs, patches, cell, holder and foam", "[guide]") {
    const Card card = make::sample_card();
    CHECK(find_led(changed(card, {ChangeKind::led_turned, "L1", {}, 0, "", 0}), "L1")->turn_deg ==
          Approx(90));
    CHECK(find_led(changed(card, {ChangeKind::led_swapped, "L1", {}, 0, "carrier-red", 0}), "L1")->type ==
          "carrier-red");
    CHECK(find_led(changed(card, {ChangeKind::led_moved, "L1", {90, 40}, 0, "", 0}), "L1")->at_mm ==
          Vec2{90, 40});
    CHECK(changed(card, {ChangeKind::patch_missing, "P1", {}, 0, "", 0}).laid.size() == 2);
    CHECK(std::get<Patch>(changed(card, {ChangeKind::patch_moved, "P1", {70, 45}, 0, "", 0}).laid[1]).at_mm ==
          Vec2{70, 45});
    const Card added = changed(card, {ChangeKind::patch_added, "N1", {60, 45}, 15, "", 0});
    REQUIRE(added.laid.size() == 4);
    CHECK(id_of(added.laid[1]) == "P2"); // right on top of N1, under all else
    CHECK(std::get<Patch>(added.laid[1]).size_mm == Vec2{15, 15});
    CHECK(changed(card, {ChangeKind::cells_stacked, "", {}, 0, "", 2}).cell.count == 2);
    CHECK(changed(card, {ChangeKind::cell_upside_down, "", {}, 0, "", 0}).cell.face_down ==
          CellFace::positive);
    CHECK(changed(card, {ChangeKind::holder_swapped, "", {}, 0, "slide-20", 0}).holder.type == "slide-20");
    CHECK(changed(card, {ChangeKind::foam_layers, "", {}, 0, "", 2}).foam->layers == 2);
    Parts parts = make::kParts;
    parts.cells["CR2016"] = parts.cells["CR2032"];
    const Outcome<Card> thin = apply_change(card, parts, {ChangeKind::cell_swapped, "", {}, 0, "CR2016", 0});
    REQUIRE(thin.ok());
    CHECK(thin.value().cell.type == "CR2016");
}

TEST_CASE("a change to something that is not there is one sentence", "[guide]") {
    const Card card = make::sample_card();
    Card no_foam = card;
    no_foam.foam.reset();
    for (const Change& change :
         {Change{ChangeKind::tear, "N9", {}, 1, "", 0}, Change{ChangeKind::bridged, "P1", {}, 1, "", 0},
          Change{ChangeKind::led_turned, "L9", {}, 0, "", 0},
          Change{ChangeKind::led_swapped, "L1", {}, 0, "no-such-led", 0},
          Change{ChangeKind::tape_swapped, "N1", {}, 0, "no-such-tape", 0},
          Change{ChangeKind::patch_missing, "N1", {}, 0, "", 0},
          Change{ChangeKind::patch_added, "N9", {}, 10, "", 0},
          Change{ChangeKind::patch_added, "N1", {}, 0, "", 0},
          Change{ChangeKind::cells_stacked, "", {}, 0, "", 0},
          Change{ChangeKind::cell_swapped, "", {}, 0, "CR9", 0},
          Change{ChangeKind::holder_swapped, "", {}, 0, "pocket", 0},
          Change{ChangeKind::joint_cut, "N1", {30, 45}, -200, "", 0}}) {
        const Outcome<Card> made = apply_change(card, make::kParts, change);
        INFO(name_of(change.kind));
        REQUIRE_FALSE(made.ok());
        CHECK_FALSE(made.problem().sentence().empty());
    }
    CHECK_FALSE(apply_change(no_foam, make::kParts, {ChangeKind::foam_layers, "", {}, 0, "", 2}).ok());
}

TEST_CASE("every kind of change has a name, a sentence and a step", "[guide]") {
    const Card card = make::sample_card();
    std::vector<std::string> names;
    for (int i = 0; i <= static_cast<int>(ChangeKind::foam_layers); ++i) {
        const auto kind = static_cast<ChangeKind>(i);
        const std::string name = name_of(kind);
        CHECK_FALSE(name.empty());
        CHECK(std::find(names.begin(), names.end(), name) == names.end());
        names.push_back(name);
        ChangeKind back = ChangeKind::tear;
        CHECK(change_kind_from(name, back));
        CHECK(back == kind);
        CHECK_FALSE(describe({kind, "N1", {10, 20}, 5, "fabric-5", 2}).empty());
        CHECK(step_of(kind, card, "N1") >= 1);
        CHECK(step_of(kind, card, "N1") <= 7);
    }
    ChangeKind untouched = ChangeKind::tear;
    CHECK_FALSE(change_kind_from("no-such-change", untouched));
    CHECK(untouched == ChangeKind::tear);
    CHECK(step_of(ChangeKind::tear, card, "N1") == 3);
    CHECK(step_of(ChangeKind::tear, card, "S1") == 4);
    CHECK(describe({ChangeKind::led_turned, "L6", {}, 0, "", 0}) == "L6 turned round");
    CHECK(describe({ChangeKind::patch_missing, "P1", {}, 0, "", 0}) == "P1 left out");
}
