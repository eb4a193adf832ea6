#include "numeric/elimination_order.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>
#include <set>

using namespace lanternleaf;

namespace {

std::vector<NodeLink> random_links(int nodes, int count, unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> any(kGround, nodes - 1);
    std::vector<NodeLink> links;
    for (int i = 0; i < count; ++i) {
        links.push_back({any(random), any(random)});
    }
    return links;
}

/// The pattern by the book: sets of neighbours, each elimination joining all that are left.
std::vector<std::set<int>> pattern_by_the_book(int nodes, const std::vector<NodeLink>& links,
                                               const EliminationOrder& order) {
    std::vector<std::set<int>> near(static_cast<std::size_t>(nodes));
    for (const NodeLink& link : links) {
        if (link.a >= 0 && link.b >= 0 && link.a != link.b) {
            const int a = order.position_of[static_cast<std::size_t>(link.a)];
            const int b = order.position_of[static_cast<std::size_t>(link.b)];
            near[static_cast<std::size_t>(a)].insert(b);
            near[static_cast<std::size_t>(b)].insert(a);
        }
    }
    for (int k = 0; k < nodes; ++k) {
        std::set<int>& mine = near[static_cast<std::size_t>(k)];
        mine.erase(mine.begin(), mine.lower_bound(k));
        for (const int i : mine) {
            for (const int j : mine) {
                if (i != j) {
                    near[static_cast<std::size_t>(i)].insert(j);
                }
            }
        }
    }
    return near;
}

} // namespace

TEST_CASE("The pattern is the one elimination makes", "[numeric]") {
    for (unsigned seed = 0; seed < 60; ++seed) {
        const int nodes = 1 + static_cast<int>(seed % 37);
        const auto links = random_links(nodes, nodes * (1 + static_cast<int>(seed % 5)), seed);
        const int first_moving = static_cast<int>(links.size() * (seed % 4) / 3);
        const EliminationOrder order =
            find_elimination_order(nodes, links, std::min<int>(first_moving, static_cast<int>(links.size())));
        std::vector<int> seen = order.position_of;
        std::sort(seen.begin(), seen.end());
        for (int i = 0; i < nodes; ++i) {
            REQUIRE(seen[static_cast<std::size_t>(i)] == i);
        }
        const auto book = pattern_by_the_book(nodes, links, order);
        for (std::size_t k = 0; k < static_cast<std::size_t>(nodes); ++k) {
            const std::vector<int> rows(order.rows.begin() + order.column_start[k],
                                        order.rows.begin() + order.column_start[k + 1]);
            REQUIRE(rows == std::vector<int>(book[k].begin(), book[k].end()));
        }
    }
}

TEST_CASE("Still positions hang on no moving link", "[numeric]") {
    for (unsigned seed = 100; seed < 130; ++seed) {
        const int nodes = 30;
        const auto links = random_links(nodes, 45, seed);
        const int first_moving = 38;
        const EliminationOrder order = find_elimination_order(nodes, links, first_moving);
        // Everything a moving link touches, and everything eliminated into from there, is not still.
        std::vector<char> moves(30, 0);
        for (std::size_t i = first_moving; i < links.size(); ++i) {
            for (const int node : {links[i].a, links[i].b}) {
                if (node >= 0 && links[i].a != links[i].b) {
                    moves[static_cast<std::size_t>(order.position_of[static_cast<std::size_t>(node)])] = 1;
                }
            }
        }
        for (std::size_t k = 0; k < 30; ++k) {
            for (int r = order.column_start[k]; moves[k] != 0 && r < order.column_start[k + 1]; ++r) {
                moves[static_cast<std::size_t>(order.rows[static_cast<std::size_t>(r)])] = 1;
            }
        }
        for (int k = 0; k < nodes; ++k) {
            CHECK((moves[static_cast<std::size_t>(k)] == 0) == (k < order.still_count));
        }
    }
}

TEST_CASE("Each part without ground is named once", "[numeric]") {
    // 0-1-2 tied to ground at 1; 3-4 not; 5 alone; 6 tied to ground only.
    const std::vector<NodeLink> links = {{0, 1}, {1, 2}, {1, kGround}, {3, 4}, {kGround, 6}};
    const EliminationOrder order = find_elimination_order(7, links, 5);
    REQUIRE(order.ungrounded.size() == 2);
    std::set<int> nodes;
    for (int node = 0; node < 7; ++node) {
        if (std::find(order.ungrounded.begin(), order.ungrounded.end(),
                      order.position_of[static_cast<std::size_t>(node)]) != order.ungrounded.end()) {
            nodes.insert(node);
        }
    }
    CHECK(nodes.count(5) == 1);
    CHECK(nodes.count(3) + nodes.count(4) == 1);
}

TEST_CASE("A tree makes no new link, a ladder at most one a rung", "[numeric]") {
    std::mt19937 random(7);
    std::vector<NodeLink> tree;
    for (int i = 1; i < 5000; ++i) {
        // Half long chains, half hubs.
        const int to =
            i % 2 == 0 ? i - 1 : std::uniform_int_distribution<int>(0, std::min(i - 1, 40))(random);
        tree.push_back({i, to});
    }
    CHECK(find_elimination_order(5000, tree, static_cast<int>(tree.size())).rows.size() == tree.size());

    std::vector<NodeLink> ladder;
    for (int i = 0; i < 1000; ++i) {
        ladder.push_back({2 * i, 2 * i + 1});
        if (i > 0) {
            ladder.push_back({2 * i, 2 * i - 2});
            ladder.push_back({2 * i + 1, 2 * i - 1});
        }
    }
    CHECK(find_elimination_order(2000, ladder, 0).rows.size() <= ladder.size() + 1000);
}
