// Route: from a card's parts to strips that a hand can lay. Exists so that a maker who has only said where
// the lights are gets a whole plan, with its price told, or a plain sentence why there is none.
//
//   RouteRequest -> posts (holder, resistor, LEDs) -> ribbon -> branches for what it could not reach ->
//   strips
//
// The ribbon: both conductors run side by side along one open path that goes straight through every LED, so
// that each is one uncut strip without a joint or crossing. Lights that do not fit on one path hang on it by
// a branch: two joints and one patched crossing each.
#pragma once

#include "card/card.h"
#include "card/parts.h"
#include "findings/finding.h"
#include "words/words.h"

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace lanternleaf {

/// How far the work is, told now and then. Returning false stops it; the best so far is handed back.
struct RouteProgress {
    double done = 0.0; ///< 0..1, a guess that never falls
    int suggestions = 0;
};

using RouteWatch = std::function<bool(const RouteProgress&)>;

struct RouteRequest {
    Card card;                      ///< what is laid in it is replaced, but for `keep`
    Parts parts;                    ///< with every type that the card names
    std::vector<std::string> keep;  ///< ids of strips and patches that stay as they are
    std::vector<std::string> fixed; ///< ids of LEDs and resistors that may not be turned; all others may
    std::string tape;               ///< empty: that of the card's first strip, else "copper-5"
    double clearance_mm = 2.0; ///< between opposite sides; less than tolerance::kClearance_mm counts as that
    double edge_mm = 1.0;      ///< from tape to the sheet's edges and keep-outs
    std::uint64_t seed = 1;    ///< the same request and seed give the same cards, unless time runs out
    int suggestions = 1;       ///< 1 to 3 different ones are looked for
    /// Most time to take, as `clock_ms` tells it; without a clock (the engine has none) the work ends by
    /// itself, in about 10 ms for each LED and suggestion.
    double most_ms = 0.0;
    std::function<double()> clock_ms;
    RouteWatch watch;
    Words words = english(); ///< what `why_not` is told in
};

struct RouteReport {
    double length_mm = 0.0; ///< of all strips that were laid here
    /// Twice the shortest open path from the holder through all lights: no ribbon can be shorter, but for
    /// the few mm that its pads' width saves. Exact for up to 12 stops, above that the best of a search.
    double bound_mm = 0.0;
    double ratio = 0.0; ///< length_mm / bound_mm
    int folds = 0;
    int joints = 0;                  ///< overlaps that must conduct
    int crossings = 0;               ///< overlaps that a patch keeps apart
    int cuts = 0;                    ///< strips cut off the roll
    std::vector<std::string> turned; ///< ids of LEDs and resistors that were turned
};

struct Suggestion {
    Card card;
    RouteReport report;
    bool clean = false; ///< no problems and no cautions but those the card has anyhow (heights, currents)
    std::vector<Finding> findings; ///< what is left that comes from the laying
    std::string why_not;           ///< one or two plain sentences; empty when clean
    std::string move_led;          ///< id of the LED that moving would help most; empty when clean or unknown
};

struct RouteResult {
    std::vector<Suggestion> suggestions; ///< best first; clean ones before others
    std::string why_not;                 ///< why there is no clean one; empty when there is
    std::string move_led;
    bool stopped = false; ///< by the watch or by time

    [[nodiscard]] bool clean() const { return !suggestions.empty() && suggestions.front().clean; }
};

[[nodiscard]] RouteResult route(const RouteRequest& request);

/// The same work in pieces, for one who must answer fingers meanwhile and has no second thread (a browser).
/// A piece is one try: about 4 ms a light. All pieces together give what route() gives.
class RouteSearch {
public:
    explicit RouteSearch(RouteRequest request);
    RouteSearch(RouteSearch&&) noexcept;
    RouteSearch& operator=(RouteSearch&&) noexcept;
    ~RouteSearch();

    /// Does one piece; false when none is left.
    bool step();
    [[nodiscard]] RouteProgress progress() const;
    /// What has been found so far, best first; the search ends with it.
    [[nodiscard]] RouteResult take();

private:
    class Work;
    std::unique_ptr<Work> work_;
};

} // namespace lanternleaf
