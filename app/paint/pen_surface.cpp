// The other half of Pen: panels, shadow, light, text and clipping (strokes and plain fills are in pen.cpp).
#include "paint/pen.h"

#include "paint/packed.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <imgui.h>
#include <imgui_internal.h> // _Data of a draw list: the white pixel of the atlas

#include "paint/curve.h"

namespace lanternleaf {

void Pen::gradient(const Rect& r, Colour from, Colour to, bool downwards) {
    const ImU32 a = packed(from);
    const ImU32 b = packed(to);
    list_->AddRectFilledMultiColor({r.x, r.y}, {r.right(), r.bottom()}, a, downwards ? a : b, b,
                                   downwards ? b : a);
}

void Pen::turned_corner_panel(const Rect& r, Colour colour, Colour corner, float radius, float cut) {
    const float k = std::min(radius, std::min(r.w, r.h) / 2);
    Polyline path;
    add_arc(path, {r.x + k, r.y + k}, k, kPi, 1.5f * kPi, 0.05f);
    path.push_back({r.right() - cut, r.y});
    path.push_back({r.right(), r.y + cut});
    add_arc(path, {r.right() - k, r.bottom() - k}, k, 0, 0.5f * kPi, 0.05f);
    add_arc(path, {r.x + k, r.bottom() - k}, k, 0.5f * kPi, kPi, 0.05f);
    fill_convex(path, colour);
    triangle({r.right() - cut, r.y}, {r.right(), r.y + cut}, {r.right() - cut, r.y + cut}, corner);
}

void Pen::shadow(const Rect& r, float radius, Lift lift) {
    // Four rounded rectangles, each a little larger, pile up to a soft edge.
    const float opacity = lift == Lift::Panel ? 0.025f : 0.05f;
    const float drop = lift == Lift::Panel ? 2.0f : 3.0f;
    for (const float grown : {1.0f, 3.0f, 5.0f, 8.0f}) {
        fill(r.shrunk(-grown).moved(0, drop), faded(Colour{0, 0, 0, 255}, opacity), radius + grown);
    }
}

void Pen::halo(Point centre, float radius, Colour colour, float peak) {
    if (radius <= 0 || peak <= 0) {
        return;
    }
    constexpr int kSides = 40;

    constexpr struct {
        float radius;
        float opacity;
    } kStops[] = {{0.16f, 0.85f}, {0.45f, 0.28f}, {1.0f, 0.0f}};

    constexpr int kRings = 3;
    const ImVec2 white = list_->_Data->TexUvWhitePixel;
    list_->PrimReserve(kSides * 3 + kSides * 6 * (kRings - 1), 1 + kSides * kRings);
    const unsigned base = list_->_VtxCurrentIdx;
    const auto index = [&](unsigned i) { list_->PrimWriteIdx(static_cast<ImDrawIdx>(base + i)); };
    for (unsigned s = 0; s < kSides; ++s) {
        const unsigned t = (s + 1) % kSides;
        index(0), index(1 + s), index(1 + t);
        for (unsigned ring = 0; ring + 1 < kRings; ++ring) {
            const unsigned in = 1 + ring * kSides;
            const unsigned out = in + kSides;
            index(in + s), index(out + s), index(out + t);
            index(in + s), index(out + t), index(in + t);
        }
    }
    list_->PrimWriteVtx({centre.x, centre.y}, white, packed(faded(colour, peak)));
    for (const auto& stop : kStops) {
        for (int s = 0; s < kSides; ++s) {
            const float a = 2 * kPi * static_cast<float>(s) / kSides;
            list_->PrimWriteVtx({centre.x + std::cos(a) * radius * stop.radius,
                                 centre.y + std::sin(a) * radius * stop.radius},
                                white, packed(faded(colour, peak * stop.opacity)));
        }
    }
}

float Pen::text_on(Point baseline, std::string_view text, TextStyle style, Colour colour, Align align) {
    const float width = fonts_->width(text, style);
    if (text.empty() || colour.a == 0) {
        return width;
    }
    float x = baseline.x;
    x -= align == Align::Centre ? width / 2 : align == Align::Right ? width : 0;
    // The library puts text at whole units of its own; in points that would be coarse, so round to device
    // pixels here.
    const float y = std::round((baseline.y - fonts_->ascent(style)) * px_per_pt_) / px_per_pt_;
    list_->AddText(fonts_->face(style), fonts_->library_size(style), {x, y}, packed(colour), text.data(),
                   text.data() + text.size());
    if (notes != nullptr) {
        const Rect at{x, baseline.y - fonts_->cap_height(style), width, fonts_->cap_height(style)};
        const ImVec2 min = list_->GetClipRectMin();
        const ImVec2 max = list_->GetClipRectMax();
        notes->push_back({std::string(text), at, at, {min.x, min.y, max.x - min.x, max.y - min.y}});
    }
    return width;
}

float Pen::text(Point at, std::string_view text, TextStyle style, Colour colour, Align align) {
    return text_on({at.x, at.y + fonts_->baseline(style)}, text, style, colour, align);
}

float Pen::text_in(const Rect& box, std::string_view text, TextStyle style, Colour colour, Align align) {
    const float x = align == Align::Left ? box.x : align == Align::Right ? box.right() : box.centre().x;
    const std::size_t before = notes != nullptr ? notes->size() : 0;
    const float width =
        text_on({x, box.centre().y + fonts_->cap_height(style) / 2}, text, style, colour, align);
    if (notes != nullptr && notes->size() > before) {
        notes->back().box = box;
    }
    return width;
}

void Pen::lines(Point at, std::span<const TextLine> lines, TextStyle style, Colour colour, Align align,
                float width) {
    float y = at.y;
    for (const TextLine& line : lines) {
        const float room = width - line.width;
        const float x = at.x + (align == Align::Centre ? room / 2 : align == Align::Right ? room : 0);
        for (const TextRun& run : line.runs) {
            TextStyle set = style;
            set.weight = run.weight;
            text({x + run.x, y}, run.text, set, colour);
        }
        y += style.lead;
    }
}

float Pen::paragraph(Point at, float max_width, std::string_view text, TextStyle style, Colour colour,
                     Align align) {
    const std::vector<TextLine> wrapped = fonts_->wrap(text, style, max_width);
    lines(at, wrapped, style, colour, align, max_width);
    return static_cast<float>(wrapped.size()) * style.lead;
}

void Pen::push_clip(const Rect& r) {
    list_->PushClipRect({r.x, r.y}, {r.right(), r.bottom()}, true);
}

void Pen::pop_clip() {
    list_->PopClipRect();
}

bool Pen::visible(const Rect& r) const {
    const ImVec2 low = list_->GetClipRectMin();
    const ImVec2 high = list_->GetClipRectMax();
    return r.right() > low.x && r.bottom() > low.y && r.x < high.x && r.y < high.y;
}

} // namespace lanternleaf
