#include "paint/theme.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

std::uint8_t channel(float value) {
    return static_cast<std::uint8_t>(std::clamp(value + 0.5f, 0.0f, 255.0f));
}

std::uint8_t between(std::uint8_t a, std::uint8_t b, float t) {
    return channel(static_cast<float>(a) + (static_cast<float>(b) - static_cast<float>(a)) * t);
}

/// Relative luminance, WCAG 2.1 definition (sRGB transfer curve, ITU-R BT.709 weights).
double luminance(Colour c) {
    const auto linear = [](std::uint8_t value) {
        const double s = value / 255.0;
        return s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}

Theme make_day() {
    Theme t;
    t.table = rgb(0xE6DFD2), t.table_edge = rgb(0xD6CDBC);
    t.sheet = rgb(0xFBF6EA), t.sheet_edge = rgb(0xCFC4AF);
    t.panel = rgb(0xFFFCF5), t.well = rgb(0xF3ECDF);
    t.ink = rgb(0x22272B), t.ink2 = rgb(0x53565A);
    t.line = rgb(0xCDC3B1), t.edge = rgb(0x857A67);
    t.leaf = rgb(0x00614A), t.leaf_dk = rgb(0x004836), t.leaf_tint = rgb(0xDDECE4);
    t.on_leaf = rgb(0xFFFFFF), t.leaf_text = t.leaf_dk, t.turned = rgb(0x8CC7AE);
    t.lamp = rgb(0xFFC24B), t.lamp_dk = rgb(0x7A4E00), t.lamp_tint = rgb(0xFFF1CF);
    t.on_lamp = rgb(0x22272B);
    t.plum = rgb(0x8A2858), t.plum_tint = rgb(0xF7E6EE), t.on_plum = rgb(0xFFFFFF);
    t.ochre = t.lamp_dk, t.ochre_tint = t.lamp_tint;
    t.blue = rgb(0x005B8E), t.blue_tint = rgb(0xDFEDF6), t.on_blue = rgb(0xFFFFFF);
    t.plus = rgb(0xD55E00), t.plus_dk = rgb(0x7D2E00), t.minus = rgb(0x1B2024);
    t.cu = rgb(0xE3B58A), t.cu_hi = rgb(0xF3D6B8), t.cu_lo = rgb(0xC58D5E);
    t.ag = rgb(0xDADDDF), t.ag_hi = rgb(0xF1F3F4), t.ag_lo = rgb(0xA2A9AE);
    t.patch = rgb(0xEFE0B8), t.patch_ln = rgb(0x8A7442);
    t.pencil = rgb(0xA0947F);
    t.glow = rgb(0xFFC24B), t.glow_green = rgb(0x6FD0A0);
    t.scrim = faded(rgb(0x22272B), 0.35f);
    return t;
}

Theme make_night() {
    Theme t;
    t.night = true;
    t.table = rgb(0x12161A), t.table_edge = rgb(0x0C0F12);
    t.sheet = rgb(0x544E44), t.sheet_edge = rgb(0x6E675A);
    t.panel = rgb(0x1E2429), t.well = rgb(0x283036);
    t.ink = rgb(0xF4ECDD), t.ink2 = rgb(0xC3BBAD);
    t.line = rgb(0x3C454C), t.edge = rgb(0x8D979E);
    t.leaf = rgb(0x63D0A9), t.leaf_dk = rgb(0x3FAE88), t.leaf_tint = rgb(0x1F3A32);
    t.on_leaf = rgb(0x0D1A15), t.leaf_text = t.leaf, t.turned = rgb(0x2B8263);
    t.lamp = rgb(0xFFC24B), t.lamp_dk = rgb(0xFFD27A), t.lamp_tint = rgb(0x3A3019);
    t.on_lamp = rgb(0x22272B);
    t.plum = rgb(0xF2A3C7), t.plum_tint = rgb(0x3B1F2D), t.on_plum = rgb(0x1E2429);
    t.ochre = t.lamp_dk, t.ochre_tint = t.lamp_tint;
    t.blue = rgb(0x7CC4EE), t.blue_tint = rgb(0x1B303F), t.on_blue = rgb(0x0D1A15);
    t.plus = rgb(0xF98F4B), t.plus_dk = rgb(0x3F1500), t.minus = rgb(0x08090B);
    t.cu = rgb(0xB5845A), t.cu_hi = rgb(0xCB9C74), t.cu_lo = rgb(0x8A5F3C);
    t.ag = rgb(0x9CA1A5), t.ag_hi = rgb(0xB4B9BC), t.ag_lo = rgb(0x6F767B);
    t.patch = rgb(0x6E6242), t.patch_ln = rgb(0xD8C58C);
    t.pencil = rgb(0x979082);
    t.glow = rgb(0xFFC24B), t.glow_green = rgb(0x6FE0AA);
    t.scrim = faded(rgb(0x000000), 0.5f);
    return t;
}

} // namespace

