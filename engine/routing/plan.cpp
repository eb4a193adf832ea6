#include "routing/plan.h"

#include <algorithm>
#include <numeric>

namespace lanternleaf::routing_stages {

namespace {

/// What a stop without a way is worth when plans are compared.
constexpr double kLeftOut_mm = 1000.0;
constexpr std::size_t kMostBranches = 4;
/// How often the search goes on from what it has found while that is not clean.
constexpr int kAgain = 3;

/// The same task for some of the stops.
WeaveTask part_of(const WeaveTask& task, const std::vector<int>& stops, int moves) {
    WeaveTask part = task;
    part.stops.clear();
    for (const int stop : stops) {
        part.stops.push_back(task.stops[static_cast<std::size_t>(stop)]);
    }
    part.moves = moves;
    return part;
}

void number_as_whole(Woven& woven, const std::vector<int>& stops) {
    for (Place& place : woven.places) {
        place.stop = stops[static_cast<std::size_t>(place.stop)];
    }
}

bool is_resistor(const WeaveTask& task, int stop) {
    return task.stops[static_cast<std::size_t>(stop)].kind == Stop::Kind::resistor;
}

Woven search(const WeaveTask& task, Random& random) {
    *task.moves_left -= task.moves;
    Woven woven = weave(task, random);
    if (!woven.clean()) {
        detour(task, woven);
    }
    return woven;
}

/// Goes on from what was found, less hot.
Woven search_again(WeaveTask task, const Woven& from, int moves, Random& random) {
    task.first = from.places;
    task.first_start = from.start;
    task.moves = moves;
    return search(task, random);
}

double trouble_of(const Woven& woven) {
    return woven.misfit_mm + woven.clash_mm;
}

bool stopped(const WeaveTask& task) {
    return *task.moves_left <= 0 || (task.go_on && !task.go_on());
}

/// Takes stops away until the rest fits on one ribbon. `stops` is what is left, `out` what was taken.
Woven thin_out(const WeaveTask& task, Woven woven, std::vector<int>& stops, std::vector<int>& out,
               Random& random) {
    const std::size_t least = std::max<std::size_t>(1, stops.size() / 3);
    while (!woven.clean() && stops.size() > least && !stopped(task)) {
        WeaveTask part = part_of(task, stops, 0);
        const std::vector<double> blame = blame_of(part, woven);
        int worst = -1;
        double most = -1.0;
        for (std::size_t k = 0; k < stops.size(); ++k) {
            // Not always the worst: another try should not fail in the same way.
            const double weight = blame[k] * (0.5 + random.share());
            if (!is_resistor(task, stops[k]) && weight > most) {
                worst = static_cast<int>(k);
                most = weight;
            }
        }
        if (worst < 0) {
            break;
        }
        out.push_back(stops[static_cast<std::size_t>(worst)]);
        stops.erase(stops.begin() + worst);
        std::erase_if(woven.places, [&](const Place& place) { return place.stop == worst; });
        for (Place& place : woven.places) {
            place.stop -= place.stop > worst ? 1 : 0;
        }
        part = part_of(task, stops, 0);
        woven = search_again(part, woven, task.moves / 5, random);
    }
    return woven;
}

/// Where a further ribbon can begin.
std::vector<Start> further_starts(const WeaveTask& task, const Plan& plan) {
    WeaveTask whole = task;
    whole.others = plan.ribbons;
    const bool resistors = is_resistor(task, 0);
    std::vector<Start> starts;
    for (std::size_t on = 0; on < plan.ribbons.size(); ++on) {
        int first = 0; // no current may pass a resistor by
        for (const Place& place : plan.ribbons[on].places) {
            first += is_resistor(task, place.stop) ? 1 : 0;
        }
        const std::vector<Start> more = branch_starts(plan.ribbons, on, whole, first);
        starts.insert(starts.end(), more.begin(), more.end());
    }
    if (!resistors) {
        const std::vector<Start> more = back_starts(plan.ribbons, task);
        starts.insert(starts.end(), more.begin(), more.end());
    }
    return starts;
}

/// Leads one more ribbon to some of `out` and takes them off it.
bool add_branch(const WeaveTask& task, Plan& plan, std::vector<int>& out, Random& random) {
    WeaveTask part = part_of(task, out, task.moves / 3);
    part.others = plan.ribbons;
    part.starts = further_starts(task, plan);
    if (part.starts.empty()) {
        return false;
    }
    std::vector<int> stops(out.size());
    std::iota(stops.begin(), stops.end(), 0);
    std::vector<int> rest;
    Woven branch = thin_out(part, search(part, random), stops, rest, random);
    if (!branch.clean()) {
        return false;
    }
    number_as_whole(branch, stops);
    number_as_whole(branch, out);
    plan.ribbons.push_back(std::move(branch));
    std::vector<int> still;
    for (const int stop : rest) {
        still.push_back(out[static_cast<std::size_t>(stop)]);
    }
    out = std::move(still);
    return true;
}

} // namespace

double Plan::trouble() const {
    double sum = kLeftOut_mm * static_cast<double>(left_out.size());
    for (const Woven& woven : ribbons) {
        sum += woven.misfit_mm + woven.clash_mm;
    }
    return sum;
}

double Plan::price() const {
    return std::accumulate(ribbons.begin(), ribbons.end(), 0.0,
                           [](double sum, const Woven& woven) { return sum + woven.price_mm; });
}

std::vector<double> blame_of(const WeaveTask& task, const Woven& woven) {
    const Gauge& gauge = task.field->gauge();
    std::vector<double> blame(task.stops.size(), 0.0);
    const std::size_t n = woven.links.size();
    const auto add = [&](std::size_t link, double mm) {
        if (link < woven.places.size()) {
            blame[static_cast<std::size_t>(woven.places[link].stop)] += mm;
        }
        if (link > 0) {
            blame[static_cast<std::size_t>(woven.places[link - 1].stop)] += mm;
        }
    };
    for (std::size_t i = 0; i < n; ++i) {
        add(i, woven.links[i].misfit_mm + clash_with_others(task, woven.start, woven.links[i]));
        for (std::size_t j = i + 1; j < n; ++j) {
            const double mm = clash(woven.links[i], woven.links[j], gauge, j == i + 1, false);
            if (mm > 0.0) {
                add(i, mm);
                add(j, mm);
            }
        }
    }
    return blame;
}

Plan make_plan(const WeaveTask& task, Random& random) {
    Plan plan;
    std::vector<int> stops(task.stops.size());
    std::iota(stops.begin(), stops.end(), 0);
    plan.blame_mm.assign(stops.size(), 0.0);
    Woven main = search(task, random);
    // What is crowded has no room for long straight runs.
    WeaveTask tight = task;
    tight.taste.bend_mm = std::min(task.taste.bend_mm, kTightBend_mm);
    for (int again = 0; again < kAgain && !main.clean() && !stopped(task); ++again) {
        Woven other = search_again(tight, main, task.moves / 3, random);
        if (trouble_of(other) < trouble_of(main)) {
            main = std::move(other);
        }
    }
    if (main.clean() || stopped(task)) {
        plan.blame_mm = blame_of(task, main);
        plan.ribbons.push_back(std::move(main));
        return plan;
    }
    plan.blame_mm = blame_of(task, main);
    std::vector<int> out;
    main = thin_out(task, std::move(main), stops, out, random);
    number_as_whole(main, stops);
    plan.ribbons.push_back(std::move(main));
    while (!out.empty() && plan.ribbons.size() <= kMostBranches && !stopped(task)) {
        if (!add_branch(task, plan, out, random)) {
            break;
        }
    }
    plan.left_out = out;
    return plan;
}

} // namespace lanternleaf::routing_stages
