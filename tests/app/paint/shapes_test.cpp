// Curves, icons, targets and the soft rasteriser. Lengths and areas are checked against plane geometry.
#include <algorithm>
#include <catch2/catch.hpp>

#include "paint/curve.h"
#include "paint/icons.h"
#include "paint/targets.h"
#include "support/headless_app.h"

using namespace lanternleaf;

TEST_CASE("a flattened circle has a circle's length") {
    Polyline circle;
    add_arc(circle, {0, 0}, 50, 0, 2 * kPi, 0.05f);
    CHECK(path_length(circle) == Approx(2 * 3.14159265 * 50).epsilon(0.002));
    CHECK(path_length(rounded_rect({0, 0, 100, 60}, 10), true) ==
          Approx(2 * (80 + 40) + 2 * 3.14159265 * 10).epsilon(0.005));
}

TEST_CASE("a cubic bezier stays within its tolerance of the exact curve") {
    Polyline path{{0, 0}};
    add_cubic(path, {0, 80}, {100, 80}, {100, 0}, 0.1f);
    CHECK(path.back() == Point{100, 0});
    // Points of the exact curve by its Bernstein form; each must lie within the tolerance of some chord.
    for (int n = 0; n <= 200; ++n) {
        const float t = static_cast<float>(n) / 200;
        const float u = 1 - t;
        const Point exact{300 * u * t * t + 100 * t * t * t, 240 * u * u * t + 240 * u * t * t};
        float nearest = 1e9f;
        for (std::size_t i = 1; i < path.size(); ++i) {
            const Point a = path[i - 1];
            const Point side = path[i] - a;
            const Point way = exact - a;
            const float k = (way.x * side.x + way.y * side.y) / (side.x * side.x + side.y * side.y);
            nearest = std::min(nearest, distance(exact, a + side * std::clamp(k, 0.0f, 1.0f)));
        }
        CHECK(nearest <= 0.1f);
    }
}

TEST_CASE("dashes cover their share of a path, round corners too") {
    const Polyline path{{0, 0}, {100, 0}, {100, 50}};
    const float pattern[] = {6, 4};
    float on = 0;
    for (const Polyline& dash : dashes_of(path, pattern, 0, false)) {
        on += path_length(dash);
    }
    CHECK(on == Approx(90));
    const auto shifted = dashes_of(path, pattern, 6, false);
    REQUIRE_FALSE(shifted.empty());
    CHECK(shifted[0][0].x == Approx(4));
    CHECK(dashes_of(Polyline{{1, 1}}, pattern, 0, false).empty());
    const float nothing[] = {0, 0};
    CHECK(dashes_of(path, nothing, 0, false).empty());
}

TEST_CASE("a concave polygon is cut into triangles of its own area") {
    const Polyline l_shape{{0, 0}, {30, 0}, {30, 10}, {10, 10}, {10, 30}, {0, 30}};
    for (const bool reversed : {false, true}) {
        Polyline p = l_shape;
        if (reversed) {
            std::reverse(p.begin(), p.end());
        }
        const auto corners = triangulate(p);
        REQUIRE(corners.size() == 3 * (p.size() - 2));
        float area = 0;
        for (std::size_t i = 0; i < corners.size(); i += 3) {
            const Point a = p[static_cast<std::size_t>(corners[i])];
            const Point b = p[static_cast<std::size_t>(corners[i + 1])];
            const Point c = p[static_cast<std::size_t>(corners[i + 2])];
            area += std::abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2;
        }
        CHECK(area == Approx(500));
    }
}

TEST_CASE("every icon can be read, has strokes, and keeps to its grid") {
    for (int i = 1; i < static_cast<int>(Icon::Count); ++i) {
        const auto icon = static_cast<Icon>(i);
        CAPTURE(icon_name(icon));
        CHECK_FALSE(icon_name(icon).empty());
        const IconPath& path = icon_path(icon);
        CHECK(path.strokes.size() + path.dots.size() > 0);
        for (const IconStroke& stroke : path.strokes) {
            CHECK(stroke.points.size() >= 2);
            for (const Point p : stroke.points) {
                CHECK(Rect{0.9f, 0.9f, 22.2f, 22.2f}.holds(p));
            }
        }
    }
}

