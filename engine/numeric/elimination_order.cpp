#include "numeric/elimination_order.h"

#include <algorithm>
#include <cassert>

namespace lanternleaf {

namespace {

/// The network while it is being eliminated: neighbour lists as chains through one pool, and the nodes in
/// buckets by degree. Entries of eliminated nodes are dropped when a chain is next walked, never searched
/// for.
class ShrinkingGraph {
public:
    ShrinkingGraph(int node_count, std::span<const NodeLink> links, int first_moving)
        : node_count_(node_count), scratch_(static_cast<std::size_t>(node_count) * kPerNode, -1) {
        first_ = take(0), degree_ = take(1), eliminated_ = take(2), mark_ = take(3), moving_ = take(4);
        before_ = take(5), after_ = take(6), bucket_ = take(7), bucket_end_ = take(8);
        std::fill_n(degree_, node_count, 0);
        std::fill_n(moving_, node_count, 0);
        pool_.reserve(2 * links.size() + static_cast<std::size_t>(node_count));
        for (std::size_t i = 0; i < links.size(); ++i) {
            const auto [a, b] = links[i];
            assert(a >= kGround && a < node_count && b >= kGround && b < node_count);
            if (a >= 0 && b >= 0 && a != b) {
                join(a, b);
            }
            if (static_cast<int>(i) >= first_moving && a != b) {
                if (a >= 0) {
                    moving_[a] = 1;
                }
                if (b >= 0) {
                    moving_[b] = 1;
                }
            }
        }
        for (int node = 0; node < node_count; ++node) {
            put_in_bucket(node);
        }
    }

    [[nodiscard]] bool moving(int node) const { return moving_[node] != 0; }

    /// Takes the node of least degree out and appends its neighbours to `rows`.
    int eliminate_next(std::vector<int>& rows) {
        while (bucket_[least_] < 0) {
            ++least_;
        }
        const int node = bucket_[least_];
        take_from_bucket(node);
        eliminated_[node] = 1;
        const std::size_t begin = rows.size();
        for (int e = first_[node]; e >= 0; e = pool_[at(e)].next) {
            const int other = pool_[at(e)].to;
            if (eliminated_[other] < 0) {
                if (mark_[other] != node) {
                    mark_[other] = node;
                    rows.push_back(other);
                    take_from_bucket(other);
                }
                --degree_[other];
            }
        }
        const std::span<const int> around(rows.data() + begin, rows.size() - begin);
        if (around.size() > kFewNeighbours) {
            join_all_marked(around);
        } else {
            join_all_searched(around);
        }
        for (const int other : around) {
            moving_[other] |= moving_[node];
            put_in_bucket(other);
        }
        return node;
    }

private:
    struct Entry {
        int to;
        int next;
    };

    static constexpr std::size_t kPerNode = 9;
    static constexpr std::size_t kFewNeighbours = 6;

    static std::size_t at(int i) { return static_cast<std::size_t>(i); }

    int* take(int part) { return scratch_.data() + at(part) * at(node_count_); }

    void join(int a, int b) {
        pool_.push_back({b, first_[a]});
        first_[a] = static_cast<int>(pool_.size()) - 1;
        pool_.push_back({a, first_[b]});
        first_[b] = static_cast<int>(pool_.size()) - 1;
        ++degree_[a];
        ++degree_[b];
    }

    // Few neighbours: look each pair up in the shorter of the two chains, so that a hub is never walked for a
    // twig.
    void join_all_searched(std::span<const int> around) {
        for (std::size_t i = 0; i < around.size(); ++i) {
            for (std::size_t j = i + 1; j < around.size(); ++j) {
                const bool i_shorter = degree_[around[i]] < degree_[around[j]];
                const int walked = i_shorter ? around[i] : around[j];
                const int sought = i_shorter ? around[j] : around[i];
                bool found = false;
                walk(walked, [&](int other) {
                    found = other == sought;
                    return !found;
                });
                if (!found) {
                    join(walked, sought);
                }
            }
        }
    }

    // Many neighbours: mark one chain, then one look per pair.
    void join_all_marked(std::span<const int> around) {
        for (std::size_t i = 0; i < around.size(); ++i) {
            const int stamp = next_stamp_++;
            walk(around[i], [&](int other) {
                mark_[other] = stamp;
                return true;
            });
            for (std::size_t j = i + 1; j < around.size(); ++j) {
                if (mark_[around[j]] != stamp) {
                    join(around[i], around[j]);
                }
            }
        }
    }

