// Heights: foam against holder and cell, and the closed card against the letter box.
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

std::string foam_words(const ReviewFacts& facts, const char* message, std::string_view limit,
                       double limit_mm) {
    const Words& words = facts.words;
    const Card& card = facts.card;
    return words(message, {{"foam", fine_mm(foam_mm(card), words)},
                           {"n", card.foam->layers},
                           {"layer", fine_mm(card.foam->thickness_mm, words)},
                           {limit, fine_mm(limit_mm, words)}});
}

std::string range_words(double low_mm, double high_mm, const Words& words) {
    const bool unit_once = words.unit() == LengthUnit::mm;
    return (unit_once ? words.number(low_mm, 2) : fine_mm(low_mm, words)) + "–" + fine_mm(high_mm, words);
}

/// How many layers of this foam would do; 0 when no whole number does.
int layers_between(double layer_mm, double low_mm, double high_mm) {
    const int layers = static_cast<int>(std::ceil((low_mm - 1e-9) / layer_mm));
    return layers >= 1 && layers * layer_mm <= high_mm + 1e-9 ? layers : 0;
}

std::string foam_fix(const Card& card, double low_mm, double high_mm, const Words& words) {
    const std::string range = range_words(low_mm, high_mm, words);
    const int layers = layers_between(card.foam->thickness_mm, low_mm, high_mm);
    if (layers == 0) {
        return words("findings.foam_other", {{"range", range}});
    }
    return words("findings.foam_layers", {{"n", layers}, {"range", range}});
}

constexpr double kFoamRounding_mm = 1e-9; // 3 layers of 1.1 mm are 3.3 mm

} // namespace

void rule_foam_low(const ReviewFacts& facts, Findings& out) {
    const double least_mm = holder_mm(facts);
    if (!foam_matters(facts) || foam_mm(facts.card) >= least_mm - kFoamRounding_mm) {
        return;
    }
    Finding found{"foam-low", Level::problem, foam_place(facts.card), {"foam", "holder"}, "", ""};
    found.text = foam_words(facts, "findings.foam_low", "least", least_mm);
    found.fix = foam_fix(facts.card, least_mm, least_mm + holder_type(facts).travel_mm, facts.words);
    out.push_back(std::move(found));
}

void rule_foam_high(const ReviewFacts& facts, Findings& out) {
    const double most_mm = holder_mm(facts) + holder_type(facts).travel_mm;
    if (!foam_matters(facts) || foam_mm(facts.card) <= most_mm + kFoamRounding_mm) {
        return;
    }
    Finding found{"foam-high", Level::problem, foam_place(facts.card), {"foam", "holder"}, "", ""};
    found.text = foam_words(facts, "findings.foam_high", "most", most_mm);
    found.fix = foam_fix(facts.card, holder_mm(facts), most_mm, facts.words);
    out.push_back(std::move(found));
}

void rule_mail_thick(const ReviewFacts& facts, Findings& out) {
    // Four layers of 0.25 mm card (300 g/m2) and 0.2 mm of glue and air: common practice, stated in the
    // sentence.
    constexpr double kSheet_mm = 0.25;
    constexpr double kCardLayers_mm = 4 * kSheet_mm;
    constexpr double kSpare_mm = 0.2;
    // 5 mm: Royal Mail letter, Deutsche Post Standardbrief, Canada Post standard.
    constexpr double kLetter_mm = 5.0;
    const double inside_mm = std::max(foam_mm(facts.card), holder_mm(facts));
    const double closed_mm = inside_mm + kCardLayers_mm + kSpare_mm;
    if (closed_mm <= kLetter_mm + kFoamRounding_mm) {
        return;
    }
    Finding found{"mail-thick", Level::note, facts.card.holder.at_mm, {"holder"}, "", ""};
    const Words& words = facts.words;
    found.text = words("findings.mail_thick", {{"closed", words.mm(closed_mm)},
                                               {"inside", words.mm(inside_mm)},
                                               {"sheet", fine_mm(kSheet_mm, words)},
                                               {"spare", fine_mm(kSpare_mm, words)},
                                               {"letter", words.mm(kLetter_mm)}});
    found.fix = words("findings.mail_thick_fix");
    out.push_back(std::move(found));
}

} // namespace lanternleaf
