// The Light sheet: whose card it shows, its life worked out once, and where the slider stands.
#include "model/update_parts.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr int kTicks = 5; ///< at most so many steps under the slider

std::optional<LightSheet> card_at_hand(const AppState& state, const Surroundings& around) {
    LightSheet light;
    if (state.place == Place::draw && state.draw) {
        light.card = state.draw->card;
        light.parts = state.draw->parts;
        light.card_folder = state.draw->card_folder;
        const auto shelf = std::find_if(state.cards.begin(), state.cards.end(),
                                        [&](const ShelfCard& card) { return card.path == state.draw->path; });
        light.picture = shelf == state.cards.end() ? "" : shelf->picture;
    } else if (state.place == Place::log && state.log) {
        light.card = state.log->as_built;
        light.parts = merged(around.shipped, light.card.own_parts);
        light.card_folder = state.log_shelf.card_folder;
        light.picture = state.log_shelf.picture;
    } else if (state.build) {
        light.card = state.build->record.as_built;
        light.parts = state.build->parts;
        light.card_folder = state.build->shelf.card_folder;
        light.picture = state.build->shelf.picture;
    } else {
        return std::nullopt;
    }
    return light;
}

// The slider ends at a whole number of ticks, a fifth after the last light is plainly dim with the better
// cell.
void find_span(LightSheet& light) {
    double last_h = 0.0;
    for (int maker = 0; maker < cell_maker_count(); ++maker) {
        for (const MarkHours& marks : light.life.typical(light.use, maker).marks) {
            const double hours = marks[static_cast<std::size_t>(Mark::plainly_dim)];
            if (std::isfinite(hours)) {
                last_h = std::fmax(last_h, hours);
            }
        }
    }
    last_h = std::fmax(last_h * 1.2, 4.0);
    for (const double tick_h : {1.0, 2.0, 4.0, 8.0, 16.0, 24.0, 48.0, 96.0, 240.0, 480.0, 1000.0}) {
        light.tick_h = tick_h;
        light.most_h = std::ceil(last_h / tick_h) * tick_h;
        if (light.most_h <= kTicks * tick_h) {
            break;
        }
    }
}

// The cell with which a light is plainly dim first.
int first_to_dim(const LightSheet& light) {
    int first = 0;
    double least_h = kNever_h;
    for (int maker = 0; maker < cell_maker_count(); ++maker) {
        for (const MarkHours& marks : light.life.typical(light.use, maker).marks) {
            const double hours = marks[static_cast<std::size_t>(Mark::plainly_dim)];
            if (hours > 0.0 && hours < least_h) {
                least_h = hours;
                first = maker;
            }
        }
    }
    return first;
}

} // namespace

void open_light(AppState& state, const Surroundings& around) {
    std::optional<LightSheet> light = card_at_hand(state, around);
    if (!light) {
        say(state, around, around.words("model.open_card_first"));
        return;
    }
    light->conductors = find_conductors(light->card, light->parts);
    light->use =
        light->parts.holders.at(light->card.holder.type).kind == HolderKind::flap ? Use::press : Use::left_on;
    light->life = live(light->card, light->parts, light->conductors);
    if (!light->life.runs.empty() && dark_from_start(light->life).size() < light->card.leds.size()) {
        light->maker = first_to_dim(*light);
        find_span(*light);
        const LifeRun& run = light->life.typical(light->use, light->maker);
        light->samples.resize(kLightSamples);
        for (int i = 0; i < kLightSamples; ++i) {
            moment_at(light->life, run, light->card, light->parts, light->most_h * i / (kLightSamples - 1),
                      light->samples[static_cast<std::size_t>(i)]);
        }
        light->helps = what_helps(light->card, light->parts, light->conductors, {}, around.words);
    }
    state.sheet = SheetKind::none;
    state.light = std::move(light);
}

void set_light_hours(AppState& state, double hours) {
    if (state.light) {
        state.light->hours = std::clamp(hours, 0.0, state.light->most_h);
    }
}

} // namespace lanternleaf
