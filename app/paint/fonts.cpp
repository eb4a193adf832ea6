#include "paint/fonts.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include <imgui.h>

namespace lanternleaf {

namespace {

// Latin-1, Latin Extended-A, Ω and µ (both code points of each), dashes, quotes, ellipsis, arrows, − ≈ ≤ ≥ ✓.
// × and ½ are in Latin-1. Pairs of first and last code point, closed by a 0.
constexpr ImWchar kGlyphs[] = {0x0020, 0x00FF, 0x0100, 0x017F, 0x03A9, 0x03A9, 0x03BC, 0x03BC, 0x2010, 0x2015,
                               0x2018, 0x201E, 0x2022, 0x2022, 0x2026, 0x2026, 0x2126, 0x2126, 0x2190, 0x2193,
                               0x2212, 0x2212, 0x2248, 0x2248, 0x2264, 0x2265, 0x2713, 0x2713, 0};

constexpr Type kAllTypes[] = {Type::Hero,  Type::H1,        Type::H2,       Type::Action, Type::Body,
                              Type::Small, Type::CardLabel, Type::CardNote, Type::Figure, Type::Reading};

bool alike(float a, float b) {
    return std::abs(a - b) < 0.01f;
}

} // namespace

Outcome<FontFiles> read_font_files(const std::filesystem::path& folder) {
    Outcome<FontFile> regular = read_font(folder / "Andika-Regular.ttf");
    if (!regular) {
        return regular.problem();
    }
    Outcome<FontFile> bold = read_font(folder / "Andika-Bold.ttf");
    if (!bold) {
        return bold.problem();
    }
    return FontFiles{std::move(regular).value(), std::move(bold).value()};
}

Fonts::Fonts(FontFiles files) : files_(std::move(files)) {}

const FontFile& Fonts::file(Weight weight) const {
    return weight == Weight::Bold ? files_.bold : files_.regular;
}

bool Fonts::bake(const Metrics& metrics) {
    std::vector<Baked> wanted;
    const auto want = [&wanted](TextStyle style) {
        const bool known = std::any_of(wanted.begin(), wanted.end(), [&](const Baked& b) {
            return b.weight == style.weight && alike(b.em, style.size);
        });
        if (!known) {
            wanted.push_back({style.weight, style.size, nullptr});
        }
    };
    for (const Type use : kAllTypes) {
        want(metrics.type(use));
    }
    want(metrics.type(Type::Body).bold());
    want(metrics.type(Type::Small).bold());
    want(metrics.type(Type::H2).regular());
    std::sort(wanted.begin(), wanted.end(), [](const Baked& a, const Baked& b) { return a.em < b.em; });

    const bool same =
        alike(px_per_pt_, metrics.px_per_pt) &&
        std::equal(wanted.begin(), wanted.end(), baked_.begin(), baked_.end(),
                   [](const Baked& a, const Baked& b) { return a.weight == b.weight && alike(a.em, b.em); });
    if (same) {
        return false;
    }
    px_per_pt_ = metrics.px_per_pt;
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    // Lines are drawn as polygons here; without this the atlas would hold a texture for each line width.
    atlas.Flags |=
        ImFontAtlasFlags_NoBakedLines | ImFontAtlasFlags_NoMouseCursors | ImFontAtlasFlags_NoPowerOfTwoHeight;
    for (Baked& b : wanted) {
        FontFile& source = b.weight == Weight::Bold ? files_.bold : files_.regular;
        ImFontConfig config;
        config.FontDataOwnedByAtlas = false;
        config.OversampleH = metrics.px_per_pt > 1.5f ? 1 : 2;
        config.OversampleV = 1;
        config.PixelSnapH = false;
        const float pixels = b.em * source.box() * px_per_pt_;
        b.font = atlas.AddFontFromMemoryTTF(source.bytes.data(), static_cast<int>(source.bytes.size()),
                                            pixels, &config, kGlyphs);
        assert(b.font != nullptr);
    }
    atlas.Build();
    baked_ = std::move(wanted);
    ImGui::GetIO().FontDefault = baked_.front().font;
    return true;
}

ImFont* Fonts::face(TextStyle style) const {
    assert(!baked_.empty());
    // The smallest baked face that is at least as large, so that scaling only ever shrinks; else the largest.
    ImFont* best = nullptr;
    for (const Baked& b : baked_) {
        if (b.weight == style.weight) {
            best = b.font;
            if (b.em >= style.size - 0.01f) {
                break;
            }
        }
    }
    return best;
}

float Fonts::library_size(TextStyle style) const {
    return style.size * file(style.weight).box();
}

float Fonts::ascent(TextStyle style) const {
    return style.size * file(style.weight).ascent;
}

float Fonts::cap_height(TextStyle style) const {
    return style.size * file(style.weight).cap_height;
}

float Fonts::baseline(TextStyle style) const {
    return (style.lead + cap_height(style)) / 2;
}

float Fonts::width(std::string_view text, TextStyle style) const {
    if (text.empty()) {
        return 0;
    }
    return face(style)->CalcTextSizeA(library_size(style), 1e9f, 0, text.data(), text.data() + text.size()).x;
}

bool Fonts::has_all(std::string_view text, Weight weight) const {
    const ImFont* font = face({20, 26, weight});
    for (std::size_t i = 0; i < text.size();) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const std::size_t count = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        unsigned code = count == 1 ? lead : lead & (0xFFu >> (count + 1));
        for (std::size_t k = 1; k < count && i + k < text.size(); ++k) {
            code = code << 6 | (static_cast<unsigned char>(text[i + k]) & 0x3Fu);
        }
        if (code > 0xFFFF || font->FindGlyphNoFallback(static_cast<ImWchar>(code)) == nullptr) {
            return false;
        }
        i += count;
    }
    return true;
}

} // namespace lanternleaf
