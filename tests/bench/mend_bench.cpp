// Finding the fault: random cards with one fault drawn from the priors, answers wrong one time in ten. Counts
// tests and seconds until one cause stands out, against the same tests in the usual order and at random.
//
// The answers come from the same simulation as the search, except that a weak contact has 0.5 to 8 times the
// ohms the search supposes. So this measures the choice of tests and the weighing of answers, not how true
// the chances are that a look or a press shows a fault. Tapping all the lights counts as one test of 4 s
// and 1.5 s a light; other seconds are those that the tests state. Leaves with status 1 when a mark is
// missed.
#include "mend_maker.h"

#include <cstdio>
#include <ctime>

using namespace lanternleaf;
using namespace lanternleaf::bench;

namespace {

constexpr double kSure = 0.93; ///< a cause is named from here on
constexpr int kMostTests = 60;
constexpr int kCards = 200;      ///< for the orders to compare with
constexpr int kBestCards = 1000; ///< leave 0.7 % of chance in a share of 95 %

// Processor time: what the work takes, however busy the machine is.
double ms_since(std::clock_t from) {
    return 1e3 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC;
}

enum class Order { best, usual, random };

struct Tally {
    double tests = 0.0;
    double seconds = 0.0;
    int right = 0;
    int runs = 0;
    double first_ms = 0.0; ///< from nothing to causes and the first test
    double choose_ms = 0.0;
    double observe_ms = 0.0;
    double worst_first_ms = 0.0;
    int choices = 0;
};

bool can_do(const MendTest& test, const MendTools& tools) {
    return test.needs != TestNeeds::meter || tools.meter;
}

void search(const Card& card, const Parts& parts, unsigned seed, Order order, const MendTools& tools,
            Tally& tally) {
    std::mt19937 random(seed);
    auto from = std::clock();
    MendSession session = start_mend(card, parts);
    double first_ms = ms_since(from);
    const int truth = draw_fault(random, session.model->faults);
    const int cause = session.model->faults[static_cast<std::size_t>(truth)].cause;
    Maker maker(session, {truth}, random);

    double seconds = 4.0 + 1.5 * static_cast<double>(card.leds.size());
    int tests = 1; // the lights, tapped one after the other
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        const Look look = maker.look_at(i);
        from = std::clock();
        session = observe(session, SeenLight{card.leds[i].id, look}).value();
        const double took = ms_since(from);
        tally.observe_ms = std::max(tally.observe_ms, took);
        if (i == 0) {
            first_ms += took;
        }
    }
    std::size_t next = 0;
    std::vector<CauseChance> chances = cause_chances(session);
    while (tests < kMostTests && chances.front().probability < kSure) {
        int test = -1;
        if (order == Order::best) {
            from = std::clock();
            const std::optional<MendTest> chosen = next_test(session, tools);
            const double took = ms_since(from);
            tally.choose_ms += took;
            ++tally.choices;
            if (tests == 1) {
                first_ms += took;
            }
            if (!chosen) {
                break;
            }
            test = static_cast<int>(find_test(*session.model, chosen->id) - session.model->tests.data());
        } else {
            const std::size_t all = session.model->tests.size();
            do {
                test = static_cast<int>(order == Order::usual ? next++ % all : random() % all);
            } while (!can_do(session.model->tests[static_cast<std::size_t>(test)], tools));
        }
        MendTest live = order == Order::best ? live_test(session, test)
                                             : session.model->tests[static_cast<std::size_t>(test)];
        ++tests;
        seconds += effort_of(live);
        const int told = maker.answer(live, test);
        session = observe(session, TestAnswer{live.id, told}).value();
        chances = cause_chances(session);
    }
    tally.tests += tests;
    tally.seconds += seconds;
    tally.right += chances.front().a == cause && chances.front().b < 0 ? 1 : 0;
    tally.first_ms += first_ms;
    tally.worst_first_ms = std::max(tally.worst_first_ms, first_ms);
    ++tally.runs;
}

Tally measure(int lights, Order order, const MendTools& tools, int cards) {
    const Parts parts = make::test_parts();
    Tally tally;
    for (int c = 0; c < cards; ++c) {
        std::mt19937 random(static_cast<unsigned>(1000 * lights + c));
        const Card card = make::random_rows(lights, random);
        search(card, parts, static_cast<unsigned>(7000 * lights + c), order, tools, tally);
    }
    return tally;
}

} // namespace

int main() {
    bool missed = false;
    const auto mark = [&](const char* what, double value, double limit, bool below) {
        if (below ? value >= limit : value < limit) {
            std::printf("missed: %s is %.2f, the mark is %.2f\n", what, value, limit);
            missed = true;
        }
    };

    struct Way {
        const char* name;
        Order order;
        bool meter;
    };

    constexpr Way kWays[] = {{"best, no meter", Order::best, false},
                             {"best, meter", Order::best, true},
                             {"usual order", Order::usual, false},
                             {"random order", Order::random, false}};
    for (const int lights : {3, 6, 12}) {
        for (const Way& way : kWays) {
            MendTools tools;
            tools.meter = way.meter;
            const Tally t = measure(lights, way.order, tools, way.order == Order::best ? kBestCards : kCards);
            const double n = t.runs;
            std::printf("%2d lights, %-14s %5.1f tests %6.0f s %5.1f %% right", lights, way.name, t.tests / n,
                        t.seconds / n, 100.0 * t.right / n);
            if (way.order != Order::best) {
                std::printf("\n");
                continue;
            }
            std::printf("; first answer %.1f ms (worst %.1f), choosing %.3f ms, a tap at worst %.1f ms\n",
                        t.first_ms / n, t.worst_first_ms, t.choose_ms / t.choices, t.observe_ms);
            if (lights == 12) {
                mark("tests at 12 lights", t.tests / n, 10.0, true);
                mark("seconds at 12 lights", t.seconds / n, 120.0, true);
                mark("first answer in ms", t.first_ms / n, 10.0, true);
                mark("choosing in ms", t.choose_ms / t.choices, 1.0, true);
            }
            mark("share named right, %", 100.0 * t.right / n, 95.0, false);
        }
    }
    return missed ? 1 : 0;
}
