// Heights: foam against holder and cell, and the closed card against the letter box.
#include "base/readout.h"
#include "findings/rule_tools.h"

#include <algorithm>

namespace lanternleaf {

namespace {

double foam_mm(const Card& card) {
    return card.foam && !card.foam->edges.empty() ? card.foam->layers * card.foam->thickness_mm : 0.0;
}

double holder_mm(const ReviewFacts& facts) {
    return facts.card.cell.count * cell_type(facts).height_mm + 2.0 * holder_type(facts).paper_mm;
}

/// Foam is judged only where it decides whether a press works.
bool foam_matters(const ReviewFacts& facts) {
    return foam_mm(facts.card) > 0.0 && holder_type(facts).kind == HolderKind::flap;
}

/// The middle of the first padded edge.
Vec2 foam_place(const Card& card) {
    const Vec2 size{card.sheet.width_mm, card.sheet.height_mm};
    switch (card.foam->edges.front()) {
    case Edge::top:
        return {size.x / 2, 0};
    case Edge::right:
        return {size.x, size.y / 2};
    case Edge::bottom:
        return {size.x / 2, size.y};
    case Edge::left:
        return {0, size.y / 2};
    }
    return {};
}

std::string foam_words(const Card& card) {
    const int layers = card.foam->layers;
    return "The foam is " + readout_number(foam_mm(card), 2) + " mm high (" + std::to_string(layers) +
           (layers == 1 ? " layer of " : " layers of ") + readout_number(card.foam->thickness_mm, 2) + " mm)";
}

std::string range_words(double low_mm, double high_mm) {
    return readout_number(low_mm, 2) + "–" + readout_number(high_mm, 2) + " mm";
}

/// How many layers of this foam would do; 0 when no whole number does.
int layers_between(double layer_mm, double low_mm, double high_mm) {
    const int layers = static_cast<int>(std::ceil((low_mm - 1e-9) / layer_mm));
    return layers >= 1 && layers * layer_mm <= high_mm + 1e-9 ? layers : 0;
}

std::string foam_fix(const Card& card, double low_mm, double high_mm) {
    const int layers = layers_between(card.foam->thickness_mm, low_mm, high_mm);
    if (layers == 0) {
        return "Use foam that comes to " + range_words(low_mm, high_mm) + " in whole layers.";
    }
    return "Use " + std::to_string(layers) + (layers == 1 ? " layer" : " layers") +
           " of this foam: " + range_words(low_mm, high_mm) + " is right.";
}

constexpr double kFoamRounding_mm = 1e-9; // 3 layers of 1.1 mm are 3.3 mm

} // namespace

void rule_foam_low(const ReviewFacts& facts, Findings& out) {
    const double least_mm = holder_mm(facts);
    if (!foam_matters(facts) || foam_mm(facts.card) >= least_mm - kFoamRounding_mm) {
        return;
    }
    Finding found{"foam-low", Level::problem, foam_place(facts.card), {"foam", "holder"}, "", ""};
    found.text = foam_words(facts.card) + ", but holder and cell stand " + readout_number(least_mm, 2) +
                 " mm: the closed card stays pressed and the cell runs flat.";
    found.fix = foam_fix(facts.card, least_mm, least_mm + holder_type(facts).travel_mm);
    out.push_back(std::move(found));
}

void rule_foam_high(const ReviewFacts& facts, Findings& out) {
    const double most_mm = holder_mm(facts) + holder_type(facts).travel_mm;
    if (!foam_matters(facts) || foam_mm(facts.card) <= most_mm + kFoamRounding_mm) {
        return;
    }
    Finding found{"foam-high", Level::problem, foam_place(facts.card), {"foam", "holder"}, "", ""};
    found.text = foam_words(facts.card) + ", and a press bridges no more than " + readout_number(most_mm, 2) +
                 " mm: the flap never meets the cell.";
    found.fix = foam_fix(facts.card, holder_mm(facts), most_mm);
    out.push_back(std::move(found));
}

void rule_mail_thick(const ReviewFacts& facts, Findings& out) {
    // Four layers of 0.25 mm card (300 g/m2) and 0.2 mm of glue and air: common practice, stated in the
    // sentence.
    constexpr double kCardLayers_mm = 4 * 0.25;
    constexpr double kSpare_mm = 0.2;
    // 5 mm: Royal Mail letter, Deutsche Post Standardbrief, Canada Post standard.
    constexpr double kLetter_mm = 5.0;
    const double inside_mm = std::max(foam_mm(facts.card), holder_mm(facts));
    const double closed_mm = inside_mm + kCardLayers_mm + kSpare_mm;
    if (closed_mm <= kLetter_mm + kFoamRounding_mm) {
        return;
    }
    Finding found{"mail-thick", Level::note, facts.card.holder.at_mm, {"holder"}, "", ""};
    found.text = "Closed, the card is about " + readout_mm(closed_mm) + " thick (" + readout_mm(inside_mm) +
                 " inside, four layers of 0.25 mm card and 0.2 mm to spare); many letter rates stop at " +
                 readout_mm(kLetter_mm) + ".";
    found.fix = "Ask for a thicker rate before posting, or use a thinner cell and less foam.";
    out.push_back(std::move(found));
}

} // namespace lanternleaf
