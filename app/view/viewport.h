// Viewport: where the sheet lies on the screen: millimetres to points and back, with zoom, pan and mirror.
// Exists so that drawing, hit testing and gestures agree on one mapping. Pure; knows no drawing library.
#pragma once

#include "geometry/vec2.h"
#include "host/point.h"

namespace lanternleaf {

inline constexpr double kLeastZoom = 1.0;
inline constexpr double kMostZoom = 4.0;

/// Room kept round the sheet at zoom 1: the ruler above, the sliver of the cover at the left, shadow
/// elsewhere.
struct BoardMargins {
    float left = 30;
    float top = 36;
    float right = 20;
    float bottom = 14;
};

struct Viewport {
    Rect area;             ///< the part of the screen the card may use
    double ppm = 1.0;      ///< points per millimetre
    Point middle;          ///< the screen place where centre_mm lies
    Vec2 centre_mm;        ///< what lies there
    bool mirrored = false; ///< seen from the front: x runs to the left

    [[nodiscard]] Point to_px(Vec2 mm) const;
    [[nodiscard]] Vec2 to_mm(Point px) const;
    /// A length; at least `least_px`.
    [[nodiscard]] float px(double mm, float least_px = 0.0f) const;
    /// The screen direction of a direction on the sheet (mirrored with it).
    [[nodiscard]] Point way(Vec2 direction) const;
};

/// The whole sheet in the area: ppm = min((w - 50) / sheet width, (h - 50) / sheet height).
[[nodiscard]] Viewport fitted(const Rect& area, Vec2 sheet_mm, bool mirrored = false);
/// Zoom 1..4 of the fitted view, with `centre_mm` in the middle but never so far out that the sheet leaves
/// the area: at zoom 1 the view is the fitted one wherever the centre is.
[[nodiscard]] Viewport looking_at(const Rect& area, Vec2 sheet_mm, double zoom, Vec2 centre_mm,
                                  bool mirrored);
/// The centre that keeps the place under `anchor` still while the zoom changes (pinch, wheel).
[[nodiscard]] Vec2 centre_for_zoom(const Viewport& now, Point anchor, double factor);
/// The centre after a drag by `by` points.
[[nodiscard]] Vec2 centre_for_pan(const Viewport& now, Point by);

} // namespace lanternleaf