Colour faded(Colour colour, float opacity) {
    colour.a = channel(static_cast<float>(colour.a) * std::clamp(opacity, 0.0f, 1.0f));
    return colour;
}

Colour mixed(Colour a, Colour b, float t) {
    return {between(a.r, b.r, t), between(a.g, b.g, t), between(a.b, b.b, t), between(a.a, b.a, t)};
}

double contrast(Colour a, Colour b) {
    const double la = luminance(a) + 0.05;
    const double lb = luminance(b) + 0.05;
    return std::max(la, lb) / std::min(la, lb);
}

const Theme& day_theme() {
    static const Theme theme = make_day();
    return theme;
}

const Theme& night_theme() {
    static const Theme theme = make_night();
    return theme;
}

std::vector<ContrastPair> contrast_pairs(const Theme& t) {
    const bool n = t.night;
    const auto stated = [n](double day, double night) { return n ? night : day; };
    return {
        {"ink on panel", t.ink, t.panel, stated(14.7, 13.4), 4.5},
        {"ink on table", t.ink, t.table, stated(11.4, 15.5), 4.5},
        {"ink on sheet", t.ink, t.sheet, stated(14.0, 7.0), 4.5},
        {"ink2 on panel", t.ink2, t.panel, stated(7.2, 8.2), 4.5},
        {"ink2 on table", t.ink2, t.table, stated(5.6, 9.5), 4.5},
        {"ink2 on well", t.ink2, t.well, stated(6.3, 7.0), 4.5},
        {"edge on panel", t.edge, t.panel, stated(4.1, 5.3), 3.0},
        {"edge on table", t.edge, t.table, stated(3.2, 6.1), 3.0},
        {"edge on well", t.edge, t.well, stated(3.6, 4.5), 3.0},
        {"on_leaf on leaf", t.on_leaf, t.leaf, stated(7.5, 9.5), 4.5},
        {"leaf text on leaf_tint", t.leaf_text, t.leaf_tint, stated(8.7, 6.5), 4.5},
        {"on_lamp on lamp", t.on_lamp, t.lamp, stated(9.4, 9.4), 4.5},
        {"lamp_dk on lamp_tint", t.lamp_dk, t.lamp_tint, stated(6.4, 9.1), 4.5},
        {"plum on panel", t.plum, t.panel, stated(8.1, 8.1), 4.5},
        {"plum on plum_tint", t.plum, t.plum_tint, stated(6.9, 7.6), 4.5},
        {"blue on blue_tint", t.blue, t.blue_tint, stated(6.1, 7.1), 4.5},
        {"on_blue on blue", t.on_blue, t.blue, stated(7.3, 9.3), 4.5},
        {"plus on sheet", t.plus, t.sheet, stated(3.6, 3.6), 3.0},
        {"plus_dk on cu", t.plus_dk, t.cu, stated(5.0, 4.9), 3.0},
        {"plus_dk on ag", t.plus_dk, t.ag, stated(6.8, 6.1), 3.0},
        {"minus on cu", t.minus, t.cu, stated(8.8, 6.1), 3.0},
        {"minus on ag", t.minus, t.ag, stated(12.0, 7.6), 3.0},
        // At night the - edge is told from the sheet by its inner side, which lies on copper at 6.1.
        {"minus on sheet", t.minus, t.sheet, stated(15.2, 2.4), n ? 0.0 : 3.0},
        {"patch_ln on patch", t.patch_ln, t.patch, stated(3.4, 3.5), 3.0},
        // A plus_dk hairline lies between these two.
        {"plus on cu", t.plus, t.cu, stated(2.1, 1.4), 0.0},
        {"pencil on sheet", t.pencil, t.sheet, stated(2.8, 2.6), 0.0},
    };
}

} // namespace lanternleaf
