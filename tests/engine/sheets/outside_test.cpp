// The printed file looked at from outside: qpdf (a PDF checker), pdftotext and pdftoppm (Poppler). Nothing
// here trusts our own writer: lengths are counted in pixels of what another program drew, ten to the
// millimetre.
#include "sheets/printout.h"
#include "sheets/template_sheet.h"
#include "sheets/write_pdf.h"
#include "support/make_build.h"
#include "support/make_card.h"
#include "support/sheets.h"

#include "desk/desk.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using make::Raster;

namespace {

constexpr double kNear_mm = 0.2;

OpenCard demo(const std::string& name) {
    const Parts parts = load_parts(LANTERNLEAF_SOURCE "/assets").value();
    return open_card(std::string(LANTERNLEAF_SOURCE "/assets/cards/") + name + ".card.json", parts).value();
}

void is_sound(const std::string& path, int pages) {
    if (make::has_tool("qpdf")) {
        const make::ToolAnswer checked = make::run_tool("qpdf --check '" + path + "' 2>&1");
        INFO(checked.out);
        CHECK(checked.status == 0);
        CHECK(make::run_tool("qpdf --show-npages '" + path + "'").out == std::to_string(pages) + "\n");
    }
}

// The left and right edge of the sheet's outline on the page, by looking inwards between two ruler ticks.
struct Edges {
    double left_mm;
    double right_mm;
};

Edges sheet_edges(const Raster& raster, Vec2 corner, double width_mm) {
    const double y = corner.y + 2.5;
    const double from_left = corner.x - 0.9;
    const double from_right = corner.x + width_mm + 1.2;
    const double left = raster.first_line(from_left, y, 1, 0, 3.0);
    const double right = raster.first_line(from_right, y, -1, 0, 3.0);
    REQUIRE(left >= 0.0);
    REQUIRE(right >= 0.0);
    return {std::floor(from_left * 10.0) / 10.0 + left / 10.0,
            std::floor(from_right * 10.0) / 10.0 + 0.1 - right / 10.0};
}

double top_edge(const Raster& raster, Vec2 corner) {
    const double from = corner.y - 0.9;
    const double down = raster.first_line(corner.x + 2.5, from, 0, 1, 3.0);
    REQUIRE(down >= 0.0);
    return std::floor(from * 10.0) / 10.0 + down / 10.0;
}

// A pad's outline measured from a place inside it: the middle and the size (mm on the page).
struct Measured {
    Vec2 middle;
    Vec2 size;
};

Measured measure_pad(const Raster& raster, Vec2 near, Vec2 size) {
    // Off the middle, where the sign is.
    const double y = near.y + size.y * 0.4;
    const double x = near.x + size.x * 0.4;
    const auto walk = [&](double from_x, double from_y, int dx, int dy) {
        const double px = raster.first_line(from_x, from_y, dx, dy, 8.0);
        REQUIRE(px >= 0.0);
        const double from = dx != 0 ? from_x : from_y;
        const int sign = dx + dy;
        return std::floor(from * 10.0) / 10.0 + (sign > 0 ? px / 10.0 : 0.1 - px / 10.0);
    };
    const double left = walk(near.x, y, -1, 0);
    const double right = walk(near.x, y, 1, 0);
    const double top = walk(x, near.y, 0, -1);
    const double bottom = walk(x, near.y, 0, 1);
    return {{(left + right) / 2.0, (top + bottom) / 2.0}, {right - left, bottom - top}};
}

double measured_bar(const Raster& raster, Vec2 bar_from) {
    const double y = bar_from.y - 2.0; // only the end ticks reach up here
    const double first = raster.first_line(bar_from.x - 2.0, y, 1, 0, 10.0);
    const double last = raster.first_line(bar_from.x + 103.0, y, -1, 0, 10.0);
    REQUIRE(first >= 0.0);
    REQUIRE(last >= 0.0);
    const double from = std::floor((bar_from.x - 2.0) * 10.0) + first;
    const double to = std::floor((bar_from.x + 103.0) * 10.0) + 1.0 - last;
    return (to - from) / 10.0;
}

bool dark_near(const Raster& raster, int x, int y) {
    for (int dy = -1; dy <= 1; ++dy) {
        for (int dx = -1; dx <= 1; ++dx) {
            if (raster.at(x + dx, y + dy) < 160) {
                return true;
            }
        }
    }
    return false;
}

} // namespace

