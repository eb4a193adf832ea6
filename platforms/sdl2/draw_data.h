// DrawData: puts the drawing library's triangles on an SDL renderer.
// Exists because the packaged library has no back end for SDL_Renderer. Clip rectangles and textures are kept
// per command; positions are scaled from points to pixels here, so that clips fall on whole pixels.
#pragma once

#include <vector>

#include <SDL.h>

struct ImDrawData;

namespace lanternleaf {

class DrawDataRenderer {
public:
    explicit DrawDataRenderer(SDL_Renderer* renderer) : renderer_(renderer) {}

    /// Draws onto the current target; textures in the draw data are SDL_Texture*.
    void draw(const ImDrawData& data);

private:
    struct Vertex {
        float x, y, u, v;
        SDL_Color colour;
    };

    SDL_Renderer* renderer_;
    std::vector<Vertex> vertices_; ///< kept between frames, so that drawing allocates nothing
};

/// A texture of 8-bit red, green, blue, opacity rows; smooth when scaled. Null when the device refuses.
[[nodiscard]] SDL_Texture* make_texture(SDL_Renderer* renderer, const unsigned char* rgba, int w, int h);

} // namespace lanternleaf
