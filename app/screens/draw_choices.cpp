#include "screens/draw_choices.h"

#include "base/readout.h"
#include "drawing/sheet_marks.h"
#include "geometry/ribbon.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace lanternleaf {

namespace {

std::string spaced(std::string words) {
    std::replace(words.begin(), words.end(), '-', ' ');
    return words;
}

Command drawn(DrawCommand what) {
    return command::Draw{std::move(what)};
}

const ResistorPart* resistor_in(const Card& card, const std::string& id) {
    for (const ResistorPart& resistor : card.resistors) {
        if (resistor.id == id) {
            return &resistor;
        }
    }
    return nullptr;
}

/// A strip of the same side and tape that lies on an end of this one with one of its own: the two could be
/// one.
const Strip* partner_of(const DrawState& draw, const Strip& strip) {
    const Conductors& made = draw.review.conductors;
    const auto at_end = [](const Strip& each, Vec2 at, double width_mm) {
        return distance(each.path_mm.front(), at) <= width_mm ||
               distance(each.path_mm.back(), at) <= width_mm;
    };
    for (const Overlap& overlap : made.overlaps) {
        const Strip& lower = strip_of(draw.card, made, overlap.lower);
        const Strip& upper = strip_of(draw.card, made, overlap.upper);
        if (lower.id != strip.id && upper.id != strip.id) {
            continue;
        }
        const Strip& other = lower.id == strip.id ? upper : lower;
        const double width_mm = made.strips[static_cast<std::size_t>(overlap.lower)].ribbon.width_mm;
        if (other.side == strip.side && other.tape == strip.tape && at_end(strip, overlap.at_mm, width_mm) &&
            at_end(other, overlap.at_mm, width_mm)) {
            return &other;
        }
    }
    return nullptr;
}

/// The corner that a new one at the tapped place comes before.
int corner_after(const Strip& strip, Vec2 at) {
    int best = 1;
    double least = 1e300;
    for (std::size_t i = 1; i < strip.path_mm.size(); ++i) {
        const double far = distance_to_segment(at, strip.path_mm[i - 1], strip.path_mm[i]);
        if (far < least) {
            least = far;
            best = static_cast<int>(i);
        }
    }
    return best;
}

Selection of_strip(const DrawState& draw, const Strip& strip) {
    Selection out;
    const Ribbon ribbon = make_ribbon(strip.path_mm, 1.0);
    const std::size_t folds = ribbon.folds_mm.size();
    out.title = strip.id + ", " +
                (strip.side == Side::positive   ? "+ strip"
                 : strip.side == Side::negative ? "− strip"
                                                : "link");
    out.words = readout_mm(ribbon.length_mm) + " of " + spaced(strip.tape) + ", " + std::to_string(folds) +
                (folds == 1 ? " fold" : " folds");
    const bool inner = draw.corner > 0 && draw.corner + 1 < static_cast<int>(strip.path_mm.size());
    if (inner) {
        out.words = "Corner " + std::to_string(draw.corner) + " of " + std::to_string(folds);
        out.choices.push_back(
            {"draw/do/remove", "Take corner out", Icon::Trash, drawn(draw::RemoveSelected{})});
        return out;
    }
    const Vec2 at = snap_to_grid(draw.selected_at_mm);
    out.choices.push_back(
        {"draw/do/corner", "Corner", Icon::Plus,
         drawn(draw::Do{{edit::InsertCorner{strip.id, corner_after(strip, draw.selected_at_mm), at}}})});
    out.choices.push_back({"draw/do/cut", "Cut", Icon::Cross,
                           drawn(draw::Do{{edit::SplitStrip{strip.id, draw.selected_at_mm}}})});
    if (const Strip* other = partner_of(draw, strip)) {
        out.choices.push_back(
            {"draw/do/join", "Join", Icon::Strip, drawn(draw::Do{{edit::JoinStrips{strip.id, other->id}}})});
    }
    out.choices.push_back({"draw/do/tape", "Tape", Icon::Ruler, command::OpenSheet{SheetKind::draw_tape}});
    out.choices.push_back({"draw/do/remove", "Remove", Icon::Trash, drawn(draw::RemoveSelected{})});
    return out;
}

Selection of_foam(const DrawState& draw) {
    Selection out;
    const Foam foam = draw.card.foam.value_or(Foam{1.5, 0, {}, {}});
    out.title = foam.layers == 0
                    ? "No foam"
                    : std::to_string(foam.layers) + " × " + readout_mm(foam.thickness_mm) + " of foam";
    out.words = "Tap an edge of the sheet to pad it or leave it bare";
    const auto with = [&](double thickness_mm, int layers) {
        Foam next = foam;
        next.thickness_mm = thickness_mm;
        next.layers = std::clamp(layers, 1, 20);
        if (next.edges.empty()) {
            next.edges = {Edge::top, Edge::right, Edge::bottom, Edge::left};
        }
        return drawn(draw::Do{{edit::SetFoam{next}}});
    };
    constexpr std::array<double, 4> kSold_mm{1.0, 1.5, 2.0, 3.0}; // common craft foam and foam tape
    const auto next = std::upper_bound(kSold_mm.begin(), kSold_mm.end(), foam.thickness_mm + 1e-9);
    out.choices.push_back({"draw/do/fewer", "Fewer", Icon::Minus, with(foam.thickness_mm, foam.layers - 1)});
    out.choices.push_back({"draw/do/more", "More", Icon::Plus, with(foam.thickness_mm, foam.layers + 1)});
    out.choices.push_back({"draw/do/thickness", "Thickness", Icon::Ruler,
                           with(next == kSold_mm.end() ? kSold_mm.front() : *next, foam.layers)});
    return out;
}

} // namespace

