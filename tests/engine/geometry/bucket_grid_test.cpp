// The grid must find exactly what testing every box finds, whatever the sizes.
#include "geometry/bucket_grid.h"

#include <catch2/catch.hpp>

#include <random>

using namespace lanternleaf;

TEST_CASE("the grid finds what a test of every box finds", "[bucket_grid]") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> place(-50, 250);
    std::uniform_real_distribution<double> size(0, 20);
    for (const int count : {0, 1, 20, 59, 60, 300, 1500}) {
        std::vector<Box> boxes;
        for (int i = 0; i < count; ++i) {
            const Vec2 at{place(random), place(random) / 3};
            const double longer = i % 17 == 0 ? 10.0 : 1.0;
            boxes.push_back({at, at + Vec2{size(random) * longer, size(random)}});
        }
        if (count > 5) {
            boxes[3] = Box{}; // an empty box is never found
        }
        const BucketGrid grid(boxes);
        std::vector<int> found;
        for (int round = 0; round < 50; ++round) {
            const Vec2 at{place(random), place(random)};
            const Box box{at, at + Vec2{size(random) * 3, size(random) * 3}};
            std::vector<int> expected;
            for (int i = 0; i < count; ++i) {
                if (boxes[static_cast<std::size_t>(i)].touches(box)) {
                    expected.push_back(i);
                }
            }
            grid.find(box, found);
            CHECK(found == expected);
        }
    }
}

TEST_CASE("boxes all in one place or on one line", "[bucket_grid]") {
    std::vector<Box> boxes(100, Box{{5, 5}, {5, 5}});
    std::vector<int> found;
    BucketGrid(boxes).find(Box{{5, 5}, {6, 6}}, found);
    CHECK(found.size() == 100);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        boxes[i] = Box{{static_cast<double>(i), 0}, {static_cast<double>(i) + 0.5, 0}};
    }
    BucketGrid(boxes).find(Box{{10, -1}, {12, 1}}, found);
    CHECK(found == std::vector<int>{10, 11, 12});
    BucketGrid(boxes).find(Box{}, found);
    CHECK(found.empty());
}
