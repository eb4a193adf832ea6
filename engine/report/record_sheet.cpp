#include "report/record_sheet.h"

#include "report/photo_pages.h"
#include "sheets/flow.h"
#include "sheets/write_pdf.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr double kRow_mm = 6.6;
constexpr double kRange_w_mm = 28.0;

struct SheetWriter {
    const Lettering& lettering;
    const Words& say;
    double width_mm;
    std::vector<Block> blocks;

    void heading(const std::string& text) {
        Block block;
        PagePen pen(block.marks);
        const double top = blocks.empty() ? 0.0 : 4.0;
        pen.round_box({0, top}, {width_mm, 8.2}, 1.5, {}, grey(0.9));
        pen.text({2.5, top + 5.9}, lettering.fitted(clean_text(text), kHead_mm, width_mm - 5, true), kHead_mm,
                 true);
        block.height_mm = top + 10.0;
        block.with_next = true;
        blocks.push_back(std::move(block));
    }

    void words(const std::string& text, bool bold = false) {
        // Blocks are kept small: a long note goes over pages.
        for (const std::string& line : lettering.lines(clean_text(text), kBody_mm, width_mm, bold, 60)) {
            Block block;
            PagePen pen(block.marks);
            block.height_mm = draw_lines(pen, {line}, {0, 0.4}, kBody_mm, bold);
            blocks.push_back(std::move(block));
        }
        Block gap;
        gap.height_mm = 1.2;
        blocks.push_back(std::move(gap));
    }

    void rule(PagePen& pen) const {
        pen.line({0, kRow_mm - 0.6}, {width_mm, kRow_mm - 0.6}, {0.1, grey(0.6), {}});
    }

    void cell(PagePen& pen, double x, double w, const std::string& text, bool bold = false) const {
        pen.text({x, 4.4}, lettering.fitted(clean_text(text), kBody_mm, w, bold), kBody_mm, bold);
    }

    void step_row(const StoryStep& step) {
        Block block;
        PagePen pen(block.marks);
        std::string name = std::to_string(step.number);
        name += ' ';
        name += step.title;
        const double time_x = width_mm * 0.42;
        cell(pen, 0, time_x - 2, name, true);
        cell(pen, time_x, 22, step.time.worked_s > 0 ? spoken_span(step.time.worked_s) : "");
        cell(pen, time_x + 24, width_mm - time_x - 24, step.state_text);
        rule(pen);
        block.height_mm = kRow_mm;
        blocks.push_back(std::move(block));
    }

    // The range as a box on a line, the reading as a dot: shapes, so that it prints in grey.
    void range(PagePen& pen, double x, const StoryReading& reading) const {
        const double from = std::min(reading.low, reading.value_si);
        const double to = std::max(reading.high, reading.value_si);
        const double room = std::max(to - from, 1e-9) * 0.45;
        const double start = std::max(0.0, from - room);
        const auto at = [&](double value) {
            return x + kRange_w_mm * std::clamp((value - start) / (to + room - start), 0.0, 1.0);
        };
        pen.line({x, 3.2}, {x + kRange_w_mm, 3.2}, {0.2, grey(0.5), {}});
        pen.box({at(reading.low), 1.8}, {std::max(at(reading.high) - at(reading.low), 0.8), 2.8},
                Stroke{0.3, kBlack, {}}, grey(0.88));
        pen.disc({at(reading.value_si), 3.2}, 1.1, {}, kBlack);
    }

    void reading_row(const StoryReading& reading) {
        Block block;
        PagePen pen(block.marks);
        const double value_x = width_mm * 0.30;
        const double range_x = width_mm * 0.56;
        cell(pen, 0, value_x - 2, reading.title);
        cell(pen, value_x, range_x - value_x - 2,
             reading.simulated ? say("record_sheet.simulated", {{"value", reading.value}}) : reading.value,
             true);
        if (reading.has_number && reading.high > 0) {
            range(pen, range_x, reading);
        }
        cell(pen, range_x + kRange_w_mm + 3, width_mm - range_x - kRange_w_mm - 3,
             reading.fits ? reading.expected
                          : say("record_sheet.not_expected", {{"expected", reading.expected}}));
        rule(pen);
        block.height_mm = kRow_mm;
        blocks.push_back(std::move(block));
    }
};

std::string when_of(const Story& story, const Words& words) {
    return story.ended.empty()
               ? story.started
               : words("record_sheet.from_to", {{"start", story.started}, {"end", story.ended}});
}

void write_summary(SheetWriter& writer, const Story& story) {
    const Words& say = writer.say;
    std::string state =
        say("record_sheet.state", {{"state", story.outcome.empty() ? story.state : story.outcome},
                                   {"span", spoken_span(story.worked_s)}});
    if (story.passed_first_time) {
        state.append(1, ' ').append(say("record_page.first_try"));
    }
    writer.words(state, true);
    writer.words(say("record_sheet.made_with", {{"tape", story.made_with}}));
    if (story.walked) {
        writer.words(say("record_page.walked"));
    }
}

} // namespace

Outcome<std::string> record_pdf(const Story& story, Paper paper, const PrintFonts& fonts, const Words& words,
                                const std::vector<CopiedFile>& photos) {
    const Outcome<Lettering> lettering = Lettering::open(fonts);
    if (!lettering) {
        return lettering.problem();
    }
    const SheetHead head{story.title, words("record_sheet.record"), when_of(story, words)};
    const Box content = framed_page(paper, false, head, lettering.value()).content;
    SheetWriter writer{lettering.value(), words, Columns{}.width_mm(content), {}};
    write_summary(writer, story);
    writer.heading(words("record_page.steps"));
    for (const StoryStep& step : story.steps) {
        writer.step_row(step);
    }
    writer.heading(words("record_page.as_built"));
    for (const std::string& change : story.changes) {
        writer.words(change);
    }
    for (const std::string& mend : story.mends) {
        writer.words(mend);
    }
    if (story.changes.empty() && story.mends.empty()) {
        writer.words(words("record_page.as_planned"));
    }
    if (!story.notes.empty()) {
        writer.heading(words("record_page.notes"));
        for (const std::string& note : story.notes) {
            writer.words(note);
        }
    }
    for (const StoryStep& step : story.steps) {
        if (step.readings.empty()) {
            continue;
        }
        writer.heading(words("record_sheet.readings_of", {{"number", step.number}, {"title", step.title}}));
        for (const StoryReading& reading : step.readings) {
            writer.reading_row(reading);
        }
    }
    if (!story.photos.empty()) {
        writer.heading(words("record_page.photos"));
        for (const StoryPhoto& photo : story.photos) {
            writer.words(photo.file + ": " + photo.caption);
        }
    }
    PdfInfo info;
    info.title = words("record_sheet.title", {{"card", story.title}});
    info.subject = story.id;
    std::vector<Page> pages = flow_pages(writer.blocks, Columns{}, paper, head, lettering.value());
    const std::vector<PdfPicture> pictures =
        add_photo_pages(story, photos, paper, head, lettering.value(), words, pages);
    number_pages(pages, head, lettering.value(), words);
    return write_pdf(pages, lettering.value(), info, pictures);
}

} // namespace lanternleaf
