// The template as marks: what stands where, before any PDF.
#include "sheets/template_sheet.h"

#include "sheets/label_sheet.h"
#include "sheets/plan_drawing.h"
#include "sheets/step_sheet.h"
#include "support/make_card.h"
#include "support/sheets.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

std::string words_of(const std::vector<Page>& pages) {
    std::string all;
    for (const Page& page : pages) {
        for (const PageMark& mark : page.marks) {
            if (const TextMark* text = std::get_if<TextMark>(&mark)) {
                all += text->text + "\n";
            }
        }
    }
    return all;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// How many closed shapes have just these bounds (mm), wherever their corners start.
int shapes_at(const std::vector<PageMark>& marks, Vec2 centre, Vec2 size) {
    int count = 0;
    for (const PageMark& mark : marks) {
        const PathMark* path = std::get_if<PathMark>(&mark);
        if (path == nullptr || !path->closed) {
            continue;
        }
        Box box;
        for (const Vec2 p : path->points_mm) {
            box.add(p);
        }
        count +=
            distance(box.min, centre - size * 0.5) < 1e-6 && distance(box.max, centre + size * 0.5) < 1e-6;
    }
    return count;
}

// Every mark within the paper; text by its width.
void check_inside(const std::vector<Page>& pages, const Lettering& lettering) {
    for (const Page& page : pages) {
        bool clipped = false;
        for (const PageMark& mark : page.marks) {
            if (const ClipMark* clip = std::get_if<ClipMark>(&mark)) {
                clipped = clip->box.has_value();
            }
            const TextMark* text = std::get_if<TextMark>(&mark);
            if (text == nullptr || clipped) {
                continue;
            }
            const double width = lettering.width_mm(text->text, text->size_mm, text->bold);
            const double left = text->at_mm.x - (text->align == TextAlign::left     ? 0.0
                                                 : text->align == TextAlign::centre ? width / 2.0
                                                                                    : width);
            INFO(text->text);
            CHECK(left >= 5.0);
            CHECK(left + width <= page.size_mm.x - 5.0);
            CHECK(text->at_mm.y <= page.size_mm.y - 5.0);
        }
    }
}

} // namespace

TEST_CASE("Pads, patch and sheet stand at true size", "[sheets]") {
    const std::vector<PageMark> plan =
        draw_plan(make::sample_card(), make::test_parts(), make::lettering(), english());
    // L1 lies at 110, 40 turned so that + is up: pads 4 x 7 lie across, 5 mm from its middle.
    CHECK(shapes_at(plan, {110, 45}, {7, 4}) == 1);
    CHECK(shapes_at(plan, {110, 35}, {7, 4}) == 1);
    CHECK(shapes_at(plan, {60, 45}, {14, 14}) == 1);
    CHECK(shapes_at(plan, {74, 52.5}, {148, 105}) == 1);
    const Box n1{{27.5, 42.5}, {118, 80}}; // its outline, corner filled
    CHECK(shapes_at(plan, (n1.min + n1.max) * 0.5, n1.max - n1.min) == 1);
}

TEST_CASE("A5 lands on one page with bar and bank card, A3 on tiles", "[sheets]") {
    const Lettering lettering = make::lettering();
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        Card card = make::sample_card();
        const TemplateSheet one = template_sheet(card, make::test_parts(), paper, false, lettering).value();
        REQUIRE(one.pages.size() == 1);
        REQUIRE(one.views[0].bank_card_mm);
        const Vec2 size = one.views[0].bank_card_mm->max - one.views[0].bank_card_mm->min;
        CHECK(size.x == Approx(85.60)); // ISO/IEC 7810 ID-1
        CHECK(size.y == Approx(53.98));
        CHECK(has(words_of(one.pages), "100 mm"));
        check_inside(one.pages, lettering);

        card.sheet.width_mm = 420;
        card.sheet.height_mm = 297;
        const TemplateSheet many = template_sheet(card, make::test_parts(), paper, false, lettering).value();
        CHECK(static_cast<int>(many.pages.size()) == many.columns * many.rows + 1);
        CHECK(many.columns * many.rows >= 4);
        CHECK(many.views[0].bank_card_mm);
        check_inside(many.pages, lettering);
    }
}

