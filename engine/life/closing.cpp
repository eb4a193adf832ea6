#include "life/closing.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kRounding_mm = 1e-9;
constexpr double kManyLetters_mm = 5.0; // the thickness that many letter rates take (letters.cpp)
constexpr double kClose_mm = 0.5;       // less than foam gives under a stack of letters: estimate

/// A fold from edge to edge halves the closed card: the larger part counts.
void fold_shut(const Sheet& sheet, Closing& out) {
    out.width_mm = sheet.width_mm;
    out.height_mm = sheet.height_mm;
    constexpr double kEdge_mm = 1.0;
    for (const FoldLine& fold : sheet.folds) {
        const Vec2 a = fold.from_mm;
        const Vec2 b = fold.to_mm;
        const auto spans = [&](double from, double to, double all) {
            return std::min(from, to) <= kEdge_mm && std::max(from, to) >= all - kEdge_mm;
        };
        if (std::fabs(a.x - b.x) < kEdge_mm && spans(a.y, b.y, sheet.height_mm)) {
            out.width_mm = std::min(out.width_mm, std::max(a.x, sheet.width_mm - a.x));
        } else if (std::fabs(a.y - b.y) < kEdge_mm && spans(a.x, b.x, sheet.width_mm)) {
            out.height_mm = std::min(out.height_mm, std::max(a.y, sheet.height_mm - a.y));
        }
    }
}

LetterFit fit(const LetterClass& letter, const Closing& closing, const ClosingOptions& options,
              const Words& words) {
    LetterFit made;
    made.letter = &letter;
    const double short_mm = std::min(closing.width_mm, closing.height_mm) + options.envelope_mm;
    const double long_mm = std::max(closing.width_mm, closing.height_mm) + options.envelope_mm;
    const double aspect = long_mm / short_mm;
    const auto envelope = [&](const char* key, const double(&sides_mm)[2]) {
        return words(key, {{"long", words.number(sides_mm[1], 0)}, {"short", words.number(sides_mm[0], 0)}});
    };
    if (closing.closed_mm > letter.thick_mm + kRounding_mm) {
        made.why_not = words("life.too_thick", {{"thick", words.mm(closing.closed_mm)},
                                                {"limit", words.number(letter.thick_mm, 2) + " mm"}});
    } else if (letter.flexible) {
        made.why_not = words("life.must_bend");
    } else if (short_mm > letter.most_mm[0] || long_mm > letter.most_mm[1]) {
        made.why_not = envelope("life.envelope_large", letter.most_mm);
    } else if (short_mm < letter.least_mm[0] || long_mm < letter.least_mm[1]) {
        made.why_not = envelope("life.envelope_small", letter.least_mm);
    } else if (letter.least_aspect > 0.0 && aspect < letter.least_aspect) {
        made.why_not = words("life.too_square");
    } else if (letter.most_aspect > 0.0 && aspect > letter.most_aspect) {
        made.why_not = words("life.too_narrow");
    }
    made.fits = made.why_not.empty();
    return made;
}

SwitchRisk risk_of(const HolderType& holder, const Closing& closing) {
    if (holder.kind != HolderKind::flap) {
        return SwitchRisk::slide;
    }
    if (closing.foam_mm <= 0.0) {
        return SwitchRisk::no_foam;
    }
    const double off_mm = closing.foam_mm - closing.holder_mm;
    if (off_mm < -kRounding_mm) {
        return SwitchRisk::pressed;
    }
    return off_mm < kClose_mm - kRounding_mm ? SwitchRisk::close : SwitchRisk::none;
}

void advise(const Card& card, const Words& words, Closing& out) {
    const std::string window =
        words.number(out.foam_low_mm, 2) + "–" + words.number(out.foam_high_mm, 2) + " mm";
    switch (out.risk) {
    case SwitchRisk::pressed:
        out.advice.push_back(words("life.foam_pressed", {{"window", window}}));
        break;
    case SwitchRisk::no_foam:
        out.advice.push_back(words("life.foam_none", {{"window", window}}));
        break;
    case SwitchRisk::close:
        out.advice.push_back(words("life.foam_close", {{"more", words.mm(out.foam_mm - out.holder_mm)}}));
        break;
    case SwitchRisk::slide:
        out.advice.push_back(words("life.slide"));
        break;
    case SwitchRisk::none:
        break;
    }
    if (out.risk != SwitchRisk::slide) {
        if (out.foam_mm > out.foam_high_mm + kRounding_mm) {
            out.advice.push_back(words("life.foam_too_high", {{"window", window}}));
        }
        out.advice.push_back(words("life.pull_tab"));
    }
    if (out.closed_mm > kManyLetters_mm) {
        out.advice.push_back(words(
            "life.thick_letter", {{"thick", words.mm(out.closed_mm)}, {"limit", words.mm(kManyLetters_mm)}}));
    }
    out.advice.push_back(words(card.cell.count > 1 ? "life.post_cells" : "life.post_cell"));
    out.advice.push_back(words("life.post_rules"));
}

} // namespace

Closing close_up(const Card& card, const Parts& parts, const ClosingOptions& options, const Words& words) {
    const CellType& cell = parts.cells.at(card.cell.type);
    const HolderType& holder = parts.holders.at(card.holder.type);
    Closing out;
    out.holder_mm = card.cell.count * cell.height_mm + 2.0 * holder.paper_mm;
    out.foam_low_mm = out.holder_mm;
    out.foam_high_mm = out.holder_mm + holder.travel_mm;
    if (card.foam && !card.foam->edges.empty()) {
        out.foam_mm = card.foam->layers * card.foam->thickness_mm;
        out.foam_fits =
            out.foam_mm >= out.foam_low_mm - kRounding_mm && out.foam_mm <= out.foam_high_mm + kRounding_mm;
        if (card.foam->thickness_mm > 0.0) {
            const int layers =
                static_cast<int>(std::ceil((out.foam_low_mm - kRounding_mm) / card.foam->thickness_mm));
            const bool fits = layers * card.foam->thickness_mm <= out.foam_high_mm + kRounding_mm;
            out.foam_layers = fits ? layers : 0;
        }
    }
    out.closed_mm =
        std::max(out.foam_mm, out.holder_mm) + options.layers * options.stock_mm + options.spare_mm;
    fold_shut(card.sheet, out);
    out.risk = risk_of(holder, out);
    for (const LetterClass& letter : letter_classes()) {
        out.letters.push_back(fit(letter, out, options, words));
    }
    advise(card, words, out);
    return out;
}

const char* name_of(SwitchRisk risk) {
    switch (risk) {
    case SwitchRisk::none:
        return "none";
    case SwitchRisk::close:
        return "close";
    case SwitchRisk::pressed:
        return "pressed";
    case SwitchRisk::no_foam:
        return "no-foam";
    case SwitchRisk::slide:
        break;
    }
    return "slide";
}

} // namespace lanternleaf
