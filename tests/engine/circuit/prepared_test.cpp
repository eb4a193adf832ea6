#include "circuit/solve.h"
#include "support/circuits.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <new>

using namespace lanternleaf;

namespace {

int allocations = 0;

} // namespace

// Counting allocator for this program: a prepared solve must not allocate. AddressSanitizer brings its own.
#ifndef __SANITIZE_ADDRESS__
void* operator new(std::size_t size) {
    ++allocations;
    if (void* const block = std::malloc(size == 0 ? 1 : size)) {
        return block;
    }
    throw std::bad_alloc();
}

void operator delete(void* block) noexcept {
    std::free(block);
}

void operator delete(void* block, std::size_t) noexcept {
    std::free(block);
}
#endif

TEST_CASE("A prepared solver follows changed values, cold and warm", "[circuit]") {
    Circuit circuit = make::ladder(12, make::white);
    PreparedSolver solver(circuit);
    Solution warm;
    Solution cold;
    for (int step = 0; step < 60; ++step) {
        circuit.cells[0].open_V = 3.2 - 0.02 * step;
        circuit.cells[0].ohm = 12.0 + step;
        if (step == 20) {
            std::swap(circuit.diodes[3].anode, circuit.diodes[3].cathode); // turned round: the same link
        }
        if (step == 30) {
            circuit.diodes[5] = make::red(circuit.diodes[5].anode, circuit.diodes[5].cathode);
        }
        if (step == 40) {
            circuit.diodes[7].saturation_A = 0.0; // burnt open
        }
        solver.solve(circuit, {}, true, warm);
        solver.solve(circuit, {}, false, cold);
        const Solution fresh = solve_operating_point(circuit);
        REQUIRE((warm.ok() && cold.ok() && fresh.ok()));
        for (std::size_t i = 0; i < 12; ++i) {
            REQUIRE(warm.diode_A[i] == Approx(fresh.diode_A[i]).epsilon(1e-9).margin(1e-18));
            REQUIRE(cold.diode_A[i] == fresh.diode_A[i]);
        }
    }
}

TEST_CASE("A prepared solve allocates nothing", "[circuit]") {
    Circuit circuit = make::ladder(40, make::red);
    PreparedSolver solver(circuit);
    Solution out;
    solver.solve(circuit, {}, false, out);
    const int before = allocations;
    for (int step = 0; step < 10; ++step) {
        circuit.cells[0].open_V = 3.0 - 0.05 * step;
        solver.solve(circuit, {}, step % 2 == 0, out);
    }
    const int after = allocations;
    CHECK(after == before);
#ifndef __SANITIZE_ADDRESS__
    CHECK(before > 0); // the counter does count
#endif
}

TEST_CASE("A prepared solver can be moved", "[circuit]") {
    const Circuit circuit = make::ladder(2, make::red);
    PreparedSolver first(circuit);
    PreparedSolver second(std::move(first));
    PreparedSolver third(make::ladder(3, make::red));
    third = std::move(second);
    Solution out;
    third.solve(circuit, {}, false, out);
    CHECK(out.ok());
}

TEST_CASE("Steps do not grow with the number of LEDs, nor with their mixture", "[circuit]") {
    for (const int count : {1, 12, 100, 1000}) {
        CHECK(solve_operating_point(make::ladder(count, make::white)).iterations <= 10);
        CHECK(solve_operating_point(make::ladder(count, make::red)).iterations <= 10);
        Circuit mixed = make::ladder(count, make::red);
        for (std::size_t i = 0; i < mixed.diodes.size(); i += 2) {
            mixed.diodes[i] = make::blue(mixed.diodes[i].anode, mixed.diodes[i].cathode);
        }
        const Solution solution = solve_operating_point(mixed);
        CHECK(solution.ok());
        CHECK(solution.iterations <= 15);
    }
}
