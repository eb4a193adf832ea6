#include "draw_data.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <imgui.h>

namespace lanternleaf {

namespace {

/// Clip of a command in whole pixels; empty when nothing of it is on the target.
SDL_Rect clip_of(const ImVec4& r, float k, const ImVec2& size) {
    const auto edge = [k](float v, float most) {
        return static_cast<int>(std::lround(std::clamp(v, 0.0f, most) * k));
    };
    const int x0 = edge(r.x, size.x);
    const int y0 = edge(r.y, size.y);
    return {x0, y0, std::max(0, edge(r.z, size.x) - x0), std::max(0, edge(r.w, size.y) - y0)};
}

SDL_Color unpacked(ImU32 c) {
    return {static_cast<Uint8>(c >> IM_COL32_R_SHIFT), static_cast<Uint8>(c >> IM_COL32_G_SHIFT),
            static_cast<Uint8>(c >> IM_COL32_B_SHIFT), static_cast<Uint8>(c >> IM_COL32_A_SHIFT)};
}

} // namespace

void DrawDataRenderer::draw(const ImDrawData& data) {
    const float k = data.FramebufferScale.x;
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        vertices_.resize(static_cast<std::size_t>(list.VtxBuffer.Size));
        for (int i = 0; i < list.VtxBuffer.Size; ++i) {
            const ImDrawVert& v = list.VtxBuffer[i];
            vertices_[static_cast<std::size_t>(i)] = {v.pos.x * k, v.pos.y * k, v.uv.x, v.uv.y,
                                                      unpacked(v.col)};
        }
        for (const ImDrawCmd& command : list.CmdBuffer) {
            const SDL_Rect clip = clip_of(command.ClipRect, k, data.DisplaySize);
            if (command.UserCallback != nullptr || command.ElemCount == 0 || clip.w == 0 || clip.h == 0) {
                continue;
            }
            SDL_RenderSetClipRect(renderer_, &clip);
            // A command's indices count from its own vertex offset; hand over only the vertices it can name.
            const Vertex* first = vertices_.data() + command.VtxOffset;
            const int count = list.VtxBuffer.Size - static_cast<int>(command.VtxOffset);
            constexpr int kStride = static_cast<int>(sizeof(Vertex));
            SDL_RenderGeometryRaw(renderer_, static_cast<SDL_Texture*>(command.GetTexID()), &first->x,
                                  kStride, &first->colour, kStride, &first->u, kStride, count,
                                  list.IdxBuffer.Data + command.IdxOffset,
                                  static_cast<int>(command.ElemCount), static_cast<int>(sizeof(ImDrawIdx)));
        }
    }
    SDL_RenderSetClipRect(renderer_, nullptr);
}

SDL_Texture* make_texture(SDL_Renderer* renderer, const unsigned char* rgba, int w, int h) {
    SDL_Texture* texture =
        SDL_CreateTexture(renderer, SDL_PIXELFORMAT_RGBA32, SDL_TEXTUREACCESS_STATIC, w, h);
    if (texture == nullptr) {
        return nullptr;
    }
    SDL_UpdateTexture(texture, nullptr, rgba, w * 4);
    SDL_SetTextureBlendMode(texture, SDL_BLENDMODE_BLEND);
    SDL_SetTextureScaleMode(texture, SDL_ScaleModeLinear);
    return texture;
}

} // namespace lanternleaf
