#include "drawing/sheet_marks.h"

#include "geometry/ribbon.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr const char* kCrease = "crease-";
constexpr const char* kClear = "clear-";

struct Bounds {
    Vec2 low{1e300, 1e300};
    Vec2 high{-1e300, -1e300};
};

Bounds bounds_of(const std::vector<Vec2>& outline) {
    Bounds out;
    for (const Vec2 p : outline) {
        out.low = {std::min(out.low.x, p.x), std::min(out.low.y, p.y)};
        out.high = {std::max(out.high.x, p.x), std::max(out.high.y, p.y)};
    }
    return out;
}

/// Even-odd rule; outlines from a file may be of any shape.
bool inside(const std::vector<Vec2>& outline, Vec2 p) {
    bool in = false;
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const Vec2 a = outline[i];
        const Vec2 b = outline[j];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) {
            in = !in;
        }
    }
    return in;
}

/// Four corners whose sides run along the sheet's edges.
bool is_upright(const std::vector<Vec2>& outline) {
    if (outline.size() != 4) {
        return false;
    }
    for (std::size_t i = 0; i < 4; ++i) {
        const Vec2 side = outline[(i + 1) % 4] - outline[i];
        if (std::abs(side.x) > 1e-9 && std::abs(side.y) > 1e-9) {
            return false;
        }
    }
    return true;
}

/// How far a thing may move along one axis so that it stays within 0 .. most.
double kept(double by, double low, double high, double most) {
    if (high - low >= most) {
        return 0.0;
    }
    return std::clamp(by, -low, most - high);
}

bool runs_down(const FoldLine& crease) {
    const Vec2 along = crease.to_mm - crease.from_mm;
    return std::abs(along.y) >= std::abs(along.x);
}

template <class List>
List without(const List& list, std::size_t index) {
    List out = list;
    out.erase(out.begin() + static_cast<std::ptrdiff_t>(index));
    return out;
}

std::optional<std::size_t> number_behind(const std::string& id, const std::string& word, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
        if (id == word + std::to_string(i + 1)) {
            return i;
        }
    }
    return std::nullopt;
}

} // namespace

std::string mark_id(SheetMark::Kind kind, std::size_t index) {
    std::string out = kind == SheetMark::Kind::crease ? kCrease : kClear;
    out += std::to_string(index + 1);
    return out;
}

std::optional<SheetMark> find_mark(const Sheet& sheet, const std::string& id) {
    if (const auto index = number_behind(id, kCrease, sheet.folds.size())) {
        return SheetMark{SheetMark::Kind::crease, *index};
    }
    if (const auto index = number_behind(id, kClear, sheet.keepouts.size())) {
        return SheetMark{SheetMark::Kind::clear, *index};
    }
    return std::nullopt;
}

std::string mark_at(const Sheet& sheet, Vec2 at, double reach_mm) {
    for (std::size_t i = sheet.keepouts.size(); i-- > 0;) {
        if (inside(sheet.keepouts[i].outline_mm, at)) {
            return mark_id(SheetMark::Kind::clear, i);
        }
    }
    double least = reach_mm;
    std::string best;
    for (std::size_t i = 0; i < sheet.folds.size(); ++i) {
        const double far = distance_to_segment(at, sheet.folds[i].from_mm, sheet.folds[i].to_mm);
        if (far <= least) {
            least = far;
            best = mark_id(SheetMark::Kind::crease, i);
        }
    }
    return best;
}

Vec2 place_of_mark(const Sheet& sheet, const SheetMark& mark) {
    if (mark.kind == SheetMark::Kind::crease) {
        const FoldLine& crease = sheet.folds[mark.index];
        return (crease.from_mm + crease.to_mm) * 0.5;
    }
    const Bounds box = bounds_of(sheet.keepouts[mark.index].outline_mm);
    return (box.low + box.high) * 0.5;
}

std::string words_of_mark(const Sheet& sheet, const SheetMark& mark, const Words& words) {
    if (mark.kind == SheetMark::Kind::crease) {
        const FoldLine& crease = sheet.folds[mark.index];
        const Vec2 at = place_of_mark(sheet, mark);
        return runs_down(crease) ? words("drawing.mark_left", {{"mm", words.mm(at.x)}})
                                 : words("drawing.mark_top", {{"mm", words.mm(at.y)}});
    }
    const Bounds box = bounds_of(sheet.keepouts[mark.index].outline_mm);
    return words("drawing.mark_size",
                 {{"width", words.mm(box.high.x - box.low.x)}, {"height", words.mm(box.high.y - box.low.y)}});
}

Edit add_crease(const Sheet& sheet) {
    std::vector<FoldLine> folds = sheet.folds;
    const double middle = std::round(sheet.width_mm / 2.0 * 2.0) / 2.0;
    folds.push_back({{middle, 0}, {middle, sheet.height_mm}, {}});
    return {edit::SetFolds{std::move(folds)}};
}

