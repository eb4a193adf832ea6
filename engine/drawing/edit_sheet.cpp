// Edits of the sheet and of what the whole card has: size, creases, keep-outs, picture, foam, cell, audience.
#include "base/readout.h"
#include "drawing/edit_steps.h"
#include "geometry/polygon.h"

#include <algorithm>

namespace lanternleaf::edits {

std::string apply(Bench on, const edit::SetSheetSize& e) {
    const auto fits = [](double mm) { return mm >= kLeastSheet_mm && mm <= kMostSheet_mm; };
    if (!fits(e.width_mm) || !fits(e.height_mm)) {
        return "A sheet is " + readout_mm(kLeastSheet_mm) + " to " + readout_mm(kMostSheet_mm) +
               " on each side.";
    }
    on.card.sheet.width_mm = e.width_mm;
    on.card.sheet.height_mm = e.height_mm;
    return "";
}

std::string apply(Bench on, const edit::SetFolds& e) {
    for (const FoldLine& fold : e.folds) {
        if (!is_finite(fold.from_mm) || !is_finite(fold.to_mm) || distance(fold.from_mm, fold.to_mm) < 1.0) {
            return "A crease runs between two places at least 1 mm apart.";
        }
    }
    on.card.sheet.folds = e.folds;
    return "";
}

std::string apply(Bench on, const edit::SetKeepouts& e) {
    for (const Keepout& keepout : e.keepouts) {
        const auto& outline = keepout.outline_mm;
        if (outline.size() < 3 || !std::all_of(outline.begin(), outline.end(), is_finite) ||
            std::abs(signed_area(outline)) < 1.0) {
            return "A place to keep clear needs three corners or more that enclose some paper.";
        }
    }
    on.card.sheet.keepouts = e.keepouts;
    return "";
}

std::string apply(Bench on, const edit::SetArt& e) {
    if (e.art) {
        const std::string& file = e.art->file;
        if (file.empty() || file.find_first_of("/\\") != std::string::npos || file == ".." || file == ".") {
            return "A picture is a plain file beside the card.";
        }
        if (!is_finite(e.art->at_mm) || !(e.art->width_mm >= 1.0) || e.art->width_mm > 10.0 * kMostSheet_mm) {
            return "A picture needs a place, and a width of 1 mm or more.";
        }
    }
    on.card.sheet.art = e.art;
    return "";
}

std::string apply(Bench on, const edit::SetFoam& e) {
    if (e.foam) {
        if (!(e.foam->thickness_mm >= 0.1 && e.foam->thickness_mm <= 20.0)) {
            return "Foam is 0.1 to 20 mm thick.";
        }
        if (e.foam->layers < 1 || e.foam->layers > 20) {
            return "Foam has 1 to 20 layers.";
        }
    }
    on.card.foam = e.foam;
    return "";
}

std::string apply(Bench on, const edit::SetAudience& e) {
    on.card.audience = e.audience;
    on.card.audience_given = true;
    return "";
}

std::string apply(Bench on, const edit::SetCell& e) {
    if (on.parts.cells.count(e.type) == 0) {
        return "No cell is called " + e.type + ".";
    }
    if (e.count < 1 || e.count > 4) {
        return "One to four cells can be stacked.";
    }
    on.card.cell.type = e.type;
    on.card.cell.count = e.count;
    on.card.cell.face_down = e.face_down;
    return "";
}

std::string apply(Bench on, const edit::SetTitle& e) {
    if (e.title.find_first_not_of(" \t") == std::string::npos) {
        return "A card needs a title.";
    }
    on.card.title = e.title;
    return "";
}

} // namespace lanternleaf::edits
