#include "verbs/life_report.h"

#include "colour/glow.h"
#include "life/evenness.h"
#include "verbs/json_figure.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace lanternleaf {

namespace {

using Json = nlohmann::ordered_json;

const char* name_of(Use use) {
    return use == Use::press ? "press" : "left_on";
}

Json range_json(HourRange range) {
    return Json::array({json_figure(range.low_h), json_figure(range.high_h)});
}

Json marks_json(const Life& life, RunChoice choice, int led) {
    const auto three = [&]() -> Json {
        return {{"dimmer", range_json(range_of(life, choice, Mark::dimmer, led))},
                {"plainly_dim", range_json(range_of(life, choice, Mark::plainly_dim, led))},
                {"dark", range_json(range_of(life, choice, Mark::dark, led))}};
    };
    Json json = three();
    if (!choice.phase) {
        choice.whole_band = true;
        json["band"] = three();
    }
    return json;
}

Json ids_json(const Card& card, const std::vector<int>& leds) {
    Json ids = Json::array();
    for (const int led : leds) {
        ids.push_back(card.leds[static_cast<std::size_t>(led)].id);
    }
    return ids;
}

Json figures_json(const std::vector<double>& values) {
    Json list = Json::array();
    for (const double value : values) {
        list.push_back(json_figure(value));
    }
    return list;
}

Json leds_json(const LifeFacts& facts, const LifeMoment& fresh) {
    std::vector<double> mcd;
    for (const LightMoment& light : fresh.lights) {
        mcd.push_back(light.mcd);
    }
    const std::vector<NeighbourLight> even = evenness_of(facts.card, mcd);
    Json leds = Json::array();
    for (std::size_t i = 0; i < facts.card.leds.size(); ++i) {
        const int led = static_cast<int>(i);
        const LedType& type = type_of(facts.card, facts.parts, led);
        Json json = {{"id", facts.card.leds[i].id},
                     {"colour", hex_of(glow_of(type.colour, type.dominant_nm))},
                     {"fresh_mA", json_figure(fresh.lights[i].mA)},
                     {"brightness", json_figure(fresh.lights[i].brightness)},
                     {"seen", json_figure(fresh.lights[i].seen)}};
        if (even[i].neighbour >= 0) {
            json["neighbour"] = facts.card.leds[static_cast<std::size_t>(even[i].neighbour)].id;
            json["ratio"] = json_figure(even[i].ratio);
            json["likeness"] = name_of(even[i].likeness);
        }
        json["dark_from_start"] = facts.life.typical(Use::press, 0).marks[i].back() <= 0.0;
        json["press"] = marks_json(facts.life, {Use::press, false, {}}, led);
        json["left_on"] = marks_json(facts.life, {Use::left_on, false, {}}, led);
        leds.push_back(std::move(json));
    }
    return leds;
}

Json phases_json(const LifeFacts& facts) {
    Json phases = Json::array();
    for (const LifeRun& run : facts.life.runs) {
        const int phase = facts.life.lines[static_cast<std::size_t>(run.line)].condition().phase;
        if (phase < 0 || run.use != Use::press || run.maker != 0) {
            continue;
        }
        LifeMoment fresh;
        moment_at(facts.life, run, facts.card, facts.parts, 0.0, fresh);
        Json colours = Json::array();
        for (std::size_t i = 0; i < facts.card.leds.size(); ++i) {
            const LedType& type = type_of(facts.card, facts.parts, static_cast<int>(i));
            const LedPhase* const shown = phase_of(type, phase);
            if (shown != nullptr && (colours.empty() || colours.back() != shown->colour)) {
                colours.push_back(shown->colour);
            }
        }
        phases.push_back({{"phase", phase},
                          {"colours", colours},
                          {"cell_mA", json_figure(fresh.cell_mA)},
                          {"press", marks_json(facts.life, {Use::press, false, phase}, -1)},
                          {"left_on", marks_json(facts.life, {Use::left_on, false, phase}, -1)}});
    }
    return phases;
}

Json curves_json(const LifeFacts& facts) {
    Json curves = Json::array();
    LifeMoment moment;
    for (const LifeRun& run : facts.life.runs) {
        if (run.line != 0) {
            continue;
        }
        Json hours = Json::array();
        Json volts = Json::array();
        Json amps = Json::array();
        std::vector<Json> seen(facts.card.leds.size(), Json::array());
        for (const double at_h : curve_hours(facts.shown_h)) {
            moment_at(facts.life, run, facts.card, facts.parts, at_h, moment);
            hours.push_back(json_figure(at_h));
            volts.push_back(json_figure(moment.cell_V));
            amps.push_back(json_figure(moment.cell_mA));
            for (std::size_t i = 0; i < seen.size(); ++i) {
                seen[i].push_back(json_figure(moment.lights[i].seen));
            }
        }
        Json by_led = Json::object();
        for (std::size_t i = 0; i < seen.size(); ++i) {
            by_led[facts.card.leds[i].id] = std::move(seen[i]);
        }
        curves.push_back({{"maker", cell_maker_name(run.maker)},
                          {"use", name_of(run.use)},
                          {"hours", hours},
                          {"cell_V", volts},
                          {"cell_mA", amps},
                          {"seen", by_led}});
    }
    return curves;
}

Json closing_json(const Closing& closing) {
    Json letters = Json::array();
    for (const LetterFit& fit : closing.letters) {
        letters.push_back({{"post", fit.letter->post},
                           {"name", fit.letter->name},
                           {"fits", fit.fits},
                           {"why_not", fit.why_not},
                           {"as_of", fit.letter->as_of}});
    }
    return {{"closed_mm", json_figure(closing.closed_mm)},
            {"holder_mm", json_figure(closing.holder_mm)},
            {"foam_mm", json_figure(closing.foam_mm)},
            {"foam_window_mm",
             Json::array({json_figure(closing.foam_low_mm), json_figure(closing.foam_high_mm)})},
            {"risk", name_of(closing.risk)},
            {"letters", letters},
            {"advice", closing.advice}};
}

Json help_json(const Card& card, const Help& help) {
    return {{"kind", name_of(help.kind)},
            {"leds", ids_json(card, help.leds)},
            {"type", help.type},
            {"ohm", json_figure(help.ohm)},
            {"before_h", json_figure(help.before_h)},
            {"after_h", json_figure(help.after_h)},
            {"before_ratio", json_figure(help.before_ratio)},
            {"after_ratio", json_figure(help.after_ratio)},
            {"fresh_seen", json_figure(help.fresh_seen)},
            {"estimate", help.estimate},
            {"text", help.sentence}};
}

} // namespace

