// Prices: what a maker pays for tape, lights and cells, from a small file of their own, so that a printed
// list can say what a card costs. No price is shipped with the program: they differ by place and day.
//
//   { "lanternleaf": 1, "kind": "prices", "currency": "EUR",
//     "packs": { "copper-5": { "price": 4.20, "holds_m": 16.5 },
//                "carrier-white": { "price": 9.00, "holds": 20 } } }
//
// A pack is named by its type id (tape, LED, cell, holder), or "resistor", "patch", "foam", "sheet".
#pragma once

#include "base/outcome.h"

#include <map>
#include <string>

namespace lanternleaf {

struct PackPrice {
    double price = 0.0; ///< of one pack, in the file's currency
    double holds = 1.0; ///< pieces; metres for tape and foam
    bool by_length = false;
    friend bool operator==(const PackPrice&, const PackPrice&) = default;
};

struct Prices {
    std::string currency; ///< as it is to stand after a sum: "EUR", "£"
    std::map<std::string, PackPrice> packs;
};

[[nodiscard]] Outcome<Prices> read_prices(const std::string& text, const std::string& file);

} // namespace lanternleaf
