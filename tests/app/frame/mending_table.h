// A table at which something is wrong: the lights as a card with this fault would show them, and answers by
// touch as that card would give them.
#pragma once

#include "table.h"

#include "findings/review.h"
#include "guide/change.h"

#include <algorithm>

namespace lanternleaf {

inline constexpr Size kSizes[] = {{1180, 820}, {820, 1180}, {390, 844}};

inline const MendState& mend_of(const Table& table) {
    REQUIRE(table.app.state.mend.has_value());
    return *table.app.state.mend;
}

/// Step 6 with everything placed, then "A light stays dark or dim" and the cell felt.
inline void open_mend_at_lights(Table& table, const char* card = "harbour-lighthouse") {
    table.start(card);
    table.tap("audience/way/go-on");
    table.build_to(6);
    while (table.build().face == MakeFace::move) {
        table.one_move();
    }
    table.tap("make/wrong");
    table.reach("wrong/rows", "wrong/mend");
    REQUIRE(table.app.state.place == Place::mend);
    REQUIRE(table.app.state.mend.has_value());
}

/// A fault of the search's model; -1 when the card has none of that kind at that part.
inline int fault_of(const Table& table, FaultKind kind, const std::string& part, bool open = false) {
    const MendModel& model = *mend_of(table).session.model;
    for (std::size_t f = 0; f < model.faults.size(); ++f) {
        const Fault& fault = model.faults[f];
        const bool has_part = part.empty() || (fault.place >= 0 && [&] {
                                  const auto& parts =
                                      model.places[static_cast<std::size_t>(fault.place)].parts;
                                  return std::find(parts.begin(), parts.end(), part) != parts.end();
                              }());
        if (fault.kind == kind && fault.open == open && has_part) {
            return static_cast<int>(f);
        }
    }
    return -1;
}

/// The candidate tear on a strip nearest to a place.
inline int tear_near(const Table& table, const std::string& strip, Vec2 at_mm) {
    const MendModel& model = *mend_of(table).session.model;
    int best = -1;
    double least = 1e9;
    for (std::size_t f = 0; f < model.faults.size(); ++f) {
        const Fault& fault = model.faults[f];
        if (fault.kind != FaultKind::strip_broken) {
            continue;
        }
        const FaultPlace& place = model.places[static_cast<std::size_t>(fault.place)];
        if (place.parts.front() == strip && distance(place.at_mm, at_mm) < least) {
            least = distance(place.at_mm, at_mm);
            best = static_cast<int>(f);
        }
    }
    return best;
}

/// Taps every light to what this review of a changed card says it does.
inline void tap_lights(Table& table, const std::vector<Light>& lights) {
    for (const Light& light : lights) {
        const int taps = light.state == LightState::lit ? 1 : light.state == LightState::dim ? 2 : 3;
        for (int i = 0; i < taps; ++i) {
            table.tap("board/led/" +
                      table.build().record.as_built.leds[static_cast<std::size_t>(light.led)].id);
        }
    }
}

inline bool names(const Table& table, FaultKind kind, const std::string& part) {
    const Cause& first = mend_of(table).causes.front();
    return first.kind == kind && first.ids.size() == 1 &&
           (part.empty() ||
            (!first.places.empty() && std::find(first.places[0].parts.begin(), first.places[0].parts.end(),
                                                part) != first.places[0].parts.end()));
}

/// Answers by touch as the fault would until it is named with this chance; how many answers that took.
inline int answer_until_named(Table& table, int fault, double sure = 0.6, int most = 14) {
    REQUIRE(fault >= 0);
    int asked = 0;
    const std::shared_ptr<const MendModel> model = mend_of(table).session.model;
    const int cause = model->faults[static_cast<std::size_t>(fault)].cause;
    while (mend_of(table).test && asked < most) {
        const CauseChance& first = mend_of(table).chances.front();
        if (first.a == cause && first.b < 0 && first.probability >= sure) {
            break;
        }
        const MendTest* test = find_test(*model, mend_of(table).test->id);
        REQUIRE(test != nullptr);
        const Prediction truth = prediction_of(mend_of(table).session, static_cast<std::size_t>(fault),
                                               static_cast<int>(test - model->tests.data()));
        const int outcome = truth.sure_255 >= 128 ? truth.outcome : 0;
        table.reach("mend", "mend/answer/" + std::to_string(outcome));
        ++asked;
    }
    return asked;
}

/// Opens how the first cause is mended and says that it was that.
inline void mend_first(Table& table) {
    table.reach("mend", "mend/cause/A");
    table.reach("mend", "mend/found");
}

inline Lighting lights_with(const OpenBuild& build, const Change& change) {
    const Outcome<Card> card = apply_change(build.record.as_built, build.parts, change);
    REQUIRE(card.ok());
    return review(card.value(), build.parts).lighting;
}

} // namespace lanternleaf
