#include "sheets/step_sheet.h"

#include "guide/sequence.h"
#include "sheets/flow.h"
#include "sheets/step_picture.h"
#include "sheets/symbols.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr double kBox_mm = 4.2;
constexpr double kTextGap_mm = 2.5;
constexpr double kPictures_mm[] = {36.0, 33.0, 30.0};
constexpr double kAfter_mm = 3.0;
constexpr std::size_t kMostLines = 12; // of any one sentence; ours have far fewer, a hostile card may not

// Writes one column's width of blocks.
struct Writer {
    const Lettering& lettering;
    const Words& say;
    double width_mm;
    double picture_mm;
    StepPictures& pictures;
    std::vector<Block> blocks;

    void heading(const Step& step);
    void move(const Step& step, const Move& move, int number);
    void proof(const Step& step);
    /// Returns the bottom.
    double reading(PagePen& pen, const Check& check, Vec2 top, double width) const;
    double lights(PagePen& pen, const Check& check, Vec2 top, double width) const;
    /// What to measure or look at, and what to expect.
    [[nodiscard]] std::string task(const Check& check) const;
    [[nodiscard]] std::string mid_sentence(std::string title) const;

    double words(PagePen& pen, const std::string& text, Vec2 top, double width, double size_mm,
                 bool bold = false) const {
        return draw_lines(pen, lettering.lines(clean_text(text), size_mm, width, bold, kMostLines), top,
                          size_mm, bold);
    }
};

void Writer::heading(const Step& step) {
    Block block;
    PagePen pen(block.marks);
    const std::string number = std::to_string(static_cast<int>(step.id));
    pen.round_box({0, 0.5}, {width_mm, 8.6}, 1.5, {}, grey(0.9));
    pen.disc({5.0, 4.8}, 3.4, {}, kBlack);
    pen.text({5.0, 6.5}, number, kHead_mm, true, TextAlign::centre, kWhite);
    pen.text({10.5, 6.5}, lettering.fitted(step.title, kHead_mm, width_mm - 12.0, true), kHead_mm, true);
    block.height_mm = words(pen, step.goal, {0.5, 10.0}, width_mm - 1.0, kBody_mm) + 2.0;
    block.with_next = true;
    blocks.push_back(std::move(block));
}

// "Cell while lit" goes on after "Measure" as "cell while lit"; "R1.2" stays. German keeps its capitals: what
// begins a title there is mostly a noun.
std::string Writer::mid_sentence(std::string title) const {
    if (say.language() != "de" && title.size() > 1 && title[0] >= 'A' && title[0] <= 'Z' && title[1] >= 'a' &&
        title[1] <= 'z') {
        title[0] = static_cast<char>(title[0] - 'A' + 'a');
    }
    return title;
}

double Writer::lights(PagePen& pen, const Check& check, Vec2 top, double width) const {
    double y = words(pen, say("sheets.press_and_tick"), top, width, kSmall_mm, true);
    y += 0.8;
    double x = top.x;
    for (const LightExpectation& light : check.lights) {
        const std::string name =
            lettering.fitted(clean_text(light.led), kSmall_mm, 18.0, true) +
            (light.state == "lit" ? "" : " (" + say("step_page.state_" + light.state) + ")");
        const double size = kBox_mm + 1.0 + lettering.width_mm(name, kSmall_mm, true) + 2.2;
        if (x + size > top.x + width && x > top.x) {
            x = top.x;
            y += kBox_mm + 1.6;
        }
        draw_tick_box(pen, {x, y}, kBox_mm - 0.6);
        pen.text({x + kBox_mm + 0.4, y + 3.0}, name, kSmall_mm, true);
        x += size;
    }
    return words(pen, say("sheets.expected", {{"reading", check.expect_text}}), {top.x, y + kBox_mm + 0.6},
                 width, kSmall_mm) +
           1.0;
}

std::string Writer::task(const Check& check) const {
    if (check.kind != CheckKind::look) {
        return say(check.needed ? "sheets.measure" : "sheets.measure_unsure",
                   {{"what", mid_sentence(check.title)}, {"reading", check.expect_text}});
    }
    const bool said = check.title.find(':') != std::string::npos; // "Let go: lights off" says all
    const std::string seen =
        said ? check.title : say("sheets.look", {{"what", check.title}, {"reading", check.expect_text}});
    return check.needed ? seen : say("sheets.look_unsure", {{"look", mid_sentence(seen)}});
}

