#include "geometry/bucket_grid.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr int kMostAcross = 64;

bool is_empty(const Box& box) {
    return box.min.x > box.max.x;
}

} // namespace

BucketGrid::BucketGrid(std::span<const Box> boxes) : boxes_(boxes.begin(), boxes.end()) {
    for (const Box& box : boxes_) {
        all_.add(box);
    }
    if (boxes_.size() < kWorthIt) {
        return; // find() tests each
    }
    // About one bucket a box, square ones, at most kMostAcross a side.
    const Vec2 size = all_.max - all_.min;
    const double side =
        std::sqrt(std::max(size.x, 1.0) * std::max(size.y, 1.0) / static_cast<double>(boxes_.size()));
    columns_ = std::clamp(static_cast<int>(size.x / side), 1, kMostAcross);
    rows_ = std::clamp(static_cast<int>(size.y / side), 1, kMostAcross);
    per_mm_ = {columns_ / std::max(size.x, 1.0), rows_ / std::max(size.y, 1.0)};

    // Counting sort: how many a bucket, where each begins, then the items.
    starts_.assign(static_cast<std::size_t>(columns_ * rows_) + 1, 0);
    const auto each_bucket = [&](std::size_t i, auto&& visit) {
        const Span span = span_of(boxes_[i]);
        for (int y = span.from_y; y <= span.to_y; ++y) {
            for (int x = span.from_x; x <= span.to_x; ++x) {
                visit(static_cast<std::size_t>(y * columns_ + x));
            }
        }
    };
    for (std::size_t i = 0; i < boxes_.size(); ++i) {
        each_bucket(i, [&](std::size_t bucket) { ++starts_[bucket + 1]; });
    }
    for (std::size_t bucket = 1; bucket < starts_.size(); ++bucket) {
        starts_[bucket] += starts_[bucket - 1];
    }
    items_.resize(static_cast<std::size_t>(starts_.back()));
    std::vector<int> next(starts_.begin(), starts_.end() - 1);
    for (std::size_t i = 0; i < boxes_.size(); ++i) {
        each_bucket(i, [&](std::size_t bucket) {
            items_[static_cast<std::size_t>(next[bucket]++)] = static_cast<int>(i);
        });
    }
}

int BucketGrid::column(double x) const {
    return static_cast<int>(std::clamp((x - all_.min.x) * per_mm_.x, 0.0, columns_ - 1.0));
}

int BucketGrid::row(double y) const {
    return static_cast<int>(std::clamp((y - all_.min.y) * per_mm_.y, 0.0, rows_ - 1.0));
}

BucketGrid::Span BucketGrid::span_of(const Box& box) const {
    if (is_empty(box)) {
        return {};
    }
    return {column(box.min.x), column(box.max.x), row(box.min.y), row(box.max.y)};
}

void BucketGrid::find(const Box& box, std::vector<int>& found) const {
    found.clear();
    if (is_empty(box) || !box.touches(all_)) {
        return;
    }
    if (starts_.empty()) {
        for (std::size_t i = 0; i < boxes_.size(); ++i) {
            if (boxes_[i].touches(box)) {
                found.push_back(static_cast<int>(i));
            }
        }
        return;
    }
    const Span span = span_of(box);
    const bool one_bucket = span.from_x == span.to_x && span.from_y == span.to_y;
    for (int y = span.from_y; y <= span.to_y; ++y) {
        for (int x = span.from_x; x <= span.to_x; ++x) {
            const auto bucket = static_cast<std::size_t>(y * columns_ + x);
            for (int at = starts_[bucket]; at < starts_[bucket + 1]; ++at) {
                const int item = items_[static_cast<std::size_t>(at)];
                const Box& other = boxes_[static_cast<std::size_t>(item)];
                // A pair that shares several buckets is reported in the first of them only.
                if (other.touches(box) && (one_bucket || (column(std::max(box.min.x, other.min.x)) == x &&
                                                          row(std::max(box.min.y, other.min.y)) == y))) {
                    found.push_back(item);
                }
            }
        }
    }
    if (!one_bucket) { // within a bucket they rise already
        std::sort(found.begin(), found.end());
    }
}

} // namespace lanternleaf