TEST_CASE("A card that leaves no room for the bank card gets it on a page of its own", "[sheets]") {
    Card card = make::sample_card();
    card.sheet.width_mm = 175;
    card.sheet.height_mm = 225;
    const TemplateSheet sheet =
        template_sheet(card, make::test_parts(), Paper::a4, false, make::lettering()).value();
    CHECK(sheet.columns * sheet.rows == 1);
    REQUIRE(sheet.pages.size() == 2);
    CHECK(sheet.views[0].plan);
    CHECK(sheet.views[1].bank_card_mm);
}

TEST_CASE("A sheet beyond all paper is a sentence", "[sheets]") {
    Card card = make::sample_card();
    card.sheet.width_mm = 10'000;
    card.sheet.height_mm = 10'000;
    const Outcome<TemplateSheet> made =
        template_sheet(card, make::test_parts(), Paper::a4, false, make::lettering());
    REQUIRE_FALSE(made);
    CHECK(has(made.problem().sentence(), "40 pages of A4"));
}

TEST_CASE("Mirrored, a pad stands as far from the right as it stood from the left", "[sheets]") {
    const TemplateSheet sheet =
        template_sheet(make::sample_card(), make::test_parts(), Paper::a4, true, make::lettering()).value();
    const Placement& plan = *sheet.views[0].plan;
    CHECK(plan({0, 0}).x - plan({110, 0}).x == Approx(110.0));
    CHECK(shapes_at(sheet.pages[0].marks, plan({110, 45}), {7, 4}) == 1);
    CHECK(has(words_of(sheet.pages), "mirrored"));
}

TEST_CASE("The step sheet has every step, every check's figure and the way without a meter", "[sheets]") {
    const Card card = make::sample_card();
    const Lettering lettering = make::lettering();
    const std::vector<Page> pages = step_sheet(card, make::test_parts(), Paper::a4, lettering);
    const std::string words = words_of(pages);
    for (int step = 1; step <= kStepCount; ++step) {
        CHECK(has(words, title_of(static_cast<StepId>(step))));
    }
    for (const char* part : {"Measure", "No meter?", "Ω", "Tick each light", "An adult does this."}) {
        INFO(part);
        CHECK(has(words, part));
    }
    CHECK_FALSE(has(words, " tap ")); // paper cannot be tapped
    check_inside(pages, lettering);
}

TEST_CASE("The label fits the back, says what matters and promises nothing", "[sheets]") {
    const Lettering lettering = make::lettering();
    for (const double width : {74.0, 105.0, 148.0, 210.0}) {
        Card card = make::sample_card();
        card.sheet.width_mm = width;
        card.sheet.height_mm = width * 0.7;
        const Vec2 size = label_size(card, lettering);
        INFO(width);
        CHECK(size.x <= card.sheet.width_mm);
        CHECK(size.y <= card.sheet.height_mm);
        const std::vector<Page> pages = label_sheet(card, 30, Paper::letter, lettering);
        REQUIRE(pages.size() == 1);
        check_inside(pages, lettering);
        std::string words = words_of(pages);
        std::replace(words.begin(), words.end(), '\n', ' ');
        for (const char* part : {"WARNING", "Coin cell inside", "Swallowed", "emergency help at once",
                                 "CR2032", "new or used", "does not make a card safe"}) {
            INFO(part);
            CHECK(has(words, part));
        }
        for (const char* part : {"compl", "tested", "certif", "approved", "is safe", "child-safe"}) {
            INFO(part);
            CHECK_FALSE(has(words, part));
        }
    }
}
