// Step picture: a small drawing of the card as it lies when a move is made, with the move standing out.
// Exists because a printed step must show where on the card the hands work, without a screen. Internal to
// sheets/.
#pragma once

#include "conductors/conductors.h"
#include "guide/step.h"
#include "sheets/page.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// The table so far. Made once, then told of each move in turn.
class StepPictures {
public:
    StepPictures(const Card& card, const Parts& parts, const Words& words);

    /// The card in `size_mm`, then the move; afterwards the move counts as done.
    [[nodiscard]] std::vector<PageMark> draw(const Move& move, Vec2 size_mm);
    /// How high a picture of this width should be.
    [[nodiscard]] double height_for(double width_mm) const;

private:
    struct Tape {
        Vec2 from_mm;
        Vec2 to_mm;
        double width_mm = 5.0;
        Side side = Side::negative;
    };

    void draw_so_far(PagePen& pen) const;
    void draw_move(PagePen& pen, const Move& move) const;
    void draw_fold(PagePen& pen, const Move& move) const;
    void draw_place(PagePen& pen, Vec2 at_mm) const;
    void draw_distances(PagePen& pen, Vec2 at_mm) const;
    void draw_part(PagePen& pen, const std::string& id, bool now) const;
    void draw_holder(PagePen& pen, bool now) const;
    void draw_lights(PagePen& pen, const Move& move) const;
    void take_in(const Move& move);
    [[nodiscard]] const Strip* strip_of_move(const Move& move) const;

    const Card& card_;
    const Parts& parts_;
    const Words& words_;
    Conductors conductors_;
    HolderShape shape_;
    double unit_ = 1.0; ///< drawing millimetres per printed one, while a picture is made
    bool holder_ = false;
    bool cell_ = false;
    bool marks_ = false;
    std::vector<Tape> tapes_;
    std::vector<std::string> placed_; ///< LEDs and resistors
    std::vector<std::string> patches_;
    std::vector<Tape> foam_;
    Vec2 heading_{1, 0}; ///< of the last run
};

} // namespace lanternleaf
