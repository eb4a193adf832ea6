// The top bar at every size of text: its targets stand side by side, whole and in the window.
#include "table.h"

using namespace lanternleaf;

TEST_CASE("nothing in the top bar lies over its neighbour, at any size of text", "[frame]") {
    for (const Size size :
         {Size{1180, 820}, Size{1024, 700}, Size{1600, 1000}, Size{820, 1180}, Size{390, 844}}) {
        for (const double scale : {0.85, 1.0, 1.25, 1.5, 2.0}) {
            const OwnFolder library;
            Table table(library.path(), size);
            table.app.state.settings.text_scale = scale;
            table.fingers.look.text_scale = static_cast<float>(scale);
            table.fingers.frame(3);
            INFO(size.w << " x " << size.h << " at " << scale);
            std::vector<Target> bar;
            for (const Target& target : table.fingers.targets().all()) {
                if (target.name.starts_with("nav/") || target.name == "safety" || target.name == "settings") {
                    bar.push_back(target);
                }
            }
            REQUIRE(bar.size() >= 2);
            for (const Target& target : bar) {
                INFO(target.name);
                CHECK(target.rect.x >= 0);
                CHECK(target.rect.right() <= size.w + 0.5f);
                for (const Target& other : bar) {
                    const bool apart = other.name == target.name ||
                                       other.rect.right() <= target.rect.x + 0.5f ||
                                       target.rect.right() <= other.rect.x + 0.5f;
                    INFO(other.name);
                    CHECK(apart);
                }
            }
        }
    }
}
