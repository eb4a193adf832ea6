// The names and signs on the plan.
#include "sheets/plan_layers.h"
#include "sheets/symbols.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr double kPartName_mm = 4.2;
constexpr double kTapeName_mm = 3.2;
constexpr double kNote_mm = 2.8;
constexpr double kSignPitch_mm = 8.0;
constexpr double kSignFromFold_mm = 4.2;
constexpr double kSignClear_mm = 0.7;
constexpr double kWidestName_mm = 40.0;
// A sign keeps off pads, bodies, patches and names, but of course lies on its own tape.
constexpr double kWeightAboveTape = 3.0;

Vec2 half_size(const Convex& shape) {
    const Box box = bounds(shape);
    return (box.max - box.min) * 0.5;
}

} // namespace

Vec2 PlanLayers::name_size(const std::string& text, double size_mm, bool bold) const {
    return {lettering_.width_mm(text, size_mm, bold) + 0.9, size_mm * 1.02};
}

void PlanLayers::name(const std::string& text, double size_mm, bool bold, const std::vector<Vec2>& places) {
    const std::string shown = lettering_.fitted(clean_text(text, 200), size_mm, kWidestName_mm, bold);
    const Vec2 size = name_size(shown, size_mm, bold);
    const Vec2 at = placer_.put(size, places);
    pen_.round_box(at - size * 0.5, size, 0.8, {}, kWhite);
    pen_.text(at + Vec2{0, size_mm * 0.36}, shown, size_mm, bold, TextAlign::centre);
}

void PlanLayers::part_names() {
    const auto half = [](const Convex& body, const PadOutline& a, const PadOutline& b, Vec2 at) {
        Box box = a.box;
        box.add(b.box);
        if (!body.empty()) {
            box.add(bounds(body));
        }
        return Vec2{std::max(box.max.x - at.x, at.x - box.min.x),
                    std::max(box.max.y - at.y, at.y - box.min.y)};
    };
    for (std::size_t i = 0; i < card_.leds.size(); ++i) {
        const Led& led = card_.leds[i];
        const Vec2 reach = half(led_body(card_, types_, static_cast<int>(i)), conductors_.led_pads[2 * i],
                                conductors_.led_pads[2 * i + 1], led.at_mm);
        name(led.id, kPartName_mm, true,
             round_about(led.at_mm, reach, name_size(led.id, kPartName_mm, true)));
    }
    for (std::size_t i = 0; i < card_.resistors.size(); ++i) {
        const ResistorPart& part = card_.resistors[i];
        const std::string text =
            lettering_.fitted(clean_text(part.id), kTapeName_mm, 20.0) + " " + words_.ohm(part.ohm);
        const Vec2 reach =
            half(resistor_body(card_, types_, static_cast<int>(i)), conductors_.resistor_pads[2 * i],
                 conductors_.resistor_pads[2 * i + 1], part.at_mm);
        name(text, kTapeName_mm, true, round_about(part.at_mm, reach, name_size(text, kTapeName_mm, true)));
    }
}

void PlanLayers::strip_names() {
    for (std::size_t i = 0; i < conductors_.strips.size(); ++i) {
        const Ribbon& ribbon = conductors_.strips[i].ribbon;
        const Strip& strip = strip_of(card_, conductors_, static_cast<int>(i));
        std::vector<Vec2> places;
        constexpr double kMostPlaces = 200.0;
        const double step = std::max(2.0, ribbon.length_mm / kMostPlaces);
        for (double at = ribbon.length_mm * 0.5; at < ribbon.length_mm - 2.0; at += step) {
            places.push_back(point_at(ribbon, at));
            places.push_back(point_at(ribbon, ribbon.length_mm - at));
        }
        if (places.empty() && !ribbon.runs.empty()) {
            places.push_back(point_at(ribbon, ribbon.length_mm * 0.5));
        }
        if (!places.empty()) {
            name(strip.id, kTapeName_mm, true, places);
        }
    }
}

