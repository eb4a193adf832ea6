#include "sheets/plan_layers.h"

#include "sheets/symbols.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// How much a label minds covering each of these, per mm2.
constexpr double kOverPad = 8.0;
constexpr double kOverBody = 4.0;
constexpr double kOverTape = 1.0;
constexpr double kOverFold = 2.0;
constexpr double kOverLine = 6.0;
constexpr double kOverPatch = 0.15;
constexpr double kOverDisc = 0.3;

std::vector<Vec2> points_of(const Convex& shape) {
    const std::span<const Vec2> corners = shape.corners();
    return {corners.begin(), corners.end()};
}

Convex disc_box(Vec2 at_mm, double radius_mm) {
    return rectangle(at_mm, {2.0 * radius_mm, 2.0 * radius_mm}, 0.0);
}

} // namespace

std::vector<Vec2> outline_of(const Ribbon& ribbon) {
    // A run's corners are start left, end left, end right, start right (see make_ribbon).
    std::vector<Vec2> outline;
    for (const Run& run : ribbon.runs) {
        outline.push_back(run.outline.corners()[0]);
        outline.push_back(run.outline.corners()[1]);
    }
    for (std::size_t i = ribbon.runs.size(); i-- > 0;) {
        outline.push_back(ribbon.runs[i].outline.corners()[2]);
        outline.push_back(ribbon.runs[i].outline.corners()[3]);
    }
    const auto same = [](Vec2 a, Vec2 b) { return distance(a, b) < 1e-6; };
    outline.erase(std::unique(outline.begin(), outline.end(), same), outline.end());
    return outline;
}

PlanLayers::PlanLayers(const Card& card, const Parts& parts, const Lettering& lettering, const Words& words,
                       PagePen& pen)
    : card_(card), types_(parts), lettering_(lettering), words_(words), pen_(pen),
      conductors_(find_conductors(card, parts)), holder_(holder_shape(card, parts)),
      placer_({{0, 0}, {card.sheet.width_mm, card.sheet.height_mm}}) {
    for (const StripShape& shape : conductors_.strips) {
        for (const Run& run : shape.ribbon.runs) {
            placer_.avoid(run.outline, kOverTape);
        }
        for (const Convex& fold : shape.ribbon.fold_places) {
            placer_.avoid(fold, kOverFold);
        }
    }
    for (const PatchShape& shape : conductors_.patches) {
        placer_.avoid(shape.outline, kOverPatch);
    }
    for (const auto* pads : {&conductors_.led_pads, &conductors_.resistor_pads}) {
        for (const PadOutline& pad : *pads) {
            placer_.avoid(pad.outline, kOverPad);
        }
    }
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        placer_.avoid(led_body(card, parts, static_cast<int>(i)), kOverBody);
    }
    for (std::size_t i = 0; i < card.resistors.size(); ++i) {
        placer_.avoid(resistor_body(card, parts, static_cast<int>(i)), kOverBody);
    }
    for (int i = 0; i < 2; ++i) {
        placer_.avoid(holder_.flap ? disc_box(holder_.disc_at_mm[i], holder_.disc_radius_mm[i])
                                   : holder_.pad[i],
                      holder_.flap ? kOverDisc : kOverPad);
    }
    if (holder_.flap) {
        const auto [from, to] = hinge();
        const Vec2 along = to - from;
        placer_.avoid(
            rectangle((from + to) * 0.5, {length(along), 1.2}, degrees(std::atan2(along.y, along.x))),
            kOverLine);
    }
}

void PlanLayers::foam(const std::vector<FoamBand>& bands) {
    for (const FoamBand& band : bands) {
        const Vec2 ahead = band.to_mm - band.from_mm;
        const Convex shape = rectangle(band.from_mm + ahead * 0.5, {length(ahead), kFoamBand_mm},
                                       degrees(std::atan2(ahead.y, ahead.x)));
        const Box box = bounds(shape);
        constexpr double kPitch_mm = 1.7;
        constexpr double kMostDots = 8'000.0; // a huge sheet gets a wider pitch, not a huge file
        const Vec2 size = box.max - box.min;
        const double pitch = std::max(kPitch_mm, std::sqrt(size.x * size.y / kMostDots));
        int row = 0;
        for (double y = box.min.y + pitch / 2.0; y < box.max.y; y += pitch, ++row) {
            for (double x = box.min.x + pitch * (row % 2 == 0 ? 0.5 : 1.0); x < box.max.x; x += pitch) {
                pen_.disc({x, y}, 0.2, {}, grey(0.55));
            }
        }
        pen_.convex(shape, Stroke{0.12, grey(0.5), {}}, {});
    }
}

void PlanLayers::keepouts() {
    for (const Keepout& keepout : card_.sheet.keepouts) {
        draw_hatch(pen_, keepout.outline_mm, 3.0, {0.12, grey(0.55), {}});
        pen_.shape(keepout.outline_mm, Stroke{0.25, grey(0.25), {1.0, 0.8}}, {});
    }
}