std::vector<double> curve_hours(double shown_h) {
    std::vector<double> hours = {0.0};
    for (const double early : {0.05, 0.1, 0.2, 0.35, 0.5, 0.75}) {
        if (early < shown_h / 40.0) {
            hours.push_back(early);
        }
    }
    for (int i = 1; i <= 40; ++i) {
        hours.push_back(shown_h * i / 40.0);
    }
    return hours;
}

std::string life_json(const LifeFacts& facts) {
    const Life& life = facts.life;
    Json json = {{"title", facts.card.title},
                 {"temperature_C", json_figure(life.options.celsius)},
                 {"stored_years", json_figure(life.options.stored_years)},
                 {"use", name_of(facts.use)},
                 {"shorted", life.shorted},
                 {"solved", life.solved},
                 {"estimate", life.estimate}};
    json["makers"] = Json::array();
    for (int maker = 0; maker < cell_maker_count(); ++maker) {
        json["makers"].push_back(cell_maker_name(maker));
    }
    if (!life.runs.empty()) {
        LifeMoment fresh;
        moment_at(life, life.typical(Use::press, 0), facts.card, facts.parts, 0.0, fresh);
        json["cell"] = {{"type", facts.card.cell.type},
                        {"count", facts.card.cell.count},
                        {"fresh_mA", json_figure(fresh.cell_mA)},
                        {"fresh_V", json_figure(fresh.cell_V)},
                        {"stored_loss", json_figure(life.stored_loss)}};
        json["press"] = marks_json(life, {Use::press, false, {}}, -1);
        json["left_on"] = marks_json(life, {Use::left_on, false, {}}, -1);
        json["press_s"] = json_figure(life.options.press_s);
        const auto presses = [&](Mark mark) {
            const HourRange range = range_of(life, {Use::press, false, {}}, mark);
            return Json::array({json_figure(std::floor(presses_of(life.options, range.low_h))),
                                json_figure(std::floor(presses_of(life.options, range.high_h)))});
        };
        json["presses"] = {{"plainly_dim", presses(Mark::plainly_dim)}, {"dark", presses(Mark::dark)}};
        json["leds"] = leds_json(facts, fresh);
        json["phases"] = phases_json(facts);
        json["reversed"] = Json::array();
        for (const ReversedLight& light : life.reversed) {
            json["reversed"].push_back({{"id", facts.card.leds[static_cast<std::size_t>(light.led)].id},
                                        {"volts", json_figure(light.volts)},
                                        {"max_V", json_figure(light.max_V)},
                                        {"beyond", light.beyond()}});
        }
        json["curves"] = curves_json(facts);
    }
    json["resistors"] = Json::array();
    for (const ResistorSuggestion& one : facts.resistors) {
        json["resistors"].push_back({{"leds", ids_json(facts.card, one.leds)},
                                     {"ohm", json_figure(one.ohm)},
                                     {"before_mA", figures_json(one.before_mA)},
                                     {"after_mA", figures_json(one.after_mA)},
                                     {"text", one.sentence}});
    }
    json["helps"] = Json::array();
    for (const Help& help : facts.helps) {
        json["helps"].push_back(help_json(facts.card, help));
    }
    json["closing"] = closing_json(facts.closing);
    return json_text(json);
}

} // namespace lanternleaf
