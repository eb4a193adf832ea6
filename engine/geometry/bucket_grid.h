// BucketGrid: finds which of many boxes touch a given one without testing them all.
// Exists for cards with dozens of strips; with few boxes it is one bucket, which is the plain test of each.
#pragma once

#include "geometry/convex.h"

#include <span>
#include <vector>

namespace lanternleaf {

class BucketGrid {
public:
    /// Below this many boxes there is one bucket: at 54 runs (12 LEDs) the two were equally quick.
    static constexpr std::size_t kWorthIt = 60;

    /// Keeps its own copy of the boxes. Empty boxes are never found.
    explicit BucketGrid(std::span<const Box> boxes);
    /// Puts into `found` (cleared first) the indices of all boxes that touch `box`, rising.
    void find(const Box& box, std::vector<int>& found) const;

private:
    struct Span {
        int from_x = 0;
        int to_x = -1;
        int from_y = 0;
        int to_y = -1;
    };

    [[nodiscard]] int column(double x) const;
    [[nodiscard]] int row(double y) const;
    [[nodiscard]] Span span_of(const Box& box) const;

    std::vector<Box> boxes_;
    Box all_;
    int columns_ = 1;
    int rows_ = 1;
    Vec2 per_mm_;             ///< buckets per mm
    std::vector<int> starts_; ///< bucket b holds items_[starts_[b]] up to items_[starts_[b + 1]]
    std::vector<int> items_;
};

} // namespace lanternleaf
