// Read parts: the parts object from a tree, shared by the parts file and a card's own "parts". Private to
// this module.
#pragma once

#include "card/parts.h"
#include "cardfile/json_cursor.h"

namespace lanternleaf::cardfile {

/// Throws Refused. `shipped` (or null) supplies the packages that an LED may name besides those given here.
[[nodiscard]] Parts read_parts_object(Members& members, const Parts* shipped);

/// Checks "lanternleaf" and "kind". A file of a newer version is refused before anything else in it is looked
/// at.
void check_heading(Members& members, const char* kind);

} // namespace lanternleaf::cardfile
