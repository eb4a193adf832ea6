// Known types: whether a named type exists, and what to suggest when it does not. Exists so that a mistyped
// "carrier-whit" is answered with the ids that were probably meant. Private to this module.
#pragma once

#include "cardfile/json_cursor.h"

#include <map>
#include <string>
#include <vector>

namespace lanternleaf::cardfile {

/// At most three of `known`, nearest first by edit distance (Levenshtein), ties by name.
[[nodiscard]] std::vector<std::string> nearest_ids(const std::string& id,
                                                   const std::vector<std::string>& known);

/// Throws Refused at `at`, with the nearest of `known`.
[[noreturn]] void refuse_unknown(const Cursor& at, const std::string& id, const char* sort,
                                 const std::vector<std::string>& known);

/// Refuses ids of cells that are not primary lithium manganese dioxide coin cells: those that must be
/// charged, and other chemistries, by the letters of their code. What such a cell would do here is not what
/// the engine computes.
void require_primary(const Cursor& at, const std::string& id);

/// Refuses an id that is neither in `own` nor in `shipped` (which may be null).
template <class T>
void require_known(const Cursor& at, const std::string& id, const char* sort,
                   const std::map<std::string, T>& own, const std::map<std::string, T>* shipped) {
    if (own.count(id) != 0 || (shipped != nullptr && shipped->count(id) != 0)) {
        return;
    }
    std::vector<std::string> known;
    for (const auto& [name, type] : own) {
        known.push_back(name);
    }
    if (shipped != nullptr) {
        for (const auto& [name, type] : *shipped) {
            known.push_back(name);
        }
    }
    refuse_unknown(at, id, sort, known);
}

} // namespace lanternleaf::cardfile