TEST_CASE("a mistyped icon path names the place") {
    CHECK_FALSE(read_icon_path("M 1 2 C 3 4").ok());
    CHECK_FALSE(read_icon_path("L 1 2").ok());
    CHECK_FALSE(read_icon_path("K 1 2").ok());
    CHECK_FALSE(read_icon_path("M 1 2 3").ok());
    const auto read = read_icon_path("M 1 2 3 4 Z O 12 12 3");
    REQUIRE(read.ok());
    CHECK(read.value().strokes.size() == 2);
    CHECK(read.value().strokes[0].closed);
}

TEST_CASE("touch finds the topmost, the near small one, and nothing through a scrim") {
    Targets t;
    t.add({.name = "canvas", .role = Role::Canvas, .rect = {0, 0, 400, 400}, .drag = DragAxis::Both});
    t.add({.name = "small", .rect = {100, 100, 20, 20}});
    t.add({.name = "spot-a", .role = Role::Spot, .rect = {200, 200, 56, 56}});
    t.add({.name = "spot-b", .role = Role::Spot, .rect = {230, 200, 56, 56}});
    CHECK(t.at({110, 110})->name == "small");
    CHECK(t.at({90, 110})->name == "small"); // 20 from its centre: within a finger
    CHECK(t.at({60, 110})->name == "canvas");
    CHECK(t.at({235, 228})->name == "spot-a"); // both hold it; a's centre is nearer
    CHECK(t.at({250, 228})->name == "spot-b");
    CHECK(t.at({500, 500}) == nullptr);
    t.add({.name = "scrim", .role = Role::Scrim, .rect = {0, 0, 400, 400}});
    CHECK(t.at({110, 110})->name == "scrim");
    CHECK(t.draggable_at({110, 110}, true) == nullptr);
    CHECK_FALSE(t.reachable(*t.find("small")));
}

TEST_CASE("a clip keeps touches out of what it hides") {
    Targets t;
    t.push_clip({0, 0, 100, 100});
    t.add({.name = "half", .rect = {0, 80, 100, 56}});
    t.add({.name = "gone", .rect = {0, 150, 100, 56}});
    t.pop_clip();
    CHECK(t.find("half")->visible.h == 20);
    CHECK(t.at({50, 130}, 0) == nullptr);
    CHECK_FALSE(t.reachable(*t.find("gone")));
}

TEST_CASE("the soft rasteriser fills exactly what it should") {
    HeadlessApp app(
        [](Ui& ui) {
            ui.pen().fill({10, 10, 20, 20}, rgb(0xFF0000));
            ui.pen().push_clip({50, 0, 10, 100});
            ui.pen().fill({40, 10, 40, 20}, faded(rgb(0x000000), 0.5f));
            ui.pen().pop_clip();
        },
        {100, 60});
    app.show();
    const Bitmap out = app.shell().picture(rgb(0xFFFFFF));
    REQUIRE(out.w == 100);
    REQUIRE(out.h == 60);
    const auto red_at = [&](int x, int y) {
        const std::uint8_t* p =
            out.rgba.data() + (static_cast<std::size_t>(y) * 100 + static_cast<std::size_t>(x)) * 4;
        return std::array<int, 3>{p[0], p[1], p[2]};
    };
    CHECK(red_at(20, 20) == std::array<int, 3>{255, 0, 0});
    CHECK(red_at(5, 20) == std::array<int, 3>{255, 255, 255});
    CHECK(red_at(45, 20) == std::array<int, 3>{255, 255, 255}); // clipped away
    CHECK(red_at(55, 20)[0] == Approx(128).margin(1));          // once, not twice, along the diagonal too
    int off = 0;
    for (int y = 12; y < 28; ++y) {
        for (int x = 51; x < 59; ++x) {
            off += std::abs(red_at(x, y)[0] - 128) > 1;
        }
    }
    CHECK(off == 0);
}
