// Sheet: a paper that comes over the page from the foot or the side, with a scrim under it.
// Exists so that every extra (layers, keypad, a list of places) opens, closes and keeps touches out in one
// way. A tap on the scrim, the cross or Escape closes it. The scrim begins below the top bar, so the safety
// chip stays live.
#pragma once

#include <optional>

#include "controls/ui.h"

namespace lanternleaf {

enum class SheetSide { Bottom, Side };

class SheetPaper {
public:
    /// Draws scrim and paper and adds targets NAME/scrim and NAME/close. `open` false draws nothing once it
    /// has slid away: then shown() is false. A side sheet lies over `over` if given, else at the right edge,
    /// 520 wide.
    SheetPaper(Ui& ui, std::string_view name, SheetSide side, bool open, float height, std::string_view title,
               Icon icon = Icon::None, std::optional<Rect> over = std::nullopt);
    ~SheetPaper();
    SheetPaper(const SheetPaper&) = delete;
    SheetPaper& operator=(const SheetPaper&) = delete;

    [[nodiscard]] bool shown() const { return shown_; }

    /// The person asked to close it; the caller then stops passing open = true.
    [[nodiscard]] bool closed() const { return closed_; }

    /// Where its content goes, below the head.
    [[nodiscard]] const Rect& body() const { return body_; }

    [[nodiscard]] const Rect& paper() const { return paper_; }

private:
    Ui& ui_;
    Rect paper_;
    Rect body_;
    bool shown_ = false;
    bool closed_ = false;
};

/// Which side a sheet comes from on this form: the foot on phones and upright tablets, the side otherwise.
[[nodiscard]] SheetSide usual_side(const Metrics& metrics);

} // namespace lanternleaf
