#include "report/record_page.h"

#include "report/html.h"

namespace lanternleaf {

namespace {

std::string span_of(const Story& story) {
    return spoken_span(story.worked_s);
}

void write_summary(HtmlWriter& out, const Story& story, const Words& words) {
    out.element("h1", story.title);
    out.element("p", story.ended.empty() ? words("record_page.begun", {{"start", story.started}})
                                         : words("record_page.begun_ended",
                                                 {{"start", story.started}, {"end", story.ended}}));
    if (story.walked) {
        out.element("p", words("record_page.walked"));
    }
    std::string state =
        story.outcome.empty()
            ? words("record_page.state", {{"state", story.state}, {"span", span_of(story)}})
            : words("record_page.state_outcome",
                    {{"state", story.state}, {"outcome", story.outcome}, {"span", span_of(story)}});
    if (story.passed_first_time) {
        state.append(1, ' ').append(words("record_page.first_try"));
    }
    out.element("p", state);
    out.element("p", words("record_page.made_with", {{"tape", story.made_with}, {"who", story.audience}}));
}

void write_steps(HtmlWriter& out, const Story& story, const Words& words) {
    out.element("h2", words("record_page.steps"));
    out.begin_table(words("record_page.steps_table"),
                    {words("record_page.step"), words("record_page.how_ended"),
                     words("record_page.time_at_work"), words("record_page.said_of_it")});
    for (const StoryStep& step : story.steps) {
        out.text += "<tr>";
        std::string name = std::to_string(step.number);
        name += ' ';
        name += step.title;
        out.head_cell("row", name);
        out.cell(step.state_text);
        out.cell(step.time.worked_s > 0 ? spoken_span(step.time.worked_s) : words("record_page.not_timed"));
        out.cell(step.verdict.empty() ? words("record_page.nothing_said") : step.verdict);
        out.line("</tr>");
    }
    out.end_table();
}

void write_readings(HtmlWriter& out, const Story& story, const Words& words) {
    out.element("h2", words("record_page.readings"));
    bool any = false;
    for (const StoryStep& step : story.steps) {
        if (step.readings.empty()) {
            continue;
        }
        any = true;
        out.begin_table(words("record_page.readings_of", {{"number", step.number}, {"title", step.title}}),
                        {words("record_page.check"), words("record_page.reading"),
                         words("record_page.expected"), words("record_page.as_expected"),
                         words("record_page.by")});
        for (const StoryReading& reading : step.readings) {
            out.text += "<tr>";
            out.head_cell("row", reading.title);
            out.cell(reading.value);
            out.cell(reading.expected.empty() ? words("record_page.nothing_stated") : reading.expected);
            out.cell(words(reading.fits ? "record_page.yes" : "record_page.no"));
            out.cell(words(reading.simulated  ? "record_page.by_nobody"
                           : reading.by_meter ? "record_page.by_meter"
                                              : "record_page.by_eye"));
            out.line("</tr>");
        }
        out.end_table();
    }
    if (!any) {
        out.element("p", words("record_page.no_readings"));
    }
}

void write_moves(HtmlWriter& out, const Story& story, const Words& words) {
    out.element("h2", words("record_page.moves"));
    for (const StoryStep& step : story.steps) {
        if (step.moves.empty()) {
            continue;
        }
        out.begin_table(words("record_page.moves_of", {{"number", step.number}}),
                        {words("record_page.move"), words("record_page.time_at_work")});
        for (const StoryMove& move : step.moves) {
            out.text += "<tr>";
            out.head_cell("row", move.title);
            out.cell(spoken_span(move.worked_s));
            out.line("</tr>");
        }
        out.end_table();
    }
}

void write_photos(HtmlWriter& out, const Story& story, const Words& words) {
    if (story.photos.empty()) {
        return;
    }
    out.element("h2", words("record_page.photos"));
    for (const StoryPhoto& photo : story.photos) {
        const std::string alt = photo.step == 0 ? words("record_page.photo", {{"caption", photo.caption}})
                                                : words("record_page.photo_of_step",
                                                        {{"caption", photo.caption}, {"number", photo.step}});
        out.line("<figure>");
        out.text += "<img src=\"photos/";
        out.text += html_text(photo.file);
        out.text += "\" alt=\"";
        out.text += html_text(alt);
        out.line("\" />");
        out.element("figcaption", photo.caption);
        out.line("</figure>");
    }
}

} // namespace

std::string record_page(const Story& story, const Words& words) {
    HtmlWriter out;
    out.begin_page(words.language(), words("record_page.title", {{"card", story.title}}));
    write_summary(out, story, words);
    write_steps(out, story, words);
    write_readings(out, story, words);
    out.element("h2", words("record_page.as_built"));
    std::vector<std::string> lines = story.changes;
    lines.insert(lines.end(), story.mends.begin(), story.mends.end());
    if (lines.empty()) {
        lines.push_back(words("record_page.as_planned"));
    }
    out.list(lines);
    if (!story.notes.empty()) {
        out.element("h2", words("record_page.notes"));
        out.list(story.notes);
    }
    write_photos(out, story, words);
    write_moves(out, story, words);
    out.element("h2", words("record_page.about"));
    out.element("p", words("record_page.about_build", {{"build", story.id}}));
    out.end_page();
    return out.text;
}

} // namespace lanternleaf
