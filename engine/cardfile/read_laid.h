// Read laid: what lies on the sheet - LEDs, resistors, strips and patches - from a tree, each with an id of
// its own. Private to this module.
#pragma once

#include "card/card.h"
#include "cardfile/json_cursor.h"

namespace lanternleaf::cardfile {

/// Fills card.leds, card.resistors and card.laid; card.own_parts must be read before. Throws Refused, also
/// for an id used twice (findings and records name things by id alone) and for a type that nobody describes.
void read_things(Members& members, const Parts& shipped, Card& card);

} // namespace lanternleaf::cardfile
