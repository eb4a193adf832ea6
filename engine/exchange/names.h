// Names: of files that come from outside. Internal to exchange/.
#pragma once

#include <string>

namespace lanternleaf::exchange {

inline constexpr const char* kCardEnding = ".card.json";
inline constexpr const char* kFrontEnding = "-front";

/// "C:\\cards\\Our Card.card.json" -> "Our Card.card.json"
[[nodiscard]] std::string last_part(const std::string& path);
/// "harbour.png" -> "harbour"
[[nodiscard]] std::string without_ending(const std::string& name);
/// Small letters, digits and dashes: a name that every file system and synchroniser takes; "card" for none.
[[nodiscard]] std::string plain_stem(const std::string& card_file);
[[nodiscard]] bool ends_with(const std::string& name, const std::string& ending); ///< large or small letters
[[nodiscard]] bool is_picture_name(const std::string& name);
/// Fit to stand in a sentence: one line, shortened, control characters as "?".
[[nodiscard]] std::string shown_name(const std::string& name);

} // namespace lanternleaf::exchange
