// The shipped parts against what their sources print: data sheet figures here are typed from the sheets, not
// computed.
#include "engine/cardfile/card_files.h"

#include <cmath>

using namespace lanternleaf;
using namespace lanternleaf::test;

namespace {

// Forward voltage by the file format's formula. Vt = kT/q at 25 C from the exact SI constants.
double forward_V(const LedType& led, double mA) {
    const double vt = 1.380649e-23 * 298.15 / 1.602176634e-19;
    const double amps = mA / 1000.0;
    return led.ideality * vt * std::log1p(amps / led.saturation_A) + amps * led.series_ohm;
}

double mcd_at(const LedType& led, double mA) {
    for (const auto& [current, mcd] : led.mcd) {
        if (current == mA) {
            return mcd;
        }
    }
    return 0.0;
}

bool has(const std::string& text, const char* words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("Every id the file format requires is there", "[cardfile][parts]") {
    const Parts& parts = shipped();
    for (const char* package : {"carrier", "chip-1206", "leaded-5"}) {
        CHECK(parts.packages.count(package) == 1);
        for (const char* colour :
             {"red", "orange", "amber", "green", "blue", "white", "warm-white", "pink", "cycle"}) {
            const std::string id = std::string(package) + "-" + colour;
            INFO(id);
            REQUIRE(parts.leds.count(id) == 1);
            CHECK(parts.leds.at(id).package == package);
            CHECK(parts.leds.at(id).colour == colour);
        }
    }
    for (const char* cell : {"CR2032", "CR2025", "CR2016", "CR1632", "CR1220", "CR2450"}) {
        CHECK(parts.cells.count(cell) == 1);
    }
    for (const char* tape :
         {"copper-5", "copper-6", "copper-10", "copper-5-plain", "fabric-5", "fabric-10"}) {
        CHECK(parts.tapes.count(tape) == 1);
    }
    for (const char* holder : {"press-flap-20", "slide-20", "screw-20"}) {
        CHECK(parts.holders.count(holder) == 1);
    }
    REQUIRE(parts.resistor.has_value());
}

TEST_CASE("The shipped file is written as the writer writes it", "[cardfile][parts]") {
    CHECK(write_parts(shipped()) == source_text("assets/parts.json"));
}

TEST_CASE("What the file format fixes about parts holds", "[cardfile][parts]") {
    const Parts& parts = shipped();
    const Package& carrier = parts.packages.at("carrier");
    CHECK(carrier.body_mm == Vec2{14, 7});
    CHECK(carrier.pads[0].at_mm == Vec2{-5, 0});
    CHECK(carrier.pads[1].size_mm == Vec2{4, 7});
    CHECK(parts.holders.at("press-flap-20").flap_offset_mm == 24);
    CHECK(parts.holders.at("press-flap-20").bed_radius_mm == 10);
    CHECK(parts.holders.at("press-flap-20").closure == Closure::finger);
    CHECK(parts.holders.at("slide-20").closure == Closure::finger);
    CHECK(parts.holders.at("screw-20").closure == Closure::tool);
    for (const char* ready : {"slide-20", "screw-20"}) {
        const HolderType& holder = parts.holders.at(ready);
        CHECK(holder.kind == HolderKind::pads);
        CHECK(holder.pads[0].name == "-");
        CHECK(holder.pads[0].at_mm == Vec2{-14, 0});
        CHECK(holder.pads[1].at_mm == Vec2{14, 0});
        CHECK(holder.pads[1].size_mm == Vec2{6, 6});
    }
    CHECK(parts.tapes.at("copper-6").width_mm == 6);
    CHECK(parts.tapes.at("copper-5-plain").adhesive == Adhesive::non_conductive);
    CHECK(parts.tapes.at("fabric-10").adhesive == Adhesive::conductive);
}

TEST_CASE("Forward voltages meet the curves of the data sheets", "[cardfile][parts]") {
    const auto at = [](const char* id, double mA) { return forward_V(shipped().leds.at(id), mA); };
    // OSRAM LW TWTG v1.2: 2.720 V at 2 mA, 2.819 at 5, 2.918 at 10, printed typical 3.05 at 20.
    CHECK(at("carrier-white", 2) == Approx(2.720).margin(0.020));
    CHECK(at("carrier-white", 5) == Approx(2.819).margin(0.020));
    CHECK(at("carrier-white", 10) == Approx(2.918).margin(0.020));
    CHECK(at("carrier-white", 20) == Approx(3.050).margin(0.020));
    // Avago HLMP-EG: 1.810 V at 1 mA, 2.061 at 20.
    CHECK(at("leaded-5-red", 1) == Approx(1.810).margin(0.020));
    CHECK(at("leaded-5-red", 20) == Approx(2.061).margin(0.020));
    CHECK(at("carrier-amber", 20) == Approx(2.061).margin(0.020));
    // Avago ASMT-YTD7: red 1.761 at 1 mA, printed typical 2.10 at 20; green and blue 2.902 at 5 mA, 3.204
    // at 20.
    CHECK(at("carrier-red", 1) == Approx(1.761).margin(0.020));
    CHECK(at("carrier-red", 20) == Approx(2.10).margin(0.020));
    CHECK(at("chip-1206-green", 5) == Approx(2.902).margin(0.020));
    CHECK(at("leaded-5-blue", 20) == Approx(3.204).margin(0.020));
    // Every Lite-On LTST-C170 sheet: a good LED has more than 2.0 V (InGaN) or 1.4 V (AlInGaP) at 0.1 mA.
    for (const auto& [id, led] : shipped().leds) {
        INFO(id);
        const bool phosphide = led.colour == "red" || led.colour == "orange" || led.colour == "amber";
        CHECK(forward_V(led, 0.1) > (phosphide ? 1.4 : 2.0));
        CHECK(forward_V(led, 0.1) < (phosphide ? 1.8 : 2.7));
    }
}

TEST_CASE("The spread of forward voltages is what the sheets allow", "[cardfile][parts]") {
    const auto is = [](const char* id, double least_V, double most_V) {
        const LedType& led = shipped().leds.at(id);
        INFO(id);
        REQUIRE(led.forward);
        CHECK(led.forward->at_mA == 20);
        CHECK(led.forward->least_V == least_V);
        CHECK(led.forward->most_V == most_V);
        // The curve lies within what its own sheet allows.
        CHECK(forward_V(led, 20) > least_V);
        CHECK(forward_V(led, 20) < most_V);
    };
    is("leaded-5-red", 1.8, 2.4);  // Avago HLMP-EG, 20 mA
    is("carrier-amber", 1.8, 2.4); // Lite-On LTST-C170KSKT
    is("carrier-green", 2.8, 3.6); // Lite-On LTST-C170TGKT
    is("carrier-blue", 2.8, 3.8);  // Lite-On LTST-C170TBKT
    is("carrier-white", 2.7, 3.4); // OSRAM LW TWTG
    // Kingbright APTD1608LSECK (AlGaInP) -2.0 mV/K; OSRAM LW TWTG: +57 mV from 25 down to 0 C.
    CHECK(shipped().leds.at("carrier-red").forward_mV_per_K == -2.0);
    CHECK(-25.0 * shipped().leds.at("carrier-white").forward_mV_per_K == Approx(57.0).margin(10.0));
}

TEST_CASE("A self-cycling LED has its three colours", "[cardfile][parts]") {
    for (const char* package : {"carrier", "chip-1206", "leaded-5"}) {
        const LedType& cycle = shipped().leds.at(std::string(package) + "-cycle");
        REQUIRE(cycle.phases.size() == 3);
        for (const LedPhase& phase : cycle.phases) {
            const LedType& alone = shipped().leds.at(std::string(package) + "-" + phase.colour);
            CHECK(phase.dominant_nm == alone.dominant_nm);
            CHECK(phase.mcd == alone.mcd);
            CHECK(phase.series_ohm > alone.series_ohm); // its driver's switch
        }
        CHECK(cycle.driver_least_V > 0);
        CHECK(has(cycle.source, "driver stops below 2.0 V: estimate"));
    }
}

TEST_CASE("Brightness tables follow the data sheets' relative intensity", "[cardfile][parts]") {
    const LedType& white = shipped().leds.at("carrier-white");
    // OSRAM LW TWTG: 0.545 of the 20 mA intensity at 10 mA; within Lite-On's 112-450 mcd at 20 mA.
    CHECK(mcd_at(white, 10) / mcd_at(white, 20) == Approx(0.545).margin(0.02));
    CHECK(mcd_at(white, 20) > 112);
    CHECK(mcd_at(white, 20) < 450);
    const LedType& green = shipped().leds.at("carrier-green");
    // Avago ASMT-YTD7: 0.57-0.60 at 10 mA; Lite-On TGKT 71-450 mcd.
    CHECK(mcd_at(green, 10) / mcd_at(green, 20) > 0.57);
    CHECK(mcd_at(green, 10) / mcd_at(green, 20) < 0.60);
    CHECK(mcd_at(green, 20) > 71);
    CHECK(mcd_at(green, 20) < 450);
    // Avago HLMP-EG, 30 degrees: 4.2-9.3 cd at 20 mA, half of it at 10 mA.
    const LedType& red = shipped().leds.at("leaded-5-red");
    CHECK(mcd_at(red, 20) > 4200);
    CHECK(mcd_at(red, 20) < 9300);
    CHECK(mcd_at(red, 10) / mcd_at(red, 20) == Approx(0.5).margin(0.01));
    for (const auto& [id, led] : shipped().leds) {
        INFO(id);
        CHECK(mcd_at(led, 5) > 0); // the file format's brightness is relative to 5 mA
        for (std::size_t i = 1; i < led.mcd.size(); ++i) {
            CHECK(led.mcd[i].second > led.mcd[i - 1].second);
        }
        CHECK(led.max_mA <= 30);
    }
}

TEST_CASE("Cells have the sizes of their codes and the figures of their sheets", "[cardfile][parts]") {
    // IEC 60086: the first digits are the diameter in mm, truncated; the last two the height in 0.1 mm.
    for (const auto& [id, cell] : shipped().cells) {
        INFO(id);
        CHECK(std::floor(cell.diameter_mm) == std::stod(id.substr(2, 2)));
        CHECK(cell.height_mm == Approx(std::stod(id.substr(4)) / 10.0));
        CHECK(cell.max_pulse_mA >= cell.max_continuous_mA);
        CHECK(cell.steady_ohm > cell.series_ohm);
    }
    CHECK(shipped().cells.at("CR1220").diameter_mm == 12.5);
    CHECK(shipped().cells.at("CR2450").diameter_mm == 24.5);
    const CellType& cell = shipped().cells.at("CR2032");
    // FDK CR2032, fresh: 2.953 V at a 10 mA pulse and 2.382 V at 50 mA, 15 s.
    CHECK(cell.open_V - 0.010 * cell.series_ohm == Approx(2.953).margin(0.005));
    CHECK(cell.open_V - 0.050 * cell.series_ohm == Approx(2.382).margin(0.005));
    CHECK(cell.max_continuous_mA == 4); // FDK: half the capacity to 2.0 V
    CHECK(cell.capacity_mAh >= 210);    // 210-240 among FDK, Fanso and Panasonic
    CHECK(cell.capacity_mAh <= 240);
}

TEST_CASE("Tapes have the resistance of their metal", "[cardfile][parts]") {
    // IEC 60028: 1.7241e-8 ohm m at 20 C; 35 um foil.
    CHECK(shipped().tapes.at("copper-5").ohm_per_square == Approx(1.7241e-8 / 35e-6).epsilon(0.001));
    // 0.005 ohm on a square inch (from memory of foil tape data sheets), 0.05 ohm for fabric.
    CHECK(shipped().tapes.at("copper-5").joint_ohm_mm2 == Approx(0.005 * 25.4 * 25.4).epsilon(0.02));
    CHECK(shipped().tapes.at("fabric-5").joint_ohm_mm2 == Approx(0.05 * 25.4 * 25.4).epsilon(0.02));
}

TEST_CASE("Every source says where its figures come from", "[cardfile][parts]") {
    const auto check = [](const std::string& id, const std::string& source) {
        INFO(id << ": " << source);
        CHECK((has(source, "data sheet") || has(source, "specification") || has(source, "IEC") ||
               has(source, "estimate") || has(source, "from memory")));
    };
    const Json raw = Json::parse(source_text("assets/parts.json"));
    for (const char* sort : {"packages", "leds", "cells", "tapes", "holders"}) {
        for (const auto& [id, type] : raw[sort].items()) {
            check(id, type["source"].get<std::string>());
        }
    }
    check("resistor", raw["resistor"]["package"]["source"].get<std::string>());
    for (const char* unknown : {"carrier-pink", "leaded-5-cycle", "chip-1206-warm-white"}) {
        CHECK(has(shipped().leds.at(unknown).source, "estimate"));
    }
    for (const char* scaled : {"CR2025", "CR2016", "CR1632", "CR1220", "CR2450"}) {
        CHECK(has(shipped().cells.at(scaled).source, "estimate: scaled from the CR2032"));
    }
}
