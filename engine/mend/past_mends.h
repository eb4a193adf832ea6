// Past mends: how often each kind of fault was found and mended before, as weights on the usual priors.
// Exists because the priors are estimates for beginners: a maker's own records know better, slowly.
#pragma once

#include "mend/fault.h"

#include <array>
#include <string>

namespace lanternleaf {

/// How many cards were mended of each kind.
struct PastMends {
    std::array<int, kFaultKinds> found{};
};

/// The usual priors count as much as this many mended cards (engineering judgement: a class set or two).
inline constexpr double kPriorStrength = 60.0;

/// Adds one mending: kind names with blanks between ("led-turned joint-loose"); a name that is not known here
/// (of a newer version) is passed over.
void add_mend(PastMends& past, const std::string& kinds);

/// Dirichlet's rule: a kind with share p and n of N mendings gets (strength p + n) / (strength + N), told as
/// a multiple of p. Never 0: what was not seen yet can still be. "As built" and "other" keep their share.
[[nodiscard]] FaultWeights weights_from(const PastMends& past, double strength = kPriorStrength);

} // namespace lanternleaf
