#include "paint/soft_raster.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <imgui.h>
#include <stb_image_write.h>

namespace lanternleaf {

namespace {

struct Clip {
    int x0, y0, x1, y1;
};

struct Sample {
    float r, g, b, a;
};

std::array<float, 4> unpacked(ImU32 c) {
    return {static_cast<float>(c & 0xFF), static_cast<float>(c >> 8 & 0xFF),
            static_cast<float>(c >> 16 & 0xFF), static_cast<float>(c >> 24 & 0xFF)};
}

Sample texel(const Bitmap& t, int x, int y) {
    const auto cx = static_cast<std::size_t>(std::clamp(x, 0, t.w - 1));
    const auto cy = static_cast<std::size_t>(std::clamp(y, 0, t.h - 1));
    const std::uint8_t* p = t.rgba.data() + (cy * static_cast<std::size_t>(t.w) + cx) * 4;
    return {static_cast<float>(p[0]), static_cast<float>(p[1]), static_cast<float>(p[2]),
            static_cast<float>(p[3])};
}

/// Bilinear, as a graphics card would; 0..255 a channel.
Sample sampled(const Bitmap& t, float u, float v) {
    const float x = u * static_cast<float>(t.w) - 0.5f;
    const float y = v * static_cast<float>(t.h) - 0.5f;
    const int ix = static_cast<int>(std::floor(x));
    const int iy = static_cast<int>(std::floor(y));
    const float fx = x - static_cast<float>(ix);
    const float fy = y - static_cast<float>(iy);
    const Sample a = texel(t, ix, iy);
    const Sample b = texel(t, ix + 1, iy);
    const Sample c = texel(t, ix, iy + 1);
    const Sample d = texel(t, ix + 1, iy + 1);
    const auto mix = [&](float p, float q, float r, float s) {
        return (p * (1 - fx) + q * fx) * (1 - fy) + (r * (1 - fx) + s * fx) * fy;
    };
    return {mix(a.r, b.r, c.r, d.r), mix(a.g, b.g, c.g, d.g), mix(a.b, b.b, c.b, d.b),
            mix(a.a, b.a, c.a, d.a)};
}

void blend(std::uint8_t* pixel, float r, float g, float b, float a) {
    const float k = a / 255;
    const auto put = [k](std::uint8_t& under, float over) {
        under = static_cast<std::uint8_t>(static_cast<float>(under) * (1 - k) + over * k + 0.5f);
    };
    put(pixel[0], r), put(pixel[1], g), put(pixel[2], b);
    pixel[3] = 255;
}

/// A triangle's edge: positive inside; in doubles, since the soft rims of shapes are very thin triangles.
/// Pixels exactly on an edge belong to one of its two triangles only.
struct Edge {
    double a, b, c;
    bool owns;

    Edge(ImVec2 p, ImVec2 q)
        : a(static_cast<double>(p.y) - static_cast<double>(q.y)),
          b(static_cast<double>(q.x) - static_cast<double>(p.x)),
          c(static_cast<double>(p.x) * static_cast<double>(q.y) -
            static_cast<double>(p.y) * static_cast<double>(q.x)) {
        owns = a > 0 || (a == 0 && b > 0);
    }

    [[nodiscard]] double at(double x, double y) const { return a * x + b * y + c; }