TEST_CASE("Every demo prints to a sound file whose words can be found", "[sheets][outside]") {
    const make::TempFolder folder("lanternleaf-print");
    for (const char* name : {"harbour-lighthouse", "night-tram", "window-candle"}) {
        const OpenCard open = demo(name);
        PrintoutWish wish;
        wish.fonts = make::font_files();
        wish.cards = 20;
        const Printout made = print_card(open.card, open.parts, wish).value();
        const std::string path = folder.at(std::string(name) + ".pdf");
        make::put_file(path, made.pdf);
        is_sound(path, made.pages);
        CHECK(print_card(open.card, open.parts, wish).value().pdf == made.pdf); // byte for byte
        CHECK(made.pdf.find("/CreationDate") == std::string::npos);
        if (!make::has_tool("pdftotext")) {
            continue;
        }
        const std::string template_text = make::run_tool("pdftotext -l 1 '" + path + "' - 2>/dev/null").out;
        for (const Led& led : open.card.leds) {
            INFO(name << " " << led.id);
            CHECK(template_text.find(led.id) != std::string::npos);
        }
        CHECK(template_text.find("100 mm") != std::string::npos);
        CHECK(template_text.find("A bank card fits here") != std::string::npos);
        const std::string all = make::run_tool("pdftotext -layout '" + path + "' - 2>/dev/null").out;
        for (const char* words : {"Lay the negative trace", "Pad the edges", "No meter?", "Buy for 20 cards",
                                  "WARNING", "Coin cell inside", "page 1 of"}) {
            INFO(words);
            CHECK(all.find(words) != std::string::npos);
        }
    }
}

TEST_CASE("The bar is 100 mm and the pads stand where the card says, in pixels", "[sheets][outside]") {
    if (!make::has_tool("pdftoppm")) {
        return;
    }
    const make::TempFolder folder("lanternleaf-measure");
    const OpenCard open = demo("harbour-lighthouse");
    const Lettering lettering = make::lettering();
    for (const bool mirrored : {false, true}) {
        for (const Paper paper : {Paper::a4, Paper::letter}) {
            const TemplateSheet sheet =
                template_sheet(open.card, open.parts, paper, mirrored, lettering).value();
            const std::string path = folder.at("template.pdf");
            make::put_file(path, write_pdf(sheet.pages, lettering, {"t", "s"}).value());
            const Raster raster = make::rasterise(path, 1);
            CHECK(raster.width == (paper == Paper::a4 ? 2100 : 2159)); // 210.0 and 215.9 mm
            const TemplateView& view = sheet.views[0];
            const double bar = measured_bar(raster, view.bar_from_mm);
            CHECK(bar == Approx(100.0).margin(kNear_mm));

            const Vec2 corner = (*view.plan)({mirrored ? 148.0 : 0.0, 0.0});
            // The mirrored sheet has its ruler on the right; its left edge is free.
            const Edges edges = sheet_edges(raster, corner, 148.0);
            CHECK(edges.right_mm - edges.left_mm == Approx(148.0).margin(kNear_mm));
            const double top = top_edge(raster, corner);

            // From the card file by hand: L1 at 55, 71 with + up, L5 at 87, 38 with + down, L6 at 122, 20
            // with + to the right; pads lie 5 mm from the middle and are 4 x 7.
            struct Want {
                Vec2 at;
                Vec2 size;
            };

            const Want wanted[] = {{{55, 76}, {7, 4}}, {{55, 66}, {7, 4}},  {{87, 33}, {7, 4}},
                                   {{87, 43}, {7, 4}}, {{117, 20}, {4, 7}}, {{127, 20}, {4, 7}}};
            double worst = 0.0;
            for (const Want& want : wanted) {
                const Measured pad = measure_pad(raster, (*view.plan)(want.at), want.size);
                const double x = mirrored ? edges.right_mm - pad.middle.x : pad.middle.x - edges.left_mm;
                INFO("pad at " << want.at.x << ", " << want.at.y);
                CHECK(x == Approx(want.at.x).margin(kNear_mm));
                CHECK(pad.middle.y - top == Approx(want.at.y).margin(kNear_mm));
                CHECK(pad.size.x == Approx(want.size.x).margin(kNear_mm));
                CHECK(pad.size.y == Approx(want.size.y).margin(kNear_mm));
                worst = std::max({worst, std::abs(x - want.at.x), std::abs(pad.middle.y - top - want.at.y)});
            }
            std::printf("template %s%s: bar %.3f mm, sheet %.3f mm, worst pad off by %.3f mm\n",
                        name_of(paper), mirrored ? " mirrored" : "", bar, edges.right_mm - edges.left_mm,
                        worst);

            const Box card = *view.bank_card_mm; // its long edges, half way down
            const double middle = (card.min.y + card.max.y) / 2.0 + 12.0;
            const double left = raster.first_line(card.min.x - 2.0, middle, 1, 0, 5.0);
            const double right = raster.first_line(card.max.x + 2.0, middle, -1, 0, 5.0);
            const double width = (std::floor((card.max.x + 2.0) * 10.0) + 1.0 - right -
                                  std::floor((card.min.x - 2.0) * 10.0) - left) /
                                 10.0;
            CHECK(width == Approx(85.60).margin(kNear_mm));
        }
    }
}

