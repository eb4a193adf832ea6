#include "report/photo.h"

#include <algorithm>
#include <cstdint>
#include <memory>
#include <stb/stb_image.h>
#include <stb/stb_image_write.h>
#include <string_view>
#include <vector>

namespace lanternleaf {

namespace {

struct Pixels {
    int w = 0;
    int h = 0;
    std::vector<unsigned char> rgb;

    [[nodiscard]] const unsigned char* at(int x, int y) const {
        return &rgb[(static_cast<std::size_t>(y) * static_cast<std::size_t>(w) +
                     static_cast<std::size_t>(x)) *
                    3];
    }
};

bool opens_with(const std::string& bytes, std::string_view head) {
    return bytes.compare(0, head.size(), head) == 0;
}

struct FreeStb {
    void operator()(stbi_uc* pixels) const { stbi_image_free(pixels); }
};

Pixels make_pixels(int w, int h) {
    return {w, h, std::vector<unsigned char>(static_cast<std::size_t>(w) * static_cast<std::size_t>(h) * 3)};
}

// Each pixel is the mean of those it covers: no pattern of the paper turns into stripes.
Pixels shrunk(const Pixels& from, int side) {
    const int longest = std::max(from.w, from.h);
    if (longest <= side) {
        return from;
    }
    const auto scaled = [&](int length) {
        return std::max(1, static_cast<int>(static_cast<std::int64_t>(length) * side / longest));
    };
    Pixels out = make_pixels(scaled(from.w), scaled(from.h));
    const auto edge = [](int i, int parts, int length) {
        return static_cast<int>(static_cast<std::int64_t>(i) * length / parts);
    };
    for (int y = 0; y < out.h; ++y) {
        const int y0 = edge(y, out.h, from.h);
        const int y1 = std::max(y0 + 1, edge(y + 1, out.h, from.h));
        for (int x = 0; x < out.w; ++x) {
            const int x0 = edge(x, out.w, from.w);
            const int x1 = std::max(x0 + 1, edge(x + 1, out.w, from.w));
            unsigned sum[3] = {0, 0, 0};
            for (int v = y0; v < y1; ++v) {
                for (int u = x0; u < x1; ++u) {
                    const unsigned char* pixel = from.at(u, v);
                    for (int c = 0; c < 3; ++c) {
                        sum[c] += pixel[c];
                    }
                }
            }
            const auto count = static_cast<unsigned>((y1 - y0) * (x1 - x0));
            const std::size_t to = (static_cast<std::size_t>(y) * static_cast<std::size_t>(out.w) +
                                    static_cast<std::size_t>(x)) *
                                   3;
            for (std::size_t c = 0; c < 3; ++c) {
                out.rgb[to + c] = static_cast<unsigned char>((sum[c] + count / 2) / count);
            }
        }
    }
    return out;
}

// Orientation n says where the stored rows and columns lie in the upright picture (JEITA CP-3451, 4.6.4 A).
Pixels upright(const Pixels& from, int orientation) {
    if (orientation < 2 || orientation > 8) {
        return from;
    }
    const bool sideways = orientation >= 5;
    Pixels out = make_pixels(sideways ? from.h : from.w, sideways ? from.w : from.h);
    for (int y = 0; y < out.h; ++y) {
        for (int x = 0; x < out.w; ++x) {
            int u = sideways ? y : x;
            int v = sideways ? x : y;
            const bool flip_u = orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
            const bool flip_v = orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
            u = flip_u ? from.w - 1 - u : u;
            v = flip_v ? from.h - 1 - v : v;
            const unsigned char* pixel = from.at(u, v);
            const std::size_t to = (static_cast<std::size_t>(y) * static_cast<std::size_t>(out.w) +
                                    static_cast<std::size_t>(x)) *
                                   3;
            std::copy(pixel, pixel + 3, out.rgb.begin() + static_cast<std::ptrdiff_t>(to));
        }
    }
    return out;
}

void append_bytes(void* out, void* data, int size) {
    static_cast<std::string*>(out)->append(static_cast<const char*>(data), static_cast<std::size_t>(size));
}

// Reads numbers of a file that may end anywhere.
struct Bytes {
    const std::string& data;
    bool little = false;