Selection selection_of(const DrawState& draw) {
    Selection out;
    const std::string& id = draw.selected;
    const Choice turn{"draw/do/turn", "Turn", Icon::Repeat, drawn(draw::TurnSelected{90.0})};
    const Choice lean{"draw/do/lean", "15°", Icon::Redo, drawn(draw::TurnSelected{15.0})};
    const Choice copy{"draw/do/copy", "Copy", Icon::Layers, drawn(draw::CopySelected{})};
    const Choice remove{"draw/do/remove", "Remove", Icon::Trash, drawn(draw::RemoveSelected{})};
    if (const Strip* strip = find_strip(draw.card, id)) {
        return of_strip(draw, *strip);
    }
    if (id == "foam") {
        return of_foam(draw);
    }
    if (const Led* led = find_led(draw.card, id)) {
        out.title = id + ", " + spaced(draw.parts.leds.at(led->type).colour);
        out.words = "at " + readout_mm(led->at_mm.x) + " × " + readout_mm(led->at_mm.y);
        out.choices = {turn,
                       lean,
                       {"draw/do/kind", "Kind", Icon::Bulb, command::OpenSheet{SheetKind::draw_light}},
                       copy,
                       remove};
    } else if (const ResistorPart* resistor = resistor_in(draw.card, id)) {
        out.title = id + ", " + readout_ohm(resistor->ohm);
        out.words = "at " + readout_mm(resistor->at_mm.x) + " × " + readout_mm(resistor->at_mm.y);
        const auto ohm = [&](double next) { return drawn(draw::Do{{edit::SetOhm{id, next}}}); };
        // The E12 series (IEC 60063), up and down from the value at hand.
        constexpr std::array<double, 12> kE12{1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2};
        const double decade = std::pow(10.0, std::floor(std::log10(resistor->ohm) + 1e-9));
        const double base = resistor->ohm / decade;
        double less = kE12.back() * decade / 10.0;
        double more = decade * 10.0;
        for (const double value : kE12) {
            less = value < base - 1e-6 ? value * decade : less;
        }
        for (std::size_t i = kE12.size(); i-- > 0;) {
            more = kE12[i] > base + 1e-6 ? kE12[i] * decade : more;
        }
        out.choices = {{"draw/do/less", "Less", Icon::Minus, ohm(less)},
                       {"draw/do/more", "More", Icon::Plus, ohm(more)},
                       turn,
                       copy,
                       remove};
    } else if (id == kHolderId) {
        out.title = "Holder, " + spaced(draw.card.holder.type);
        out.words =
            "at " + readout_mm(draw.card.holder.at_mm.x) + " × " + readout_mm(draw.card.holder.at_mm.y);
        auto next = std::next(draw.parts.holders.find(draw.card.holder.type));
        if (next == draw.parts.holders.end()) {
            next = draw.parts.holders.begin();
        }
        out.choices = {
            turn,
            {"draw/do/kind", "Other kind", Icon::Holder, drawn(draw::Do{{edit::SetHolder{next->first}}})}};
    } else if (const std::optional<SheetMark> mark = find_mark(draw.card.sheet, id)) {
        const bool crease = mark->kind == SheetMark::Kind::crease;
        out.title = crease ? "Crease" : "Keep clear: " + draw.card.sheet.keepouts[mark->index].why;
        out.words = words_of_mark(draw.card.sheet, *mark, draw.words);
        out.choices = {turn, remove};
    } else if (!id.empty()) {
        out.title = id + ", patch";
        out.words = "insulates what lies over it from what lies under it";
        out.choices = {turn, lean, copy, remove};
    }
    return out;
}

} // namespace lanternleaf
