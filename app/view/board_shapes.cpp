#include "view/board_shapes.h"

#include "base/at.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kFlapBeyond_mm = 5.0; ///< flap past its disc at the foot: room for its label
constexpr double kFlapHalfWidth_mm = 15.0;
constexpr double kBaseHalfWidth_mm = 13.0; ///< narrower: the tape to the flap passes beside it
constexpr double kBaseBeyond_mm = 3.0;     ///< paper past the bed
constexpr double kTapeSpare_mm = 1.5;
constexpr double kFoilOhm_per_square = 0.01; ///< between foil and woven tape

/// Whether p lies in the drawn outline of a part, grown a little.
bool under(const PartView& part, Vec2 p, double grown_mm) {
    const Vec2 local = turned(p - part.at_mm, -part.turn_deg);
    return std::abs(local.x) <= part.length_mm / 2 + grown_mm &&
           std::abs(local.y) <= part.width_mm / 2 + grown_mm;
}

double pitch_of(double ppm) {
    return ppm < kSmallPpm ? kWideTickPitch_mm : kTickPitch_mm;
}

} // namespace

std::vector<FoldMark> folds_of(const std::vector<Vec2>& path_mm) {
    std::vector<FoldMark> out;
    for (std::size_t i = 1; i + 1 < path_mm.size(); ++i) {
        const Vec2 in = unit(path_mm[i] - path_mm[i - 1]);
        const Vec2 way = unit(path_mm[i + 1] - path_mm[i]);
        if (dot(in, way) < 0.9999) {
            out.push_back({path_mm[i], in, way});
        }
    }
    return out;
}

std::vector<Vec2> ticks_of(const StripView& strip, const Conductors& conductors, int index,
                           const std::vector<PartView>& parts, const HolderView& holder, double ppm) {
    std::vector<Vec2> out;
    const double pitch = pitch_of(ppm);
    const auto clear = [&](Vec2 p) {
        for (const FoldMark& fold : strip.folds) {
            if (distance(fold.at_mm, p) < kTickFromFold_mm) {
                return false;
            }
        }
        for (const Overlap& overlap : conductors.overlaps) {
            if ((overlap.lower == index || overlap.upper == index) &&
                distance(overlap.at_mm, p) < kTickFromJoint_mm) {
                return false;
            }
        }
        for (const PatchShape& patch : conductors.patches) {
            if (patch.laid_index > conductors.strips[at(index)].laid_index && contains(patch.outline, p)) {
                return false;
            }
        }
        // The hinge and the paper's edges are lines too: a sign on one of them cannot be read.
        for (const auto* outline : {&holder.flap_outline_mm, &holder.base_outline_mm}) {
            for (std::size_t i = 0; i < outline->size(); ++i) {
                if (distance_to_segment(p, (*outline)[i], (*outline)[(i + 1) % outline->size()]) < 1.6) {
                    return false;
                }
            }
        }
        return std::none_of(parts.begin(), parts.end(),
                            [&](const PartView& part) { return under(part, p, 2.0); });
    };
    for (std::size_t i = 1; i < strip.done_mm.size(); ++i) {
        const Vec2 from = strip.done_mm[i - 1];
        const Vec2 to = strip.done_mm[i];
        const double run = distance(from, to);
        const int count = static_cast<int>(std::floor(run / pitch));
        // Even on each straight run, so that a run's two ends look alike.
        const double first = (run - (count - 1) * pitch) / 2;
        for (int k = 0; k < count; ++k) {
            const Vec2 p = from + unit(to - from) * (first + k * pitch);
            if (clear(p)) {
                out.push_back(p);
            }
        }
    }
    return out;
}

double drawn_length(const Package& package) {
    constexpr double kLeast_mm = 9.6;
    double pitch = 0.0;
    for (const PadShape& a : package.pads) {
        for (const PadShape& b : package.pads) {
            pitch = std::max(pitch, distance(a.at_mm, b.at_mm));
        }
    }
    return std::max(kLeast_mm, pitch + 1.6);
}

LightTint tint_of(const std::string& colour) {
    if (colour == "green") {
        return LightTint::green;
    }
    if (colour == "blue") {
        return LightTint::blue;
    }
    if (colour == "white") {
        return LightTint::white;
    }
    return colour == "red" || colour == "pink" ? LightTint::red : LightTint::warm;
}

bool is_fabric(const TapeType& tape) {
    return tape.ohm_per_square > kFoilOhm_per_square;
}

HolderView holder_view(const Card& card, const Parts& parts, const Conductors& conductors) {
    HolderView view;
    const HolderShape shape = holder_shape(card, parts);
    const HolderType& type = parts.holders.at(card.holder.type);
    view.flap = shape.flap;
    view.bed_mm = card.holder.at_mm;
    view.cell_radius_mm = type.cell_diameter_mm / 2;
    if (!shape.flap) {
        const auto corners = shape.body.corners();
        view.base_outline_mm.assign(corners.begin(), corners.end());
        view.pad_mm[0] = shape.pad[0];
        view.pad_mm[1] = shape.pad[1];
        view.flap_mm = view.bed_mm;
        return view;
    }
    view.bed_mm = shape.disc_at_mm[0];
    view.flap_mm = shape.disc_at_mm[1];
    const Vec2 open = direction(card.holder.turn_deg); // from the bed to the open flap
    const Vec2 side = quarter_turn(open);
    const double hinge = type.flap_offset_mm / 2;
    const double foot = type.flap_offset_mm + type.flap_radius_mm + kFlapBeyond_mm;
    double low = -kFlapHalfWidth_mm;
    double high = kFlapHalfWidth_mm;
    for (const StripShape& strip : conductors.strips) {
        const Convex* first = strip.ribbon.runs.empty() ? nullptr : &strip.ribbon.runs.front().outline;
        if (first == nullptr || area_in_disc(*first, view.flap_mm, type.flap_radius_mm) <= 0.0) {
            continue;
        }
        for (std::size_t i = 0; i < strip.ribbon.runs.size() && i < 2; ++i) {
            for (const Vec2 p : {strip.ribbon.runs[i].from_mm, strip.ribbon.runs[i].to_mm}) {
                const Vec2 local = p - view.bed_mm;
                const double across = dot(local, side);
                if (dot(local, open) > hinge && std::abs(across) < 1.5 * type.flap_offset_mm) {
                    const double edge = strip.ribbon.width_mm / 2 + kTapeSpare_mm;
                    low = std::min(low, across - edge);
                    high = std::max(high, across + edge);
                }
            }
        }
    }
    const auto place = [&](double along_open, double across) {
        return view.bed_mm + open * along_open + side * across;
    };
    view.flap_outline_mm = {place(hinge, low), place(hinge, high), place(foot, high), place(foot, low)};
    const double back = -(type.bed_radius_mm + kBaseBeyond_mm);
    view.base_outline_mm = {place(hinge, -kBaseHalfWidth_mm), place(hinge, kBaseHalfWidth_mm),
                            place(back, kBaseHalfWidth_mm), place(back, -kBaseHalfWidth_mm)};
    Box box;
    for (const Vec2 p : view.flap_outline_mm) {
        box.add(p);
    }
    // The label stands under the flap's disc as the sheet lies, or above it where the hinge leaves no room
    // below.
    const double below = box.max.y - (view.flap_mm.y + type.flap_radius_mm);
    const bool at_foot = below >= 4.0;
    view.label_mm = {(box.min.x + box.max.x) / 2 - (at_foot ? 2.0 : 0.0),
                     at_foot ? box.max.y - below / 2 : box.min.y + 2.5};
    return view;
}

} // namespace lanternleaf
