#include "view/board_view.h"

#include "base/at.h"
#include "base/readout.h"
#include "view/board_pills.h"
#include "view/board_shapes.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr double kHaloWidth_mm = 10.0;
constexpr double kSameLength_mm = 0.01;

bool shown(Side side, const BoardOptions& options) {
    return side == Side::negative ? options.negative : side != Side::positive || options.positive;
}

ItemState pad_state(const BoardProgress& progress, std::size_t led) {
    return std::max(progress.pads[led], progress.leds[led]);
}

std::vector<PartView> part_views(const Card& card, const Parts& parts, const BoardProgress& progress,
                                 const BoardOptions& options) {
    std::vector<PartView> out;
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        const Led& led = card.leds[i];
        PartView view;
        view.id = led.id;
        view.target = "board/led/" + led.id;
        view.at_mm = led.at_mm;
        view.turn_deg = led.turn_deg;
        const LedType& type = parts.leds.at(led.type);
        view.length_mm = drawn_length(parts.packages.at(type.package));
        view.state = progress.leds[i];
        view.marked = pad_state(progress, i) != ItemState::later;
        view.tint = tint_of(type.colour);
        view.glow = i < options.glow.size() && progress.leds[i] == ItemState::done
                        ? std::clamp(options.glow[i], 0.0, 1.0)
                        : 0.0;
        out.push_back(std::move(view));
    }
    for (std::size_t i = 0; i < card.resistors.size(); ++i) {
        const ResistorPart& resistor = card.resistors[i];
        PartView view;
        view.id = resistor.id;
        view.target = "board/resistor/" + resistor.id;
        view.at_mm = resistor.at_mm;
        view.turn_deg = resistor.turn_deg;
        view.length_mm = parts.resistor ? drawn_length(*parts.resistor) : view.length_mm;
        view.width_mm = 4.4;
        view.resistor = true;
        view.value = readout_ohm(resistor.ohm);
        view.state = progress.resistors[i];
        out.push_back(std::move(view));
    }
    return out;
}

std::vector<JointView> joint_views(const Card& card, const Conductors& conductors,
                                   const BoardProgress& progress, const BoardOptions& options) {
    std::vector<JointView> out;
    for (const Overlap& overlap : conductors.overlaps) {
        const Strip& lower = strip_of(card, conductors, overlap.lower);
        const Strip& upper = strip_of(card, conductors, overlap.upper);
        const bool lies =
            progress.strips[at(overlap.lower)].done_mm >= overlap.along_lower_mm - kSameLength_mm &&
            progress.strips[at(overlap.upper)].done_mm >= overlap.along_upper_mm - kSameLength_mm;
        if (!overlap.conducts || !lies || !shown(upper.side, options)) {
            continue;
        }
        const double width = std::min(conductors.strips[at(overlap.lower)].ribbon.width_mm,
                                      conductors.strips[at(overlap.upper)].ribbon.width_mm);
        out.push_back({"board/joint/" + lower.id + "-" + upper.id, overlap.at_mm, width, upper.side});
    }
    return out;
}

StripView strip_view(const Card& card, const Parts& parts, const Conductors& conductors,
                     const BoardProgress& progress, int index) {
    const StripShape& shape = conductors.strips[at(index)];
    const Strip& strip = strip_of(card, conductors, index);
    const StripProgress& lies = progress.strips[at(index)];
    const double end = shape.ribbon.length_mm;
    StripView view;
    view.id = strip.id;
    view.target = "board/strip/" + strip.id;
    view.side = strip.side;
    view.fabric = is_fabric(parts.tapes.at(strip.tape));
    view.width_mm = shape.ribbon.width_mm;
    view.laid_index = shape.laid_index;
    view.active = progress.moving && progress.strip == index;
    const double now = std::max(lies.done_mm, lies.now_mm);
    view.done_mm = stretch(shape.ribbon, 0.0, lies.done_mm);
    view.now_mm = stretch(shape.ribbon, lies.done_mm, now);
    view.later_mm = stretch(shape.ribbon, now, end);
    view.folds = folds_of(view.done_mm);
    return view;
}

/// The halo: the run under way; at a fold also the straight run that leads to it.
std::vector<Vec2> halo_path(const Conductors& conductors, const BoardProgress& progress) {
    if (!progress.moving || progress.strip < 0) {
        return {};
    }
    const Ribbon& ribbon = conductors.strips[at(progress.strip)].ribbon;
    const StripProgress& lies = progress.strips[at(progress.strip)];
    double from = lies.done_mm;
    if (progress.kind == MoveKind::fold) {
        from = 0.0;
        for (const Vec2 fold : ribbon.folds_mm) {
            const double place = along(ribbon, fold);
            if (place < lies.done_mm - 1.0) {
                from = std::max(from, place);
            }
        }
    }
    return stretch(ribbon, from, std::max(from, lies.now_mm));
}

