#include "life/letters.h"

#include <array>

namespace lanternleaf {

namespace {

constexpr const char* kUsps = "USPS Domestic Mail Manual 101, archive of 2021-01-24";
constexpr const char* kRead = "post's or adviser's page without a date, read in November 2026";
constexpr const char* kMemory = "from memory";

constexpr std::array<LetterClass, 11> kClasses = {{
    {"United States", "letter", {88.9, 127.0}, {155.6, 292.1}, 6.35, 99, 1.3, 2.5, true, kUsps},
    {"United States", "nonmachinable letter", {88.9, 127.0}, {155.6, 292.1}, 6.35, 99, 0, 0, false, kUsps},
    {"United Kingdom", "letter", {0, 0}, {165, 240}, 5, 100, 0, 0, false, kRead},
    {"United Kingdom", "large letter", {0, 0}, {250, 353}, 25, 750, 0, 0, false, kRead},
    {"Germany", "Standardbrief", {90, 140}, {125, 235}, 5, 20, 1.01, 0, false, kRead},
    {"Germany", "Kompaktbrief", {70, 100}, {125, 235}, 10, 50, 1.01, 0, false, kRead},
    {"Germany", "Großbrief", {70, 100}, {250, 353}, 20, 500, 0, 0, false, kRead},
    {"Canada", "standard", {0, 0}, {156, 245}, 5, 50, 0, 0, false, kRead},
    {"Canada", "oversize", {0, 0}, {270, 380}, 20, 500, 0, 0, false, kRead},
    {"Australia", "small letter", {0, 0}, {130, 240}, 5, 250, 0, 0, false, kMemory},
    {"Australia", "large letter", {0, 0}, {260, 360}, 20, 500, 0, 0, false, kMemory},
}};

} // namespace

std::span<const LetterClass> letter_classes() {
    return kClasses;
}

} // namespace lanternleaf
