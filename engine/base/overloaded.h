// Overloaded: several lambdas as one visitor of a std::variant. Exists so that every module that visits
// commands or answers names their kinds side by side, in the one usual way.
#pragma once

namespace lanternleaf {

template <class... Ts>
struct Overloaded : Ts... {
    using Ts::operator()...;
};
template <class... Ts>
Overloaded(Ts...) -> Overloaded<Ts...>;

} // namespace lanternleaf