void PlanLayers::strip_signs() {
    for (std::size_t i = 0; i < conductors_.strips.size(); ++i) {
        const StripShape& shape = conductors_.strips[i];
        const SideLook look = look_of(strip_of(card_, conductors_, static_cast<int>(i)).side);
        if (look.sign == ' ') {
            continue;
        }
        const double arm = std::min(1.05, shape.ribbon.width_mm * 0.25);
        for (double at = kSignPitch_mm / 2.0; at < shape.ribbon.length_mm - 1.5; at += kSignPitch_mm) {
            const Vec2 p = point_at(shape.ribbon, at);
            bool hidden = placer_.is_near(p, arm + kSignClear_mm, kWeightAboveTape);
            for (const Vec2 fold : shape.ribbon.folds_mm) {
                hidden = hidden || distance(fold, p) < kSignFromFold_mm;
            }
            for (std::size_t j = i + 1; j < conductors_.strips.size() && !hidden; ++j) {
                for (const Run& run : conductors_.strips[j].ribbon.runs) {
                    hidden = hidden || contains(run.outline, p);
                }
            }
            for (const Overlap& overlap : conductors_.overlaps) {
                for (const Convex& piece : overlap.pieces) {
                    hidden = hidden || contains(grown(piece, arm), p);
                }
            }
            if (!hidden) {
                draw_sign(pen_, p, look.sign, arm, 0.4);
            }
        }
    }
}

void PlanLayers::patch_names() {
    for (const PatchShape& shape : conductors_.patches) {
        const std::string& id = id_of(card_.laid[static_cast<std::size_t>(shape.laid_index)]);
        const Vec2 middle = centroid(shape.outline);
        const Vec2 half = half_size(shape.outline);
        const Vec2 size = name_size(id, kTapeName_mm, true);
        const Vec2 reach = half - size * 0.5 - Vec2{0.4, 0.4}; // within the patch's corners, else beside it
        std::vector<Vec2> places;
        for (const Vec2 corner : {Vec2{-1, -1}, Vec2{1, -1}, Vec2{1, 1}, Vec2{-1, 1}}) {
            if (reach.x > 0.0 && reach.y > 0.0) {
                places.push_back(middle + Vec2{corner.x * reach.x, corner.y * reach.y});
            }
        }
        // Close beside it, up and down its sides: farther off nobody would know which patch is meant.
        const Vec2 out = half + size * 0.5 + Vec2{0.5, 0.3};
        for (const double share : {-0.8, 0.8, -0.5, 0.5, 0.0}) {
            for (const double side : {1.0, -1.0}) {
                places.push_back(middle + Vec2{side * out.x, share * half.y});
                places.push_back(middle + Vec2{share * half.x, side * out.y});
            }
        }
        name(id, kTapeName_mm, true, places);
    }
}

void PlanLayers::other_names() {
    const auto beside_disc = [&](int i, const std::string& text) {
        const double r = holder_.disc_radius_mm[i];
        std::vector<Vec2> places;
        for (const double down : {-0.5, 0.5, 0.0}) {
            for (const double aside : {0.0, 0.55, -0.55}) {
                places.push_back(holder_.disc_at_mm[i] + Vec2{aside * r, down * r});
            }
        }
        // Only close by: farther off nobody would know which circle is meant.
        const std::vector<Vec2> around =
            round_about(holder_.disc_at_mm[i], {r, r}, name_size(text, kNote_mm, false));
        places.insert(places.end(), around.begin(), around.begin() + 4);
        name(text, kNote_mm, false, places);
    };
    if (holder_.flap) {
        beside_disc(0, words_("sheets.plan_bed"));
        beside_disc(1, words_("sheets.plan_flap"));
    } else {
        const std::string text = words_("sheets.plan_holder");
        name(text, kNote_mm, false,
             round_about(card_.holder.at_mm, half_size(holder_.body), name_size(text, kNote_mm, false)));
    }
    for (const FoldLine& fold : card_.sheet.folds) {
        const Vec2 ahead = fold.to_mm - fold.from_mm;
        std::vector<Vec2> places;
        for (const double share : {0.12, 0.88, 0.25, 0.75, 0.5, 0.4, 0.6}) {
            places.push_back(fold.from_mm + ahead * share);
        }
        name(words_("sheets.plan_fold"), kNote_mm, false, places);
    }
    for (const Keepout& keepout : card_.sheet.keepouts) {
        Box box;
        for (const Vec2 p : keepout.outline_mm) {
            box.add(p);
        }
        const Vec2 middle = (box.min + box.max) * 0.5;
        const std::string why = keepout.why.empty() ? words_("sheets.plan_keep_out") : keepout.why;
        name(why, kNote_mm, false, {middle, middle + Vec2{0, 4}, middle - Vec2{0, 4}});
    }
}

void PlanLayers::names() {
    part_names();
    strip_names();
    patch_names();
    other_names();
    strip_signs();
}

} // namespace lanternleaf
