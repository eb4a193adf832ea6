// Finding two faults at once: random cards with two faults drawn from the priors, answers wrong one time in
// ten. A search that names both is right at once; one that names one of the two is right when, that one
// mended, a second search on the mended card names the other. Leaves with status 1 when the mark is missed.
#include "mend_maker.h"

#include <cstdio>

using namespace lanternleaf;
using namespace lanternleaf::bench;

namespace {

constexpr double kSure = 0.93;
constexpr int kMostTests = 60;
constexpr int kCards = 300;

struct Search {
    CauseChance named;
    int tests = 1; ///< the lights, tapped one after the other
    double seconds = 0.0;
};

Search search(MendSession session, Maker& maker) {
    Search done;
    const std::vector<Led> leds = session.model->card.leds;
    done.seconds = 4.0 + 1.5 * static_cast<double>(leds.size());
    for (std::size_t i = 0; i < leds.size(); ++i) {
        session = observe(session, SeenLight{leds[i].id, maker.look_at(i)}).value();
    }
    std::vector<CauseChance> chances = cause_chances(session);
    while (done.tests < kMostTests && chances.front().probability < kSure) {
        const std::optional<MendTest> test = next_test(session, {});
        if (!test) {
            break;
        }
        const int index = static_cast<int>(find_test(*session.model, test->id) - session.model->tests.data());
        ++done.tests;
        done.seconds += effort_of(*test);
        session = observe(session, TestAnswer{test->id, maker.answer(*test, index)}).value();
        chances = cause_chances(session);
    }
    done.named = chances.front();
    return done;
}

struct Tally {
    int both = 0;  ///< named together
    int first = 0; ///< one of the two named
    int right = 0; ///< both named in the end
    double tests = 0.0;
    double seconds = 0.0;
};

void run(const Card& card, const Parts& parts, unsigned seed, Tally& tally) {
    std::mt19937 random(seed);
    const MendSession start = start_mend(card, parts);
    const std::vector<Fault>& faults = start.model->faults;
    const auto fault = [&](int f) -> const Fault& { return faults[static_cast<std::size_t>(f)]; };
    const int a = draw_fault(random, faults);
    int b = a;
    while (fault(b).cause == fault(a).cause || fault(b).place == fault(a).place) {
        b = draw_fault(random, faults);
    }
    Maker maker(start, {a, b}, random);
    const Search one = search(start, maker);
    tally.tests += one.tests;
    tally.seconds += one.seconds;
    const int low = std::min(fault(a).cause, fault(b).cause);
    const int high = std::max(fault(a).cause, fault(b).cause);
    if (one.named.a == low && one.named.b == high) {
        ++tally.both;
        ++tally.right;
        return;
    }
    if (one.named.b >= 0 || (one.named.a != low && one.named.a != high)) {
        return;
    }
    ++tally.first;
    const int left = fault(a).cause == one.named.a ? b : a;
    Maker again(start, {left}, random);
    const Search two = search(start, again);
    tally.tests += two.tests;
    tally.seconds += two.seconds;
    tally.right += two.named.a == fault(left).cause && two.named.b < 0 ? 1 : 0;
}

} // namespace

int main() {
    bool missed = false;
    const Parts parts = make::test_parts();
    for (const int lights : {6, 12}) {
        Tally tally;
        for (int c = 0; c < kCards; ++c) {
            std::mt19937 random(static_cast<unsigned>(500 * lights + c));
            const Card card = make::random_rows(lights, random);
            run(card, parts, static_cast<unsigned>(9000 * lights + c), tally);
        }
        const double n = kCards;
        std::printf("%2d lights, two faults: %5.1f tests %5.0f s; both named %.1f %%: together %.1f %%, one "
                    "after the other from %.1f %%\n",
                    lights, tally.tests / n, tally.seconds / n, 100.0 * tally.right / n,
                    100.0 * tally.both / n, 100.0 * tally.first / n);
        missed = missed || 100.0 * tally.right / n < 87.0;
    }
    if (missed) {
        std::printf("missed: both faults named, %%: the mark is 87\n");
    }
    return missed ? 1 : 0;
}
