// Metrics and regions at every form, text size and inset. The numbers at 100 % are those of the visual
// design.
#include "layout/regions.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

Regions at(Size window, float text = 1, Insets insets = {}) {
    return make_regions(make_metrics(window, insets, 1, 5, text), {.rail = true});
}

} // namespace

TEST_CASE("the form follows the window") {
    CHECK(form_of({599, 400}) == Form::Phone);
    CHECK(form_of({600, 400}) == Form::Landscape);
    CHECK(form_of({820, 1180}) == Form::Portrait);
    CHECK(form_of({1180, 820}) == Form::Landscape);
    CHECK(form_of({390, 844}) == Form::Phone);
}

TEST_CASE("landscape, portrait and phone have the bars of the design") {
    const Regions wide = at({1180, 820});
    CHECK(wide.top == Rect{0, 0, 1180, 68});
    CHECK(wide.rail == Rect{0, 68, 1180, 72});
    CHECK(wide.actions == Rect{0, 728, 1180, 92});
    CHECK(wide.panel == Rect{640, 154, 520, 562});
    CHECK(wide.card.x == 20);
    CHECK(wide.card.right() == 620);

    const Regions tall = at({820, 1180});
    CHECK(tall.top.h == 68);
    CHECK(tall.actions.h == 84);
    CHECK(tall.panel.h == 330);
    CHECK(tall.panel.w == 780);

    const Regions phone = at({390, 844});
    CHECK(phone.top.h == 60);
    CHECK(phone.rail.h == 54);
    CHECK(phone.actions.h == 144);
}

TEST_CASE("regions stay in the window and do not overlap, whatever the window, text or insets") {
    const Size window = GENERATE(Size{1180, 820}, Size{820, 1180}, Size{390, 844}, Size{320, 480},
                                 Size{1920, 1080}, Size{2560, 1440}, Size{640, 480}, Size{844, 390});
    const float text = GENERATE(0.85f, 1.0f, 1.3f, 2.0f);
    const Insets insets = GENERATE(Insets{}, Insets{44, 24, 44, 34});
    CAPTURE(window.w, window.h, text, insets.top);
    const Regions r = at(window, text, insets);
    const Rect parts[] = {r.top, r.rail, r.card, r.panel, r.actions};
    for (std::size_t i = 0; i < std::size(parts); ++i) {
        CHECK(r.window.shrunk(-0.01f).holds(parts[i]));
        CHECK(parts[i].w >= 0);
        CHECK(parts[i].h >= 0);
        for (std::size_t k = 0; k < i; ++k) {
            const Rect both = common(parts[i], parts[k]);
            CHECK(both.w * both.h < 0.5f);
        }
    }
    const Rect safe{insets.left, insets.top, window.w - insets.left - insets.right,
                    window.h - insets.top - insets.bottom};
    CHECK(safe.shrunk(-0.01f).holds(r.card));
    CHECK(safe.shrunk(-0.01f).holds(r.panel));
    CHECK(safe.shrunk(-0.01f).holds(r.content(r.actions)));
}

TEST_CASE("wide windows keep the panel between 520 and 600 and the content within 1600") {
    CHECK(at({1500, 900}).panel.w == 600);
    CHECK(at({1300, 900}).panel.w == 560);
    const Regions r = at({2560, 1440});
    CHECK(r.panel.right() - r.card.x <= 1600);
    CHECK(r.card.w > 900);
}

TEST_CASE("text grows everything it needs room for and nothing falls below a finger's size") {
    const float text = GENERATE(0.85f, 1.0f, 1.3f, 2.0f);
    const Metrics m = make_metrics({1180, 820}, {}, 1, 5, text);
    CHECK(m.type(Type::Body).size == Approx(20 * text));
    CHECK(m.button_h >= 56);
    CHECK(m.button_h >= m.type(Type::Body).lead + 16);
    CHECK(m.primary_h >= 64);
    CHECK(m.top_h >= m.button_h);
    CHECK(m.rail_h >= 2 * m.type(Type::Small).lead);
    CHECK(m.action_h >= m.primary_h);
    CHECK(m.target == 56);
}

TEST_CASE("odd wishes are put right") {
    const Metrics m = make_metrics({1180, 820}, {}, 0, -3, 9);
    CHECK(m.px_per_pt == 1);
    CHECK(m.pt_per_mm == 5);
    CHECK(m.text_scale == 2);
    CHECK(make_metrics({1180, 820}, {}, 1, 5, 0.1f).text_scale == Approx(0.85));
}
