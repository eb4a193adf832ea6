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

} // namespace

// Holds pointers into itself (the task knows its field): it stays where it was made.
class RouteSearch::Work {
public:
    explicit Work(RouteRequest request)
        : request_(std::move(request)), kept_(request_.card),
          wanted_(std::clamp(request_.suggestions, 1, kMostSuggestions)) {}

    bool step() {
        if (!begun_) {
            begun_ = true;
            ended_ = !prepare();
        }
        if (!ended_) {
            try_once();
        }
        return !ended_;
    }

    [[nodiscard]] RouteProgress progress() const { return progress_; }

    RouteResult take() {
        if (!ended_) {
            stop_ = true;
            ended_ = true;
            keep(); // half-looked-for is better than nothing
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
        const Words& words = request_.words;
        std::erase_if(kept_.laid, [&](const Laid& laid) { return !listed(request_.keep, id_of(laid)); });
        if (card.leds.empty()) {
            return refuse(words("routing.no_light"));
        }
        if (card.resistors.size() > 1) {
            return refuse(words("routing.many_resistors", {{"count", card.resistors.size()}}));
        }
        std::vector<int> leds;
        std::vector<Convex> others;
        sort_leds(leds, others);
        if (leds.empty()) {
            return refuse(words("routing.all_reached"));
        }
        const Outcome<Gauge> gauge = make_gauge(card, request_.parts, leds, tape_for(request_),
                                                request_.clearance_mm, request_.edge_mm, words);
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

    /// One try at the suggestion at hand; the next one's turn comes when this one is clean or given up.
    void try_once() {
        // The first is the all-round one, the second spares folds, the third spares tape.
        static constexpr double kBends_mm[kMostSuggestions] = {30.0, 80.0, 8.0};
        Random random(request_.seed + 1000003ULL * static_cast<std::uint64_t>(number_) +
                      7919ULL * static_cast<std::uint64_t>(attempt_));
        // Another try looks longer and, every other time, minds folds less.
        task_.moves = (1 + attempt_ / 2) * (2500 + 700 * static_cast<int>(task_.stops.size()));
        task_.taste.bend_mm =
            attempt_ % 2 == 0 ? kBends_mm[number_] : std::min(kBends_mm[number_], kTightBend_mm);
        long moves_left = kMostWork * task_.moves + kWorkOfAny;
        task_.moves_left = &moves_left;
        const Plan plan = make_plan(task_, random);
        task_.moves_left = nullptr;
        Suggestion made = finish(plan);
        if (!best_ || made.clean || made.findings.size() < best_->findings.size()) {
            best_ = std::move(made);
        }
        ++attempt_;
        const int tries = task_.stops.size() > kMany ? kTriesOfMany : kTries;
        const bool given_up = attempt_ >= tries || stop_;
        const double tried = best_->clean || given_up ? 1.0 : static_cast<double>(attempt_) / tries;
        progress_.done = std::max(progress_.done, (number_ + tried) / wanted_);
        if (best_->clean || given_up) {
            keep();
            attempt_ = 0;
            ++number_;
            ended_ = number_ >= wanted_ || stop_;
        }
    }

    void keep() {
        const bool told =
            !best_ || std::any_of(result_.suggestions.begin(), result_.suggestions.end(),
                                  [&](const Suggestion& other) { return other.card == best_->card; });
        if (!told) {
            result_.suggestions.push_back(std::move(*best_));
            ++progress_.suggestions;
        }
        best_.reset();
    }

    Suggestion finish(const Plan& plan) {
        const Layer layer{&request_.card, &request_.parts, &kept_, &task_};
        Suggestion made =
            assess(lay(layer, plan.ribbons), request_.parts, before_, bound_mm_, request_.words);
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
            made.why_not = request_.words("routing.crowded", {{"led", made.move_led}});
        } else if (!made.findings.empty()) {
            made.why_not = request_.words("routing.trouble_and_fix", {{"text", made.findings.front().text},
                                                                      {"fix", made.findings.front().fix}});
        }
    }

    RouteRequest request_;
    Card kept_;
    int wanted_;
    int number_ = 0;                 ///< the suggestion at hand
    int attempt_ = 0;                ///< of it
    std::optional<Suggestion> best_; ///< of its tries
    bool begun_ = false;
    bool ended_ = false;
    std::optional<Field> field_;
    WeaveTask task_;
    std::vector<Finding> before_;
    double bound_mm_ = 0.0;
    double began_ms_ = 0.0;
    bool stop_ = false;
    RouteProgress progress_;
    RouteResult result_;
};

RouteSearch::RouteSearch(RouteRequest request) : work_(std::make_unique<Work>(std::move(request))) {}

RouteSearch::RouteSearch(RouteSearch&&) noexcept = default;
RouteSearch& RouteSearch::operator=(RouteSearch&&) noexcept = default;
RouteSearch::~RouteSearch() = default;

bool RouteSearch::step() {
    return work_->step();
}

RouteProgress RouteSearch::progress() const {
    return work_->progress();
}

RouteResult RouteSearch::take() {
    return work_->take();
}

RouteResult route(const RouteRequest& request) {
    RouteSearch search(request);
    while (search.step()) {
    }
    return search.take();
}

} // namespace lanternleaf
