// Short builders for cards and parts in tests: the sample card of the card file's description, and pieces to
// vary it. Exists so that a test states only what it is about. The parts are test data with known figures,
// not the shipped ones.
#pragma once

#include "card/card.h"
#include "card/parts.h"

#include <string>
#include <utility>
#include <vector>

namespace lanternleaf::make {

/// "L7". (Adding a literal and a temporary makes GCC 12 warn of an overlap that is not there.)
inline std::string numbered(const char* letter, int number) {
    std::string id(letter);
    id += std::to_string(number);
    return id;
}

inline Strip strip(std::string id, Side side, std::vector<Vec2> path_mm, std::string tape = "copper-5") {
    Strip made;
    made.id = std::move(id);
    made.side = side;
    made.tape = std::move(tape);
    made.path_mm = std::move(path_mm);
    return made;
}

inline Patch patch(std::string id, Vec2 at_mm, Vec2 size_mm = {14, 14}, double turn_deg = 0.0) {
    Patch made;
    made.id = std::move(id);
    made.at_mm = at_mm;
    made.size_mm = size_mm;
    made.turn_deg = turn_deg;
    return made;
}

inline Led led(std::string id, std::string type, Vec2 at_mm, double turn_deg = 0.0) {
    Led made;
    made.id = std::move(id);
    made.type = std::move(type);
    made.at_mm = at_mm;
    made.turn_deg = turn_deg;
    return made;
}

inline ResistorPart resistor(std::string id, double ohm, Vec2 at_mm, double turn_deg = 0.0) {
    ResistorPart made;
    made.id = std::move(id);
    made.ohm = ohm;
    made.at_mm = at_mm;
    made.turn_deg = turn_deg;
    return made;
}

/// A sheet with a cell and a press-flap holder at 30, 80 (its flap at 54, 80), and nothing laid yet.
inline Card bare_card() {
    Card card;
    card.title = "Test card";
    card.audience = Audience::adults;
    card.audience_given = true;
    card.sheet.width_mm = 148;
    card.sheet.height_mm = 105;
    card.cell.type = "CR2032";
    card.holder.type = "press-flap-20";
    card.holder.at_mm = {30, 80};
    card.foam = Foam{1.5, 3, {Edge::top, Edge::right, Edge::bottom, Edge::left}, {}};
    return card;
}

/// The sample of the card file's description: one light, one crossing, no finding worse than a note.
/// Laid: [0] N1, [1] patch P1, [2] S1. LED L1 is carrier-white.
inline Card sample_card() {
    Card card = bare_card();
    card.title = "One window";
    card.sheet.folds.push_back({{74, 0}, {74, 105}, {}});
    card.sheet.keepouts.push_back({"cut-out window", {{10, 10}, {30, 10}, {30, 25}, {10, 25}}, {}});
    card.leds.push_back(led("L1", "carrier-white", {110, 40}, 270));
    card.laid.emplace_back(strip("N1", Side::negative, {{30, 80}, {30, 45}, {118, 45}}));
    card.laid.emplace_back(patch("P1", {60, 45}));
    card.laid.emplace_back(strip("S1", Side::positive, {{54, 80}, {60, 80}, {60, 35}, {118, 35}}));
    return card;
}

/// `lights` LEDs of one type in a row across two rails 10 mm apart, 12 mm from LED to LED: every LED in
/// parallel, one patched crossing, as in the sample. Laid: [0] N1, [1] patch P1, [2] S1. The sheet is as wide
/// as it needs.
inline Card row_card(int lights, const std::string& type = "carrier-white") {
    Card card = bare_card();
    const double end_mm = 80.0 + 12.0 * lights;
    card.sheet.width_mm = end_mm + 10.0;
    card.laid.emplace_back(strip("N1", Side::negative, {{30, 80}, {30, 45}, {end_mm, 45}}));
    card.laid.emplace_back(patch("P1", {60, 45}));
    card.laid.emplace_back(strip("S1", Side::positive, {{54, 80}, {60, 80}, {60, 35}, {end_mm, 35}}));
    for (int i = 0; i < lights; ++i) {
        card.leds.push_back(
            led(std::string("L").append(std::to_string(i + 1)), type, {80.0 + 12.0 * i, 40}, 270));
    }
    return card;
}

namespace detail {

inline Package two_pads(const char* first, const char* second, Vec2 body_mm, double reach_mm, Vec2 pad_mm) {
    Package made;
    made.body_mm = body_mm;
    made.pads = {{first, {-reach_mm, 0}, pad_mm}, {second, {reach_mm, 0}, pad_mm}};
    made.pad_ohm_mm2 = 2.0;
    return made;
}

inline LedType light(const char* colour, double saturation_A, double ideality, double series_ohm,
                     double max_mA, double dominant_nm, std::vector<std::pair<double, double>> mcd) {
    LedType made;
    made.package = "carrier";
    made.colour = colour;
    made.saturation_A = saturation_A;
    made.ideality = ideality;
    made.series_ohm = series_ohm;
    made.max_mA = max_mA;
    made.max_reverse_V = 5.0;
    made.dominant_nm = dominant_nm;
    made.mcd = std::move(mcd);
    made.source = "test data";
    return made;
}

inline TapeType tape(double width_mm, double ohm_per_square, Adhesive adhesive, double joint_ohm_mm2) {
    TapeType made;
    made.width_mm = width_mm;
    made.ohm_per_square = ohm_per_square;
    made.adhesive = adhesive;
    made.joint_ohm_mm2 = joint_ohm_mm2;
    made.source = "test data";
    return made;
}

inline HolderType pad_holder(Closure closure) {
    HolderType made;
    made.kind = HolderKind::pads;
    made.cell_diameter_mm = 20;
    made.pads = {{"-", {-14, 0}, {6, 6}}, {"+", {14, 0}, {6, 6}}};
    made.body_mm = {34, 22};
    made.paper_mm = 0.3;
    made.travel_mm = 1.5;
    made.contact_ohm = 0.1;
    made.closure = closure;
    made.source = "test data";
    return made;
}

} // namespace detail

/// The parts the builders name. LED figures are least-squares fits to the curves of data sheets: white OSRAM
/// LW TWTG, red Avago HLMP-EG, green Avago ASMT-YTD7; the cell is FDK's CR2032 sheet (15 s pulse, fresh) with
/// Panasonic's slope for hours of load; copper is 35 um foil. Tape joints are 0.005 and 0.05 ohm on a square
/// inch, from memory; contact_ohm, pad_ohm_mm2 and the pad holders' bodies are made up.
inline Parts test_parts() {
    using namespace detail;
    Parts parts;
    parts.packages["carrier"] = two_pads("-", "+", {14, 7}, 5, {4, 7});
    parts.packages["chip-1206"] = two_pads("-", "+", {3.2, 1.6}, 1.5, {1.0, 1.6});
    parts.leds["carrier-white"] = light("white", 7.0312e-17, 3.3929, 7.258, 30, 470,
                                        {{2, 288}, {3, 425}, {5, 694}, {10, 1308}, {20, 2395}});
    parts.leds["carrier-red"] =
        light("red", 1.33e-18, 2.0465, 5.036, 50, 626, {{1, 325}, {5, 1625}, {20, 6500}});
    parts.leds["carrier-green"] =
        light("green", 2.4829e-18, 3.1389, 12.365, 25, 529, {{1, 150}, {5, 650}, {10, 1110}, {20, 1900}});
    CellType cell;
    cell.diameter_mm = 20;
    cell.height_mm = 3.2;
    cell.open_V = 3.096;
    cell.series_ohm = 14.3;
    cell.capacity_mAh = 220;
    cell.max_continuous_mA = 4;
    cell.max_pulse_mA = 20;
    cell.steady_ohm = 113;
    cell.source = "test data";
    parts.cells["CR2032"] = cell;
    parts.tapes["copper-5"] = tape(5, 0.0005, Adhesive::conductive, 3.2);
    parts.tapes["copper-5-plain"] = tape(5, 0.0005, Adhesive::non_conductive, 3.2);
    parts.tapes["fabric-5"] = tape(5, 0.05, Adhesive::conductive, 32);
    HolderType flap;
    flap.kind = HolderKind::flap;
    flap.cell_diameter_mm = 20;
    flap.bed_radius_mm = 10;
    flap.flap_offset_mm = 24;
    flap.flap_radius_mm = 10;
    flap.paper_mm = 0.3;
    flap.travel_mm = 1.5;
    flap.contact_ohm = 0.3;
    flap.closure = Closure::finger;
    flap.source = "test data";
    parts.holders["press-flap-20"] = flap;
    parts.holders["slide-20"] = pad_holder(Closure::finger);
    parts.holders["screw-20"] = pad_holder(Closure::tool);
    parts.resistor = two_pads("1", "2", {14, 7}, 5, {4, 7});
    return parts;
}

/// The same, made once.
inline const Parts kParts = test_parts();

} // namespace lanternleaf::make
