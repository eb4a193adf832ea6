// JSON figure: a number as the reports write it, and a report as text. Exists so that every verb's JSON has
// the same digits and is valid whatever a card's title holds.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace lanternleaf {

/// Six significant digits, more than any figure of the model deserves; null when it is no number or endless.
[[nodiscard]] nlohmann::ordered_json json_figure(double value);
/// Indented, with a newline at the end; bytes that are no UTF-8 become the replacement character.
[[nodiscard]] std::string json_text(const nlohmann::ordered_json& json);

} // namespace lanternleaf