TEST_CASE("Tiled pages fit together", "[sheets][outside]") {
    if (!make::has_tool("pdftoppm")) {
        return;
    }
    const make::TempFolder folder("lanternleaf-tiles");
    OpenCard open = demo("harbour-lighthouse");
    open.card.sheet.width_mm = 420;
    open.card.sheet.height_mm = 297;
    open.card.leds[5].at_mm = {280, 180}; // L6 moved into the far corner of what is shared
    const Lettering lettering = make::lettering();
    const TemplateSheet sheet = template_sheet(open.card, open.parts, Paper::a4, false, lettering).value();
    REQUIRE(sheet.columns * sheet.rows >= 4);
    const std::string path = folder.at("tiles.pdf");
    make::put_file(path, write_pdf(sheet.pages, lettering, {"t", "s"}).value());
    is_sound(path, static_cast<int>(sheet.pages.size()));
    std::vector<Raster> rasters;
    for (std::size_t i = 1; i < sheet.pages.size(); ++i) {
        rasters.push_back(make::rasterise(path, static_cast<int>(i) + 1));
        CHECK(measured_bar(rasters.back(), sheet.views[i].bar_from_mm) == Approx(100.0).margin(kNear_mm));
    }
    // What two neighbours both show must look the same on both pages.
    int compared = 0;
    for (std::size_t a = 1; a < sheet.pages.size(); ++a) {
        for (std::size_t b = a + 1; b < sheet.pages.size(); ++b) {
            const TemplateView& one = sheet.views[a];
            const TemplateView& two = sheet.views[b];
            if (std::abs(one.column - two.column) + std::abs(one.row - two.row) != 1) {
                continue;
            }
            const Vec2 shift = two.plan->shift_mm - one.plan->shift_mm;
            const int dx = static_cast<int>(std::lround(shift.x * 10.0));
            const int dy = static_cast<int>(std::lround(shift.y * 10.0));
            const int from_x =
                static_cast<int>(std::max(one.window.min.x, two.window.min.x - shift.x) * 10.0) + 5;
            const int to_x =
                static_cast<int>(std::min(one.window.max.x, two.window.max.x - shift.x) * 10.0) - 5;
            const int from_y =
                static_cast<int>(std::max(one.window.min.y, two.window.min.y - shift.y) * 10.0) + 5;
            const int to_y =
                static_cast<int>(std::min(one.window.max.y, two.window.max.y - shift.y) * 10.0) - 5;
            long differ = 0;
            long dark = 0;
            for (int y = from_y; y < to_y; ++y) {
                for (int x = from_x; x < to_x; ++x) {
                    // Letters and thin lines may fall a pixel (0.1 mm) apart: pixels are not the drawing.
                    const int first = rasters[a - 1].at(x, y);
                    const int second = rasters[b - 1].at(x + dx, y + dy);
                    differ += (first < 96 && !dark_near(rasters[b - 1], x + dx, y + dy)) ||
                                      (second < 96 && !dark_near(rasters[a - 1], x, y))
                                  ? 1
                                  : 0;
                    dark += first < 128 ? 1 : 0;
                }
            }
            INFO("tiles " << a << " and " << b);
            CHECK(dark > 200); // at least a seam and its crosses are there to compare
            CHECK(static_cast<double>(differ) < 0.002 * static_cast<double>(dark));
            ++compared;
        }
    }
    CHECK(compared >= 4);
    // Measured across the seam, by the cross that both pages carry: the sheet is 420 mm wide.
    const TemplateView& left = sheet.views[1];
    const TemplateView& right = sheet.views[static_cast<std::size_t>(sheet.columns)];
    REQUIRE(sheet.columns == 2);
    const auto cross_x = [](const Raster& raster, Vec2 cross) {
        const double px = raster.first_line(cross.x - 1.5, cross.y - 3.2, 1, 0, 3.0); // above its ring
        REQUIRE(px >= 0.0);
        return std::floor((cross.x - 1.5) * 10.0) / 10.0 + px / 10.0;
    };
    const Vec2 left_corner = (*left.plan)({0, 0});
    const Vec2 right_corner = (*right.plan)({420, 0});
    const double y_left = left_corner.y + 2.5;
    const double to_left = rasters[0].first_line(left_corner.x - 0.9, y_left, 1, 0, 3.0);
    const double to_right = rasters[static_cast<std::size_t>(sheet.columns) - 1].first_line(
        right_corner.x + 1.2, y_left, -1, 0, 3.0);
    const double a = cross_x(rasters[0], left.crosses_mm[0]) -
                     (std::floor((left_corner.x - 0.9) * 10.0) / 10.0 + to_left / 10.0);
    const double b = std::floor((right_corner.x + 1.2) * 10.0) / 10.0 + 0.1 - to_right / 10.0 -
                     cross_x(rasters[static_cast<std::size_t>(sheet.columns) - 1], right.crosses_mm[0]);
    std::printf("tiles: sheet across the seam %.3f mm of 420\n", a + b);
    CHECK(a + b == Approx(420.0).margin(kNear_mm));
}

