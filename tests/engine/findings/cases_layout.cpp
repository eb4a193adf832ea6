// Tape over tape, tape beside tape, pads on tape.
#include "cases.h"

namespace lanternleaf::cases {

namespace {

/// The - trace in two pieces: N1 ends at x = 80, N2 starts at `from_mm`.
Card joint_in_minus(double from_mm, const std::string& tape = "copper-5") {
    return sample([&](Card& card) {
        strip(card, "N1").path_mm.back() = {80, 45};
        card.laid.emplace_back(make::strip("N2", Side::negative, {{from_mm, 45}, {118, 45}}, tape));
    });
}

Card joint_in_plus(double from_mm, const std::string& tape = "copper-5") {
    return sample([&](Card& card) {
        strip(card, "S1").path_mm.back() = {80, 35};
        card.laid.emplace_back(make::strip("S2", Side::positive, {{from_mm, 35}, {118, 35}}, tape));
    });
}

Card folded_end() {
    Card card = joint_in_minus(72, "copper-5-plain");
    strip(card, "N2").ends[0] = EndStyle::folded;
    return card;
}

Card patch_of(Vec2 size_mm) {
    return sample([&](Card& card) { patch(card, "P1").size_mm = size_mm; });
}

/// The + trace beside the - trace from x = 60 to 95, its centre line at `y_mm`; the - trace's edge is
/// at 42.5.
Card beside(double y_mm) {
    return sample([&](Card& card) {
        strip(card, "S1").path_mm = {{54, 80}, {60, 80}, {60, y_mm}, {95, y_mm}, {95, 35}, {118, 35}};
    });
}

Card beside_over_patch() {
    Card card = beside(38.5);
    card.laid.insert(card.laid.begin() + 2, make::patch("P2", {80, 42}, {44, 14}));
    return card;
}

} // namespace

std::vector<Fires> layout_fires() {
    return {
        {"crossing-bare",
         "patch left out",
         sample([](Card& c) { drop(c, "P1"); }),
         Level::problem,
         "N1",
         {60, 45},
         "25 mm²"},
        {"crossing-bare",
         "patch on top of both",
         sample([](Card& c) { std::swap(c.laid[1], c.laid[2]); }),
         Level::problem,
         "P1",
         {60, 45},
         "no patch between"},
        {"crossing-bare",
         "kept apart by glue alone",
         sample([](Card& c) {
             drop(c, "P1");
             strip(c, "S1").tape = "copper-5-plain";
         }),
         Level::problem,
         "S1",
         {60, 45},
         "glue alone"},
        {"patch-small",
         "4 mm wide",
         patch_of({4, 14}),
         Level::problem,
         "P1",
         {60, 45},
         "5 mm² of the crossing"},
        {"patch-small",
         "off centre",
         sample([](Card& c) {
             patch(c, "P1").at_mm = {54, 45};
         }),
         Level::problem,
         "P1",
         {61.75, 45},
         "bare"},
        {"patch-small",
         "half a millimetre to spare",
         patch_of({6, 14}),
         Level::caution,
         "P1",
         {60, 45},
         "only 0.5 mm to spare"},
        {"joint-open",
         "plain tape on the - side",
         joint_in_minus(72, "copper-5-plain"),
         Level::problem,
         "N2",
         {76, 45},
         "40 mm²"},
        {"joint-open",
         "plain tape on the + side",
         joint_in_plus(74, "copper-5-plain"),
         Level::problem,
         "S2",
         {77, 35},
         "30 mm²"},
        {"joint-short",
         "3 mm on the - side",
         joint_in_minus(77),
         Level::caution,
         "N2",
         {78.5, 45},
         "only 3 mm"},
        {"joint-short",
         "4.5 mm on the + side",
         joint_in_plus(75.5),
         Level::caution,
         "S2",
         {77.75, 35},
         "only 4.5 mm"},
        {"clearance", "side by side", beside(38.5), Level::caution, "S1", {82, 41.75}, "only 1.5 mm"},
        {"clearance",
         "an end that comes near",
         sample([](Card& c) {
             c.laid.emplace_back(make::strip("N2", Side::negative, {{90, 47.5}, {90, 39}}));
         }),
         Level::caution,
         "N2",
         {90, 38.25},
         "only 1.5 mm"},
        {"clearance",
         "just under the limit",
         beside(38.04),
         Level::caution,
         "N1",
         {82, 41.52},
         "only 1.96 mm"},
        {"clearance",
         "+ trace pokes under the cell",
         sample([](Card& c) {
             strip(c, "S1").path_mm[0] = {39, 80};
         }),
         Level::caution,
         "holder",
         {39, 80},
         "the bed"},
        {"led-on-fold",
         "under the + pad",
         sample([](Card& c) {
             strip(c, "S1").path_mm.back() = {110, 35};
             strip(c, "S1").path_mm.push_back({110, 28});
         }),
         Level::caution,
         "L1+",
         {110, 35},
         "fold of S1"},
        {"led-on-fold",
         "under the - pad",
         sample([](Card& c) {
             strip(c, "N1").path_mm.back() = {112, 45};
             strip(c, "N1").path_mm.push_back({112, 55});
         }),
         Level::caution,
         "L1-",
         {111, 45},
         "L1− lies on a fold of N1"},
        {"led-on-joint",
         "under the - pad",
         sample([](Card& c) {
             strip(c, "N1").path_mm.back() = {112, 45};
             c.laid.emplace_back(make::strip("N2", Side::negative, {{104, 45}, {118, 45}}));
         }),
         Level::caution,
         "L1-",
         {109, 45},
         "joint of N1 and N2"},
        {"led-on-joint",
         "under the + pad",
         sample([](Card& c) {
             strip(c, "S1").path_mm.back() = {110, 35};
             c.laid.emplace_back(make::strip("S2", Side::positive, {{102, 35}, {118, 35}}));
         }),
         Level::caution,
         "L1+",
         {108, 35},
         "joint of S1 and S2"},
    };
}

std::vector<Quiet> layout_quiet() {
    return {
        {"crossing-bare", "sample", make::sample_card()},
        {"crossing-bare", "row of two", make::row_card(2)},
        {"patch-small", "sample", make::sample_card()},
        {"patch-small", "2 mm to spare on the dot", patch_of({9, 9})},
        // A slanting crossing: the overlap's sharp corners lie 2 mm and more inside this patch, by distance.
        {"patch-small", "a slanting crossing, 3 mm to spare", sample([](Card& c) {
             strip(c, "S1").path_mm = {{54, 80}, {60, 80}, {60, 70}, {80, 50}, {80, 49}, {95, 34}, {118, 34}};
             c.leds[0].at_mm = {110, 39.5};
             patch(c, "P1").at_mm = {84, 45};
             patch(c, "P1").size_mm = {18.6, 12};
         })},
        {"joint-open", "conductive glue", joint_in_minus(72)},
        {"joint-open", "a folded end", folded_end()},
        {"joint-short", "a whole width", joint_in_minus(75)},
        {"joint-short", "8 mm", joint_in_plus(72)},
        {"clearance", "sample", make::sample_card()},
        {"clearance", "2.1 mm", beside(37.9)},
        {"clearance", "a patch between", beside_over_patch()},
        {"clearance", "round a small light's pads", sample([](Card& c) {
             // A chip 3.2 mm long: its two traces end 1.9 mm apart, which its pads need.
             c.leds[0] = make::led("L1", "chip-white", {110, 40}, 270);
             strip(c, "N1").path_mm = {{30, 80}, {30, 45}, {110, 45}, {110, 40.95}};
             strip(c, "S1").path_mm = {{54, 80}, {60, 80}, {60, 35}, {110, 35}, {110, 39.05}};
         }),
         [] {
             Parts parts = make::test_parts();
             parts.leds["chip-white"] = parts.leds["carrier-white"];
             parts.leds["chip-white"].package = "chip-1206";
             return parts;
         }()},
        {"led-on-fold", "sample", make::sample_card()},
        {"led-on-fold", "a fold past the pad", sample([](Card& c) {
             strip(c, "S1").path_mm.back() = {120, 35};
             strip(c, "S1").path_mm.push_back({120, 28});
         })},
        {"led-on-joint", "sample", make::sample_card()},
        {"led-on-joint", "a joint elsewhere", joint_in_minus(72)},
    };
}

} // namespace lanternleaf::cases
