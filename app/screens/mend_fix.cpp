// How a cause is mended: where it is, what the hands do, and the words; and what to do when no cause fits.
#include "controls/panel.h"
#include "paint/move_picture.h"
#include "screens/make.h"
#include "screens/mend.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// The place close up, and beside it (under it on a phone) the move that mends.
float draw_pictures(Screen& screen, const MendCauseRow& cause, const Rect& r, bool draw) {
    Ui& ui = screen.ui;
    const bool stacked = ui.m.phone() || ui.m.text_scale > 1.4f;
    const float high = ui.m.phone() ? 112.0f : 150.0f;
    const float gap = 10;
    if (!cause.at_mm && !cause.picture) {
        return 0;
    }
    Rect lens{r.x, r.y, r.w, cause.at_mm ? high : 0};
    Rect hands{r.x, r.y, r.w, high};
    float used = high;
    if (cause.at_mm && cause.picture) {
        if (stacked) {
            hands.y = lens.bottom() + gap;
            used = 2 * high + gap;
        } else {
            lens.w = r.w * 0.36f;
            hands.x = lens.right() + gap;
            hands.w = r.right() - hands.x;
        }
    }
    if (draw && cause.at_mm) {
        draw_mend_lens(screen, lens, *cause.at_mm, cause.letter, cause.bridge_mm);
    }
    if (draw && cause.picture) {
        MovePictureLook look;
        look.caption_em = ui.m.type(Type::Small).size * (ui.m.phone() ? 0.92f : 0.94f);
        draw_move_picture(ui.pen(), ui.theme(), hands, *cause.picture, look);
    }
    return used + 12;
}

} // namespace

float draw_mend_fix(Screen& screen, const MendView& view, int index, Rect r, bool draw) {
    Ui& ui = screen.ui;
    const MendCauseRow& cause = view.causes[static_cast<std::size_t>(index)];
    const bool from_tests = screen.state.mend->chosen >= 0 && view.test.has_value();
    const float top = r.y;
    const TextStyle body = ui.m.type(Type::Body);
    r.cut_top(mend_head(ui, r, Icon::Mend,
                        ui.words("mend_place.cause", {{"letter", cause.letter}, {"cause", cause.title}}),
                        ui.words("mend_place.likely", {{"percent", cause.percent}}), draw) +
              6);
    r.cut_top(mend_words(ui, r, cause.sentence, body, ui.theme().ink2, draw) + 10);
    r.cut_top(draw_pictures(screen, cause, r, draw));
    r.cut_top(mend_numbered(ui, r, cause.fix, draw) + 6);
    int tapped = -1;
    const MendButton found{"mend/found", {.label = ui.words("mend_place.found"), .icon = Icon::None}};
    const MendButton other =
        from_tests
            ? MendButton{"mend/tests", {.label = ui.words("mend_place.back_to_test"), .icon = Icon::Back}}
            : MendButton{"mend/take-back",
                         {.label = ui.words("mend_place.answer_back"),
                          .icon = Icon::Undo,
                          .enabled = view.can_take_back,
                          .reason = ui.words("mend_place.nothing_answered")}};
    r.cut_top(mend_two(screen, r, found, other, true, draw, tapped));
    if (tapped == 0) {
        act(screen, mend::Found{index});
    } else if (tapped == 1) {
        act(screen, from_tests ? MendCommand(mend::LookAt{-1}) : MendCommand(mend::TakeBack{}));
    }
    if (!from_tests) {
        r.cut_top(12);
        r.cut_top(mend_words(ui, r, ui.words("mend_place.could_ask"), ui.m.type(Type::Small), ui.theme().ink2,
                             draw) +
                  4);
        r.cut_top(draw_mend_tools(screen, r, draw));
    }
    return r.y - top;
}

float draw_mend_none_fits(Screen& screen, const MendView& view, Rect r, bool draw) {
    Ui& ui = screen.ui;
    const float top = r.y;
    const TextStyle body = ui.m.type(Type::Body);
    r.cut_top(mend_head(ui, r, Icon::Eye, ui.words("mend_place.none_fits"), "", draw) + 6);
    r.cut_top(mend_words(ui, r, ui.words("mend_place.slipped"), body, ui.theme().ink2, draw) + 10);
    r.cut_top(mend_numbered(ui, r, view.none_fits, draw) + 6);
    int tapped = -1;
    r.cut_top(
        mend_two(screen, r,
                 {"mend/start-again", {.label = ui.words("mend_place.start_again"), .icon = Icon::Repeat}},
                 {"mend/tests",
                  {.label = view.test ? ui.words("mend_place.back_to_test")
                                      : ui.words("mend_place.back_to_causes"),
                   .icon = Icon::Back}},
                 true, draw, tapped) +
        10);
    if (tapped == 0) {
        act(screen, mend::StartAgain{});
    } else if (tapped == 1) {
        act(screen, mend::LookAt{-1});
    }
    if (draw && button(ui, "mend/note", {r.x, r.y, r.w, ui.m.button_h},
                       {.label = ui.words("mend_place.note_it"), .icon = Icon::Log})) {
        act(screen, mend::NoteNoneFits{});
    }
    r.cut_top(ui.m.button_h);
    return r.y - top;
}

} // namespace lanternleaf
