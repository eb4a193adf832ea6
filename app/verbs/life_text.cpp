// The `life` verb's table for people, and its CSV.
#include "base/readout.h"
#include "life/evenness.h"
#include "verbs/life_report.h"
#include "verbs/plain_text.h"

#include <cmath>
#include <cstdio>

namespace lanternleaf {

namespace {

std::string hours_words(HourRange range, double most_h) {
    if (std::isinf(range.low_h)) {
        return "over " + readout_hours(most_h);
    }
    if (range.high_h <= 0.0) {
        return "at once";
    }
    const std::string low = readout_hours(range.low_h);
    const std::string high =
        std::isinf(range.high_h) ? "over " + readout_hours(most_h) : readout_hours(range.high_h);
    return low == high ? low : std::string(low).append(" to ").append(high);
}

std::string presses_words(const LifeOptions& options, HourRange range) {
    const auto rounded = [&](double hours) { // two figures: more would be false
        const double presses = presses_of(options, hours);
        const double unit = presses >= 10.0 ? std::pow(10.0, std::floor(std::log10(presses)) - 1.0) : 1.0;
        return readout_number(std::floor(presses / unit) * unit, 0);
    };
    if (std::isinf(range.low_h) || std::isinf(range.high_h)) {
        return "more than " + rounded(std::isinf(range.low_h) ? options.most_h : range.low_h);
    }
    const std::string low = rounded(range.low_h);
    const std::string high = rounded(range.high_h);
    return low == high ? low : std::string(low).append(" to ").append(high);
}

std::string lights_table(const LifeFacts& facts) {
    LifeMoment fresh;
    moment_at(facts.life, facts.life.typical(Use::press, 0), facts.card, facts.parts, 0.0, fresh);
    std::vector<double> mcd;
    for (const LightMoment& light : fresh.lights) {
        mcd.push_back(light.mcd);
    }
    const std::vector<NeighbourLight> even = evenness_of(facts.card, mcd);
    std::vector<std::vector<std::string>> rows = {
        {"", "fresh", "looks", "beside", "plainly dim after", "dark after"}};
    for (std::size_t i = 0; i < facts.card.leds.size(); ++i) {
        const int led = static_cast<int>(i);
        const RunChoice choice{facts.use, false, {}};
        std::string beside = "alone";
        if (even[i].neighbour >= 0) {
            beside = facts.card.leds[static_cast<std::size_t>(even[i].neighbour)].id + ": " +
                     name_of(even[i].likeness);
        }
        rows.push_back(
            {printable(facts.card.leds[i].id), readout_mA(fresh.lights[i].mA),
             readout_percent(fresh.lights[i].seen), printable(beside),
             hours_words(range_of(facts.life, choice, Mark::plainly_dim, led), facts.life.options.most_h),
             hours_words(range_of(facts.life, choice, Mark::dark, led), facts.life.options.most_h)});
    }
    return columns(rows, "  ");
}

std::string spans_text(const LifeFacts& facts) {
    const Life& life = facts.life;
    const double most_h = life.options.most_h;
    std::vector<std::vector<std::string>> rows = {
        {"", "plainly dim", "with any LED of its kind", "first one dark"}};
    for (const Use use : {Use::press, Use::left_on}) {
        const RunChoice typical{use, false, {}};
        const RunChoice band{use, true, {}};
        rows.push_back({use == Use::press ? "in presses" : "left on",
                        hours_words(range_of(life, typical, Mark::plainly_dim), most_h),
                        hours_words(range_of(life, band, Mark::plainly_dim), most_h),
                        hours_words(range_of(life, typical, Mark::dark), most_h)});
    }
    std::string text = columns(rows, "  ");
    const HourRange dim = range_of(life, {Use::press, false, {}}, Mark::plainly_dim);
    text += "  Presses of " + readout_number(life.options.press_s, 1) +
            " s until plainly dim: " + presses_words(life.options, dim) + "\n" +
            "  On the shelf a cell loses about 1 % of its charge a year, at worst 3 %\n";
    for (int phase = 0; phase < life.phases && life.options.with_phases; ++phase) {
        text += "  Self-cycling lights, colour " + std::to_string(phase + 1) + ": plainly dim after " +
                hours_words(range_of(life, {facts.use, false, phase}, Mark::plainly_dim), most_h) + "\n";
    }
    return text;
}

std::string closing_text(const Closing& closing) {
    std::string text = "Closed\n  " + readout_mm(closing.closed_mm) + " thick; holder and cell " +
                       readout_number(closing.holder_mm, 2) + " mm, foam " +
                       readout_number(closing.foam_mm, 2) + " mm, right from " +
                       readout_number(closing.foam_low_mm, 2) + " to " +
                       readout_number(closing.foam_high_mm, 2) + " mm\n";
    std::vector<std::vector<std::string>> rows;
    for (const LetterFit& fit : closing.letters) {
        rows.push_back(
            {fit.letter->post, fit.letter->name, fit.fits ? "fits, if the weight does" : fit.why_not});
    }
    text += columns(rows, "  ");
    text += "  Sizes as of: " + std::string(closing.letters.front().letter->as_of) +
            "; the others as read in November 2026 or from memory\n";
    for (const std::string& line : closing.advice) {
        text += "  " + line + "\n";
    }
    return text;
}

std::string csv_field(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) {
        return text;
    }
    std::string quoted(1, '"');
    for (const char c : text) {
        quoted.append(c == '"' ? 2 : 1, c);
    }
    return quoted.append(1, '"');
}

std::string csv_number(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.6g", value);
    return text;
}

} // namespace

