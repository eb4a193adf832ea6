#include "paint/pictures.h"

#include <imgui.h>

namespace lanternleaf {

void draw_picture(Pen& pen, const Picture& picture, const Rect& r, Colour tint, float radius) {
    if (picture.there()) {
        pen.list().AddImageRounded(picture.texture, {r.x, r.y}, {r.right(), r.bottom()}, {0, 0}, {1, 1},
                                   IM_COL32(tint.r, tint.g, tint.b, tint.a), radius);
    }
}

} // namespace lanternleaf
