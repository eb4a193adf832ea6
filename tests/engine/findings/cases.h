// Cases: cards on which a rule must speak, and cards on which it must keep still. Exists so that one table
// can be checked for completeness against the table of rules, and for wording as a whole.
#pragma once

#include "findings/review.h"
#include "support/make_card.h"

#include <functional>
#include <string>
#include <vector>

namespace lanternleaf::cases {

/// `rule` must be found at `level`, naming `part`, within 6 mm of `at_mm`.
struct Fires {
    std::string rule;
    std::string what;
    Card card;
    Level level = Level::problem;
    std::string part;
    Vec2 at_mm;
    std::string says; ///< must stand in the text; empty: anything
    Parts parts = make::test_parts();
};

struct Quiet {
    std::string rule;
    std::string what;
    Card card;
    Parts parts = make::test_parts();
};

/// The sample card with something changed.
Card sample(const std::function<void(Card&)>& change);
Strip& strip(Card& card, const std::string& id);
Patch& patch(Card& card, const std::string& id);
void drop(Card& card, const std::string& id);
/// L1 (white) on the - trace, a link K1, and R1 from the link to the + trace; no crossing.
Card with_resistor(double ohm, const std::string& led = "carrier-white");
/// L1 and L2 one after the other over a link K1.
Card in_series(const std::string& first, const std::string& second);
/// The sample on a ready-made holder with two pads.
Card on_pads(const std::string& holder, const std::string& led = "carrier-white");

std::vector<Fires> electrical_fires();
std::vector<Quiet> electrical_quiet();
std::vector<Fires> layout_fires();
std::vector<Quiet> layout_quiet();
std::vector<Fires> thing_fires();
std::vector<Quiet> thing_quiet();

std::vector<Fires> all_fires();
std::vector<Quiet> all_quiet();

/// The first finding of a rule that names a part ("" for any); null when there is none.
const Finding* find(const Review& review, const std::string& rule, const std::string& part = "");
/// Rules found, for messages: "short-circuit crossing-bare".
std::string found_in(const Review& review);

} // namespace lanternleaf::cases