    [[nodiscard]] bool holds(double value) const { return value > 0 || (value == 0 && owns); }
};

void triangle(Bitmap& out, const Bitmap& texture, const Clip& clip, const ImDrawVert& p, ImDrawVert q,
              ImDrawVert r) {
    double area = Edge(p.pos, q.pos).at(static_cast<double>(r.pos.x), static_cast<double>(r.pos.y));
    if (area == 0) {
        return;
    }
    if (area < 0) {
        std::swap(q, r);
        area = -area;
    }
    const Edge e0(q.pos, r.pos);
    const Edge e1(r.pos, p.pos);
    const Edge e2(p.pos, q.pos);
    const auto low = [](float a, float b, float c) {
        return static_cast<int>(std::floor(std::min({a, b, c})));
    };
    const auto high = [](float a, float b, float c) {
        return static_cast<int>(std::ceil(std::max({a, b, c})));
    };
    const int x0 = std::max(clip.x0, low(p.pos.x, q.pos.x, r.pos.x));
    const int y0 = std::max(clip.y0, low(p.pos.y, q.pos.y, r.pos.y));
    const int x1 = std::min(clip.x1, high(p.pos.x, q.pos.x, r.pos.x));
    const int y1 = std::min(clip.y1, high(p.pos.y, q.pos.y, r.pos.y));
    const auto cp = unpacked(p.col);
    const auto cq = unpacked(q.col);
    const auto cr = unpacked(r.col);
    const bool flat_texture = p.uv.x == q.uv.x && q.uv.x == r.uv.x && p.uv.y == q.uv.y && q.uv.y == r.uv.y;
    Sample tex = flat_texture ? sampled(texture, p.uv.x, p.uv.y) : Sample{255, 255, 255, 255};
    for (int y = y0; y < y1; ++y) {
        const double fy = y + 0.5;
        bool entered = false;
        for (int x = x0; x < x1; ++x) {
            const double fx = x + 0.5;
            const double w0 = e0.at(fx, fy);
            const double w1 = e1.at(fx, fy);
            const double w2 = e2.at(fx, fy);
            if (!e0.holds(w0) || !e1.holds(w1) || !e2.holds(w2)) {
                if (entered) {
                    break;
                }
                continue;
            }
            entered = true;
            const float a = static_cast<float>(w0 / area);
            const float b = static_cast<float>(w1 / area);
            const float c = static_cast<float>(w2 / area);
            if (!flat_texture) {
                tex = sampled(texture, p.uv.x * a + q.uv.x * b + r.uv.x * c,
                              p.uv.y * a + q.uv.y * b + r.uv.y * c);
            }
            const auto channel = [&](std::size_t i) { return cp[i] * a + cq[i] * b + cr[i] * c; };
            const float alpha = channel(3) * tex.a / 255;
            if (alpha > 0) {
                std::uint8_t* pixel =
                    out.rgba.data() + (static_cast<std::size_t>(y) * static_cast<std::size_t>(out.w) +
                                       static_cast<std::size_t>(x)) *
                                          4;
                blend(pixel, channel(0) * tex.r / 255, channel(1) * tex.g / 255, channel(2) * tex.b / 255,
                      alpha);
            }
        }
    }
}

} // namespace

Bitmap atlas_bitmap() {
    unsigned char* pixels = nullptr;
    Bitmap out;
    ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&pixels, &out.w, &out.h);
    const std::size_t count = static_cast<std::size_t>(out.w) * static_cast<std::size_t>(out.h);
    out.rgba.assign(count * 4, 255);
    for (std::size_t i = 0; i < count; ++i) {
        out.rgba[i * 4 + 3] = pixels[i];
    }
    return out;
}

void soft_raster(const ImDrawData& data, Bitmap& target, Colour ground) {
    const float k = data.FramebufferScale.x;
    target.w = static_cast<int>(std::lround(data.DisplaySize.x * k));
    target.h = static_cast<int>(std::lround(data.DisplaySize.y * k));
    const std::size_t count = static_cast<std::size_t>(target.w) * static_cast<std::size_t>(target.h);
    target.rgba.resize(count * 4);
    for (std::size_t i = 0; i < count; ++i) {
        std::uint8_t* p = target.rgba.data() + i * 4;
        p[0] = ground.r, p[1] = ground.g, p[2] = ground.b, p[3] = 255;
    }
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        for (const ImDrawCmd& command : list.CmdBuffer) {
            if (command.UserCallback != nullptr || command.ElemCount == 0) {
                continue;
            }
            const auto edge = [k](float v) { return static_cast<int>(std::lround(v * k)); };
            const Clip clip{std::max(0, edge(command.ClipRect.x)), std::max(0, edge(command.ClipRect.y)),
                            std::min(target.w, edge(command.ClipRect.z)),
                            std::min(target.h, edge(command.ClipRect.w))};
            const auto& texture = *static_cast<const Bitmap*>(command.GetTexID());
            const auto vertex = [&](unsigned i) {
                const int index = static_cast<int>(command.VtxOffset) +
                                  list.IdxBuffer[static_cast<int>(command.IdxOffset + i)];
                ImDrawVert v = list.VtxBuffer[index];
                v.pos.x *= k;
                v.pos.y *= k;
                return v;
            };
            for (unsigned i = 0; i + 2 < command.ElemCount; i += 3) {
                triangle(target, texture, clip, vertex(i), vertex(i + 1), vertex(i + 2));
            }
        }
    }
}

Outcome<Done> write_png(const Bitmap& bitmap, const std::filesystem::path& file) {
    if (bitmap.w <= 0 ||
        stbi_write_png(file.string().c_str(), bitmap.w, bitmap.h, 4, bitmap.rgba.data(), bitmap.w * 4) == 0) {
        return Problem{file.string(), "", "expected to be able to write a picture here"};
    }
    return Done{};
}

} // namespace lanternleaf
