// Marks, placement, dashes, tiles: the geometry under every printed sheet.
#include "sheets/page.h"
#include "sheets/symbols.h"
#include "sheets/tiling.h"

#include <catch2/catch.hpp>
#include <numeric>

using namespace lanternleaf;

namespace {

double drawn_length(const std::vector<std::vector<Vec2>>& pieces) {
    double sum = 0.0;
    for (const auto& piece : pieces) {
        for (std::size_t i = 1; i < piece.size(); ++i) {
            sum += distance(piece[i - 1], piece[i]);
        }
    }
    return sum;
}

} // namespace

TEST_CASE("Dashes leave out what the pattern leaves out, round corners too", "[sheets]") {
    // 10 + 10 mm in an L, 2 drawn and 2 left out: five dashes, 10 mm in all, one of them round the corner.
    const auto pieces = dashed({{0, 0}, {10, 0}, {10, 10}}, false, {2.0, 2.0});
    CHECK(pieces.size() == 5);
    CHECK(drawn_length(pieces) == Approx(10.0));
    CHECK(pieces[2].size() == 3 - 1); // 8 to 10 ends just at the corner
    CHECK(drawn_length(dashed({{0, 0}, {30, 0}, {30, 40}}, true, {3.0, 1.0})) == Approx(0.75 * 120.0));
    CHECK(dashed({{0, 0}, {1e9, 0}}, false, {0.1, 0.1}).size() == 1); // too many: left solid
    CHECK(dashed({{0, 0}, {5, 0}}, false, {}).size() == 1);
}

TEST_CASE("A mirrored placement turns places round and leaves text readable", "[sheets]") {
    std::vector<PageMark> marks;
    PagePen pen(marks);
    pen.line({10, 5}, {20, 5}, {0.5, kBlack, {}});
    pen.text({10, 5}, "L1", 4.0, true, TextAlign::left);
    std::vector<PageMark> placed;
    place(marks, {{100, 0}, 1.0, true}, placed);
    CHECK(std::get<PathMark>(placed[0]).points_mm == std::vector<Vec2>{{90, 5}, {80, 5}});
    CHECK(std::get<TextMark>(placed[1]).at_mm == Vec2{90, 5});
    CHECK(std::get<TextMark>(placed[1]).align == TextAlign::right); // still runs from 90 into the sheet
    CHECK(std::get<TextMark>(placed[1]).text == "L1");
}

TEST_CASE("The check bar is as long as it says, end tick to end tick", "[sheets]") {
    std::vector<PageMark> marks;
    PagePen pen(marks);
    draw_check_bar(pen, {10, 20}, 100.0);
    double low = 1e9;
    double high = -1e9;
    for (const PageMark& mark : marks) {
        for (const Vec2 p : std::get<PathMark>(mark).points_mm) {
            low = std::min(low, p.x);
            high = std::max(high, p.x);
        }
    }
    CHECK(high - low == Approx(100.0));
}

TEST_CASE("The two sides are told apart by sign, line and grey, not by one of them", "[sheets]") {
    const SideLook minus = look_of(Side::negative);
    const SideLook plus = look_of(Side::positive);
    CHECK(minus.sign == '-');
    CHECK(plus.sign == '+');
    CHECK(minus.edge.dash_mm.empty());
    CHECK_FALSE(plus.edge.dash_mm.empty());
    CHECK(plus.fill.red - minus.fill.red >= 0.15);
    CHECK(minus.fill.red == minus.fill.blue); // grey: printers without colour show the same
}

TEST_CASE("Hatching stays inside its outline and covers it", "[sheets]") {
    std::vector<PageMark> marks;
    PagePen pen(marks);
    const std::vector<Vec2> notched = {{0, 0}, {20, 0}, {20, 20}, {10, 8}, {0, 20}};
    draw_hatch(pen, notched, 1.0, {0.1, kBlack, {}});
    double length_mm = 0.0;
    for (const PageMark& mark : marks) {
        const auto& line = std::get<PathMark>(mark).points_mm;
        length_mm += distance(line[0], line[1]);
        const Vec2 middle = (line[0] + line[1]) * 0.5;
        // Above the notch's two edges, which fall from (0, 20) to (10, 8) and rise to (20, 20).
        CHECK(middle.y <= 20.0 - 1.2 * std::min(middle.x, 20.0 - middle.x) + 1e-6);
    }
    CHECK(length_mm == Approx(400.0 - 120.0).epsilon(0.05)); // area / pitch
}

TEST_CASE("What fits needs one tile; what does not is covered by overlapping ones", "[sheets]") {
    CHECK(tile({{-8, -8}, {150, 107}}, {190, 240}).tiles.size() == 1);
    const Box drawing{{-8, -8}, {421.5, 298.5}};
    const Tiling tiling = tile(drawing, {190, 240});
    // 429.5 wide in windows of 190 that share 12: 190 + 178 = 368 is short, so three; 306.5 high: two.
    CHECK(tiling.columns == 3);
    CHECK(tiling.rows == 2);
    REQUIRE(tiling.tiles.size() == 6);
    for (double x = drawing.min.x; x <= drawing.max.x; x += 7.0) {
        for (double y = drawing.min.y; y <= drawing.max.y; y += 7.0) {
            CHECK(std::any_of(tiling.tiles.begin(), tiling.tiles.end(), [&](const Tile& one) {
                return one.window.contains({x, y});
            }));
        }
    }
    for (const Tile& one : tiling.tiles) {
        for (const Vec2 cross : one.crosses) { // each cross stands on just one other page as well
            const auto on = std::count_if(tiling.tiles.begin(), tiling.tiles.end(), [&](const Tile& other) {
                return std::any_of(other.crosses.begin(), other.crosses.end(),
                                   [&](Vec2 p) { return distance(p, cross) < 1e-9; });
            });
            CHECK(on == 2);
            CHECK(one.window.contains(cross));
        }
    }
}
