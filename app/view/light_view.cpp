#include "view/light_view.h"

#include "base/at.h"
#include "circuit/seen.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr std::size_t kMostCurves = 5; ///< as many as can be told apart by their dashes
constexpr double kAlike = 0.02;        ///< of the plot's height: curves this near are drawn as one

// A colour of the maker's own parts is told as the file has it.
std::string colour_text(std::string colour, const Words& words) {
    const std::string key = "light_view.colour_" + colour;
    if (words.has(key)) {
        return words(key);
    }
    std::replace(colour.begin(), colour.end(), '-', ' ');
    return colour;
}

const LedType& led_type(const LightSheet& light, int led) {
    return type_of(light.card, light.parts, led);
}

Rgb glow_of_led(const LightSheet& light, int led) {
    const LedType& type = led_type(light, led);
    return glow_of(type.colour, type.dominant_nm);
}

bool alike(const LightSheet& light, int a, int b, double within) {
    if (light.card.leds[at(a)].type != light.card.leds[at(b)].type) {
        return false;
    }
    return std::all_of(light.samples.begin(), light.samples.end(), [&](const LifeMoment& moment) {
        return std::abs(moment.lights[at(a)].seen - moment.lights[at(b)].seen) <= within;
    });
}

std::vector<std::vector<int>> groups_within(const LightSheet& light, double within) {
    std::vector<std::vector<int>> groups;
    for (int led = 0; led < static_cast<int>(light.card.leds.size()); ++led) {
        const auto group = std::find_if(groups.begin(), groups.end(), [&](const std::vector<int>& members) {
            return alike(light, members.front(), led, within);
        });
        if (group == groups.end()) {
            groups.push_back({led});
        } else {
            group->push_back(led);
        }
    }
    return groups;
}

// Coarser until few enough; lights of more than kMostCurves types keep a curve each and share dashes.
std::vector<std::vector<int>> grouped(const LightSheet& light) {
    std::vector<std::vector<int>> groups = groups_within(light, kAlike);
    for (double within = kAlike * 2; groups.size() > kMostCurves && within < 1.0; within *= 2) {
        groups = groups_within(light, within);
    }
    return groups;
}

int brightest(const LifeMoment& fresh) {
    const auto most =
        std::max_element(fresh.lights.begin(), fresh.lights.end(),
                         [](const LightMoment& a, const LightMoment& b) { return a.mcd < b.mcd; });
    return static_cast<int>(most - fresh.lights.begin());
}

std::string hours_text(double hours, int decimals, const Words& words) {
    return words.number(hours, decimals) + " h";
}

void add_lights(const LightSheet& light, const LifeMoment& moment, LightView& view, const Words& words) {
    const LifeMoment& fresh = light.samples.front();
    const double whole = seen_brightness(fresh.lights[at(brightest(fresh))].brightness);
    for (int led = 0; led < static_cast<int>(light.card.leds.size()); ++led) {
        const double seen = moment.lights[at(led)].seen;
        view.lights.push_back({light.card.leds[at(led)].id, light.card.leds[at(led)].at_mm,
                               glow_of_led(light, led), seen, std::min(1.0, seen * whole),
                               seen > 0.0 ? words.percent(seen) : words("light_view.dark")});
    }
}

void add_curves(const LightSheet& light, const LifeMoment& moment, LightView& view, const Words& words) {
    for (std::vector<int>& leds : grouped(light)) {
        LightCurve curve;
        curve.ids = ids_text(light.card, leds);
        const int first = leds.front();
        curve.what = colour_text(led_type(light, first).colour, words);
        curve.glow = glow_of_led(light, first);
        curve.dash = static_cast<int>(view.curves.size());
        curve.now = moment.lights[at(first)].seen;
        for (const LifeMoment& sample : light.samples) {
            curve.seen.push_back(sample.lights[at(first)].seen);
        }
        curve.leds = std::move(leds);
        view.curves.push_back(std::move(curve));
    }
}

void add_figures(const LightSheet& light, const LifeMoment& moment, LightView& view, const Words& words) {
    const RunChoice choice{light.use, false, std::nullopt};
    const double most_h = light.life.options.most_h;
    const HourRange dim = range_of(light.life, choice, Mark::plainly_dim);
    const HourRange dark = range_of(light.life, choice, Mark::dark);
    view.figure = hour_range_text(dim, most_h, words);
    view.figure_words = words("light_view.figure");
    view.counts.push_back(words("light_view.first_dark", {{"hours", hour_range_text(dark, most_h, words)}}));
    if (light.use == Use::press && std::isfinite(dim.low_h)) {
        const double left = presses_of(light.life.options, std::fmax(0.0, dim.low_h - light.hours));
        view.counts.push_back(
            words("light_view.presses_left",
                  {{"count", about_count(left)}, {"seconds", words.number(light.life.options.press_s, 0)}}));
    }
    view.counts.push_back(words("light_view.cell_gives", {{"current", words.mA(moment.cell_mA)},
                                                          {"volts", words.volts(moment.cell_V)}}));
}

