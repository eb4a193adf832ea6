// Letters: the sizes that posts take as letters. Exists as one dated table, since posts change their rules:
// the screen shows the date, and the maker asks the post. Prices are not here: they change faster.
#pragma once

#include <span>

namespace lanternleaf {

struct LetterClass {
    const char* post;
    const char* name;
    double least_mm[2]; ///< shorter and longer side, 0 where there is none
    double most_mm[2];
    double thick_mm;
    double most_g;
    double least_aspect; ///< longer over shorter side, 0 where any will do
    double most_aspect;
    bool flexible;     ///< must bend and be of one thickness: a card with a coin cell is not
    const char* as_of; ///< of the page that was read
};

[[nodiscard]] std::span<const LetterClass> letter_classes();

} // namespace lanternleaf
