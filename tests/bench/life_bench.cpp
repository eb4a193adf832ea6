// How long it takes to know how a card fades: 200 hours of light from nothing, one step of the slider, and
// how both grow with the number of lights. Prints the best of many rounds; leaves with status 1 when a mark
// is missed.
#include "conductors/conductors.h"
#include "life/helps.h"
#include "life/life.h"
#include "support/make_card.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>

using namespace lanternleaf;

namespace {

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

struct Times {
    double line_us = 0.0;   ///< from conductors: circuit, preparation, load line, 200 h of light
    double solver_us = 0.0; ///< the same with the solver in the loop and no table
    double slider_us = 0.0;
    double whole_us = 0.0; ///< two makers, pressed and left on, with every mark
};

Times run(int lights) {
    const Card card = make::row_card(lights);
    const Parts parts = make::test_parts();
    const Conductors conductors = find_conductors(card, parts);
    const LedCondition condition{23.0, Spread::typical, -1};
    const CellType& type = parts.cells.at(card.cell.type);
    DischargeOptions options;
    options.most_h = 200.0;
    std::size_t steps = 0;
    double mAh[2] = {0.0, 0.0};
    constexpr int kRounds = 60;

    Times times;
    times.line_us = best_us(kRounds, [&] {
        const Circuit circuit = build_circuit(card, parts, conductors, fresh_cell(card, parts));
        PreparedSolver solver(circuit);
        const CellModel cell(type, 1, 0, 23.0);
        const LoadLine line(circuit, card, parts, condition, 3.2, solver);
        const Discharge made = discharge(
            cell, [&](const CellState& state) { return line.meet(state).cell_mA; }, options);
        steps = made.steps.size();
        mAh[0] = made.steps.back().drawn_mAh;
    });
    times.solver_us = best_us(kRounds, [&] {
        Circuit circuit = build_circuit(card, parts, conductors, fresh_cell(card, parts));
        apply_condition(circuit, card, parts, condition);
        PreparedSolver solver(circuit);
        const CellModel cell(type, 1, 0, 23.0);
        mAh[1] = discharge(cell, solved_load(circuit, solver), options).steps.back().drawn_mAh;
    });
    LifeOptions whole;
    whole.with_band = false;
    Life life;
    times.whole_us = best_us(20, [&] { life = live(card, parts, conductors, whole); });
    LifeMoment moment;
    double hours = 0.0;
    double light = 0.0;
    times.slider_us = best_us(200, [&] {
        hours = std::fmod(hours + 7.3, 60.0);
        moment_at(life, life.typical(Use::left_on, 0), card, parts, hours, moment);
        light += moment.lights[0].seen;
    });
    std::printf(
        "%2d lights: 200 h in %.0f us (%zu steps), with the solver in the loop %.0f us; a step of the slider "
        "%.2f us; all runs and marks %.0f us\n",
        lights, times.line_us, steps, times.solver_us, times.slider_us, times.whole_us);
    std::printf("   drawn %.2f mAh by the table, %.2f mAh by the solver\n", mAh[0], mAh[1]);
    return times;
}

} // namespace

int main() {
    run(1);
    const Times twelve = run(12);
    const Times forty = run(40);
    const Card card = make::row_card(12);
    const Parts parts = make::test_parts();
    const Conductors conductors = find_conductors(card, parts);
    std::printf("what would help, 12 lights: %.0f ms\n",
                1e-3 * best_us(3, [&] { (void)what_helps(card, parts, conductors); }));

    int missed = 0;
    const auto mark = [&missed](const char* what, double is, double most) {
        std::printf("%s %s: %.2f, mark %.2f\n", is < most ? "kept  " : "MISSED", what, is, most);
        missed += is < most ? 0 : 1;
    };
    mark("200 h of 12 lights, us", twelve.line_us, 1000.0);
    mark("200 h of 12 lights with the solver, us", twelve.solver_us, 1000.0);
    mark("a step of the slider, 12 lights, us", twelve.slider_us, 100.0);
    mark("a step of the slider, 40 lights, us", forty.slider_us, 100.0);
    // 40 over 12 is 3.33; half as much again is about linear, quadratic would be 11.
    mark("growth from 12 to 40 lights, table", forty.line_us / twelve.line_us, 5.0);
    mark("growth from 12 to 40 lights, solver", forty.solver_us / twelve.solver_us, 5.0);
    return missed == 0 ? 0 : 1;
}
