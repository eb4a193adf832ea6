// Operating point of ladders of LEDs: cold (ordering, factors and all) and warm (prepared, cell slightly
// changed), against the `op` command of libngspice on the same circuit in the same process. ngspice has the
// netlist read and set up before its clock starts. Exit 1 when a mark is missed: 12 LEDs cold under 10 us,
// ngspice at least ten times as long, time growing no faster than the number of LEDs.
#include "../support/circuits.h"
#include "../support/make_card.h"
#include "../support/spice_deck.h"
#include "circuit/solve.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#ifdef LANTERNLEAF_HAS_NGSPICE
#include <ngspice/sharedspice.h>
#endif

using namespace lanternleaf;

namespace {

constexpr double kMark_us = 10.0;
constexpr double kMark_ratio = 10.0;
constexpr double kMark_growth = 2.0; ///< time per LED at 1000 LEDs over that at 100

/// Least time of one call over several batches, in microseconds: what the machine's other work adds is left
/// out.
template <class Work>
double least_us(int calls, Work work) {
    double least = 1e300;
    for (int batch = 0; batch < 9; ++batch) {
        const auto start = std::chrono::steady_clock::now();
        for (int i = 0; i < calls; ++i) {
            work();
        }
        const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
        least = std::min(least, took.count() / calls);
    }
    return least;
}

#ifdef LANTERNLEAF_HAS_NGSPICE

int quiet(char*, int, void*) {
    return 0;
}

int stay(int, NG_BOOL, NG_BOOL, int, void*) {
    return 0;
}

void command(const char* text) {
    ngSpice_Command(const_cast<char*>(text));
}

struct SpiceRun {
    double us = 0.0;
    double worst = 0.0; ///< largest relative difference of an LED's current
};

SpiceRun run_ngspice(const Circuit& circuit, const Solution& solution) {
    static const int started = ngSpice_Init(quiet, quiet, stay, nullptr, nullptr, nullptr, nullptr);
    (void)started;
    std::vector<std::string> lines = make::spice_deck(circuit);
    lines.insert(lines.end() - 1, ".save none");
    std::vector<char*> pointers;
    for (std::string& line : lines) {
        pointers.push_back(line.data());
    }
    pointers.push_back(nullptr);
    ngSpice_Circ(pointers.data());
    SpiceRun run;
    run.us = 1e300;
    command("op");
    for (std::size_t i = 0; i < circuit.diodes.size() && i < 100; ++i) {
        std::string name = "@d" + std::to_string(i) + "[id]";
        const pvector_info info = ngGet_Vec_Info(name.data());
        if (info == nullptr || info->v_length < 1) {
            run.worst = std::nan("");
            break;
        }
        run.worst = std::max(run.worst, std::fabs(solution.diode_A[i] / info->v_realdata[0] - 1.0));
    }
    const int calls = std::max(3, 300 / static_cast<int>(circuit.diodes.size()));
    for (int batch = 0; batch < 9; ++batch) {
        const auto start = std::chrono::steady_clock::now();
        for (int i = 0; i < calls; ++i) {
            command("op");
        }
        const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
        run.us = std::min(run.us, took.count() / calls);
        command("destroy all");
    }
    command("remcirc");
    return run;
}

#endif

struct Row {
    double cold_us = 0.0;
    double ratio = 0.0;
};

Row measure(const char* what, Circuit circuit) {
    const int calls = std::max(5, 20000 / static_cast<int>(circuit.diodes.size()));
    Solution cold;
    Row row;
    row.cold_us = least_us(calls, [&] { cold = solve_operating_point(circuit); });
    PreparedSolver solver(circuit);
    Solution warm;
    solver.solve(circuit, {}, false, warm);
    const double open_V = circuit.cells[0].open_V;
    bool lower = false;
    const double warm_us = least_us(calls, [&] {
        lower = !lower;
        circuit.cells[0].open_V = lower ? open_V - 0.01 : open_V;
        solver.solve(circuit, {}, true, warm);
    });
    circuit.cells[0].open_V = open_V;
    std::printf("%-14s %6d %9.2f %9.2f %6d %6d", what, circuit.node_count, row.cold_us, warm_us,
                cold.iterations, warm.iterations);
#ifdef LANTERNLEAF_HAS_NGSPICE
    const SpiceRun spice = run_ngspice(circuit, cold);
    row.ratio = spice.us / row.cold_us;
    std::printf(" %11.1f %7.1f %10.1e\n", spice.us, row.ratio, spice.worst);
#else
    std::printf("\n");
#endif
    if (!cold.ok() || !warm.ok()) {
        std::printf("did not converge\n");
        row.cold_us = 1e300;
    }
    return row;
}

bool fast_enough(const Row& row) {
    return row.cold_us < kMark_us;
}

bool ahead_enough(const Row& row) {
#ifdef LANTERNLEAF_HAS_NGSPICE
    return row.ratio >= kMark_ratio;
#else
    (void)row;
    return true;
#endif
}

} // namespace

int main() {
    std::printf("%-14s %6s %9s %9s %6s %6s", "LEDs", "nodes", "cold us", "warm us", "steps", "warm");
#ifdef LANTERNLEAF_HAS_NGSPICE
    std::printf(" %11s %7s %10s\n", "ngspice us", "ratio", "differ by");
#else
    std::printf(
        "\n(libngspice was not found when this was built: no comparison, and its mark is not judged)\n");
#endif
    measure("1", make::ladder(1, make::white));
    // The marks are about 12 LEDs; a machine busy with something else gets three tries at them.
    Row twelve = measure("12", make::ladder(12, make::white));
    for (int again = 0; again < 2 && !(fast_enough(twelve) && ahead_enough(twelve)); ++again) {
        twelve = measure("12 again", make::ladder(12, make::white));
    }
    measure("40", make::ladder(40, make::white));
    const Row hundred = measure("100", make::ladder(100, make::white));
    const Row thousand = measure("1000", make::ladder(1000, make::white));
    const Card card = make::row_card(12);
    const Parts parts = make::test_parts();
    measure("12 on a card",
            build_circuit(card, parts, find_conductors(card, parts), fresh_cell(card, parts)));

    bool good = true;
    const auto judge = [&good](bool met, const char* mark) {
        std::printf("%s: %s\n", met ? "met" : "MISSED", mark);
        good = good && met;
    };
    judge(fast_enough(twelve), "12 LEDs cold under 10 us");
#ifdef LANTERNLEAF_HAS_NGSPICE
    judge(ahead_enough(twelve), "12 LEDs at least ten times as fast as ngspice's op");
#endif
    judge(thousand.cold_us / hundred.cold_us < 10.0 * kMark_growth,
          "time per LED no more than doubles from 100 to 1000");
    return good ? 0 : 1;
}
