#include "exchange/plain_picture.h"

#include <array>
#include <cstdint>
#include <memory>
#include <stb/stb_image.h>
#include <stb/stb_image_write.h>
#include <string_view>
#include <vector>

namespace lanternleaf {

namespace {

struct FreeStb {
    void operator()(stbi_uc* pixels) const { stbi_image_free(pixels); }
};

void append_bytes(void* out, void* data, int size) {
    static_cast<std::string*>(out)->append(static_cast<const char*>(data), static_cast<std::size_t>(size));
}

std::uint32_t four(const std::string& bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = at; i < at + 4; ++i) {
        value = value << 8 | static_cast<unsigned char>(bytes[i]);
    }
    return value;
}

// Whether a PNG's packed rows unpack to no more than its head says. A decoder that grows its buffer as it
// goes could be fed a thousand times that (ISO/IEC 15948: chunks of length, type, data, CRC; IHDR's bit depth
// and colour type at bytes 24 and 25; the rows are one zlib stream over all IDAT chunks).
bool unpacks_as_said(const std::string& png, int w, int h) {
    constexpr std::size_t kHead = 33;
    if (png.size() < kHead) {
        return false;
    }
    static constexpr std::array<int, 7> kSamples{1, 0, 3, 1, 2, 0, 4};
    const auto depth = static_cast<unsigned char>(png[24]);
    const auto kind = static_cast<unsigned char>(png[25]);
    if (kind >= kSamples.size() || kSamples[kind] == 0 || depth > 16) {
        return false;
    }
    const std::int64_t row = (static_cast<std::int64_t>(w) * kSamples[kind] * depth + 7) / 8 + 1;
    const std::int64_t rows = row * h * (png[28] == 0 ? 1 : 2) + 64; // interlaced: short rows in seven passes
    std::string packed;
    for (std::size_t at = 8; at + 12 <= png.size();) {
        const std::size_t length = four(png, at);
        if (length > png.size() - at - 12) {
            return false;
        }
        if (png.compare(at + 4, 4, "IDAT") == 0) {
            packed.append(png, at + 8, length);
        }
        at += 12 + length;
    }
    std::vector<char> unpacked(static_cast<std::size_t>(rows));
    return stbi_zlib_decode_buffer(unpacked.data(), static_cast<int>(rows), packed.data(),
                                   static_cast<int>(packed.size())) >= 0;
}

bool opens_with(const std::string& bytes, std::string_view head) {
    return bytes.compare(0, head.size(), head) == 0;
}

} // namespace

Outcome<std::string> plain_picture(const std::string& bytes, const std::string& name, const Words& words) {
    constexpr std::string_view kPng("\x89PNG\r\n\x1a\n", 8);
    constexpr std::string_view kJpeg("\xff\xd8\xff", 3);
    const auto refuse = [&name](const std::string& why) { return Problem{name, "", why}; };
    if (!opens_with(bytes, kPng) && !opens_with(bytes, kJpeg)) {
        return refuse(words("bring.not_picture"));
    }
    const std::string most = std::to_string(kMostPictureBytes / (1024U * 1024U));
    if (bytes.size() > kMostPictureBytes) {
        return refuse(words("bring.large_picture", {{"mb", most}}));
    }
    const auto* data = reinterpret_cast<const stbi_uc*>(bytes.data());
    const int size = static_cast<int>(bytes.size());
    int w = 0;
    int h = 0;
    int channels = 0;
    if (stbi_info_from_memory(data, size, &w, &h, &channels) == 0 || w < 1 || h < 1 || channels < 1) {
        return refuse(words("bring.broken_picture"));
    }
    // Before it is decoded: a small file can claim to be a picture that fills the memory.
    if (w > kLongestPictureSide || h > kLongestPictureSide ||
        static_cast<std::int64_t>(w) * h > kMostPicturePixels) {
        return refuse(
            words("bring.huge_picture", {{"megapixels", std::to_string(kMostPicturePixels / 1'000'000)}}));
    }
    if (opens_with(bytes, kPng) && !unpacks_as_said(bytes, w, h)) {
        return refuse(words("bring.broken_picture"));
    }
    const std::unique_ptr<stbi_uc, FreeStb> pixels(stbi_load_from_memory(data, size, &w, &h, &channels, 0));
    if (pixels == nullptr) {
        return refuse(words("bring.broken_picture"));
    }
    std::string png;
    if (stbi_write_png_to_func(append_bytes, &png, w, h, channels, pixels.get(), w * channels) == 0) {
        return refuse(words("bring.broken_picture"));
    }
    if (png.size() > kMostPictureBytes) {
        return refuse(words("bring.large_picture", {{"mb", most}}));
    }
    return png;
}

} // namespace lanternleaf