void mark_move(BoardView& view, const Conductors& conductors, const BoardProgress& progress,
               const Words& words) {
    if (!progress.moving || progress.path_mm.empty()) {
        return;
    }
    view.halo_mm = halo_path(conductors, progress);
    const Ribbon* ribbon = progress.strip >= 0 ? &conductors.strips[at(progress.strip)].ribbon : nullptr;
    const StripView* strip = nullptr;
    for (const StripView& each : view.strips) {
        strip = each.active ? &each : strip;
    }
    if (strip != nullptr && strip->now_mm.size() >= 2) {
        view.run = RunMark{strip->now_mm, strip->side, strip->width_mm};
        view.halo_width_mm = std::max(kHaloWidth_mm, strip->width_mm + 5.0);
    }
    if (ribbon != nullptr && progress.kind != MoveKind::joint && progress.kind != MoveKind::cut) {
        view.start = StartMark{point_at(*ribbon, 0.0), words("board.start"), {}, {}};
    }
    if (progress.kind == MoveKind::fold && ribbon != nullptr) {
        const Vec2 place = progress.path_mm.back();
        const double along_mm = along(*ribbon, place);
        const Vec2 in = heading_at(*ribbon, std::max(0.0, along_mm - 0.5));
        const Vec2 out = heading_at(*ribbon, along_mm + 0.5);
        view.fold = FoldToMake{place, unit(in - out), place, progress.number, cross(in, out) >= 0.0};
    } else if (ribbon == nullptr || progress.kind == MoveKind::joint || progress.kind == MoveKind::cut ||
               progress.kind == MoveKind::leave_tail) {
        view.place = progress.path_mm.back();
    }
}

} // namespace

std::vector<Vec2> stretch(const Ribbon& ribbon, double from_mm, double to_mm) {
    std::vector<Vec2> out;
    const double from = std::max(0.0, from_mm);
    const double to = std::min(ribbon.length_mm, to_mm);
    if (to - from <= kSameLength_mm || ribbon.runs.empty()) {
        return out;
    }
    out.push_back(point_at(ribbon, from));
    for (const Run& run : ribbon.runs) {
        if (run.starts_at_mm > from + kSameLength_mm && run.starts_at_mm < to - kSameLength_mm) {
            out.push_back(run.from_mm);
        }
    }
    out.push_back(point_at(ribbon, to));
    return out;
}

BoardView make_board_view(const Card& card, const Parts& parts, const Conductors& conductors,
                          const BoardProgress& progress, const BoardOptions& options) {
    BoardView view;
    view.sheet_mm = {card.sheet.width_mm, card.sheet.height_mm};
    view.creases = card.sheet.folds;
    view.keepouts = card.sheet.keepouts;
    if (card.sheet.art && options.picture) {
        view.art = BoardArt{card.sheet.art->file, card.sheet.art->at_mm, card.sheet.art->width_mm};
    }
    view.holder = holder_view(card, parts, conductors);
    view.holder.state = progress.holder;
    view.holder.cell_in = progress.cell_in;
    view.holder.label = options.words("board.inside_flap");
    view.joints = joint_views(card, conductors, progress, options);
    view.parts = part_views(card, parts, progress, options);
    for (int i = 0; i < static_cast<int>(conductors.strips.size()); ++i) {
        StripView strip = strip_view(card, parts, conductors, progress, i);
        if (shown(strip.side, options)) {
            strip.ticks_mm = ticks_of(strip, conductors, i, view.parts, view.holder, options.ppm);
            view.strips.push_back(std::move(strip));
        }
    }
    for (std::size_t i = 0; i < conductors.patches.size(); ++i) {
        const int laid = conductors.patches[i].laid_index;
        const Patch& patch = std::get<Patch>(card.laid[at(laid)]);
        view.patches.push_back({patch.id, "board/patch/" + patch.id, patch.at_mm, patch.size_mm,
                                patch.turn_deg, laid, progress.patches[i]});
    }
    view.foam = card.foam;
    view.foam_state = progress.foam;
    mark_move(view, conductors, progress, options.words);
    view.marks = options.marks;
    place_pills(view, conductors, options);
    return view;
}

} // namespace lanternleaf
