// Plan layers: the parts of the plan drawing, one function a layer, lowest first. Internal to sheets/.
#pragma once

#include "conductors/conductors.h"
#include "sheets/labels.h"
#include "sheets/lettering.h"
#include "sheets/plan_drawing.h"

#include <utility>

namespace lanternleaf {

class PlanLayers {
public:
    PlanLayers(const Card& card, const Parts& parts, const Lettering& lettering, const Words& words,
               PagePen& pen);

    void foam(const std::vector<FoamBand>& bands);
    void keepouts();
    /// Strips and patches in the order they are laid.
    void laid();
    void folds();
    void holder();
    /// Bodies and pads of LEDs and resistors.
    void parts();
    /// All names and signs; last, so that nothing hides them.
    void names();

private:
    void strip(int index);
    void patch(const PatchShape& shape);
    void laps();
    [[nodiscard]] std::pair<Vec2, Vec2> hinge() const;
    void pad(const PadOutline& pad, char sign);
    void strip_names();
    void strip_signs();
    void part_names();
    void patch_names();
    void other_names();
    /// A name on a white ground, placed where it hides least.
    void name(const std::string& text, double size_mm, bool bold, const std::vector<Vec2>& places);
    [[nodiscard]] Vec2 name_size(const std::string& text, double size_mm, bool bold) const;

    const Card& card_;
    const Parts& types_;
    const Lettering& lettering_;
    const Words& words_;
    PagePen& pen_;
    Conductors conductors_;
    HolderShape holder_;
    LabelPlacer placer_;
};

/// The outline of a whole strip as one closed chain: out along its left side, back along its right.
[[nodiscard]] std::vector<Vec2> outline_of(const Ribbon& ribbon);

} // namespace lanternleaf
