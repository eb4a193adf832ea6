// Holder, cell, sheet, foam.
#include "cases.h"

namespace lanternleaf::cases {

namespace {

/// The + trace comes down at x_mm and starts there, outside the flap when x_mm is large.
Card starts_at(double x_mm) {
    return sample([&](Card& card) {
        strip(card, "S1").path_mm = {{x_mm, 80}, {x_mm, 35}, {118, 35}};
        patch(card, "P1").at_mm = {x_mm, 45};
    });
}

Card keep_clear(std::vector<Vec2> outline_mm, const std::string& why) {
    return sample([&](Card& card) { card.sheet.keepouts = {{why, std::move(outline_mm), {}}}; });
}

Card creased(Vec2 from_mm, Vec2 to_mm) {
    return sample([&](Card& card) { card.sheet.folds = {{from_mm, to_mm, {}}}; });
}

Card stacked(int count) {
    return sample([&](Card& card) { card.cell.count = count; });
}

Card foam(double thickness_mm, int layers) {
    return sample([&](Card& card) {
        card.foam->thickness_mm = thickness_mm;
        card.foam->layers = layers;
    });
}

Card no_foam(const std::string& cell = "CR2032") {
    return sample([&](Card& card) {
        card.foam.reset();
        card.cell.type = cell;
    });
}

Card given_to(Audience audience, bool given = true) {
    return sample([&](Card& card) {
        card.audience = audience;
        card.audience_given = given;
    });
}

Card on_pads_for(const std::string& holder, Audience audience) {
    Card card = on_pads(holder);
    card.audience = audience;
    return card;
}

Card pads_with_foam(double thickness_mm) {
    Card card = on_pads("slide-20");
    card.foam->thickness_mm = thickness_mm;
    return card;
}

Parts with_thin_cell() {
    Parts parts = make::test_parts();
    CellType thin = parts.cells["CR2032"];
    thin.height_mm = 1.6;
    parts.cells["CR2016"] = thin;
    return parts;
}

} // namespace

std::vector<Fires> thing_fires() {
    return {
        {"outside-holder",
         "3.5 mm short of the flap",
         starts_at(70),
         Level::problem,
         "S1",
         {67.5, 80},
         "3.5 mm short"},
        {"outside-holder",
         "too little on the flap",
         starts_at(65),
         Level::problem,
         "S1",
         {63, 80},
         "20 mm² make contact"},
        {"outside-holder",
         "no + trace",
         sample([](Card& c) { drop(c, "S1"); }),
         Level::problem,
         "holder",
         {54, 80},
         "none is laid yet"},
        {"off-sheet",
         "tape past the right edge",
         sample([](Card& c) {
             strip(c, "S1").path_mm.back() = {150, 35};
         }),
         Level::problem,
         "S1",
         {148, 35},
         "2 mm past the right edge"},
        {"off-sheet",
         "the bed past the left edge",
         sample([](Card& c) {
             c.holder.at_mm = {8, 80};
         }),
         Level::problem,
         "holder",
         {0, 80},
         "2 mm past the left edge"},
        {"off-sheet",
         "a light over the bottom",
         sample([](Card& c) {
             c.leds.push_back(make::led("L2", "carrier-white", {100, 101}, 90));
         }),
         Level::problem,
         "L2",
         {100, 105},
         "past the bottom edge"},
        {"off-sheet",
         "a patch over the top",
         sample([](Card& c) {
             c.laid.emplace_back(make::patch("P2", {120, 4}));
         }),
         Level::problem,
         "P2",
         {120, 0},
         "3 mm past the top edge"},
        {"over-keepout",
         "tape",
         keep_clear({{80, 30}, {90, 30}, {90, 40}, {80, 40}}, "window"),
         Level::problem,
         "S1",
         {85, 35},
         "50 mm² of a place to keep clear (window)"},
        {"over-keepout",
         "a light",
         keep_clear({{108, 38}, {112, 38}, {112, 42}, {108, 42}}, "eye"),
         Level::problem,
         "L1",
         {110, 40},
         "16 mm²"},
        {"over-keepout",
         "the flap",
         keep_clear({{44, 86}, {64, 86}, {64, 100}, {44, 100}}, "stamp"),
         Level::problem,
         "holder",
         {54, 88},
         ""},
        {"over-keepout",
         "the inside of an L", // not convex: only its foot lies under the tape
         keep_clear({{80, 20}, {84, 20}, {84, 36}, {90, 36}, {90, 40}, {80, 40}}, ""),
         Level::problem,
         "S1",
         {83, 35.5},
         "29 mm²"},
        {"crease",
         "16 degrees off square",
         creased({70, 0}, {100.11, 105}),
         Level::caution,
         "N1",
         {82.9, 45},
         "16° off square"},
        {"crease",
         "along the tape",
         creased({0, 45}, {148, 45}),
         Level::caution,
         "N1",
         {74, 45},
         "along the crease"},
        {"crease",
         "under a light",
         creased({110, 0}, {110, 105}),
         Level::caution,
         "L1",
         {110, 40},
         "sits on a crease"},
        {"crease",
         "under the bed",
         creased({36, 0}, {36, 105}),
         Level::caution,
         "holder",
         {36, 80},
         "16 mm of it"},
        {"cells-stacked", "two", stacked(2), Level::caution, "holder", {30, 80}, "6.19 V"},
        {"cells-stacked", "three", stacked(3), Level::caution, "holder", {30, 80}, "9.6 mm high"},
        {"foam-low", "two layers", foam(1.5, 2), Level::problem, "foam", {74, 0}, "3 mm high"},
        {"foam-low", "a hair too low", foam(3.79, 1), Level::problem, "foam", {74, 0}, "stand 3.8 mm"},
        {"foam-high", "four layers", foam(1.5, 4), Level::problem, "foam", {74, 0}, "no more than 5.3 mm"},
        {"foam-high", "a hair too high", foam(5.31, 1), Level::problem, "foam", {74, 0}, "5.31 mm"},
        {"mail-thick", "sample", make::sample_card(), Level::note, "holder", {30, 80}, "5.7 mm thick"},
        {"mail-thick", "thin foam, two cells", stacked(2), Level::note, "holder", {30, 80}, "8.2 mm thick"},
        {"cell-in-reach",
         "for small children",
         given_to(Audience::small_children),
         Level::problem,
         "holder",
         {30, 80},
         "under 6"},
        {"cell-in-reach",
         "nobody named",
         given_to(Audience::small_children, false),
         Level::problem,
         "holder",
         {30, 80},
         "nobody was named"},
        {"cell-in-reach",
         "a class",
         given_to(Audience::school_class),
         Level::problem,
         "holder",
         {30, 80},
         "home you do not know"},
        {"cell-in-reach", "for sale", given_to(Audience::sale), Level::note, "holder", {30, 80}, "for sale"},
    };
}

std::vector<Quiet> thing_quiet() {
    return {
        {"outside-holder", "sample", make::sample_card()},
        {"outside-holder", "on a ready-made holder", on_pads("slide-20")},
        {"off-sheet", "sample", make::sample_card()},
        {"off-sheet", "up to the edge", sample([](Card& c) {
             strip(c, "S1").path_mm.back() = {148, 35};
         })},
        {"over-keepout", "sample", make::sample_card()},
        {"over-keepout", "edge to edge",
         keep_clear({{80, 37.5}, {90, 37.5}, {90, 42.5}, {80, 42.5}}, "slot")},
        {"over-keepout", "a light in the hollow of a U",
         keep_clear({{100, 28}, {103, 28}, {103, 31}, {117, 31}, {117, 28}, {120, 28}, {120, 25}, {100, 25}},
                    "")},
        {"crease", "sample", make::sample_card()},
        {"crease", "13 degrees off square", creased({70, 0}, {94.24, 105})},
        {"cells-stacked", "sample", make::sample_card()},
        {"cells-stacked", "row of two", make::row_card(2)},
        {"foam-low", "sample", make::sample_card()},
        {"foam-low", "on the dot", foam(1.9, 2)},
        {"foam-high", "sample", make::sample_card()},
        {"foam-high", "on the dot", foam(5.3, 1)},
        {"foam-high", "not for a ready-made switch", pads_with_foam(3)},
        {"mail-thick", "no foam: 5 mm on the dot", no_foam()},
        {"mail-thick", "thin cell", no_foam("CR2016"), with_thin_cell()},
        {"cell-in-reach", "adults", make::sample_card()},
        {"cell-in-reach", "a screwed holder", on_pads_for("screw-20", Audience::small_children)},
        {"cell-in-reach", "children of six and over", given_to(Audience::children)},
    };
}

} // namespace lanternleaf::cases
