#include "report/record_page.h"

#include "base/readout.h"
#include "report/html.h"

namespace lanternleaf {

namespace {

void write_summary(HtmlWriter& out, const Story& story) {
    out.element("h1", story.title);
    std::string when = "Begun " + story.started;
    if (!story.ended.empty()) {
        when += ", ended ";
        when += story.ended;
    }
    when += ".";
    out.element("p", when);
    if (story.walked) {
        out.element("p", "A walk without hands: its figures are simulated, nobody measured them.");
    }
    std::string state = "State: " + story.state;
    if (!story.outcome.empty()) {
        state += ", ";
        state += story.outcome;
    }
    state += ". Time at work: ";
    state += spoken_span(story.worked_s);
    state += story.passed_first_time ? ". Every step passed at the first try." : ".";
    out.element("p", state);
    out.element("p", "Made with " + story.made_with + ". For: " + story.audience + ".");
}

void write_steps(HtmlWriter& out, const Story& story) {
    out.element("h2", "Steps");
    out.begin_table("The seven steps: how each ended and how long it took",
                    {"Step", "How it ended", "Time at work", "What was said of it"});
    for (const StoryStep& step : story.steps) {
        out.text += "<tr>";
        std::string name = std::to_string(step.number);
        name += ' ';
        name += step.title;
        out.head_cell("row", name);
        out.cell(step.state_text);
        out.cell(step.time.worked_s > 0 ? spoken_span(step.time.worked_s) : "not timed");
        out.cell(step.verdict.empty() ? "nothing" : step.verdict);
        out.line("</tr>");
    }
    out.end_table();
}

void write_readings(HtmlWriter& out, const Story& story) {
    out.element("h2", "Readings");
    bool any = false;
    for (const StoryStep& step : story.steps) {
        if (step.readings.empty()) {
            continue;
        }
        any = true;
        std::string caption = "Step " + std::to_string(step.number);
        caption += ": ";
        caption += step.title;
        out.begin_table(caption, {"Check", "Reading", "Expected", "As expected", "By"});
        for (const StoryReading& reading : step.readings) {
            out.text += "<tr>";
            out.head_cell("row", reading.title);
            out.cell(reading.value);
            out.cell(reading.expected.empty() ? "nothing stated" : reading.expected);
            out.cell(reading.fits ? "yes" : "no");
            out.cell(reading.simulated ? "simulated" : reading.by_meter ? "meter" : "eye");
            out.line("</tr>");
        }
        out.end_table();
    }
    if (!any) {
        out.element("p", "Nothing was measured.");
    }
}

void write_moves(HtmlWriter& out, const Story& story) {
    out.element("h2", "Moves");
    for (const StoryStep& step : story.steps) {
        if (step.moves.empty()) {
            continue;
        }
        std::string caption = "Step " + std::to_string(step.number);
        caption += ": moves and the time for each";
        out.begin_table(caption, {"Move", "Time at work"});
        for (const StoryMove& move : step.moves) {
            out.text += "<tr>";
            out.head_cell("row", move.title);
            out.cell(spoken_span(move.worked_s));
            out.line("</tr>");
        }
        out.end_table();
    }
}

void write_photos(HtmlWriter& out, const Story& story) {
    if (story.photos.empty()) {
        return;
    }
    out.element("h2", "Photos");
    for (const StoryPhoto& photo : story.photos) {
        std::string alt = photo.caption;
        if (photo.step != 0) {
            alt += ", step ";
            alt += std::to_string(photo.step);
        }
        out.line("<figure>");
        out.text += "<img src=\"photos/";
        out.text += html_text(photo.file);
        out.text += "\" alt=\"Photo: ";
        out.text += html_text(alt);
        out.line("\" />");
        out.element("figcaption", photo.caption);
        out.line("</figure>");
    }
}

} // namespace

std::string record_page(const Story& story) {
    HtmlWriter out;
    out.begin_page("en", story.title + ": record of a build");
    write_summary(out, story);
    write_steps(out, story);
    write_readings(out, story);
    out.element("h2", "As built");
    std::vector<std::string> lines = story.changes;
    lines.insert(lines.end(), story.mends.begin(), story.mends.end());
    if (lines.empty()) {
        lines.push_back("Built as planned.");
    }
    out.list(lines);
    if (!story.notes.empty()) {
        out.element("h2", "Notes");
        out.list(story.notes);
    }
    write_photos(out, story);
    write_moves(out, story);
    out.element("h2", "About this page");
    std::string about = "Build ";
    about += story.id;
    about +=
        ". Expected figures are computed from the card as built. This record tells what was measured and "
        "seen; it does not say that a card is safe.";
    out.element("p", about);
    out.end_page();
    return out.text;
}

} // namespace lanternleaf
