// at: an index for a container, from the ints that parts, nodes and strips are numbered with.
#pragma once

#include <cstddef>

namespace lanternleaf {

/// Never negative where it is used: a negative number there is our own bug.
[[nodiscard]] constexpr std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

} // namespace lanternleaf
