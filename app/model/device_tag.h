// Device tag: four random characters that stand for this device in the names of new files. Exists because two
// tablets without a network may begin the same card in the same second, and their folders are merged later.
// It says nothing about the device or its owner.
#pragma once

#include "model/library.h"

namespace lanternleaf {

/// Kept with the device's settings; made when it is first asked for. Empty when the disk refuses: names then
/// have the time alone.
[[nodiscard]] std::string device_tag(const Surroundings& around);

} // namespace lanternleaf