std::string life_text(const LifeFacts& facts) {
    const Life& life = facts.life;
    std::string text = printable(facts.card.title) + "\n\n";
    if (life.shorted) {
        text +=
            "The cell's two faces are joined: there is no light, and the cell runs flat. See `check`.\n\n";
    } else {
        if (!life.solved) {
            text += "The circuit could not be solved everywhere; these figures are not to be relied on.\n\n";
        }
        text += "Lights (" + std::string(facts.use == Use::press ? "pressed" : "left on") + ", " +
                readout_number(life.options.celsius, 0) + " °C; ranges: cells of two makers)\n" +
                lights_table(facts) + "\nHours of light until the first light is\n" + spans_text(facts);
        text += life.estimate ? "  Estimate: the cell's figures are scaled from the CR2032's\n" : "";
        for (const ReversedLight& light : life.reversed) {
            text += "  " + printable(facts.card.leds[static_cast<std::size_t>(light.led)].id) +
                    " stands the wrong way round: " + readout_volts(light.volts) + " against it, limit " +
                    readout_volts(light.max_V) + (light.beyond() ? "; it may be damaged\n" : "\n");
        }
        text += "\n";
    }
    for (const ResistorSuggestion& one : facts.resistors) {
        text += "One colour starves another\n  " + printable(one.sentence) + "\n\n";
    }
    if (!facts.helps.empty()) {
        text += "What would help most\n";
        for (const Help& help : facts.helps) {
            text += "  " + printable(help.sentence) + "\n";
        }
        text += "\n";
    }
    return text + closing_text(facts.closing);
}

std::string life_csv(const LifeFacts& facts) {
    std::string text = "maker,use,hours,presses,drawn_mAh,cell_V,cell_mA";
    const auto add = [&text](const std::string& field) { text.append(1, ',').append(field); };
    for (const Led& led : facts.card.leds) {
        add(csv_field(std::string(led.id).append(" mA")));
        add(csv_field(std::string(led.id).append(" seen")));
    }
    text.append(1, '\n');
    LifeMoment moment;
    for (const LifeRun& run : facts.life.runs) {
        if (run.line != 0) {
            continue;
        }
        for (const double hours : curve_hours(facts.shown_h)) {
            moment_at(facts.life, run, facts.card, facts.parts, hours, moment);
            text.append(csv_field(cell_maker_name(run.maker)));
            add(run.use == Use::press ? "press" : "left_on");
            add(csv_number(hours));
            add(run.use == Use::press ? csv_number(presses_of(facts.life.options, hours)) : "");
            add(csv_number(moment.drawn_mAh));
            add(csv_number(moment.cell_V));
            add(csv_number(moment.cell_mA));
            for (const LightMoment& light : moment.lights) {
                add(csv_number(light.mA));
                add(csv_number(light.seen));
            }
            text.append(1, '\n');
        }
    }
    return text;
}

} // namespace lanternleaf