double Writer::reading(PagePen& pen, const Check& check, Vec2 top, double width) const {
    const bool measured = check.kind != CheckKind::look;
    const double line_room = measured ? 20.0 : 0.0;
    draw_tick_box(pen, {top.x, top.y + 0.2}, kBox_mm - 0.6);
    const double x = top.x + kBox_mm + 1.0;
    if (check.kind == CheckKind::lights) {
        return lights(pen, check, {x, top.y}, width - (x - top.x));
    }
    double y = words(pen, task(check), {x, top.y}, width - (x - top.x) - line_room, kSmall_mm, true);
    if (measured) {
        pen.line({top.x + width - line_room + 3.0, top.y + 3.5}, {top.x + width, top.y + 3.5},
                 {0.2, kBlack, {}});
    }
    if (!check.without_meter.empty()) {
        const bool by_meter = measured && check.kind != CheckKind::height;
        const std::string look =
            by_meter ? say("sheets.no_meter", {{"look", check.without_meter}}) : check.without_meter;
        y = words(pen, look, {x, y}, width - (x - top.x), kSmall_mm);
    }
    return y + 1.0;
}

void Writer::move(const Step& step, const Move& move, int number) {
    Block block;
    PagePen pen(block.marks);
    const double picture_x = kBox_mm + 2.0;
    const Vec2 picture{picture_mm, pictures.height_for(picture_mm)};
    draw_tick_box(pen, {0, 0.2}, kBox_mm);
    place(pictures.draw(move, picture), {{picture_x, 0.2}, 1.0, false}, block.marks);
    const double x = picture_x + picture_mm + kTextGap_mm;
    const double room = width_mm - x;
    const std::string name = std::to_string(static_cast<int>(step.id)) + "." + std::to_string(number) + "  ";
    double y = words(pen, name + move.title, {x, -0.6}, room, kBody_mm, true);
    if (move.adult_only) {
        y = words(pen, say("sheets.adult"), {x, y}, room, kSmall_mm, true);
    }
    // What the guide says of the lights is about tapping a screen; the boxes of the proof stand for that
    // here.
    const bool lights_move = move.kind == MoveKind::light_test;
    y = words(pen, lights_move ? say("sheets.tick_below") : move.sentence, {x, y + 0.3}, room, kSmall_mm);
    y = std::max(y, picture.y + 0.6);
    if (move.check && move.check->kind != CheckKind::lights) {
        y = reading(pen, *move.check, {picture_x, y + 0.8}, width_mm - picture_x);
    }
    block.height_mm = y + kAfter_mm;
    blocks.push_back(std::move(block));
}

void Writer::proof(const Step& step) {
    for (std::size_t i = 0; i < step.proof.size(); ++i) {
        Block block;
        PagePen pen(block.marks);
        double y = 0.0;
        if (i == 0) {
            pen.line({0, 0.5}, {width_mm, 0.5}, {0.2, kBlack, {}});
            y = words(pen, say("sheets.done_when", {{"number", static_cast<int>(step.id)}}), {0, 1.5},
                      width_mm, kBody_mm, true) +
                0.8;
        }
        block.height_mm =
            reading(pen, step.proof[i], {0, y}, width_mm) + (i + 1 == step.proof.size() ? 4.0 : 0.4);
        block.with_next = i == 0 && step.proof.size() > 1;
        blocks.push_back(std::move(block));
    }
}

} // namespace

namespace {

std::vector<Page> lay_out(const Card& card, const Parts& parts, const std::vector<Step>& steps, Paper paper,
                          double picture_mm, const Lettering& lettering, const Words& words) {
    const SheetHead head{card.title, words("sheets.steps"), words("sheets.steps_note")};
    const Columns columns{2, 8.0};
    const Box content = framed_page(paper, false, head, lettering).content;
    StepPictures pictures(card, parts, words);
    Writer writer{lettering, words, columns.width_mm(content), picture_mm, pictures, {}};
    for (const Step& step : steps) {
        writer.heading(step);
        int number = 0;
        for (const Move& move : step.moves) {
            writer.move(step, move, ++number);
        }
        writer.proof(step);
    }
    return flow(writer.blocks, columns, paper, head, lettering, words);
}

} // namespace

std::vector<Page> step_sheet(const Card& card, const Parts& parts, Paper paper, const Lettering& lettering,
                             const Words& words) {
    const std::vector<Step> steps = make_steps(card, parts, words);
    std::vector<Page> best;
    for (const double picture_mm : kPictures_mm) { // smaller only where that saves a page
        std::vector<Page> tried = lay_out(card, parts, steps, paper, picture_mm, lettering, words);
        if (best.empty() || tried.size() < best.size()) {
            best = std::move(tried);
        }
    }
    return best;
}

} // namespace lanternleaf
