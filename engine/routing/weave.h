// Weave: the search for one ribbon: in which order it goes through its stops and which way each faces. Exists
// as a value that starts from the shortest path, is annealed, mended and read out.
#pragma once

#include "routing/field.h"
#include "routing/random.h"

#include <functional>
#include <vector>

namespace lanternleaf::routing_stages {

/// Something the ribbon goes straight through: an LED across it, or a resistor in one of its tapes.
struct Stop {
    enum class Kind { led, resistor };
    Kind kind = Kind::led;
    int index = 0;
    Vec2 at_mm;
    double half_mm = 0.0;  ///< pads reach this far along the ribbon
    double slack_mm = 0.0; ///< the ribbon may pass this far beside the middle: pads still lie on tape
    bool fixed = false;
    double turn_deg = 0.0; ///< as it lies on the card; binding when fixed
};

/// Where a ribbon can begin.
struct Start {
    Pose pose;
    bool plus_right = true;
    bool from_holder = true;
    double price_mm = 0.0;
    int on_ribbon = -1; ///< that a branch hangs on, in WeaveTask::others
    int on_link = -1;   ///< of that ribbon
    Vec2 root_mm;       ///< where on that ribbon's middle, or the holder's middle
};

/// One stop as the ribbon goes through it.
struct Place {
    int stop = 0;
    double heading_deg = 0.0;
    int variant = 0;       ///< which of the possible ways leads here: rank, then stretch
    int lane = 1;          ///< resistors only: 1 in the right tape, -1 in the left
    double shift_mm = 0.0; ///< the ribbon's middle lies this far to the right of the stop's
    friend bool operator==(const Place&, const Place&) = default;
};

/// A finished ribbon: links[k] leads to places[k]; the last link is the tail.
struct Woven {
    Start start;
    std::vector<Place> places;
    std::vector<Link> links;
    double price_mm = 0.0;
    double misfit_mm = 0.0; ///< of its links, by themselves
    double clash_mm = 0.0;  ///< between its links, and with other ribbons

    [[nodiscard]] bool clean() const { return misfit_mm < 0.05 && clash_mm < 0.05; }
};

/// What the search works on; nothing of it changes.
struct WeaveTask {
    const Field* field = nullptr;
    std::vector<Stop> stops; ///< resistors first, in the order in which current meets them
    std::vector<Start> starts;
    std::vector<Woven> others; ///< ribbons already laid
    Taste taste;
    std::function<bool()> go_on; ///< false: hand back the best so far
    int moves = 0;               ///< of the annealing
    /// Not empty: begin with this order instead of the shortest, and less hot.
    std::vector<Place> first;
    Start first_start;
    long* moves_left =
        nullptr; ///< of the whole plan: shared by its searches, which stop looking further at 0
};

[[nodiscard]] Woven weave(const WeaveTask& task, Random& random);
/// Tries to lead every link that clashes over one more place, anywhere on the sheet.
void detour(const WeaveTask& task, Woven& woven);

/// Helpers shared by the files of this module.
[[nodiscard]] Pose pose_of(const WeaveTask& task, const Place& place);
[[nodiscard]] Link best_link(const WeaveTask& task, const Start& start, const Pose& from, const Pose& to,
                             bool first, int variant);
[[nodiscard]] Link tail_link(const WeaveTask& task, const Start& start, const Pose& last);
[[nodiscard]] double clash_with_others(const WeaveTask& task, const Start& start, const Link& link);
[[nodiscard]] double fixed_heading(const Stop& stop, bool plus_right);
/// Headings worth trying at a stop by itself (not those in line with neighbours).
[[nodiscard]] std::vector<double> free_headings(const Stop& stop, bool plus_right, double step_deg);
/// Best headings for an order by dynamic programming over each stop's candidates (clashes left out).
void aim(const WeaveTask& task, const Start& start, std::vector<Place>& places);
[[nodiscard]] double bearing_deg(Vec2 from, Vec2 to);

} // namespace lanternleaf::routing_stages
