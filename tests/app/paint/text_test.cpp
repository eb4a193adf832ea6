// Fonts: sizes by the em, lines by their lead, wrapping, bold spans, ellipsis, and every glyph the app
// promises.
#include "paint/fonts.h"

#include <catch2/catch.hpp>
#include <imgui.h>

#include "support/headless_app.h"

using namespace lanternleaf;

namespace {

/// Baked fonts in a context of their own.
struct Baked {
    HeadlessApp app{[](Ui&) {}};
    const Fonts& fonts = app.ui().fonts();
    TextStyle body{20, 26, Weight::Regular};
};

} // namespace

TEST_CASE("the font file tells its measures") {
    // Andika 6.101, read from its head, hhea and OS/2 tables by a separate script (offsets as in the OpenType
    // specification): 2048 units to the em, ascender 2500, descender -800, capitals 1485.
    const FontFile& f = test_fonts().regular;
    CHECK(f.ascent == Approx(2500.0 / 2048));
    CHECK(f.box() == Approx(3300.0 / 2048));
    CHECK(f.cap_height == Approx(1485.0 / 2048));
}

TEST_CASE("a missing font is one clear sentence") {
    const auto read = read_font_files("/nonexistent");
    REQUIRE_FALSE(read.ok());
    CHECK(read.problem().sentence().find("Andika-Regular.ttf") != std::string::npos);
}

TEST_CASE("text has the width of its em, capitals the middle of their line") {
    Baked b;
    // Andika's figures are equal in width; ten of them are ten times one.
    const float one = b.fonts.width("0", b.body);
    CHECK(b.fonts.width("0123456789", b.body) == Approx(10 * one).epsilon(0.01));
    CHECK(b.fonts.width("0", b.body.sized(40)) == Approx(2 * one).epsilon(0.02));
    const float base = b.fonts.baseline(b.body);
    CHECK(base - b.fonts.cap_height(b.body) == Approx(26 - base));
}

TEST_CASE("every character the app uses has a glyph in both faces") {
    Baked b;
    for (const Weight weight : {Weight::Regular, Weight::Bold}) {
        CHECK(b.fonts.has_all("ABCxyz 0123456789 ÄÖÜßéñø Łőşž", weight));
        CHECK(b.fonts.has_all("Ω µ – — ’ ‘ “ ” … − × ≈ → ← ½ ✓ ≤ ≥ • °", weight));
    }
    CHECK_FALSE(b.fonts.has_all("▲"));
}

TEST_CASE("wrapped lines fit, lose nothing and keep their order") {
    Baked b;
    const std::string text =
        "Fold the tape back on itself, then swing it to the right so the shiny side stays up.";
    for (const float width : {120.0f, 200.0f, 480.0f, 2000.0f}) {
        const auto lines = b.fonts.wrap(text, b.body, width);
        std::string all;
        for (const TextLine& line : lines) {
            CHECK(line.width <= width);
            for (const TextRun& run : line.runs) {
                all += run.text;
            }
            all += " ";
        }
        all.pop_back();
        CHECK(all == text);
        CHECK(b.fonts.wrapped_height(text, b.body, width) == static_cast<float>(lines.size()) * 26);
    }
    CHECK(b.fonts.wrap(text, b.body, 2000).size() == 1);
    CHECK(b.fonts.wrap("", b.body, 100).empty());
    CHECK(b.fonts.wrap("one\ntwo", b.body, 500).size() == 2);
}

TEST_CASE("a word wider than its line is broken, not lost") {
    Baked b;
    const auto lines = b.fonts.wrap("Donaudampfschifffahrt", b.body, 60);
    CHECK(lines.size() > 2);
    std::string all;
    for (const TextLine& line : lines) {
        CHECK(line.width <= 60);
        all += line.runs.at(0).text;
    }
    CHECK(all == "Donaudampfschifffahrt");
    CHECK(b.fonts.wrap("Ω", b.body, 1).size() == 1); // no room at all still ends
}

TEST_CASE("stars make bold, and punctuation stays with its word") {
    Baked b;
    const auto lines = b.fonts.wrap("Press joint **A** hard, watch **L1**, then stop.", b.body, 1000);
    REQUIRE(lines.size() == 1);
    std::vector<std::string> bold;
    for (const TextRun& run : lines[0].runs) {
        if (run.weight == Weight::Bold) {
            bold.push_back(run.text);
        }
    }
    REQUIRE(bold.size() == 2);
    CHECK(bold[0].find('A') != std::string::npos);
    CHECK(bold[1].find("L1") != std::string::npos);
    for (float width = 30; width < 300; width += 7) {
        for (const TextLine& line : b.fonts.wrap("watch **L1**, then", b.body, width)) {
            CHECK(line.runs.front().text.front() != ',');
        }
    }
}

TEST_CASE("what does not fit ends in an ellipsis that does") {
    Baked b;
    const std::string cut = b.fonts.fitted("Harbour lighthouse with seven lights", b.body, 150);
    CHECK(cut.ends_with("…"));
    CHECK(b.fonts.width(cut, b.body) <= 150);
    CHECK(b.fonts.fitted("Short", b.body, 150) == "Short");
}

TEST_CASE("fonts are baked once for one size and again for another") {
    HeadlessApp app([](Ui&) {});
    const int before = ImGui::GetIO().Fonts->Fonts.Size;
    const auto* face = app.ui().fonts().face({20, 26, Weight::Regular});
    app.frame(3);
    CHECK(app.ui().fonts().face({20, 26, Weight::Regular}) == face);
    app.look.text_scale = 1.3f;
    app.frame();
    CHECK(app.ui().fonts().width("0", {26, 34, Weight::Regular}) > 0);
    CHECK(ImGui::GetIO().Fonts->Fonts.Size == before);
    CHECK(ImGui::GetIO().Fonts->TexWidth * ImGui::GetIO().Fonts->TexHeight <= 2048 * 2048);
}
