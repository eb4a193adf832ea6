#include "sheets/plan_drawing.h"

#include "base/readout.h"
#include "guide/sequence.h"
#include "sheets/plan_layers.h"

namespace lanternleaf {

namespace {

constexpr double kRuler_mm = 8.0;
constexpr double kClear_mm = 1.5; // beyond the edges that carry no ruler

void draw_rulers(PagePen& pen, const Sheet& sheet) {
    const Stroke thin{0.12, kBlack, {}};
    const auto tick = [](int mm) { return mm % 20 == 0 ? 2.6 : mm % 10 == 0 ? 1.9 : 1.1; };
    for (int mm = 0; mm <= static_cast<int>(sheet.width_mm); mm += 5) {
        pen.line({double(mm), -1.0}, {double(mm), -1.0 - tick(mm)}, thin);
        if (mm % 20 == 0) {
            pen.text({double(mm), -4.4}, std::to_string(mm), 2.5, false, TextAlign::centre, grey(0.25));
        }
    }
    for (int mm = 0; mm <= static_cast<int>(sheet.height_mm); mm += 5) {
        pen.line({-1.0, double(mm)}, {-1.0 - tick(mm), double(mm)}, thin);
        if (mm % 20 == 0) {
            pen.text({-5.6, mm + 0.8}, std::to_string(mm), 2.5, false, TextAlign::centre, grey(0.25));
        }
    }
}

} // namespace

std::vector<FoamBand> foam_bands(const Card& card, const Parts& parts) {
    std::vector<FoamBand> bands;
    for (const Step& step : make_steps(card, parts)) {
        for (const Move& move : step.moves) {
            if (move.kind == MoveKind::foam && move.path_mm.size() == 2 && card.foam) {
                bands.push_back({move.path_mm[0], move.path_mm[1], card.foam->layers});
            }
        }
    }
    return bands;
}

Box plan_bounds(const Card& card) {
    return {{-kRuler_mm, -kRuler_mm}, {card.sheet.width_mm + kClear_mm, card.sheet.height_mm + kClear_mm}};
}

std::vector<PageMark> draw_plan(const Card& card, const Parts& parts, const Lettering& lettering,
                                const Words& words) {
    std::vector<PageMark> marks;
    PagePen pen(marks);
    PlanLayers plan(card, parts, lettering, words, pen);
    plan.foam(foam_bands(card, parts));
    plan.keepouts();
    plan.laid();
    plan.folds();
    plan.holder();
    plan.parts();
    draw_rulers(pen, card.sheet);
    pen.box({0, 0}, {card.sheet.width_mm, card.sheet.height_mm}, Stroke{0.3, kBlack, {}}, {});
    plan.names();
    return marks;
}

} // namespace lanternleaf
