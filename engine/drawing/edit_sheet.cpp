// Edits of the sheet and of what the whole card has: size, creases, keep-outs, picture, foam, cell, audience.
#include "drawing/edit_steps.h"
#include "geometry/polygon.h"

#include <algorithm>

namespace lanternleaf::edits {

namespace {

constexpr double kLeastCrease_mm = 1.0;
constexpr double kLeastPicture_mm = 1.0;
constexpr double kThinnestFoam_mm = 0.1;
constexpr double kThickestFoam_mm = 20.0;

} // namespace

std::string apply(Bench on, const edit::SetSheetSize& e) {
    const auto fits = [](double mm) { return mm >= kLeastSheet_mm && mm <= kMostSheet_mm; };
    if (!fits(e.width_mm) || !fits(e.height_mm)) {
        return on.words("drawing.sheet_size",
                        {{"least", on.words.mm(kLeastSheet_mm)}, {"most", on.words.mm(kMostSheet_mm)}});
    }
    on.card.sheet.width_mm = e.width_mm;
    on.card.sheet.height_mm = e.height_mm;
    return "";
}

std::string apply(Bench on, const edit::SetFolds& e) {
    for (const FoldLine& fold : e.folds) {
        if (!is_finite(fold.from_mm) || !is_finite(fold.to_mm) ||
            distance(fold.from_mm, fold.to_mm) < kLeastCrease_mm) {
            return on.words("drawing.crease_short", {{"least", on.words.mm(kLeastCrease_mm)}});
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
            return on.words("drawing.clear_corners");
        }
    }
    on.card.sheet.keepouts = e.keepouts;
    return "";
}

std::string apply(Bench on, const edit::SetArt& e) {
    if (e.art) {
        const std::string& file = e.art->file;
        if (file.empty() || file.find_first_of("/\\") != std::string::npos || file == ".." || file == ".") {
            return on.words("drawing.picture_file");
        }
        if (!is_finite(e.art->at_mm) || !(e.art->width_mm >= kLeastPicture_mm) ||
            e.art->width_mm > 10.0 * kMostSheet_mm) {
            return on.words("drawing.picture_size", {{"least", on.words.mm(kLeastPicture_mm)}});
        }
    }
    on.card.sheet.art = e.art;
    return "";
}

std::string apply(Bench on, const edit::SetFoam& e) {
    if (e.foam) {
        if (!(e.foam->thickness_mm >= kThinnestFoam_mm && e.foam->thickness_mm <= kThickestFoam_mm)) {
            return on.words("drawing.foam_thickness", {{"least", on.words.mm(kThinnestFoam_mm)},
                                                       {"most", on.words.mm(kThickestFoam_mm)}});
        }
        if (e.foam->layers < 1 || e.foam->layers > 20) {
            return on.words("drawing.foam_layers");
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
        return on.words("drawing.no_cell_type", {{"type", e.type}});
    }
    if (e.count < 1 || e.count > 4) {
        return on.words("drawing.cells");
    }
    on.card.cell.type = e.type;
    on.card.cell.count = e.count;
    on.card.cell.face_down = e.face_down;
    return "";
}

std::string apply(Bench on, const edit::SetTitle& e) {
    if (e.title.find_first_not_of(" \t") == std::string::npos) {
        return on.words("drawing.title");
    }
    on.card.title = e.title;
    return "";
}

} // namespace lanternleaf::edits
