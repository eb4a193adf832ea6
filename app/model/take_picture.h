// Take picture: what becomes of a picture that a person took, chose or dropped on the window.
// Exists so that a camera, a picker and a drop all end at one door, whatever place is open.
#pragma once

#include "model/library.h"

#include <string>

namespace lanternleaf {

/// Whether these are the first bytes of a PNG or JPEG file (ISO/IEC 15948: 89 50 4E 47 0D 0A 1A 0A; ISO/IEC
/// 10918-1: SOI and a marker, FF D8 FF). What follows is not read here.
[[nodiscard]] bool is_picture(const std::string& content);

/// Puts the picture where the open place wants it, or says where a picture is wanted.
void take_picture(AppState& state, const Surroundings& around, const std::string& file_name,
                  const std::string& content);

} // namespace lanternleaf
