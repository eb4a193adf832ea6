#include "layout/metrics.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// One row of the type table: em and lead on tablets and desks, then on phones.
struct TypeRow {
    float size;
    float lead;
    float phone_size;
    float phone_lead;
    Weight weight;
};

// Leads are set by hand: 1.3 em for body text and 1.2 em for heads, since the typeface's own line box is 1.6
// em.
TypeRow row_of(Type use) {
    switch (use) {
    case Type::Hero:
        return {34, 41, 28, 34, Weight::Bold};
    case Type::H1:
        return {30, 36, 22, 27, Weight::Bold};
    case Type::H2:
        return {24, 29, 20, 24, Weight::Bold};
    case Type::Action:
        return {24, 29, 22, 27, Weight::Bold};
    case Type::Body:
        return {20, 26, 18, 23, Weight::Regular};
    case Type::Small:
        return {18, 23, 16, 20, Weight::Regular};
    case Type::CardLabel:
        return {18, 22, 14, 17, Weight::Bold};
    case Type::CardNote:
        return {16, 20, 12, 15, Weight::Regular};
    case Type::Figure:
        return {34, 41, 30, 36, Weight::Bold};
    case Type::Reading:
        return {40, 48, 40, 48, Weight::Bold};
    }
    return {20, 26, 18, 23, Weight::Regular};
}

} // namespace

Form form_of(Size window) {
    if (window.w < 600) {
        return Form::Phone;
    }
    return window.h > window.w ? Form::Portrait : Form::Landscape;
}

TextStyle Metrics::type(Type use) const {
    const TypeRow row = row_of(use);
    const float size = phone() ? row.phone_size : row.size;
    const float lead = phone() ? row.phone_lead : row.lead;
    return {size * text_scale, lead * text_scale, row.weight};
}

Metrics make_metrics(Size window, Insets insets, float px_per_pt, float pt_per_mm, float text_scale,
                     bool kids) {
    Metrics m;
    m.form = form_of(window);
    m.window = window;
    m.insets = insets;
    m.px_per_pt = px_per_pt > 0 ? px_per_pt : 1.0f;
    m.pt_per_mm = pt_per_mm > 0 ? pt_per_mm : 5.0f;
    m.text_scale = std::clamp(text_scale, kMinTextScale, kMaxTextScale);

    const bool phone = m.phone();
    const float line = m.type(Type::Body).lead;
    const float small_line = m.type(Type::Small).lead;
    // Each grows only once its text needs the room: the looks at 100 % are those of the design.
    // A quarter of a small window at most, so that four stand side by side on any phone.
    const float least = kids ? std::min(m.mm(kKidsTarget_mm), std::min(window.w, window.h) / 4) : 0.0f;
    m.target = std::max(56.0f, least);
    m.button_h = std::max({56.0f, line + 22, least});
    m.primary_h = std::max({phone ? 64.0f : 68.0f, m.type(Type::Action).lead + 32, least});
    m.hold_h = std::max(80.0f, m.type(Type::Action).lead + line + 20);
    m.field_h = std::max({62.0f, line + 28, least});
    m.key_h = std::max({phone ? 64.0f : 76.0f, line + 36, least});
    m.top_h = std::max(phone ? 60.0f : 68.0f, m.button_h + (phone ? 4 : 12));
    m.rail_h = std::max(phone ? 54.0f : 72.0f, 2 * small_line + (phone ? 10 : 26));
    if (phone) {
        m.rail_h = std::max(54.0f, line + 28);
        m.action_h = m.button_h + m.primary_h + 24;
        m.page_margin = 8;
        m.gap = 8;
        m.panel_pad_x = 12;
        m.panel_pad_y = 12;
    } else if (m.form == Form::Portrait) {
        m.action_h = m.primary_h + 16;
    } else {
        m.action_h = m.primary_h + 24;
    }
    return m;
}

} // namespace lanternleaf
