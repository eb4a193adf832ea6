#include "routing/route.h"

#include "routing/assess.h"
#include "routing/plan.h"
#include "routing/tour.h"

#include <algorithm>
#include <optional>

namespace lanternleaf {

using namespace routing_stages;

namespace {

constexpr int kMostSuggestions = 3;
/// Tries for each suggestion, while it is not clean; fewer where each takes long.
constexpr int kTries = 6;
constexpr int kTriesOfMany = 2;
constexpr std::size_t kMany = 30;
/// One try may take this many times the first search.
constexpr long kMostWork = 4;
constexpr long kWorkOfAny = 20000; ///< and this many moves more
constexpr double kTightBend_mm = 10.0;
constexpr const char* kUsualTape = "copper-5";

bool listed(const std::vector<std::string>& ids, const std::string& id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

std::string tape_for(const RouteRequest& request) {
    if (!request.tape.empty()) {
        return request.tape;
    }
    for (const Laid& laid : request.card.laid) {
        if (const Strip* strip = std::get_if<Strip>(&laid)) {
            return strip->tape;
        }
    }
    return kUsualTape;
}

class Router {
public:
    explicit Router(const RouteRequest& request) : request_(request), kept_(request.card) {}

    RouteResult run() {
        if (!prepare()) {
            return std::move(result_);
        }
        const int wanted = std::clamp(request_.suggestions, 1, kMostSuggestions);
        for (int k = 0; k < wanted && !stop_; ++k) {
            suggest(k, wanted);
        }
        std::stable_sort(result_.suggestions.begin(), result_.suggestions.end(),
                         [](const Suggestion& a, const Suggestion& b) { return a.clean && !b.clean; });
        result_.stopped = stop_;
        if (!result_.clean() && !result_.suggestions.empty()) {
            result_.why_not = result_.suggestions.front().why_not;
            result_.move_led = result_.suggestions.front().move_led;
        }
        return std::move(result_);
    }

private:
    bool refuse(std::string why, std::string led = {}) {
        result_.why_not = std::move(why);
        result_.move_led = std::move(led);
        return false;
    }

    bool go_on() {
        if (stop_) {
            return false;
        }
        if (request_.clock_ms && request_.most_ms > 0.0 &&
            request_.clock_ms() - began_ms_ > request_.most_ms) {
            stop_ = true;
        } else if (request_.watch) {
            progress_.done = std::min(0.99, progress_.done + 0.002 * (1.0 - progress_.done));
            stop_ = !request_.watch(progress_);
        }
        return !stop_;
    }

    bool prepare() {
        began_ms_ = request_.clock_ms ? request_.clock_ms() : 0.0;
        const Card& card = request_.card;
        std::erase_if(kept_.laid, [&](const Laid& laid) { return !listed(request_.keep, id_of(laid)); });
        if (card.leds.empty()) {
            return refuse("There is no light on the card yet: place one first.");
        }
        if (card.resistors.size() > 1) {
            return refuse(
                "The card has " + std::to_string(card.resistors.size()) +
                " resistors, and which lights each belongs to cannot be told from the card: lay those "
                "traces by hand.");
        }
        std::vector<int> leds;
        std::vector<Convex> others;
        sort_leds(leds, others);
        if (leds.empty()) {
            return refuse("Every light is reached already by the strips that stay.");
        }
        const Outcome<Gauge> gauge = make_gauge(card, request_.parts, leds, tape_for(request_),
                                                request_.clearance_mm, request_.edge_mm);
        if (!gauge) {
            return refuse(gauge.problem().expected, gauge.problem().place);
        }
        field_.emplace(card, request_.parts, gauge.value(), kept_, std::move(others));
        task_.field = &*field_;
        add_stops(leds);
        task_.starts = holder_starts(card, request_.parts, gauge.value());
        task_.go_on = [this] { return go_on(); };
        before_ = findings_before(kept_, request_.parts);
        std::vector<Vec2> places{task_.starts.front().root_mm};
        for (const Stop& stop : task_.stops) {
            places.push_back(stop.at_mm);
        }
        bound_mm_ = 2.0 * short_tour(places).length_mm;
        return true;
    }

    /// LEDs that kept strips feed on both sides stay as they are; all others are for the ribbon.
    void sort_leds(std::vector<int>& leds, std::vector<Convex>& others) const {
        const Conductors found = find_conductors(kept_, request_.parts);
        const auto fed = [&](int led, int pad) {
            const int net = found.net_of_led_pad[static_cast<std::size_t>(2 * led + pad)];
            const NetSide side = found.nets[static_cast<std::size_t>(net)].side;
            return side == (pad == 0 ? NetSide::negative : NetSide::positive);
        };
        for (int led = 0; led < static_cast<int>(kept_.leds.size()); ++led) {
            if (fed(led, 0) && fed(led, 1)) {
                others.push_back(led_body(kept_, request_.parts, led));
            } else {
                leds.push_back(led);
            }
        }
    }

    void add_stops(const std::vector<int>& leds) {
        const Card& card = request_.card;
        for (std::size_t i = 0; i < card.resistors.size(); ++i) {
            const ResistorPart& part = card.resistors[i];
            const PadSpan span = pad_span(*request_.parts.resistor);
            Stop stop;
            stop.kind = Stop::Kind::resistor;
            stop.index = static_cast<int>(i);
            stop.at_mm = part.at_mm;
            stop.half_mm = span.to_mm;
            stop.turn_deg = part.turn_deg;
            stop.fixed = listed(request_.fixed, part.id);
            task_.stops.push_back(stop);
        }
        for (const int led : leds) {
            const Led& placed = card.leds[static_cast<std::size_t>(led)];
            const PadSpan span =
                pad_span(request_.parts.packages.at(request_.parts.leds.at(placed.type).package));
            Stop stop;
            stop.index = led;
            stop.at_mm = placed.at_mm + turned(span.middle_mm, placed.turn_deg);
            stop.half_mm = span.half_across_mm;
            stop.slack_mm = slack_of(span, field_->gauge());
            stop.turn_deg = placed.turn_deg;
            stop.fixed = listed(request_.fixed, placed.id);
            task_.stops.push_back(stop);
        }
    }

    void suggest(int number, int wanted) {
        // The first is the all-round one, the second spares folds, the third spares tape.
        static constexpr double kBends_mm[kMostSuggestions] = {30.0, 80.0, 8.0};
        std::optional<Suggestion> best;
        const int tries = task_.stops.size() > kMany ? kTriesOfMany : kTries;
        for (int attempt = 0; attempt < tries && !(best && best->clean); ++attempt) {
            Random random(request_.seed + 1000003ULL * static_cast<std::uint64_t>(number) +
                          7919ULL * static_cast<std::uint64_t>(attempt));
            // Another try looks longer and, every other time, minds folds less.
            task_.moves = (1 + attempt / 2) * (2500 + 700 * static_cast<int>(task_.stops.size()));
            task_.taste.bend_mm =
                attempt % 2 == 0 ? kBends_mm[number] : std::min(kBends_mm[number], kTightBend_mm);
            long moves_left = kMostWork * task_.moves + kWorkOfAny;
            task_.moves_left = &moves_left;
            const Plan plan = make_plan(task_, random);
            Suggestion made = finish(plan);
            if (!best || made.clean || made.findings.size() < best->findings.size()) {
                best = std::move(made);
            }
            if (stop_) {
                break;
            }
        }
        progress_.done = std::max(progress_.done, static_cast<double>(number + 1) / wanted);
        const bool told = std::any_of(result_.suggestions.begin(), result_.suggestions.end(),
                                      [&](const Suggestion& other) { return other.card == best->card; });
        if (!told) {
            result_.suggestions.push_back(std::move(*best));
            ++progress_.suggestions;
        }
    }

    Suggestion finish(const Plan& plan) {
        const Layer layer{&request_.card, &request_.parts, &kept_, &task_};
        Suggestion made = assess(lay(layer, plan.ribbons), request_.parts, before_, bound_mm_);
        // Where tapes of one side meet past a resistor, current goes round it, and no finding tells.
        made.clean = made.clean && (request_.card.resistors.empty() || plan.trouble() < 0.05);
        if (!made.clean) {
            explain(plan, made);
        }
        return made;
    }

    [[nodiscard]] std::string id_of_stop(int stop) const {
        const Stop& s = task_.stops[static_cast<std::size_t>(stop)];
        return s.kind == Stop::Kind::led ? request_.card.leds[static_cast<std::size_t>(s.index)].id
                                         : request_.card.resistors[static_cast<std::size_t>(s.index)].id;
    }

    void explain(const Plan& plan, Suggestion& made) const {
        int worst = plan.left_out.empty() ? -1 : plan.left_out.front();
        for (int k = 0; worst < 0 && k < static_cast<int>(plan.blame_mm.size()); ++k) {
            const auto most = std::max_element(plan.blame_mm.begin(), plan.blame_mm.end());
            if (*most > 0.0) {
                worst = static_cast<int>(most - plan.blame_mm.begin());
            }
        }
        if (worst >= 0) {
            made.move_led = id_of_stop(worst);
            made.why_not = "The card is too crowded round " + made.move_led +
                           " for two tapes to pass side by side: move " + made.move_led +
                           " or its neighbours apart.";
        } else if (!made.findings.empty()) {
            made.why_not = made.findings.front().text + " " + made.findings.front().fix;
        }
    }

    const RouteRequest& request_;
    Card kept_;
    std::optional<Field> field_;
    WeaveTask task_;
    std::vector<Finding> before_;
    double bound_mm_ = 0.0;
    double began_ms_ = 0.0;
    bool stop_ = false;
    RouteProgress progress_;
    RouteResult result_;
};

} // namespace

RouteResult route(const RouteRequest& request) {
    return Router(request).run();
}

} // namespace lanternleaf
