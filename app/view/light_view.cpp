#include "view/light_view.h"

#include "base/at.h"
#include "base/readout.h"
#include "circuit/seen.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr std::size_t kMostCurves = 5; ///< as many as can be told apart by their dashes
constexpr double kAlike = 0.02;        ///< of the plot's height: curves this near are drawn as one

std::string spaced(std::string name) {
    std::replace(name.begin(), name.end(), '-', ' ');
    return name;
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

std::string hours_words(double hours) {
    return hours <= 0.0 ? "no time" : readout_number(hours, 1) + " h";
}

void add_lights(const LightSheet& light, const LifeMoment& moment, LightView& view) {
    const LifeMoment& fresh = light.samples.front();
    const double whole = seen_brightness(fresh.lights[at(brightest(fresh))].brightness);
    for (int led = 0; led < static_cast<int>(light.card.leds.size()); ++led) {
        const double seen = moment.lights[at(led)].seen;
        view.lights.push_back({light.card.leds[at(led)].id, light.card.leds[at(led)].at_mm,
                               glow_of_led(light, led), seen, std::min(1.0, seen * whole),
                               seen > 0.0 ? readout_percent(seen) : "dark"});
    }
}

void add_curves(const LightSheet& light, const LifeMoment& moment, LightView& view) {
    for (std::vector<int>& leds : grouped(light)) {
        LightCurve curve;
        curve.ids = ids_text(light.card, leds);
        const int first = leds.front();
        curve.what = spaced(led_type(light, first).colour);
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

void add_figures(const LightSheet& light, const LifeMoment& moment, LightView& view) {
    const RunChoice choice{light.use, false, std::nullopt};
    const double most_h = light.life.options.most_h;
    const HourRange dim = range_of(light.life, choice, Mark::plainly_dim);
    const HourRange dark = range_of(light.life, choice, Mark::dark);
    view.figure = hour_range_text(dim, most_h);
    view.figure_words = "until the first light looks half as bright as fresh";
    view.counts.push_back("First light dark after **" + hour_range_text(dark, most_h) + "**");
    if (light.use == Use::press && std::isfinite(dim.low_h)) {
        const double left = presses_of(light.life.options, std::fmax(0.0, dim.low_h - light.hours));
        view.counts.push_back("At least **" + about_count(left) + " presses** of " +
                              readout_number(light.life.options.press_s, 0) + " s left until then");
    }
    view.counts.push_back("Cell gives **" + readout_mA(moment.cell_mA) + "** now, at **" +
                          readout_volts(moment.cell_V) + "**");
}

void add_notes(const LightSheet& light, LightView& view) {
    std::string cells = "Ranges span the cells of ";
    for (int maker = 0; maker < cell_maker_count(); ++maker) {
        cells += maker == 0 ? "" : " and ";
        cells += cell_maker_name(maker);
    }
    view.notes.push_back(cells + "; curves show the one that dims first. Typical lights at " +
                         readout_number(light.life.options.celsius, 0) + " °C, " +
                         (light.use == Use::press ? "pressed for seconds at a time." : "left on."));
    if (light.life.estimate) {
        view.notes.push_back("This cell's figures are scaled from a CR2032: an estimate.");
    }
    if (light.life.phases > 0) {
        view.notes.push_back("Lights that change colour are shown at their thirstiest colour.");
    }
    if (const std::vector<int> dark = dark_from_start(light.life); !dark.empty()) {
        view.notes.push_back(ids_text(light.card, dark) + (dark.size() == 1
                                                               ? " gives no light, even on a fresh cell."
                                                               : " give no light, even on a fresh cell."));
    }
    for (const ReversedLight& reversed : light.life.reversed) {
        if (reversed.beyond()) {
            view.notes.push_back(light.card.leds[at(reversed.led)].id + " is the wrong way round and bears " +
                                 readout_volts(reversed.volts) + ", more than its maker allows.");
        }
    }
    if (!light.life.solved) {
        view.notes.push_back("The sums for this card did not settle: do not rely on these figures.");
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

std::string hour_range_text(HourRange range, double most_h) {
    if (!std::isfinite(range.low_h)) {
        return "more than " + readout_hours(most_h);
    }
    const std::string low = readout_hours(range.low_h);
    const std::string high = std::isfinite(range.high_h) ? readout_hours(range.high_h) : "more";
    if (range.low_h < 1.0 || !std::isfinite(range.high_h)) {
        return low == high ? low : low + " to " + high;
    }
    return low == high ? low : low.substr(0, low.find(' ')) + "–" + high;
}

std::string about_count(double count) {
    const double unit = count >= 10.0 ? std::pow(10.0, std::floor(std::log10(count)) - 1.0) : 1.0;
    const std::string digits = readout_number(std::floor(count / unit) * unit, 0);
    std::string text;
    for (std::size_t i = 0; i < digits.size(); ++i) {
        if (i > 0 && (digits.size() - i) % 3 == 0) {
            text.push_back(' ');
        }
        text.push_back(digits[i]);
    }
    return text;
}

LightView make_light_view(const LightSheet& light) {
    LightView view;
    view.title = light.card.title;
    if (light.samples.empty()) {
        view.trouble = light.life.shorted
                           ? "The two faces of the cell are joined by metal: nothing lights, and the cell "
                             "would run hot. Mend that first."
                           : "Nothing on this card would light yet.";
        return view;
    }
    LifeMoment moment;
    moment_at(light.life, light.life.typical(light.use, light.maker), light.card, light.parts, light.hours,
              moment);
    add_lights(light, moment, view);
    add_curves(light, moment, view);
    view.plot_words =
        "as the eye sees it; 100 % = " + light.card.leds[at(brightest(light.samples.front()))].id +
        " on a fresh cell";
    view.after = "after **" + hours_words(light.hours) + "** of light";
    view.at_head = light.hours <= 0.0 ? "On a fresh cell" : "At " + hours_words(light.hours);
    view.most_h = light.most_h;
    for (double hours = 0.0; hours <= light.most_h + 1e-6; hours += light.tick_h) {
        view.ticks.emplace_back(hours, readout_number(hours, 0) + " h");
    }
    add_figures(light, moment, view);
    for (const Help& help : light.helps) {
        view.helps.push_back(help.sentence);
    }
    add_notes(light, view);
    return view;
}

} // namespace lanternleaf