void add_notes(const LightSheet& light, LightView& view, const Words& words) {
    std::vector<std::string> makers;
    for (int maker = 0; maker < cell_maker_count(); ++maker) {
        makers.emplace_back(cell_maker_name(maker));
    }
    view.notes.push_back(
        words(light.use == Use::press ? "light_view.note_pressed" : "light_view.note_left_on",
              {{"makers", words.list(makers)}, {"celsius", words.number(light.life.options.celsius, 0)}}));
    if (light.life.estimate) {
        view.notes.push_back(words("light_view.note_estimate"));
    }
    if (light.life.phases > 0) {
        view.notes.push_back(words("light_view.note_changing"));
    }
    if (const std::vector<int> dark = dark_from_start(light.life); !dark.empty()) {
        view.notes.push_back(
            words("light_view.note_dark", {{"lights", ids_text(light.card, dark)}, {"n", dark.size()}}));
    }
    for (const ReversedLight& reversed : light.life.reversed) {
        if (reversed.beyond()) {
            view.notes.push_back(
                words("light_view.note_reversed", {{"light", light.card.leds[at(reversed.led)].id},
                                                   {"volts", words.volts(reversed.volts)}}));
        }
    }
    if (!light.life.solved) {
        view.notes.push_back(words("light_view.note_unsettled"));
    }
}

} // namespace

std::string ids_text(const Card& card, const std::vector<int>& leds) {
    std::string text;
    for (std::size_t i = 0; i < leds.size();) {
        std::size_t last = i;
        while (last + 1 < leds.size() && leds[last + 1] == leds[last] + 1) {
            ++last;
        }
        const bool joined = last - i >= 2;
        text += text.empty() ? "" : " ";
        text += card.leds[at(leds[i])].id;
        if (joined) {
            text += "–" + card.leds[at(leds[last])].id;
        }
        i = joined ? last + 1 : i + 1;
    }
    return text;
}

std::string hour_range_text(HourRange range, double most_h, const Words& words) {
    if (!std::isfinite(range.low_h)) {
        return words("light_view.more_than", {{"hours", words.hours(most_h)}});
    }
    const std::string low = words.hours(range.low_h);
    if (!std::isfinite(range.high_h)) {
        return words("light_view.or_more", {{"hours", low}});
    }
    const std::string high = words.hours(range.high_h);
    if (range.low_h < 1.0) {
        return low == high ? low : words("light_view.from_to", {{"low", low}, {"high", high}});
    }
    return low == high ? low : low.substr(0, low.find(' ')) + "–" + high;
}

std::string about_count(double count) {
    const double unit = count >= 10.0 ? std::pow(10.0, std::floor(std::log10(count)) - 1.0) : 1.0;
    const std::string digits = std::to_string(std::llround(std::floor(count / unit) * unit));
    std::string text;
    for (std::size_t i = 0; i < digits.size(); ++i) {
        if (i > 0 && (digits.size() - i) % 3 == 0) {
            text.push_back(' ');
        }
        text.push_back(digits[i]);
    }
    return text;
}

LightView make_light_view(const LightSheet& light, const Words& words) {
    LightView view;
    view.title = light.card.title;
    if (light.samples.empty()) {
        view.trouble = words(light.life.shorted ? "light_view.shorted" : "light_view.nothing_lights");
        return view;
    }
    LifeMoment moment;
    moment_at(light.life, light.life.typical(light.use, light.maker), light.card, light.parts, light.hours,
              moment);
    add_lights(light, moment, view, words);
    add_curves(light, moment, view, words);
    view.plot_words =
        words("light_view.plot", {{"light", light.card.leds[at(brightest(light.samples.front()))].id}});
    const std::string hours = hours_text(light.hours, 1, words);
    view.after =
        light.hours <= 0.0 ? words("light_view.after_none") : words("light_view.after", {{"hours", hours}});
    view.at_head =
        light.hours <= 0.0 ? words("light_view.head_fresh") : words("light_view.head", {{"hours", hours}});
    view.most_h = light.most_h;
    for (double tick_h = 0.0; tick_h <= light.most_h + 1e-6; tick_h += light.tick_h) {
        view.ticks.emplace_back(tick_h, hours_text(tick_h, 0, words));
    }
    add_figures(light, moment, view, words);
    for (const Help& help : light.helps) {
        view.helps.push_back(help.sentence);
    }
    add_notes(light, view, words);
    return view;
}

} // namespace lanternleaf
