// Soak: random hands on every screen. Whatever is tapped, dragged, pinched or typed, the app draws on, its
// state can be saved and read again, and what it keeps on the way does not grow without end.
//
// LANTERNLEAF_SOAK=N sets how many things are done at each size (5000 for a long look, with the sanitizers).
#include "table.h"

#include "model/library.h"

#include <random>

using namespace lanternleaf;

namespace {

int acts_to_do() {
    const char* wanted = std::getenv("LANTERNLEAF_SOAK");
    return wanted == nullptr ? 100 : std::atoi(wanted);
}

class Hands {
public:
    Hands(Table& table, unsigned seed) : table_(table), random_(seed) {}

    void act() {
        HeadlessApp& fingers = table_.fingers;
        const int dice = below(100);
        if (dice < 72) {
            tap_a_target();
        } else if (dice < 82) {
            const Point from = anywhere();
            const Point to = anywhere();
            fingers.pointer(PointerSample::Phase::Down, from);
            fingers.frame();
            for (int i = 1; i <= 4; ++i) {
                fingers.pointer(PointerSample::Phase::Move, from + (to - from) * (static_cast<float>(i) / 4));
                fingers.frame();
            }
            fingers.pointer(below(8) == 0 ? PointerSample::Phase::Cancel : PointerSample::Phase::Up, to);
        } else if (dice < 86) {
            fingers.pinch(anywhere(), 60, below(2) == 0 ? 160.0f : 20.0f);
        } else if (dice < 90) {
            fingers.wheel(anywhere(), below(2) == 0 ? 3.0f : -3.0f);
        } else if (dice < 94) {
            fingers.type(below(2) == 0 ? "3.5" : "Fern");
        } else if (dice < 97) {
            constexpr Key kKeys[] = {Key::Enter, Key::Escape, Key::Tab, Key::Left, Key::Down, Key::Space};
            fingers.key(kKeys[below(6)]);
        } else if (dice < 98) {
            fingers.rotate();
        } else {
            fingers.skip(3.0);
        }
        table_.now_s += 2;
        fingers.frame(2);
    }

private:
    int below(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }

    Point anywhere() {
        const Size window = table_.fingers.input().window;
        return {window.w * static_cast<float>(below(1000)) / 1000,
                window.h * static_cast<float>(below(1000)) / 1000};
    }

    void tap_a_target() {
        std::vector<std::string> names;
        for (const Target& target : table_.fingers.targets().all()) {
            if (!is_container(target.role) && target.role != Role::Note && target.enabled &&
                table_.fingers.targets().reachable(target)) {
                names.push_back(target.name);
            }
        }
        if (names.empty()) {
            table_.fingers.tap_at(anywhere());
            return;
        }
        const std::string& name = names[static_cast<std::size_t>(below(static_cast<int>(names.size())))];
        if (name == "notice/adult") {
            table_.fingers.hold(name, 4.3);
        } else {
            table_.fingers.tap(name);
        }
    }

    Table& table_;
    std::mt19937 random_;
};

} // namespace

TEST_CASE("random hands on every screen break nothing", "[frame][soak]") {
    const int acts = acts_to_do();
    unsigned seed = 11;
    for (const Size size : {Size{1180, 820}, Size{820, 1180}, Size{390, 844}}) {
        const OwnFolder library;
        Table table(library.path(), size);
        table.fingers.frame(3);
        Hands hands(table, ++seed);
        bool seen[5] = {};
        for (int i = 0; i < acts; ++i) {
            INFO(size.w << " x " << size.h << ", act " << i);
            // So that all five places get their share: hands wander off, and are put back now and then.
            if (i % (acts / 5 + 1) == 0 && table.app.state.notice == Notice::none) {
                const auto place = static_cast<Place>(i / (acts / 5 + 1) % 5);
                update(table.app.state, table.app.around, command::GoTo{place});
                table.fingers.frame(2);
            }
            hands.act();
            seen[static_cast<int>(table.app.state.place)] = true;
            REQUIRE(table.fingers.targets().all().size() < 2000);
            REQUIRE(table.app.state.to_give.empty());
        }
        for (const bool place : seen) {
            CHECK(place);
        }
        // What was built and drawn is read again by a second start.
        Table again(library.path(), size);
        for (const ShelfBuild& build : again.app.state.builds) {
            INFO(build.path);
            CHECK(build.trouble.empty());
        }
        for (const ShelfCard& card : again.app.state.cards) {
            INFO(card.path);
            CHECK(card.trouble.empty());
        }
    }
}