void PlanLayers::strip(int index) {
    const StripShape& shape = conductors_.strips[static_cast<std::size_t>(index)];
    if (shape.ribbon.runs.empty()) {
        return;
    }
    const SideLook look = look_of(strip_of(card_, conductors_, index).side);
    for (const Run& run : shape.ribbon.runs) {
        pen_.convex(run.outline, {}, look.fill);
    }
    pen_.shape(outline_of(shape.ribbon), look.edge, {});
    for (std::size_t i = 1; i < shape.ribbon.runs.size(); ++i) {
        const std::span<const Vec2> corners = shape.ribbon.runs[i].outline.corners();
        pen_.line(corners[0], corners[3], {0.2, kBlack, {}}); // the crease of the fold
    }
}

void PlanLayers::patch(const PatchShape& shape) {
    pen_.convex(shape.outline, Stroke{0.3, grey(0.2), {}}, grey(0.97));
    draw_hatch(pen_, points_of(shape.outline), 1.5, {0.12, grey(0.5), {}});
}

void PlanLayers::laid() {
    std::size_t next_strip = 0;
    std::size_t next_patch = 0;
    for (const Laid& item : card_.laid) {
        if (std::holds_alternative<Strip>(item)) {
            strip(static_cast<int>(next_strip++));
        } else {
            patch(conductors_.patches[next_patch++]);
        }
    }
    laps();
}

void PlanLayers::laps() {
    // Where two strips of one side lie over each other: the place to rub hard.
    for (const Overlap& overlap : conductors_.overlaps) {
        if (strip_of(card_, conductors_, overlap.lower).side !=
            strip_of(card_, conductors_, overlap.upper).side) {
            continue;
        }
        for (const Convex& piece : overlap.pieces) {
            pen_.convex(piece, Stroke{0.3, kBlack, {0.5, 0.6}}, {});
        }
    }
}

void PlanLayers::folds() {
    for (const FoldLine& fold : card_.sheet.folds) {
        pen_.line(fold.from_mm, fold.to_mm, {0.3, grey(0.15), {5.0, 1.5, 0.8, 1.5}});
    }
}

void PlanLayers::pad(const PadOutline& outline, char sign) {
    if (outline.outline.empty()) {
        return;
    }
    pen_.convex(outline.outline, Stroke{0.35, kBlack, {}}, kWhite);
    double least = 1e300; // the pad's shorter side bounds the sign
    const std::span<const Vec2> corners = outline.outline.corners();
    for (std::size_t i = 0; i < corners.size(); ++i) {
        least = std::min(least, distance(corners[i], corners[(i + 1) % corners.size()]));
    }
    draw_sign(pen_, outline.at_mm, sign, std::min(1.3, least * 0.36), std::min(0.5, least * 0.2));
}

void PlanLayers::parts() {
    const Stroke body{0.2, grey(0.2), {0.9, 0.7}};
    for (std::size_t i = 0; i < card_.leds.size(); ++i) {
        pen_.convex(led_body(card_, types_, static_cast<int>(i)), body, {});
        pad(conductors_.led_pads[2 * i], '-');
        pad(conductors_.led_pads[2 * i + 1], '+');
    }
    for (std::size_t i = 0; i < card_.resistors.size(); ++i) {
        pen_.convex(resistor_body(card_, types_, static_cast<int>(i)), body, {});
        pad(conductors_.resistor_pads[2 * i], ' ');
        pad(conductors_.resistor_pads[2 * i + 1], ' ');
    }
}

// The flap folds half way between the discs.
std::pair<Vec2, Vec2> PlanLayers::hinge() const {
    const Vec2 middle = (holder_.disc_at_mm[0] + holder_.disc_at_mm[1]) * 0.5;
    const Vec2 along = quarter_turn(unit(holder_.disc_at_mm[1] - holder_.disc_at_mm[0]));
    const double half = holder_.disc_radius_mm[1] + 4.0;
    return {middle - along * half, middle + along * half};
}

void PlanLayers::holder() {
    const CellType* cell = nullptr;
    if (const auto found = types_.cells.find(card_.cell.type); found != types_.cells.end()) {
        cell = &found->second;
    }
    if (!holder_.flap) {
        pen_.convex(holder_.body, Stroke{0.3, kBlack, {}}, {});
        for (int i = 0; i < 2; ++i) {
            PadOutline outline;
            outline.outline = holder_.pad[i];
            outline.at_mm = holder_.at_mm[i];
            pad(outline, terminal_face(card_, i) == CellFace::negative ? '-' : '+');
        }
        if (cell != nullptr) {
            pen_.disc(card_.holder.at_mm, cell->diameter_mm / 2.0, Stroke{0.2, grey(0.3), {1.2, 0.8}}, {});
        }
        return;
    }
    pen_.disc(holder_.disc_at_mm[0], holder_.disc_radius_mm[0], Stroke{0.35, kBlack, {}}, {});
    pen_.disc(holder_.disc_at_mm[1], holder_.disc_radius_mm[1], Stroke{0.3, kBlack, {1.6, 1.0}}, {});
    if (cell != nullptr && std::abs(cell->diameter_mm / 2.0 - holder_.disc_radius_mm[0]) > 0.3) {
        pen_.disc(holder_.disc_at_mm[0], cell->diameter_mm / 2.0, Stroke{0.2, grey(0.3), {1.2, 0.8}}, {});
    }
    const auto [from, to] = hinge();
    pen_.line(from, to, {0.3, kBlack, {4.0, 1.0, 1.0, 1.0}});
}

} // namespace lanternleaf
