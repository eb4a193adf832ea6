// Changes and readings as JSON: one form for journals, records and scripts. Only for readers of such files;
// what cannot be read is thrown as cardfile::Refused, as the cursor does, and becomes a Problem at the
// module's face.
#pragma once

#include "cardfile/json_cursor.h"
#include "guide/change.h"
#include "guide/verdict.h"

#include <string>

namespace lanternleaf {

/// {"kind":"led-turned","part":"L3","at_mm":[1,2],"mm":3,"type":"...","count":2}; only what the kind uses.
[[nodiscard]] cardfile::Tree change_json(const Change& change);
[[nodiscard]] Change change_from_json(const cardfile::Cursor& json);

/// {"check":"bed-to-L1-","value":0.3}; "value" is a number or "OL", "yes" answers a look, "seen" lists
/// lights, "by" is "meter" or "eye", "simulated" marks what nobody measured.
[[nodiscard]] cardfile::Tree reading_json(const Reading& reading);
[[nodiscard]] Reading reading_from_json(const cardfile::Cursor& json);

/// "lit", "dim" or "dark".
[[nodiscard]] std::string light_state_from_json(const cardfile::Cursor& json);
[[nodiscard]] bool flag_from_json(const cardfile::Cursor& json);
[[nodiscard]] Audience audience_from_json(const cardfile::Cursor& json);
/// The version of a file of ours; refuses a newer one.
void read_version(cardfile::Members& in);
/// "line 1, column 7" or "/event" of one line as the place in its journal: "line 3, column 7".
[[nodiscard]] std::string place_in_journal(const std::string& place, int line_number);

} // namespace lanternleaf
