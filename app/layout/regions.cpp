#include "layout/regions.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr float kDesignWidth = 1180; ///< the window the design was drawn for
constexpr float kMostContent = 1600; ///< wider windows leave table at both sides
constexpr float kMostPanelGrowth = 80;

void split_landscape(Regions& out, const Metrics& m, const RegionWish& wish) {
    Rect page = out.page;
    // 1180 wide: card 20..620, panel 640..1160 below a gap of 14. A wider window gives the panel a third of
    // the extra.
    const float panel_top = 14 * std::min(1.0f, page.h / 588);
    const float extra = std::max(0.0f, page.w - kDesignWidth);
    float panel_w = wish.panel_w + std::min(kMostPanelGrowth, extra / 3);
    // Larger text needs a wider panel, but never more than half the page.
    panel_w = std::min(panel_w * std::max(1.0f, 0.5f + m.text_scale / 2), page.w * 0.5f);
    if (page.w < kDesignWidth) {
        panel_w = std::min(panel_w, page.w * wish.panel_w / kDesignWidth);
    }
    page = page.shrunk(m.page_margin, 0);
    Rect panel = page.cut_right(panel_w);
    panel.cut_top(panel_top);
    panel.cut_bottom(12);
    page.cut_right(20);
    out.card = page;
    out.panel = panel;
}

void split_portrait(Regions& out, const Metrics& m, const RegionWish& wish) {
    Rect page = out.page.shrunk(m.page_margin, 0);
    page.cut_bottom(5);
    const float panel_h = std::min(wish.panel_h * std::max(1.0f, m.text_scale), page.h * 0.6f);
    out.panel = page.cut_bottom(panel_h);
    out.card = page;
}

void split_phone(Regions& out, const Metrics& m, const RegionWish& wish) {
    Rect page = out.page.shrunk(m.page_margin, 0);
    page.cut_bottom(6);
    // Large type takes room from the card, down to half of it; then the panel scrolls.
    const float card_h = std::min(wish.phone_card_h / std::clamp(m.text_scale, 1.0f, 2.0f), page.h * 0.5f);
    out.card = page.cut_top(card_h);
    out.panel = page;
}

} // namespace

Rect Regions::content(const Rect& bar) const {
    const Rect safe{window.x + insets.left, window.y + insets.top,
                    std::max(0.0f, window.w - insets.left - insets.right),
                    std::max(0.0f, window.h - insets.top - insets.bottom)};
    Rect inside = common(bar, safe);
    if (inside.w > kMostContent) {
        inside = {inside.centre().x - kMostContent / 2, inside.y, kMostContent, inside.h};
    }
    return inside;
}

Regions make_regions(const Metrics& m, const RegionWish& wish) {
    Regions out;
    out.form = m.form;
    out.insets = m.insets;
    out.window = {0, 0, m.window.w, m.window.h};
    Rect rest = out.window;
    out.top = rest.cut_top(m.top_h + m.insets.top);
    if (wish.actions) {
        out.actions = rest.cut_bottom((wish.actions_h > 0 ? wish.actions_h : m.action_h) + m.insets.bottom);
    }
    if (wish.rail) {
        out.rail = rest.cut_top(wish.rail_h > 0 ? wish.rail_h : m.rail_h);
    }
    out.page = out.content(rest);
    switch (m.form) {
    case Form::Landscape:
        split_landscape(out, m, wish);
        break;
    case Form::Portrait:
        split_portrait(out, m, wish);
        break;
    case Form::Phone:
        split_phone(out, m, wish);
        break;
    }
    return out;
}

} // namespace lanternleaf
