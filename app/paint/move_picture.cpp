#include "paint/move_picture.h"

#include "paint/move_picture_frames.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

void draw_frame(PictureStage& on, const frames::Beat& beat) {
    switch (on.spec().kind) {
    case MoveKind::measure:
        return frames::measure(on, beat);
    case MoveKind::peel:
        return frames::peel(on, beat);
    case MoveKind::press:
        return frames::press(on, beat);
    case MoveKind::flap_way:
        return frames::flap_way(on, beat);
    case MoveKind::mark_pad:
        return frames::mark_pad(on, beat);
    case MoveKind::start_strip:
        return frames::start(on, beat);
    case MoveKind::run:
        return frames::run(on, beat);
    case MoveKind::fold:
        return frames::fold(on, beat);
    case MoveKind::joint:
        return frames::joint(on, beat);
    case MoveKind::cut:
        return frames::cut(on, beat);
    case MoveKind::leave_tail:
        return frames::tail(on, beat);
    case MoveKind::patch:
        return frames::patch(on, beat);
    case MoveKind::carry_across:
        return frames::carry(on, beat);
    case MoveKind::place_resistor:
    case MoveKind::place_led:
        return frames::place_part(on, beat);
    case MoveKind::adult_notice:
        return frames::adult(on, beat);
    case MoveKind::cell_in:
        return frames::cell_in(on, beat);
    case MoveKind::light_test:
        return frames::light_test(on, beat);
    case MoveKind::foam:
        return frames::foam(on, beat);
    case MoveKind::close:
        return frames::close(on, beat);
    case MoveKind::label:
        return frames::label(on, beat);
    }
}

/// The largest em, down to 13, at which every caption fits its frame.
float caption_em(const Pen& pen, const MovePictureSpec& spec, float em, float width) {
    for (; em > 13; em -= 1) {
        const TextStyle style{em, em * 1.3f, Weight::Regular};
        const bool fits =
            std::all_of(spec.captions.begin(), spec.captions.end(), [&](const std::string& caption) {
                return pen.fonts().width(caption, style) <= width;
            });
        if (fits) {
            break;
        }
    }
    return em;
}

} // namespace

void draw_move_picture(Pen& pen, const Theme& theme, const Rect& r, const MovePictureSpec& spec,
                       const MovePictureLook& look) {
    const int count = std::max(1, static_cast<int>(spec.captions.size()));
    const float across = (r.w - look.gap * static_cast<float>(count - 1)) / static_cast<float>(count);
    const float em = look.caption_em > 0 ? caption_em(pen, spec, look.caption_em, across) : 0;
    const float foot = em > 0 ? em * 1.3f + 10 : 0;
    const float turn = look.phase * 2 * kPi;
    for (int i = 0; i < count; ++i) {
        const Rect frame{r.x + (across + look.gap) * static_cast<float>(i), r.y, across, r.h - foot};
        pen.fill(frame, theme.sheet, look.radius);
        pen.push_clip(frame);
        PictureStage stage(pen, theme, frame, spec);
        frames::Beat beat;
        beat.frame = i;
        if (look.phase > 0) {
            beat.swing = static_cast<double>(std::sin(turn));
            beat.go = 0.5 - 0.5 * static_cast<double>(std::cos(turn));
        }
        draw_frame(stage, beat);
        pen.pop_clip();
        close_frame(pen, frame, look.radius, theme.panel, theme.line);
        if (em > 0 && static_cast<std::size_t>(i) < spec.captions.size()) {
            const TextStyle style{em, em * 1.3f, Weight::Regular};
            const Rect box{frame.x, frame.bottom() + 4, frame.w, foot - 4};
            pen.text_in(box, spec.captions[static_cast<std::size_t>(i)], style, theme.ink);
        }
    }
}

} // namespace lanternleaf
