// A library of 10,000 builds: how long the shelf takes to list them, against only reading all their bytes,
// and how much memory it takes beyond the list itself. Files are warm: they have just been written.
#include "files/files.h"
#include "model/library.h"
#include "record/journal.h"

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <sys/resource.h>
#include <unistd.h>

using namespace lanternleaf;

namespace {

constexpr int kBuilds = 10'000;
constexpr double kMost_s = 1.0;
constexpr double kMostGrown_mb = 32.0; ///< the list itself is about 8 MB

double now_s() {
    return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

double peak_mb() {
    rusage use{};
    getrusage(RUSAGE_SELF, &use);
    return static_cast<double>(use.ru_maxrss) / 1024.0;
}

// A whole journal of the demo card, as the app writes it, and where its id stands.
std::string whole_journal(const Surroundings& around) {
    Outcome<std::string> path = start_build(around, around.assets + "/cards/harbour-lighthouse.card.json",
                                            Audience::adults, AudienceChoice{});
    if (!path) {
        return "";
    }
    ShelfBuild shelf;
    shelf.path = path.value();
    Outcome<OpenBuild> build = take_up_build(around, shelf);
    while (build && build.value().record.step <= kStepCount) {
        const int step = build.value().record.step;
        // A copy: every confirmed move derives the steps afresh.
        const std::vector<Move> moves = build.value().steps[static_cast<std::size_t>(step - 1)].moves;
        for (const Move& move : moves) {
            if (!confirm(around, build.value(), event_at(0, EventKind::move_done, step, move.id))) {
                return "";
            }
        }
        Event proved = event_at(0, EventKind::verdict, step, "as it should be");
        proved.state = VerdictState::proved;
        if (!confirm(around, build.value(), proved)) {
            return "";
        }
    }
    const Outcome<std::string> text = read_file(path.value());
    std::filesystem::remove(path.value());
    return text ? text.value() : "";
}

} // namespace

int main() {
    Surroundings around;
    around.assets = std::string(LANTERNLEAF_SOURCE) + "/assets";
    around.library =
        (std::filesystem::temp_directory_path() / ("lanternleaf-bench-" + std::to_string(::getpid())))
            .string();
    around.now_s = 1'780'000'000;
    Outcome<Parts> parts = load_parts(around.assets);
    if (!parts || !make_folder(around.library)) {
        return 2;
    }
    around.shipped = std::move(parts).value();
    const std::string journal = whole_journal(around);
    if (journal.empty()) {
        return 2;
    }
    const std::string id = "harbour-lighthouse-20260528-202640";
    for (int i = 0; i < kBuilds; ++i) {
        const std::string name = id + "-" + std::to_string(i + 2);
        std::string text = journal;
        // Builds at every stage: each file ends after another whole line.
        const std::size_t upto = text.size() * static_cast<std::size_t>(30 + i % 71) / 100;
        text.resize(text.rfind('\n', upto) + 1);
        std::ofstream(around.library + "/builds/" + name + ".build.jsonl", std::ios::binary) << text;
    }
    const double before_mb = peak_mb();
    double start = now_s();
    std::size_t bytes = 0;
    for (const std::string& file : files_in(around.library + "/builds", ".build.jsonl")) {
        bytes += read_file(around.library + "/builds/" + file).value().size();
    }
    const double reading_s = now_s() - start;
    start = now_s();
    const std::vector<ShelfBuild> builds = list_builds(around);
    const double listing_s = now_s() - start;
    const double grown_mb = peak_mb() - before_mb;
    std::size_t troubled = 0;
    for (const ShelfBuild& build : builds) {
        troubled += build.trouble.empty() ? 0U : 1U;
    }
    std::filesystem::remove_all(around.library);
    std::printf("library: %zu builds, %.0f MB of journals\n", builds.size(),
                static_cast<double>(bytes) / 1e6);
    std::printf("  reading all the bytes  %.3f s\n", reading_s);
    std::printf("  listing the builds     %.3f s (%.2f x), at most %.1f s\n", listing_s,
                listing_s / reading_s, kMost_s);
    std::printf("  peak memory grew by    %.1f MB, at most %.0f MB\n", grown_mb, kMostGrown_mb);
    if (builds.size() != kBuilds || troubled != 0) {
        std::printf("  %zu builds could not be listed\n", troubled);
        return 1;
    }
    return listing_s <= kMost_s && grown_mb <= kMostGrown_mb ? 0 : 1;
}