    /// Walks the living neighbours while `go_on` says so, unlinking the eliminated ones on the way.
    template <class GoOn>
    void walk(int node, GoOn go_on) {
        int* link = &first_[node];
        while (*link >= 0) {
            Entry& entry = pool_[at(*link)];
            if (eliminated_[entry.to] >= 0) {
                *link = entry.next;
                continue;
            }
            if (!go_on(entry.to)) {
                return;
            }
            link = &entry.next;
        }
    }

    // The key is twice the degree, plus one for nodes of a moving link: those wait at equal degree. Chained
    // links can count one neighbour twice, so the degree is an upper bound; beyond the last bucket the order
    // matters little.
    [[nodiscard]] int key(int node) const {
        return std::min(2 * degree_[node] + moving_[node], node_count_ - 1);
    }

    // First in, first out: a chain is then eaten from all its ends at once, and work on one end need not wait
    // for the figures of another.
    void put_in_bucket(int node) {
        const int k = key(node);
        after_[node] = -1;
        before_[node] = bucket_[k] >= 0 ? bucket_end_[k] : -1;
        (bucket_[k] >= 0 ? after_[bucket_end_[k]] : bucket_[k]) = node;
        bucket_end_[k] = node;
        least_ = std::min(least_, k);
    }

    void take_from_bucket(int node) {
        if (before_[node] >= 0) {
            after_[before_[node]] = after_[node];
        } else {
            bucket_[key(node)] = after_[node];
        }
        if (after_[node] >= 0) {
            before_[after_[node]] = before_[node];
        } else {
            bucket_end_[key(node)] = before_[node];
        }
    }

    int node_count_;
    std::vector<int> scratch_; // one block for the arrays below
    int *first_, *degree_, *eliminated_, *mark_, *moving_, *before_, *after_, *bucket_, *bucket_end_;
    std::vector<Entry> pool_;
    int least_ = 0;
    int next_stamp_ = 1 << 20; // above every node number used as a mark (checked where nodes are counted)
};

} // namespace

EliminationOrder find_elimination_order(int node_count, std::span<const NodeLink> links, int first_moving) {
    assert(node_count >= 0 && node_count < (1 << 20));
    const auto count = static_cast<std::size_t>(node_count);
    ShrinkingGraph graph(node_count, links, first_moving);

    // Eliminate; columns come out in elimination order with node numbers in them.
    std::vector<int> sequence(4 * count + 1);
    int* const start = sequence.data() + count;
    int* const grounded = start + count + 1;
    int* const new_place = grounded + count;
    for (const NodeLink& link : links) {
        if ((link.a == kGround) != (link.b == kGround)) {
            grounded[std::max(link.a, link.b)] = 1;
        }
    }
    std::vector<int> rows;
    rows.reserve(links.size() + count);
    EliminationOrder order;
    int still = 0;
    for (std::size_t k = 0; k < count; ++k) {
        start[k] = static_cast<int>(rows.size());
        const int node = graph.eliminate_next(rows);
        sequence[k] = node;
        still += graph.moving(node) ? 0 : 1;
        if (rows.size() > static_cast<std::size_t>(start[k])) {
            // Being tied to ground is handed on; what arrives at the last node of a part holds for all of it.
            grounded[rows[static_cast<std::size_t>(start[k])]] |= grounded[node];
        } else if (grounded[node] == 0) {
            order.ungrounded.push_back(node);
        }
    }
    start[count] = static_cast<int>(rows.size());

    // Still columns first. Whatever a still column was built from is still too, so this keeps every column
    // behind the ones it depends on and changes no pattern.
    order.still_count = still;
    order.position_of.resize(count);
    int next_still = 0;
    int next_moving = still;
    for (std::size_t k = 0; k < count; ++k) {
        const int node = sequence[k];
        const int place = graph.moving(node) ? next_moving++ : next_still++;
        order.position_of[static_cast<std::size_t>(node)] = place;
        new_place[place] = static_cast<int>(k);
    }
    order.column_start.resize(count + 1);
    order.rows.resize(rows.size());
    int filled = 0;
    for (std::size_t p = 0; p < count; ++p) {
        const int k = new_place[p];
        order.column_start[p] = filled;
        int* const begin = order.rows.data() + filled;
        int length = 0;
        for (int r = start[k]; r < start[k + 1]; ++r) {
            const int row = order.position_of[static_cast<std::size_t>(rows[static_cast<std::size_t>(r)])];
            int slot = length++;
            if (length <= 16) {
                for (; slot > 0 && begin[slot - 1] > row; --slot) {
                    begin[slot] = begin[slot - 1];
                }
            }
            begin[slot] = row;
        }
        if (length > 16) {
            std::sort(begin, begin + length);
        }
        filled += length;
    }
    order.column_start[count] = filled;
    for (int& node : order.ungrounded) {
        node = order.position_of[static_cast<std::size_t>(node)];
    }
    return order;
}

} // namespace lanternleaf