TEST_CASE("Hostile titles and names print all the same", "[sheets][outside]") {
    const make::TempFolder folder("lanternleaf-hostile");
    std::string control;
    for (int c = 1; c < 32; ++c) {
        control += static_cast<char>(c);
    }
    const std::string titles[] = {std::string(9'999, 'W'),
                                  control + "\x7f) Tj ET (\\",
                                  "Жизнь · ελλάδα · 日本語 · العربية · עברית · हिन्दी",
                                  "moon 🌙\xF0\x9F\x8C\x99 \u202Eesrever\u2066",
                                  "bad \xff\xfe\xC0\xAF\xED\xA0\x80 bytes \xE2\x82",
                                  ""};
    for (const std::string& title : titles) {
        for (const bool embedded : {true, false}) {
            Card card = make::sample_card();
            card.title = title;
            card.leds[0].id = title.substr(0, 60) + "L";
            card.sheet.keepouts[0].why = title;
            std::get<Strip>(card.laid[0]).id = title.substr(0, 40) + "N";
            PrintoutWish wish;
            wish.fonts = embedded ? make::font_files() : PrintFonts{};
            wish.prices = Prices{title.substr(0, 20), {}};
            const Outcome<Printout> made = print_card(card, make::test_parts(), wish);
            REQUIRE(made);
            const std::string path = folder.at("hostile.pdf");
            make::put_file(path, made.value().pdf);
            is_sound(path, made.value().pages);
            CHECK(made.value().pages < 20);
            if (make::has_tool("pdftotext")) {
                const std::string text = make::run_tool("pdftotext '" + path + "' - 2>/dev/null").out;
                CHECK(text.find("WARNING") != std::string::npos);
                CHECK(text.find("100 mm") != std::string::npos);
            }
        }
    }
}
