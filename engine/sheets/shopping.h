// Shopping: what to cut for one card and what to buy for a batch, worked out from the plan alone.
// Exists so that a maker buys enough and not twice as much, and knows what a card costs. A pure function; the
// rules it follows stand below with their sources.
#pragma once

#include "card/card.h"
#include "card/parts.h"
#include "cardfile/prices.h"
#include "words/words.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

/// What is bought beyond what lies on the cards (common practice of makers and teachers). Percentages are
/// whole numbers so that 10 % of 20 is 2, not 3 by rounding.
struct SpareRules {
    int tape_waste_percent = 20; ///< cut ends, mistakes
    int foam_waste_percent = 10;
    int led_percent = 10;
    int least_leds = 2; ///< of each type
    int cell_percent = 10;
    int holder_percent = 10;
    int patch_percent = 10;
    int kits_percent = 0; ///< whole spare kits (without cells), to the nearest kit
};

/// For a class of 20: 25 % lights, 30 % tape, 2 cells, 5 holders, 3 whole kits. Else 20 % tape, 10 % lights
/// and at least 2, 10 % cells. Foam and patches: 10 %, our judgement.
[[nodiscard]] SpareRules spare_rules(Audience audience);

/// One strip to cut, for one card.
struct StripCut {
    std::string id;
    Side side = Side::negative;
    std::string tape;
    double length_mm = 0.0;       ///< to cut: centre line and what is turned under
    double turned_under_mm = 0.0; ///< a tape's width for each end that is folded under
    int folds = 0;                ///< on the way; a fold takes just the centre line's length
};

struct TapeNeed {
    std::string type;
    int strips = 0;         ///< on one card
    double card_mm = 0.0;   ///< cut for one card: sum of StripCut::length_mm
    double laps_mm = 0.0;   ///< of that, lies on another strip as a joint
    double turned_mm = 0.0; ///< of that, turned under
    double waste_mm = 0.0;  ///< for the batch
    double buy_mm = 0.0;    ///< for the batch and its spare kits, with waste
};

/// Pieces of one kind.
struct CountNeed {
    std::string pack;  ///< the key in a price file
    std::string words; ///< "warm-white light, carrier", "coin cell"
    std::string full;  ///< as words, with the type where words leave it out: "coin cell CR2032"
    int per_card = 0;
    int batch = 0; ///< for the cards and spare kits
    int spare = 0; ///< loose

    [[nodiscard]] int buy() const { return batch + spare; }
};

struct FoamNeed {
    double thickness_mm = 0.0;
    double width_mm = 0.0; ///< of a strip
    int layers = 1;
    std::vector<double> lengths_mm; ///< one an edge; each is cut `layers` times
    double card_mm = 0.0;
    double buy_mm = 0.0;
};

struct Shopping {
    int cards = 1;
    int spare_kits = 0;
    std::vector<StripCut> cuts;
    std::vector<TapeNeed> tapes;
    std::vector<CountNeed> counts; ///< lights, resistors, cells, holders, patches, sheets, in that order
    std::optional<FoamNeed> foam;
};

inline constexpr int kMostCards = 10'000;

/// `cards` from 1 to kMostCards.
[[nodiscard]] Shopping shopping(const Card& card, const Parts& parts, int cards, const SpareRules& rules,
                                const Words& words = english());

/// One priced line.
struct CostLine {
    std::string pack;
    double per_card = 0.0; ///< what one card uses, tape and foam with waste, times pack price / pack content
    int packs = 0;         ///< whole packs for the batch
    double outlay = 0.0;
};

struct Costs {
    std::string currency;
    std::vector<CostLine> lines;
    std::vector<std::string> unpriced; ///< packs the file has no price for, or one by the wrong measure
    double per_card = 0.0;
    double outlay = 0.0;
};

[[nodiscard]] Costs costs(const Shopping& list, const SpareRules& rules, const Prices& prices);

} // namespace lanternleaf
