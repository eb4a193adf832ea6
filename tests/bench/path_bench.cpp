// From a card to its findings, stage by stage: what a live editor would pay for each frame. Prints the best
// of many rounds; leaves with status 1 when a card of 12 lights takes 1 ms or more.
#include "findings/review.h"
#include "support/make_card.h"

#include <algorithm>
#include <chrono>
#include <cstdio>

using namespace lanternleaf;

namespace {

std::string numbered(const char* letter, int number) {
    std::string id = letter;
    id += std::to_string(number);
    return id;
}

/// Rows of lights across two rails, four LEDs to a stretch of tape so that there are joints, and three
/// branches that cross the - rail over patches.
Card crowded_card(int lights) {
    Card card = make::bare_card();
    const double end_mm = 84.0 + 12.0 * lights;
    card.sheet.width_mm = end_mm + 10.0;
    card.sheet.folds.push_back({{74, 0}, {74, 105}, {}});
    card.sheet.keepouts.push_back({"window", {{10, 10}, {30, 10}, {30, 25}, {10, 25}}, {}});
    for (int i = 0; i < lights; ++i) {
        card.leds.push_back(make::led(numbered("L", i + 1), "carrier-white", {88.0 + 12.0 * i, 40}, 270));
    }
    const auto rail = [&](const char* name, Side side, double y_mm, double from_mm) {
        int piece = 2;
        for (double x_mm = from_mm; x_mm < end_mm; x_mm += 48.0) {
            card.laid.emplace_back(
                make::strip(numbered(name, piece++), side,
                            {{x_mm - 2.5, y_mm}, {std::min(x_mm + 48.0, end_mm) + 2.5, y_mm}}));
        }
    };
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {82, 45}}));
    rail("N", Side::negative, 45, 82);
    card.laid.emplace_back(make::patch("P1", {60, 45}));
    card.laid.emplace_back(make::patch("P2", {94, 45}, {9.8, 14}));
    card.laid.emplace_back(make::patch("P3", {118, 45}, {9.8, 14}));
    card.laid.emplace_back(make::strip("S1", Side::positive, {{54, 80}, {60, 80}, {60, 35}, {82, 35}}));
    rail("S", Side::positive, 35, 82);
    card.laid.emplace_back(make::strip("T1", Side::positive, {{94, 32.5}, {94, 60}, {106, 60}}));
    card.laid.emplace_back(make::strip("T2", Side::positive, {{118, 32.5}, {118, 60}, {142, 60}}));
    return card;
}

template <class Work>
double best_us(int rounds, Work work) {
    double best = 1e300;
    for (int round = 0; round < rounds; ++round) {
        const auto from = std::chrono::steady_clock::now();
        work();
        const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - from;
        best = std::min(best, took.count());
    }
    return best;
}

double run(int lights) {
    constexpr int kRounds = 300;
    const Card card = crowded_card(lights);
    const Parts parts = make::test_parts();
    const Review made = review(card, parts);
    std::size_t joints = 0;
    std::size_t crossings = 0;
    for (const Overlap& overlap : made.conductors.overlaps) {
        (overlap.conducts ? joints : crossings) += 1;
    }
    std::printf(
        "%d lights: %zu strips, %zu joints, %zu crossings, %d nodes; %d problems, %d cautions, %d notes\n",
        lights, made.conductors.strips.size(), joints, crossings, made.circuit.node_count,
        made.count(Level::problem), made.count(Level::caution), made.count(Level::note));

    const double find_us = best_us(kRounds, [&] { (void)find_conductors(card, parts); });
    const double build_us =
        best_us(kRounds, [&] { (void)build_circuit(card, parts, made.conductors, fresh_cell(card, parts)); });
    const double solve_us = best_us(kRounds, [&] { (void)solve_operating_point(made.circuit); });
    const double read_us =
        best_us(kRounds, [&] { (void)read_lights(card, parts, made.circuit, made.solution); });
    const ReviewFacts facts{card,          parts,         made.conductors,      made.circuit,
                            made.solution, made.lighting, made.steady_lighting, english()};
    double rules_us = 0.0;
    double slowest_us = 0.0;
    const char* slowest = "";
    std::vector<Finding> found;
    for (const Rule& rule : rules()) {
        const double took = best_us(kRounds, [&] {
            found.clear();
            rule.check(facts, found);
        });
        rules_us += took;
        if (took > slowest_us) {
            slowest_us = took;
            slowest = rule.id;
        }
    }
    const double whole_us = best_us(kRounds, [&] { (void)review(card, parts); });
    std::printf("  conductors %.1f us, circuit %.1f us, solve %.1f us, read %.1f us, rules %.1f us "
                "(slowest %s %.1f us); whole review %.1f us\n",
                find_us, build_us, solve_us, read_us, rules_us, slowest, slowest_us, whole_us);
    return whole_us;
}

} // namespace

int main() {
    const double twelve_us = run(12);
    run(40);
    constexpr double kMark_us = 1000.0;
    if (twelve_us >= kMark_us) {
        std::printf("12 lights took %.1f us; the mark is %.0f us\n", twelve_us, kMark_us);
        return 1;
    }
    return 0;
}