    [[nodiscard]] std::uint32_t at(std::size_t i) const {
        return i < data.size() ? static_cast<unsigned char>(data[i]) : 0U;
    }

    [[nodiscard]] std::uint32_t two(std::size_t i) const {
        return little ? at(i) | at(i + 1) << 8 : at(i) << 8 | at(i + 1);
    }

    [[nodiscard]] std::uint32_t four(std::size_t i) const {
        return little ? two(i) | two(i + 2) << 16 : two(i) << 16 | two(i + 2);
    }
};

// The tag in the first directory of an Exif block whose TIFF head is at `tiff`.
int orientation_in(const std::string& jpeg, std::size_t tiff, std::size_t end) {
    Bytes in{jpeg};
    in.little = in.at(tiff) == 'I';
    const std::size_t directory = tiff + in.four(tiff + 4);
    const std::uint32_t entries = in.two(directory);
    for (std::uint32_t i = 0; i < entries; ++i) {
        const std::size_t entry = directory + 2 + i * 12U;
        if (entry + 12 > end) {
            break;
        }
        if (in.two(entry) == 0x0112) {
            const auto value = static_cast<int>(in.two(entry + 8));
            return value >= 1 && value <= 8 ? value : 1;
        }
    }
    return 1;
}

} // namespace

int exif_orientation(const std::string& jpeg) {
    const Bytes in{jpeg};
    std::size_t at = 2;
    while (at + 4 <= jpeg.size() && in.at(at) == 0xFF) {
        const std::uint32_t marker = in.at(at + 1);
        const std::uint32_t length = in.two(at + 2);
        if (marker == 0xDA || length < 2) { // the picture's data begin
            break;
        }
        const std::size_t end = std::min(jpeg.size(), at + 2 + length);
        if (marker == 0xE1 && jpeg.compare(at + 4, 6, std::string_view("Exif\0\0", 6)) == 0) {
            return orientation_in(jpeg, at + 10, end);
        }
        at += 2 + length;
    }
    return 1;
}

Outcome<PlainPhoto> plain_photo(const std::string& bytes, const std::string& name, int side) {
    constexpr std::string_view kPng("\x89PNG\r\n\x1a\n", 8);
    constexpr std::string_view kJpeg("\xff\xd8\xff", 3);
    const bool jpeg = opens_with(bytes, kJpeg);
    if (!jpeg && !opens_with(bytes, kPng)) {
        return Problem{name, "", "expected a PNG or JPEG picture"};
    }
    if (bytes.size() > kMostPhotoBytes) {
        return Problem{name, "", "expected a picture of at most 12 MB"};
    }
    const auto* data = reinterpret_cast<const stbi_uc*>(bytes.data());
    const int size = static_cast<int>(bytes.size());
    Pixels pixels;
    int channels = 0;
    if (stbi_info_from_memory(data, size, &pixels.w, &pixels.h, &channels) == 0 || pixels.w < 1 ||
        pixels.h < 1) {
        return Problem{name, "", "expected a whole PNG or JPEG picture"};
    }
    if (static_cast<std::int64_t>(pixels.w) * pixels.h > kMostPhotoPixels) {
        return Problem{name, "", "expected a picture of at most 50 million pixels"};
    }
    const std::unique_ptr<stbi_uc, FreeStb> decoded(
        stbi_load_from_memory(data, size, &pixels.w, &pixels.h, &channels, 3));
    if (decoded == nullptr) {
        return Problem{name, "", "expected a whole PNG or JPEG picture"};
    }
    const std::size_t count = static_cast<std::size_t>(pixels.w) * static_cast<std::size_t>(pixels.h) * 3;
    pixels.rgb.assign(decoded.get(), decoded.get() + count);
    const Pixels kept = upright(shrunk(pixels, side), jpeg ? exif_orientation(bytes) : 1);
    PlainPhoto photo;
    photo.w = kept.w;
    photo.h = kept.h;
    if (stbi_write_jpg_to_func(append_bytes, &photo.jpeg, kept.w, kept.h, 3, kept.rgb.data(), 88) == 0) {
        return Problem{name, "", "expected a picture that can be written as JPEG"};
    }
    return photo;
}

} // namespace lanternleaf