Edit add_clear(const Sheet& sheet, const Words& words) {
    std::vector<Keepout> clear = sheet.keepouts;
    const Vec2 size{std::min(kNewClear_mm.x, sheet.width_mm / 2.0),
                    std::min(kNewClear_mm.y, sheet.height_mm / 2.0)};
    const Vec2 at{std::round((sheet.width_mm - size.x) * 0.6), std::round((sheet.height_mm - size.y) * 0.2)};
    clear.push_back(
        {words("drawing.window"), {at, at + Vec2{size.x, 0}, at + size, at + Vec2{0, size.y}}, {}});
    return {edit::SetKeepouts{std::move(clear)}};
}

Edit move_mark(const Sheet& sheet, const SheetMark& mark, Vec2 by) {
    if (mark.kind == SheetMark::Kind::crease) {
        std::vector<FoldLine> folds = sheet.folds;
        FoldLine& crease = folds[mark.index];
        const Bounds box = bounds_of({crease.from_mm, crease.to_mm});
        // Square to the way it runs only: along itself it has nowhere to go.
        const Vec2 go = runs_down(crease) ? Vec2{kept(by.x, box.low.x, box.high.x, sheet.width_mm), 0}
                                          : Vec2{0, kept(by.y, box.low.y, box.high.y, sheet.height_mm)};
        crease.from_mm = crease.from_mm + go;
        crease.to_mm = crease.to_mm + go;
        return {edit::SetFolds{std::move(folds)}};
    }
    std::vector<Keepout> clear = sheet.keepouts;
    std::vector<Vec2>& outline = clear[mark.index].outline_mm;
    const Bounds box = bounds_of(outline);
    const Vec2 go{kept(by.x, box.low.x, box.high.x, sheet.width_mm),
                  kept(by.y, box.low.y, box.high.y, sheet.height_mm)};
    for (Vec2& corner : outline) {
        corner = corner + go;
    }
    return {edit::SetKeepouts{std::move(clear)}};
}

Edit move_mark_corner(const Sheet& sheet, const SheetMark& mark, std::size_t corner, Vec2 to) {
    std::vector<Keepout> clear = sheet.keepouts;
    if (mark.kind != SheetMark::Kind::clear || corner >= clear[mark.index].outline_mm.size()) {
        return {edit::SetKeepouts{std::move(clear)}};
    }
    std::vector<Vec2>& outline = clear[mark.index].outline_mm;
    to = {std::clamp(to.x, 0.0, sheet.width_mm), std::clamp(to.y, 0.0, sheet.height_mm)};
    if (!is_upright(outline)) {
        outline[corner] = to;
        return {edit::SetKeepouts{std::move(clear)}};
    }
    // The corner across stays where it is; the two beside follow one way each.
    const Vec2 fixed = outline[(corner + 2) % 4];
    const Vec2 was = outline[corner];
    const auto held = [](double value, double from, double old) {
        return old >= from ? std::max(value, from + kLeastClear_mm) : std::min(value, from - kLeastClear_mm);
    };
    to = {held(to.x, fixed.x, was.x), held(to.y, fixed.y, was.y)};
    for (const std::size_t beside : {(corner + 1) % 4, (corner + 3) % 4}) {
        const bool same_x = std::abs(outline[beside].x - was.x) < 1e-9;
        (same_x ? outline[beside].x : outline[beside].y) = same_x ? to.x : to.y;
    }
    outline[corner] = to;
    return {edit::SetKeepouts{std::move(clear)}};
}

Edit turn_mark(const Sheet& sheet, const SheetMark& mark) {
    const Vec2 middle = place_of_mark(sheet, mark);
    if (mark.kind == SheetMark::Kind::crease) {
        std::vector<FoldLine> folds = sheet.folds;
        FoldLine& crease = folds[mark.index];
        const bool down = runs_down(crease);
        crease.from_mm = down ? Vec2{0, middle.y} : Vec2{middle.x, 0};
        crease.to_mm = down ? Vec2{sheet.width_mm, middle.y} : Vec2{middle.x, sheet.height_mm};
        return {edit::SetFolds{std::move(folds)}};
    }
    Sheet turned = sheet;
    for (Vec2& corner : turned.keepouts[mark.index].outline_mm) {
        corner = middle + quarter_turn(corner - middle);
    }
    // A quarter turn near an edge may leave the sheet: moved back by as much.
    const Bounds box = bounds_of(turned.keepouts[mark.index].outline_mm);
    const Vec2 back{std::max(0.0, -box.low.x) - std::max(0.0, box.high.x - sheet.width_mm),
                    std::max(0.0, -box.low.y) - std::max(0.0, box.high.y - sheet.height_mm)};
    for (Vec2& corner : turned.keepouts[mark.index].outline_mm) {
        corner = corner + back;
    }
    return {edit::SetKeepouts{std::move(turned.keepouts)}};
}

Edit remove_mark(const Sheet& sheet, const SheetMark& mark) {
    if (mark.kind == SheetMark::Kind::crease) {
        return {edit::SetFolds{without(sheet.folds, mark.index)}};
    }
    return {edit::SetKeepouts{without(sheet.keepouts, mark.index)}};
}

} // namespace lanternleaf
