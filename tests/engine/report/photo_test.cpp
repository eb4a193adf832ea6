// Pictures from outside: only their pixels stay, and nothing that is not a picture comes in.
#include "report/photo.h"

#include <catch2/catch.hpp>
#include <stb/stb_image.h>
#include <stb/stb_image_write.h>
#include <string_view>
#include <vector>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

void append(void* out, void* data, int size) {
    static_cast<std::string*>(out)->append(static_cast<const char*>(data), static_cast<std::size_t>(size));
}

// Left half black, right half white.
std::vector<unsigned char> halves(int w, int h) {
    std::vector<unsigned char> rgb;
    for (int y = 0; y < h; ++y) {
        for (int x = 0; x < w; ++x) {
            rgb.insert(rgb.end(), 3, x < w / 2 ? 0 : 255);
        }
    }
    return rgb;
}

std::string jpeg_of(int w, int h) {
    std::string bytes;
    REQUIRE(stbi_write_jpg_to_func(append, &bytes, w, h, 3, halves(w, h).data(), 95) != 0);
    return bytes;
}

std::string png_of(int w, int h) {
    std::string bytes;
    REQUIRE(stbi_write_png_to_func(append, &bytes, w, h, 3, halves(w, h).data(), w * 3) != 0);
    return bytes;
}

// An Exif block with the orientation and a word that must not stay.
std::string with_exif(const std::string& jpeg, char orientation) {
    std::string exif("Exif\0\0", 6);
    exif += std::string("II*\0\x08\0\0\0", 8);
    exif += std::string("\x01\0", 2);
    exif += std::string("\x12\x01\x03\0\x01\0\0\0", 8) + orientation + std::string(3, '\0');
    exif += std::string(4, '\0') + "GPS 52.1 N Ines";
    const std::size_t length = exif.size() + 2;
    std::string out = jpeg.substr(0, 2) + "\xFF\xE1";
    out += static_cast<char>(length >> 8);
    out += static_cast<char>(length & 0xFF);
    return out + exif + jpeg.substr(2);
}

struct Decoded {
    int w = 0;
    int h = 0;
    std::vector<unsigned char> grey;

    [[nodiscard]] int at(int x, int y) const { return grey[static_cast<std::size_t>(y * w + x)]; }
};

Decoded decoded(const std::string& jpeg) {
    Decoded out;
    int channels = 0;
    stbi_uc* pixels = stbi_load_from_memory(reinterpret_cast<const stbi_uc*>(jpeg.data()),
                                            static_cast<int>(jpeg.size()), &out.w, &out.h, &channels, 1);
    REQUIRE(pixels != nullptr);
    out.grey.assign(pixels, pixels + out.w * out.h);
    stbi_image_free(pixels);
    return out;
}

} // namespace

TEST_CASE("A photo keeps its pixels and loses everything else", "[report]") {
    const std::string from = with_exif(jpeg_of(64, 32), 1);
    REQUIRE_THAT(from, Contains("GPS 52.1"));
    const Outcome<PlainPhoto> photo = plain_photo(from, "x.jpg");
    REQUIRE(photo.ok());
    CHECK(photo.value().w == 64);
    CHECK(photo.value().h == 32);
    CHECK(photo.value().jpeg.find("GPS") == std::string::npos);
    CHECK(photo.value().jpeg.find("Exif") == std::string::npos);
    const Decoded out = decoded(photo.value().jpeg);
    CHECK(out.at(8, 16) < 20);
    CHECK(out.at(56, 16) > 235);
    CHECK(plain_photo(png_of(64, 32), "x.png").ok());
}

TEST_CASE("A camera held on its side gives an upright photo", "[report]") {
    // JEITA CP-3451 4.6.4 A: where the dark left half of the stored picture lies for each orientation.
    const struct {
        char orientation;
        int dark_x, dark_y, light_x, light_y;
        bool sideways;
    } kCases[] = {{1, 8, 16, 56, 16, false}, {2, 56, 16, 8, 16, false}, {3, 56, 16, 8, 16, false},
                  {4, 8, 16, 56, 16, false}, {5, 16, 8, 16, 56, true},  {6, 16, 8, 16, 56, true},
                  {7, 16, 56, 16, 8, true},  {8, 16, 56, 16, 8, true}};

    for (const auto& one : kCases) {
        INFO(static_cast<int>(one.orientation));
        const std::string from = with_exif(jpeg_of(64, 32), one.orientation);
        CHECK(exif_orientation(from) == one.orientation);
        const Outcome<PlainPhoto> photo = plain_photo(from, "x.jpg");
        REQUIRE(photo.ok());
        const Decoded out = decoded(photo.value().jpeg);
        CHECK(out.w == (one.sideways ? 32 : 64));
        CHECK(out.at(one.dark_x, one.dark_y) < 40);
        CHECK(out.at(one.light_x, one.light_y) > 215);
    }
}

TEST_CASE("A large photo is kept at a size for looking at", "[report]") {
    const Outcome<PlainPhoto> photo = plain_photo(jpeg_of(3200, 1000), "x.jpg");
    REQUIRE(photo.ok());
    CHECK(photo.value().w == 1600);
    CHECK(photo.value().h == 500);
}

TEST_CASE("What is no whole picture is refused in one sentence", "[report]") {
    const std::string jpeg = jpeg_of(64, 32);
    const std::string png = png_of(64, 32);
    for (const std::string& bytes :
         {std::string(), std::string("GIF89a"), std::string("hello"), jpeg.substr(0, 3), jpeg.substr(0, 40),
          png.substr(0, 8), png.substr(0, 30), std::string("\xff\xd8\xff") + std::string(5000, 'x')}) {
        const Outcome<PlainPhoto> photo = plain_photo(bytes, "x.jpg");
        REQUIRE_FALSE(photo.ok());
        CHECK_THAT(photo.problem().sentence(), Contains("x.jpg") && Contains("expected"));
    }
    std::string heavy = jpeg;
    heavy.resize(kMostPhotoBytes + 1);
    CHECK_THAT(plain_photo(heavy, "x.jpg").problem().sentence(), Contains("12 MB"));
    // A small file that says it is huge: refused by its head, before a byte of it is decoded.
    std::string bomb = png;
    bomb[16] = bomb[20] = 0;
    bomb[17] = bomb[21] = 1; // 65536 + ... by as much
    CHECK_FALSE(plain_photo(bomb, "x.png").ok());
}
