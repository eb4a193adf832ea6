// Batch board: who is where and who needs help first, over all builds of a batch. A pure function of the
// batch and of how far its builds are, so that every device that shares the folder shows the same.
#pragma once

#include "batch/batch.h"
#include "batch/progress.h"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace lanternleaf {

/// In the order in which the rows stand.
enum class BuilderState {
    stopped,   ///< a step did not prove: needs help
    at_work,   ///< something was confirmed within kPause_s (history/timeline.h)
    resting,   ///< nothing for longer than that
    not_begun, ///< joined, but nothing is begun
    done,
};

struct BuilderRow {
    std::string maker; ///< nickname as in the journals; empty: not told
    std::string shown; ///< what is shown for it; empty: not told
    int card = 1;      ///< which build of this batch, in the order begun; 0 while not begun
    std::string build; ///< the build's id; empty while not begun
    BuilderState state = BuilderState::not_begun;
    int step = 1;               ///< the open one; 8: all closed
    std::int64_t stopped_s = 0; ///< since when, when stopped
    std::int64_t last_s = 0;
    std::int64_t worked_s = 0;
    /// How much longer this build took than the others of the batch on the same steps; below 0: less.
    std::int64_t behind_s = 0;
    bool first_pass = true; ///< nothing was stopped or passed regardless so far
    bool cell_in = false;
    std::array<bool, kStepCount> closed{};
    std::array<bool, kStepCount> regardless{};
};

struct BatchStep {
    int closed = 0;            ///< builds that closed it
    int first_pass = 0;        ///< of those
    std::int64_t median_s = 0; ///< worked time of those; of an even number the lower of the two
};

struct BatchBoard {
    std::vector<BuilderRow> rows; ///< who needs help first stands first
    int stopped = 0;
    int at_work = 0;
    int resting = 0;
    int not_begun = 0; ///< cards of the batch that nobody has begun
    int done = 0;
    int begun = 0;
    int first_pass = 0; ///< of `done`: every step passed at first. First-pass yield = first_pass / done
    std::int64_t median_build_s = 0;
    CellBalance cells;
    std::array<BatchStep, kStepCount> steps{};
};

/// Builds that were abandoned are left out. Stopped rows stand first, the longest stopped foremost; then
/// those at work, the furthest behind the others foremost; then resting, the longest foremost; then those who
/// have not begun, in the order they joined; then the done ones, the last foremost.
[[nodiscard]] BatchBoard board_of(const Batch& batch, std::vector<BuildProgress> builds, std::int64_t now_s);

} // namespace lanternleaf
