#include "screens/draw_choices.h"

#include "drawing/sheet_marks.h"
#include "geometry/ribbon.h"
#include "view/part_words.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace lanternleaf {

namespace {

std::string place_words(Vec2 at_mm, const Words& words) {
    return words("draw.at", {{"across", words.mm(at_mm.x)}, {"down", words.mm(at_mm.y)}});
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

Selection of_strip(const DrawState& draw, const Strip& strip, const Words& words) {
    Selection out;
    const Ribbon ribbon = make_ribbon(strip.path_mm, 1.0);
    const std::size_t folds = ribbon.folds_mm.size();
    out.title = words(strip.side == Side::positive   ? "draw.plus_strip"
                      : strip.side == Side::negative ? "draw.minus_strip"
                                                     : "draw.link",
                      {{"id", strip.id}});
    out.words = words(
        "draw.strip_is",
        {{"length", words.mm(ribbon.length_mm)}, {"tape", spoken_part(strip.tape, words)}, {"n", folds}});
    const bool inner = draw.corner > 0 && draw.corner + 1 < static_cast<int>(strip.path_mm.size());
    if (inner) {
        out.words = words("draw.corner_of", {{"number", draw.corner}, {"count", folds}});
        out.choices.push_back(
            {"draw/do/remove", words("draw.corner_out"), Icon::Trash, drawn(draw::RemoveSelected{})});
        return out;
    }
    const Vec2 at = snap_to_grid(draw.selected_at_mm);
    out.choices.push_back(
        {"draw/do/corner", words("draw.corner"), Icon::Plus,
         drawn(draw::Do{{edit::InsertCorner{strip.id, corner_after(strip, draw.selected_at_mm), at}}})});
    out.choices.push_back({"draw/do/cut", words("draw.cut"), Icon::Cross,
                           drawn(draw::Do{{edit::SplitStrip{strip.id, draw.selected_at_mm}}})});
    if (const Strip* other = partner_of(draw, strip)) {
        out.choices.push_back({"draw/do/join", words("draw.join"), Icon::Strip,
                               drawn(draw::Do{{edit::JoinStrips{strip.id, other->id}}})});
    }
    out.choices.push_back(
        {"draw/do/tape", words("draw.tape"), Icon::Ruler, command::OpenSheet{SheetKind::draw_tape}});
    out.choices.push_back(
        {"draw/do/remove", words("draw.remove"), Icon::Trash, drawn(draw::RemoveSelected{})});
    return out;
}

Selection of_foam(const DrawState& draw, const Words& words) {
    Selection out;
    const Foam foam = draw.card.foam.value_or(Foam{1.5, 0, {}, {}});
    out.title =
        foam.layers == 0
            ? words("draw.no_foam")
            : words("draw.foam_is", {{"layers", foam.layers}, {"thickness", words.mm(foam.thickness_mm)}});
    out.words = words("draw.foam_words");
    const auto with = [&](double thickness_mm, int layers) {
        Foam next = foam;
        next.thickness_mm = thickness_mm;
        next.layers = std::clamp(layers, 1, 20);
        if (next.edges.empty()) {
            next.edges = {Edge::top, Edge::right, Edge::bottom, Edge::left};
        }
        return drawn(draw::Do{{edit::SetFoam{next}}});
    };
    std::vector<double> heights_mm{1.0, 1.5, 2.0, 3.0}; // common craft foam and foam tape
    for (const auto& [id, own] : draw.parts.foams) {
        heights_mm.push_back(own.thickness_mm); // and what the maker measured
    }
    std::sort(heights_mm.begin(), heights_mm.end());
    const auto next = std::upper_bound(heights_mm.begin(), heights_mm.end(), foam.thickness_mm + 1e-9);
    out.choices.push_back(
        {"draw/do/fewer", words("draw.fewer"), Icon::Minus, with(foam.thickness_mm, foam.layers - 1)});
    out.choices.push_back(
        {"draw/do/more", words("draw.more"), Icon::Plus, with(foam.thickness_mm, foam.layers + 1)});
    out.choices.push_back({"draw/do/thickness", words("draw.thickness"), Icon::Ruler,
                           with(next == heights_mm.end() ? heights_mm.front() : *next, foam.layers)});
    return out;
}

} // namespace

Selection selection_of(const DrawState& draw, const Words& words) {
    Selection out;
    const std::string& id = draw.selected;
    const Choice turn{"draw/do/turn", words("draw.turn"), Icon::Repeat, drawn(draw::TurnSelected{90.0})};
    const Choice lean{"draw/do/lean", "15°", Icon::Redo, drawn(draw::TurnSelected{15.0})};
    const Choice copy{"draw/do/copy", words("draw.copy"), Icon::Layers, drawn(draw::CopySelected{})};
    const Choice remove{"draw/do/remove", words("draw.remove"), Icon::Trash, drawn(draw::RemoveSelected{})};
    if (const Strip* strip = find_strip(draw.card, id)) {
        return of_strip(draw, *strip, words);
    }
    if (id == "foam") {
        return of_foam(draw, words);
    }
    if (const Led* led = find_led(draw.card, id)) {
        out.title = words("draw.titled",
                          {{"id", id}, {"what", spoken_part(draw.parts.leds.at(led->type).colour, words)}});
        out.words = place_words(led->at_mm, words);
        out.choices = {
            turn,
            lean,
            {"draw/do/kind", words("draw.kind"), Icon::Bulb, command::OpenSheet{SheetKind::draw_light}},
            copy,
            remove};
    } else if (const ResistorPart* resistor = resistor_in(draw.card, id)) {
        out.title = words("draw.titled", {{"id", id}, {"what", words.ohm(resistor->ohm)}});
        out.words = place_words(resistor->at_mm, words);
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
        out.choices = {{"draw/do/less", words("draw.less"), Icon::Minus, ohm(less)},
                       {"draw/do/more", words("draw.more"), Icon::Plus, ohm(more)},
                       turn,
                       copy,
                       remove};
    } else if (id == kHolderId) {
        out.title = words("draw.holder_is", {{"kind", spoken_part(draw.card.holder.type, words)}});
        out.words = place_words(draw.card.holder.at_mm, words);
        auto next = std::next(draw.parts.holders.find(draw.card.holder.type));
        if (next == draw.parts.holders.end()) {
            next = draw.parts.holders.begin();
        }
        out.choices = {turn,
                       {"draw/do/kind", words("draw.other_kind"), Icon::Holder,
                        drawn(draw::Do{{edit::SetHolder{next->first}}})}};
    } else if (const std::optional<SheetMark> mark = find_mark(draw.card.sheet, id)) {
        const bool crease = mark->kind == SheetMark::Kind::crease;
        out.title = crease ? words("draw.crease")
                           : words("draw.keep_clear", {{"why", draw.card.sheet.keepouts[mark->index].why}});
        out.words = words_of_mark(draw.card.sheet, *mark, words);
        out.choices = {turn, remove};
    } else if (!id.empty()) {
        out.title = words("draw.patch_is", {{"id", id}});
        out.words = words("draw.patch_words");
        out.choices = {turn, lean, copy, remove};
    }
    return out;
}

} // namespace lanternleaf
