// The cards that come with the app must be models: nothing to complain of, every light alive, the cell not
// strained.
#include "app/view/demo_board.h"

#include "findings/review.h"

#include <algorithm>
#include <map>

using namespace lanternleaf;
using namespace lanternleaf::test;

TEST_CASE("demo cards have no problem and no caution", "[demo]") {
    for (const std::string& name : demo_names()) {
        const DemoBoard board = demo_board(name);
        const Review seen = review(board.card, board.parts);
        for (const Finding& finding : seen.findings) {
            INFO(name << ": " << finding.rule << ": " << finding.text);
            CHECK(finding.level == Level::note);
        }
    }
}

// The limits are the card format's (lit from 1 mA) and the cell's: a CR2032 stands 20 mA for the seconds of a
// press (FDK CR2032 data sheet: maximum pulse discharge).
TEST_CASE("every demo light is lit and a press stays within the cell's pulse rating", "[demo]") {
    for (const std::string& name : demo_names()) {
        const DemoBoard board = demo_board(name);
        const Review seen = review(board.card, board.parts);
        CAPTURE(name, seen.lighting.cell_mA);
        CHECK(seen.lighting.cell_mA <= 20.0);
        REQUIRE(seen.lighting.lights.size() == board.card.leds.size());
        std::map<std::string, std::vector<double>> by_type;
        for (const Light& light : seen.lighting.lights) {
            const Led& led = board.card.leds[static_cast<std::size_t>(light.led)];
            CAPTURE(led.id, light.current_mA);
            CHECK(light.current_mA >= 1.0);
            by_type[led.type].push_back(light.mcd);
        }
        for (auto& [type, mcd] : by_type) {
            std::sort(mcd.begin(), mcd.end());
            CAPTURE(type, mcd.front(), mcd[mcd.size() / 2]);
            CHECK(mcd.front() > 0.63 * mcd[mcd.size() / 2]); // one brightness bin of the LED makers
        }
    }
}

TEST_CASE("demo cards show what they promise", "[demo]") {
    const auto count = [](const DemoBoard& board) { return board.card.leds.size(); };
    CHECK(count(demo_board("window-candle")) == 1);
    CHECK(count(demo_board("harbour-lighthouse")) == 7);
    CHECK(count(demo_board("night-tram")) == 12);
    CHECK(demo_board("harbour-lighthouse").conductors.patches.size() == 1);
    CHECK(demo_board("night-tram").conductors.patches.size() == 3);
    for (const std::string& name : demo_names()) {
        for (const PatchShape& patch : demo_board(name).conductors.patches) {
            const Box box = patch.box;
            CHECK(box.max.x - box.min.x >= 14.0 - 1e-9);
            CHECK(box.max.y - box.min.y >= 14.0 - 1e-9);
        }
    }
}
