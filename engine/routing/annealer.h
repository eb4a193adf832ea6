// Annealer: the state of one search for a ribbon. Internal to weave.cpp and anneal_moves.cpp. Exists as a
// class since the moves change a little of much: links, their clashes and sums are kept up to date, never
// made anew.
#pragma once

#include "routing/weave.h"

namespace lanternleaf::routing_stages {

class Annealer {
public:
    Annealer(const WeaveTask& task, Random& random);

    Woven run();

private:
    struct Course {
        int start = 0;
        std::vector<Place> places;
    };

    [[nodiscard]] std::size_t count() const { return task_.stops.size(); }

    void find_neighbours();

    /// The shortest order, aimed; from the start that is best for it.
    void begin();

    [[nodiscard]] const Start& start() const { return task_.starts[static_cast<std::size_t>(now_.start)]; }

    [[nodiscard]] Pose pose(const Course& course, std::size_t k) const;

    [[nodiscard]] Link make_link(const Course& course, std::size_t k) const;

    void rebuild();

    /// A link's misfit and its clash with other ribbons.
    [[nodiscard]] double burden(const Course& course, const Link& link) const;

    [[nodiscard]] float pair(const Link& a, const Link& b, std::size_t apart) const;

    void total_up();

    [[nodiscard]] double trouble() const { return own_total_ + clash_total_; }

    [[nodiscard]] double value(double price, double trouble) const { return price + clash_price_ * trouble; }

    /// What a mm of clash or misfit is worth, which rises while the heat falls.
    void set_clash_price(double price);

    void keep_best();

    bool accept(double gain);

    // ---- moves that leave the order as it is: only the links at place `k` (and k + 1) change

    /// Takes `next` when it is good enough; it differs from now_ only in the links first .. last.
    bool try_places(std::size_t first, std::size_t last, const Course& next);

    bool try_place(std::size_t k, const Place& place);

    void turn();

    /// Lets the ribbon pass a stop straight on the line of a neighbour, beside the stop's middle by no more
    /// than it can bear.
    static bool onto_line(const Pose& line, const Stop& stop, Place& place);

    /// Lines up two stops and, where they can bear it, those before and after.
    void line_up(std::size_t k);

    void vary();

    void change_start();

    [[nodiscard]] bool any_bound() const;

    /// A fixed LED faces where it must.
    void face(Place& place, bool plus_right) const;

    // ---- moves that change the order

    /// Turns each of a few places to what suits its two links best.
    void settle(Course& course, std::size_t k) const;

    [[nodiscard]] std::size_t position_of(int stop) const;

    void move_block();

    void turn_round(std::vector<Place>& block) const;

    void turn_stretch();

    /// Takes `next_` when it is good enough. Links between the same two places are used again.
    void try_course();

    void step();

    /// Downhill only: every heading and way of every place, until none helps.
    void polish();

    Woven read_out() const;

    const WeaveTask& task_;
    Random& random_;
    int resistors_ = 0;
    std::vector<std::vector<int>> neighbours_;
    Course now_;
    Course next_;
    Course best_;
    double best_price_ = 0.0;
    double best_trouble_ = 0.0;
    double best_value_ = 1e300;
    double clash_price_ = 1.0;
    double heat_mm_ = 1.0;
    std::vector<Link> links_;  ///< of now_, the tail last
    std::vector<double> own_;  ///< burden of each link
    std::vector<float> pairs_; ///< clash of links i < j at [i * n + j]
    double price_ = 0.0;
    double own_total_ = 0.0;
    double clash_total_ = 0.0;
    std::vector<Link> fresh_;
    std::vector<double> fresh_own_;
    std::vector<float> rows_;
    std::vector<int> from_;
};

} // namespace lanternleaf::routing_stages
