#include "view/viewport.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// Clamps a centre so that the sheet fills the free part of the area along one axis, or stays in its middle.
double held(double centre, double sheet, double seen) {
    if (seen >= sheet) {
        return sheet / 2;
    }
    return std::clamp(centre, seen / 2, sheet - seen / 2);
}

} // namespace

Point Viewport::to_px(Vec2 mm) const {
    const double x = (mirrored ? centre_mm.x - mm.x : mm.x - centre_mm.x) * ppm;
    const double y = (mm.y - centre_mm.y) * ppm;
    return {middle.x + static_cast<float>(x), middle.y + static_cast<float>(y)};
}

Vec2 Viewport::to_mm(Point px) const {
    const double x = static_cast<double>(px.x - middle.x) / ppm;
    const double y = static_cast<double>(px.y - middle.y) / ppm;
    return {centre_mm.x + (mirrored ? -x : x), centre_mm.y + y};
}

float Viewport::px(double mm, float least_px) const {
    return std::max(static_cast<float>(mm * ppm), least_px);
}

Point Viewport::way(Vec2 direction) const {
    return {static_cast<float>(mirrored ? -direction.x : direction.x), static_cast<float>(direction.y)};
}

Viewport fitted(const Rect& area, Vec2 sheet_mm, bool mirrored) {
    return looking_at(area, sheet_mm, 1.0, sheet_mm * 0.5, mirrored);
}

Viewport looking_at(const Rect& area, Vec2 sheet_mm, double zoom, Vec2 centre_mm, bool mirrored) {
    const BoardMargins margins;
    const double room_x = std::max(1.0, static_cast<double>(area.w - margins.left - margins.right));
    const double room_y = std::max(1.0, static_cast<double>(area.h - margins.top - margins.bottom));
    const double fit = std::min(room_x / std::max(1.0, sheet_mm.x), room_y / std::max(1.0, sheet_mm.y));
    Viewport view;
    view.area = area;
    view.mirrored = mirrored;
    view.ppm = fit * std::clamp(zoom, kLeastZoom, kMostZoom);
    view.middle = {area.x + margins.left + static_cast<float>(room_x / 2),
                   area.y + margins.top + static_cast<float>(room_y / 2)};
    view.centre_mm = {held(centre_mm.x, sheet_mm.x, room_x / view.ppm),
                      held(centre_mm.y, sheet_mm.y, room_y / view.ppm)};
    return view;
}

Vec2 centre_for_zoom(const Viewport& now, Point anchor, double factor) {
    const Vec2 fixed = now.to_mm(anchor);
    const double k = factor > 0.0 ? 1.0 / factor : 1.0;
    return fixed + (now.centre_mm - fixed) * k;
}

Vec2 centre_for_pan(const Viewport& now, Point by) {
    const Vec2 moved = now.to_mm(now.middle + by);
    return now.centre_mm - (moved - now.centre_mm);
}

} // namespace lanternleaf
