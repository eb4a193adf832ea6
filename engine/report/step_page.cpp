#include "report/step_page.h"

#include "report/html.h"

namespace lanternleaf {

namespace {

std::string step_name(const Step& step, const Words& words) {
    return words("step_page.step", {{"number", static_cast<int>(step.id)}, {"title", step.title}});
}

void write_contents(HtmlWriter& out, const std::vector<Step>& steps, const Words& words) {
    out.line("<nav aria-label=\"" + html_text(words("step_page.contents")) + "\">\n<ol>");
    for (const Step& step : steps) {
        const std::string number = std::to_string(static_cast<int>(step.id));
        out.line("<li><a href=\"#step-" + number + "\">" + html_text(step.title) + "</a></li>");
    }
    out.line("</ol>\n</nav>");
}

// The cautions in full, here and not behind a link: a page is read from its top.
void write_cautions(HtmlWriter& out, const Words& words) {
    out.element("h2", words("step_page.cautions"));
    out.list({words("step_page.caution_adult"), words("step_page.caution_swallowed"),
              words("step_page.caution_small"), words("step_page.caution_heat"),
              words("step_page.caution_old"), words("step_page.caution_rules")});
}

void write_check(HtmlWriter& out, const Check& check, const Words& words) {
    out.element("dt", words("step_page.check", {{"what", check.title}}));
    out.element("dd", words("step_page.expect", {{"reading", check.expect_text}}));
    for (const LightExpectation& light : check.lights) {
        out.element("dd", words("step_page.light",
                                {{"led", light.led}, {"state", words("step_page.state_" + light.state)}}));
    }
    if (!check.without_meter.empty()) {
        out.element("dd", words("step_page.without_meter", {{"look", check.without_meter}}));
    }
}

void write_move(HtmlWriter& out, const Move& move, const Words& words) {
    out.line("<li>");
    out.element("h3", move.title);
    if (move.adult_only) {
        out.element("p", words("step_page.adult_move"));
    }
    out.element("p", move.sentence);
    if (!move.why.empty()) {
        out.element("p", words("step_page.why", {{"reason", move.why}}));
    }
    if (move.check) {
        out.line("<dl>");
        write_check(out, *move.check, words);
        out.line("</dl>");
    }
    out.line("</li>");
}

void write_step(HtmlWriter& out, const Step& step, const Words& words) {
    const std::string id = "step-" + std::to_string(static_cast<int>(step.id));
    out.line("<section aria-labelledby=\"" + id + "\">");
    out.line("<h2 id=\"" + id + "\">" + html_text(step_name(step, words)) + "</h2>");
    if (!step.goal.empty()) {
        out.element("p", step.goal);
    }
    if (step.moves.empty()) {
        out.element("p", words("step_page.no_moves"));
    } else {
        out.line("<ol>");
        for (const Move& move : step.moves) {
            write_move(out, move, words);
        }
        out.line("</ol>");
    }
    if (!step.proof.empty()) {
        out.element("h3", words("step_page.proof"));
        out.line("<dl>");
        for (const Check& check : step.proof) {
            write_check(out, check, words);
        }
        out.line("</dl>");
    }
    out.line("</section>");
}

} // namespace

std::string step_page(const Card& card, const std::vector<Step>& steps, const Words& words) {
    HtmlWriter out;
    out.begin_page(words.language(), words("step_page.title", {{"card", card.title}}));
    out.element("h1", words("step_page.title", {{"card", card.title}}));
    out.element("p", words("step_page.sheet", {{"width", words.mm(card.sheet.width_mm)},
                                               {"height", words.mm(card.sheet.height_mm)},
                                               {"n", card.leds.size()}}));
    out.element("p", words("step_page.places"));
    write_contents(out, steps, words);
    write_cautions(out, words);
    for (const Step& step : steps) {
        write_step(out, step, words);
    }
    out.element("p", words("step_page.not_safe"));
    out.end_page();
    return out.text;
}

} // namespace lanternleaf
