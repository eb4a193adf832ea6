// The card in Mend: lights with the state that was tapped, suspects with their letters, and the close-up.
#include "paint/lens.h"
#include "screens/board_panel.h"
#include "screens/make.h"
#include "screens/mend.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr float kBadge = 15; ///< and no larger than its light's ring, on small cards

BoardProgress progress_of(const OpenBuild& build) {
    const auto step = static_cast<StepId>(std::min(build.record.step, kStepCount));
    return build.record.finished || build.face != MakeFace::move
               ? board_after(build.record.as_built, build.whole, build.steps, step)
               : board_at(build.record.as_built, build.whole, build.steps, step, build.move);
}

// How bright a light that was tapped is drawn; it is what was seen, not what is predicted.
double glow_of(Look look) {
    return look == Look::lit ? 0.6 : look == Look::dim || look == Look::flickers ? 0.08 : 0.0;
}

void light_badge(Ui& ui, Point at, float radius, Look look) {
    const Theme& theme = ui.theme();
    Pen& pen = ui.pen();
    const Colour ring = look == Look::dark ? theme.ink : theme.lamp_dk;
    const float badge = std::min(kBadge, radius * 0.78f);
    const float icon = badge * 1.33f;
    const Point corner{at.x + radius * 0.72f, at.y - radius * 0.72f};
    switch (look) {
    case Look::unseen:
        pen.dashed_ring(at, radius, theme.ink2, 1.6f, 3, 4);
        return;
    case Look::lit:
        pen.ring(at, radius, ring, 2.6f);
        pen.disc(corner, badge, theme.lamp);
        pen.ring(corner, badge, theme.on_lamp, 1.8f);
        draw_icon(pen, Icon::Bulb, corner, icon, theme.on_lamp);
        return;
    case Look::dim:
    case Look::flickers:
        pen.dashed_ring(at, radius, ring, 2.6f, 7, 5);
        pen.disc(corner, badge, theme.lamp_tint);
        pen.dashed_ring(corner, badge, theme.ink, 1.8f, 4, 3);
        draw_icon(pen, look == Look::dim ? Icon::BulbDim : Icon::Repeat, corner, icon, theme.ink);
        return;
    case Look::dark:
        pen.ring(at, radius, ring, 2.6f);
        pen.disc(corner, badge, rgb(0x1B2024));
        pen.ring(corner, badge, theme.panel, 1.4f);
        draw_icon(pen, Icon::BulbOff, corner, icon, rgb(0xFFFCF5));
        return;
    }
}

void suspect_tiles(Ui& ui, Point at, float radius, const MendSuspect& suspect, const Rect& area) {
    const Theme& theme = ui.theme();
    Pen& pen = ui.pen();
    pen.ring(at, radius + 1.5f, theme.sheet, 6.5f);
    pen.ring(at, radius, theme.plum, 3.5f);
    const TextStyle style = ui.m.type(Type::CardLabel).bold();
    const float side = ui.m.phone() ? 22.0f : 26.0f;
    // Lower right, where no light carries its badge.
    float x = std::min(at.x + radius * 0.6f,
                       area.right() - (side + 4) * static_cast<float>(suspect.letters.size()));
    for (std::size_t i = 0; i < suspect.letters.size(); ++i) {
        const Rect tile{x, at.y + radius * 0.5f, side, side};
        const bool solid = suspect.first && i == 0;
        pen.fill(tile.shrunk(-1.5f, -1.5f), theme.panel, 8);
        pen.fill(tile, solid ? theme.plum : theme.panel, 7);
        pen.outline(tile, theme.plum, 2.0f, 7);
        pen.text_in(tile, suspect.letters.substr(i, 1), style, solid ? theme.on_plum : theme.plum);
        x += side + 3;
    }
}

} // namespace

void draw_mend_card(Screen& screen, const MendView& view, const Rect& area) {
    Ui& ui = screen.ui;
    const OpenBuild& build = *screen.state.build;
    const MendState& mend = *screen.state.mend;
    BoardWish wish;
    wish.card = &build.record.as_built;
    wish.parts = &build.parts;
    wish.conductors = &build.whole;
    wish.progress = progress_of(build);
    wish.progress.moving = false;
    wish.progress.cell_in = build.record.cell_in;
    wish.card_folder = build.shelf.card_folder;
    for (const Look look : mend.session.evidence.looks) {
        wish.glow.push_back(glow_of(look));
    }
    draw_board_panel(screen, area, wish);

    const Card& card = build.record.as_built;
    const BoardCamera& camera = screen.state.camera;
    const Vec2 sheet_mm{card.sheet.width_mm, card.sheet.height_mm};
    const Vec2 centre = camera.zoom > kLeastZoom ? camera.centre_mm : sheet_mm * 0.5;
    const Viewport at = looking_at(area, sheet_mm, camera.zoom, centre, camera.mirrored);
    ui.pen().push_clip(area);
    const bool placed = mend.lights_there && mend.session.evidence.looks.size() == card.leds.size();
    for (std::size_t i = 0; placed && i < card.leds.size(); ++i) {
        light_badge(ui, at.to_px(card.leds[i].at_mm), at.px(7.0, 14.0f), mend.session.evidence.looks[i]);
        if (ui.tapped("board/led/" + card.leds[i].id)) {
            act(screen, mend::TapLight{card.leds[i].id});
        }
    }
    for (auto suspect = view.suspects.rbegin(); suspect != view.suspects.rend(); ++suspect) {
        suspect_tiles(ui, at.to_px(suspect->at_mm), at.px(4.6, 11.0f), *suspect, area);
    }
    ui.pen().pop_clip();
}

void draw_mend_lens(Screen& screen, const Rect& frame, Vec2 at_mm, const std::string& letter,
                    const std::vector<Vec2>& bridge_mm) {
    Ui& ui = screen.ui;
    const OpenBuild& build = *screen.state.build;
    constexpr float kLens_ppm = 9.0f;
    BoardOptions options;
    options.words = ui.words;
    options.ppm = static_cast<double>(kLens_ppm);
    options.label_em = static_cast<double>(ui.m.type(Type::CardLabel).size);
    const BoardView view =
        make_board_view(build.record.as_built, build.parts, build.whole, progress_of(build), options);
    LensSpec spec;
    spec.centre_mm = at_mm;
    if (!bridge_mm.empty()) {
        spec.repair = LensRepair{bridge_mm, 5.0, ""};
    }
    draw_lens(ui.pen(), ui.theme(), frame, view, spec, ui.m.type(Type::CardLabel).size, kLens_ppm);
    const Point centre = frame.centre();
    ui.pen().dashed_ring(centre, std::min(46.0f, frame.h * 0.42f), ui.theme().plum, 4.0f, 9, 6);
    if (!letter.empty()) {
        const Rect tile{frame.x + 8, frame.bottom() - 36, 28, 28};
        ui.pen().fill(tile, ui.theme().panel, 7);
        ui.pen().outline(tile, ui.theme().plum, 2.0f, 7);
        ui.pen().text_in(tile, letter, ui.m.type(Type::CardLabel).bold(), ui.theme().plum);
    }
}

} // namespace lanternleaf
