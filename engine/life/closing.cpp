#include "life/closing.h"

#include "base/readout.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kRounding_mm = 1e-9;
constexpr double kClose_mm = 0.5; // less than foam gives under a stack of letters: estimate

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

LetterFit fit(const LetterClass& letter, const Closing& closing, const ClosingOptions& options) {
    LetterFit made;
    made.letter = &letter;
    const double short_mm = std::min(closing.width_mm, closing.height_mm) + options.envelope_mm;
    const double long_mm = std::max(closing.width_mm, closing.height_mm) + options.envelope_mm;
    const double aspect = long_mm / short_mm;
    if (closing.closed_mm > letter.thick_mm + kRounding_mm) {
        made.why_not =
            readout_mm(closing.closed_mm) + " thick, limit " + readout_number(letter.thick_mm, 2) + " mm";
    } else if (letter.flexible) {
        made.why_not = "must bend and be evenly thick; a card with a coin cell is not";
    } else if (short_mm > letter.most_mm[0] || long_mm > letter.most_mm[1]) {
        made.why_not = "the envelope is larger than " + readout_number(letter.most_mm[1], 0) + " x " +
                       readout_number(letter.most_mm[0], 0) + " mm";
    } else if (short_mm < letter.least_mm[0] || long_mm < letter.least_mm[1]) {
        made.why_not = "the envelope is smaller than " + readout_number(letter.least_mm[1], 0) + " x " +
                       readout_number(letter.least_mm[0], 0) + " mm";
    } else if (letter.least_aspect > 0.0 && aspect < letter.least_aspect) {
        made.why_not = "too nearly square";
    } else if (letter.most_aspect > 0.0 && aspect > letter.most_aspect) {
        made.why_not = "too long and narrow";
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

void advise(const Card& card, Closing& out) {
    const std::string window =
        readout_number(out.foam_low_mm, 2) + "–" + readout_number(out.foam_high_mm, 2) + " mm";
    switch (out.risk) {
    case SwitchRisk::pressed:
        out.advice.push_back(
            "The foam is lower than holder and cell: closed, the light stays on and the cell runs "
            "flat. Foam of " +
            window + " is right.");
        break;
    case SwitchRisk::no_foam:
        out.advice.push_back("Nothing holds the flap off the cell: closed, the light may stay on. Foam of " +
                             window + " round the edge keeps it off.");
        break;
    case SwitchRisk::close:
        out.advice.push_back("The foam is only " + readout_mm(out.foam_mm - out.holder_mm) +
                             " higher than holder and cell: a weight on it can switch the light on.");
        break;
    case SwitchRisk::slide:
        out.advice.push_back("Switch it off before it goes, and tape the slide.");
        break;
    case SwitchRisk::none:
        break;
    }
    if (out.risk != SwitchRisk::slide) {
        if (out.foam_mm > out.foam_high_mm + kRounding_mm) {
            out.advice.push_back("The foam is so high that a press does not reach the cell: " + window +
                                 " is right.");
        }
        out.advice.push_back(
            "For the post, slip a paper pull tab between cell and flap, and a stiff piece of card over "
            "the switch; say on the tab to pull it out.");
    }
    if (out.closed_mm > 5.0) {
        out.advice.push_back("Closed, the card is about " + readout_mm(out.closed_mm) +
                             " thick, more than the 5 mm of many letter rates: ask for the next one.");
    }
    out.advice.push_back(
        card.cell.count > 1
            ? "Fit the cells in their place; put no spare one in the envelope, and your address on it."
            : "Fit the cell in its place; put no spare one in the envelope, and your address on it.");
    out.advice.push_back("Rules of the posts change: look at the post's own page before you post it.");
}

} // namespace

Closing close_up(const Card& card, const Parts& parts, const ClosingOptions& options) {
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
        out.letters.push_back(fit(letter, out, options));
    }
    advise(card, out);
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
