// Where current goes and how much: shorts, reach, direction, power.
#include "cases.h"

namespace lanternleaf::cases {

namespace {

Parts red_of_20_mA() {
    Parts parts = make::test_parts();
    parts.leds["carrier-red"].max_mA = 20;
    return parts;
}

/// A white LED from a dimmer bin, so that the same current gives less light.
Parts with_dim_bin(double share) {
    Parts parts = make::test_parts();
    LedType weak = parts.leds["carrier-white"];
    for (auto& point : weak.mcd) {
        point.second *= share;
    }
    parts.leds["carrier-white-weak"] = weak;
    return parts;
}

Card row_with(int lights, int which, const std::string& type) {
    Card card = make::row_card(lights);
    card.leds[static_cast<std::size_t>(which)].type = type;
    return card;
}

Card gap_in_plus(double gap_mm) {
    return sample([&](Card& card) {
        strip(card, "S1").path_mm.back() = {80, 35};
        card.laid.emplace_back(make::strip("S2", Side::positive, {{80 + gap_mm, 35}, {118, 35}}));
    });
}

Card cells(int count) {
    return sample([&](Card& card) { card.cell.count = count; });
}

/// Two lights, the second behind a resistor of its own.
Card one_behind_resistor(double ohm) {
    Card card = with_resistor(ohm);
    card.leds.push_back(make::led("L2", "carrier-white", {76, 50}, 90)); // anode at 76, 55
    strip(card, "S1").path_mm = {{54, 80}, {60, 80}, {60, 55}, {110, 55}, {110, 42}};
    return card;
}

} // namespace

std::vector<Fires> electrical_fires() {
    return {
        {"short-circuit",
         "patch left out",
         sample([](Card& c) { drop(c, "P1"); }),
         Level::problem,
         "S1",
         {60, 45},
         "N1 (−) touches S1 (+)"},
        {"short-circuit",
         "+ trace under the cell",
         sample([](Card& c) {
             strip(c, "S1").path_mm = {{24, 86}, {60, 86}, {60, 35}, {118, 35}};
         }),
         Level::problem,
         "S1",
         {30, 86},
         "the bed (−) touches S1 (+)"},
        {"short-circuit",
         "a link that joins both sides",
         sample([](Card& c) {
             c.laid.emplace_back(make::strip("K1", Side::link, {{90, 32}, {90, 48}}));
         }),
         Level::problem,
         "K1",
         {90, 35},
         "K1 (link) touches S1 (+)"},
        {"led-not-reached",
         "+ trace too short",
         sample([](Card& c) {
             strip(c, "S1").path_mm.back() = {100, 35};
         }),
         Level::problem,
         "L1+",
         {110, 35},
         "6.5 mm short of S1"},
        {"led-not-reached",
         "a gap in the + trace",
         gap_in_plus(1.5),
         Level::problem,
         "L1+",
         {80.75, 35},
         "1.5 mm short of S1"},
        {"led-not-reached",
         "both pads on one trace",
         sample([](Card& c) {
             c.leds[0] = make::led("L1", "carrier-white", {100, 45}, 0);
         }),
         Level::problem,
         "L1+",
         {100, 45},
         "Both pads of L1"},
        {"led-not-reached",
         "- trace left out",
         sample([](Card& c) { drop(c, "N1"); }),
         Level::problem,
         "L1-",
         {110, 45},
         "no − trace"},
        {"led-reversed",
         "turned about",
         sample([](Card& c) { c.leds[0].turn_deg = 90; }),
         Level::problem,
         "L1",
         {110, 40},
         "V against it"},
        {"led-reversed",
         "the middle one of three",
         [] {
             Card c = make::row_card(3);
             c.leds[1].turn_deg = 90;
             return c;
         }(),
         Level::problem,
         "L2",
         {92, 40},
         "L2−"},
        {"led-reversed",
         "one of two in series",
         [] {
             Card c = in_series("carrier-red", "carrier-red");
             c.leds[1].turn_deg = 270;
             return c;
         }(),
         Level::problem,
         "L2",
         {110, 40},
         ""},
        {"led-reversed",
         "cell upside down",
         sample([](Card& c) { c.cell.face_down = CellFace::positive; }),
         Level::problem,
         "L1",
         {110, 40},
         ""},
        {"led-overdriven", "two cells, no resistor", cells(2), Level::problem, "L1", {110, 40}, "30 mA"},
        {"led-overdriven",
         "red of 20 mA straight on the cell",
         sample([](Card& c) { c.leds[0].type = "carrier-red"; }),
         Level::problem,
         "L1",
         {110, 40},
         "20 mA",
         red_of_20_mA()},
        {"cell-overloaded",
         "red straight on the cell, pressed",
         sample([](Card& c) { c.leds[0].type = "carrier-red"; }),
         Level::caution,
         "holder",
         {30, 80},
         "15 s"},
        {"cell-overloaded",
         "red left on",
         on_pads("slide-20", "carrier-red"),
         Level::caution,
         "holder",
         {30, 80},
         "for hours"},
        {"dim-led",
         "two whites in series",
         in_series("carrier-white", "carrier-white"),
         Level::caution,
         "L1",
         {90, 40},
         ""},
        {"dim-led",
         "white beside red",
         row_with(2, 1, "carrier-red"),
         Level::caution,
         "L1",
         {80, 40},
         "it gets only"},
        {"uneven-light",
         "one from a weak bin",
         row_with(4, 2, "carrier-white-weak"),
         Level::caution,
         "L3",
         {104, 40},
         "50 %",
         with_dim_bin(0.5)},
        {"uneven-light",
         "one of two behind a resistor",
         one_behind_resistor(330),
         Level::caution,
         "L1",
         {90, 40},
         "the other white one"},
    };
}

std::vector<Quiet> electrical_quiet() {
    return {
        {"short-circuit", "sample", make::sample_card()},
        {"short-circuit", "row of three", make::row_card(3)},
        {"led-not-reached", "sample", make::sample_card()},
        {"led-not-reached", "through another LED", in_series("carrier-red", "carrier-red")},
        {"led-not-reached", "through a resistor", with_resistor(47)},
        {"led-reversed", "sample", make::sample_card()},
        {"led-reversed", "two in series", in_series("carrier-red", "carrier-red")},
        {"led-reversed", "cell and light both turned", sample([](Card& c) {
             c.cell.face_down = CellFace::positive;
             c.leds[0].turn_deg = 90;
         })},
        {"led-overdriven", "sample", make::sample_card()},
        {"led-overdriven", "red behind 100 ohm", with_resistor(100, "carrier-red"), red_of_20_mA()},
        {"cell-overloaded", "sample", make::sample_card()},
        {"cell-overloaded", "white left on", on_pads("slide-20")},
        {"dim-led", "sample", make::sample_card()},
        {"dim-led", "row of three", make::row_card(3)},
        {"dim-led", "shorted: the short is the news", sample([](Card& c) { drop(c, "P1"); })},
        {"dim-led", "not reached: the gap is the news", gap_in_plus(1.5)},
        {"dim-led", "behind a turned light: the turned one is the news",
         [] {
             Card c = in_series("carrier-red", "carrier-red");
             c.leds[1].turn_deg = 270;
             return c;
         }()},
        {"uneven-light", "row of six", make::row_card(6)},
        {"uneven-light", "nearly the same bin", row_with(4, 2, "carrier-white-weak"), with_dim_bin(0.7)},
    };
}

} // namespace lanternleaf::cases
