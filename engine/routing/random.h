// Random: a small generator of our own, since those of the standard library differ from one library to the
// next: a seed should give the same card again.
#pragma once

#include <cstdint>

namespace lanternleaf::routing_stages {

/// SplitMix64 (Steele, Lea, Flood 2014).
class Random {
public:
    explicit Random(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next() {
        std::uint64_t z = (state_ += 0x9e3779b97f4a7c15ULL);
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
        return z ^ (z >> 31);
    }

    /// 0 .. count - 1
    int below(int count) { return static_cast<int>((next() >> 33) % static_cast<std::uint64_t>(count)); }

    /// 0 .. 1
    double share() { return static_cast<double>(next() >> 11) * 0x1.0p-53; }

private:
    std::uint64_t state_;
};

} // namespace lanternleaf::routing_stages
