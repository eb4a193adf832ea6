#include "circuit/solve.h"

#include "base/tolerance.h"
#include "circuit/newton.h"

#include <algorithm>
#include <cassert>
#include <limits>
#include <utility>

namespace lanternleaf {

namespace {

// The quick iteration needs 4 to 8 steps on real cards; one that has taken this many is going in a circle.
constexpr int kQuickSteps = 30;

void run(Newton& newton, const Circuit& circuit, const SolveOptions& options, bool warm, Solution& out) {
    newton.load(circuit, options.thermal_V);
    if (!options.start_V.empty()) {
        newton.start_from(circuit, options.start_V, {});
    } else if (warm && out.node_V.size() == static_cast<std::size_t>(circuit.node_count)) {
        newton.start_from(circuit, out.node_V, out.diode_A);
    } else {
        newton.start_cold(circuit);
    }
    out.iterations = 0;
    out.exit = newton.limited_newton(options, std::min(kQuickSteps, options.most_iterations), out.iterations);
    newton.read_off(circuit, out);
    if (out.exit == SolveExit::iteration_limit && out.iterations < options.most_iterations) {
        out.exit = newton.descend(circuit, options, out.node_V, options.most_iterations, out.iterations);
        newton.read_off(circuit, out);
    }
}

} // namespace

Solution solve_operating_point(const Circuit& circuit, const SolveOptions& options) {
    Newton newton(circuit);
    Solution solution;
    run(newton, circuit, options, false, solution);
    return solution;
}

struct PreparedSolver::Workspace {
    Newton newton;
};

PreparedSolver::PreparedSolver(const Circuit& circuit) : workspace_(new Workspace{Newton(circuit)}) {}

PreparedSolver::~PreparedSolver() {
    delete workspace_;
}

PreparedSolver::PreparedSolver(PreparedSolver&& other) noexcept
    : workspace_(std::exchange(other.workspace_, nullptr)) {}

PreparedSolver& PreparedSolver::operator=(PreparedSolver&& other) noexcept {
    std::swap(workspace_, other.workspace_);
    return *this;
}

void PreparedSolver::solve(const Circuit& circuit, const SolveOptions& options, bool warm, Solution& out) {
    assert(workspace_ != nullptr);
    run(workspace_->newton, circuit, options, warm, out);
}

} // namespace lanternleaf
