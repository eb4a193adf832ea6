#include "mend/past_mends.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// Nobody mends these: they are not counted, and keep their weight.
bool is_counted(FaultKind kind) {
    return kind != FaultKind::as_built && kind != FaultKind::other;
}

} // namespace

void add_mend(PastMends& past, const std::string& kinds) {
    std::size_t from = 0;
    while (from <= kinds.size()) {
        const std::size_t end = std::min(kinds.find(' ', from), kinds.size());
        const std::string name = kinds.substr(from, end - from);
        for (int k = 0; k < kFaultKinds; ++k) {
            const auto kind = static_cast<FaultKind>(k);
            if (is_counted(kind) && name == name_of(kind)) {
                ++past.found[static_cast<std::size_t>(k)];
            }
        }
        from = end + 1;
    }
}

FaultWeights weights_from(const PastMends& past, double strength) {
    double percent = 0.0;
    double cards = 0.0;
    for (int k = 0; k < kFaultKinds; ++k) {
        if (is_counted(static_cast<FaultKind>(k))) {
            percent += traits_of(static_cast<FaultKind>(k)).prior_percent;
            cards += std::max(0, past.found[static_cast<std::size_t>(k)]);
        }
    }
    FaultWeights weights = usual_weights();
    for (int k = 0; k < kFaultKinds; ++k) {
        const auto kind = static_cast<FaultKind>(k);
        if (is_counted(kind)) {
            const double share = traits_of(kind).prior_percent / percent;
            const double found = std::max(0, past.found[static_cast<std::size_t>(k)]);
            weights[static_cast<std::size_t>(k)] = (strength * share + found) / (strength + cards) / share;
        }
    }
    return weights;
}

} // namespace lanternleaf
