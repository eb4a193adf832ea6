#include "sheets/step_picture.h"

#include "sheets/plan_drawing.h"
#include "sheets/symbols.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr Ink kFaint = grey(0.62);
constexpr Ink kDone = grey(0.82);

// Beyond this many lights and strips a picture a hand wide shows a grey blur, and a file a hundred pages long
// grows with their square: then only the sheet, the holder and the move are drawn.
constexpr std::size_t kMostDrawn = 150;

bool holds(const std::vector<std::string>& list, const std::string& id) {
    return std::find(list.begin(), list.end(), id) != list.end();
}

std::vector<Vec2> band(Vec2 from, Vec2 to, double width_mm) {
    const Vec2 side = quarter_turn(unit(to - from)) * (width_mm / 2.0);
    return {from + side, to + side, to - side, from - side};
}

} // namespace

StepPictures::StepPictures(const Card& card, const Parts& parts, const Words& words)
    : card_(card), parts_(parts), words_(words), conductors_(find_conductors(card, parts)),
      shape_(holder_shape(card, parts)) {}

double StepPictures::height_for(double width_mm) const {
    const double ratio = card_.sheet.height_mm / card_.sheet.width_mm;
    return std::clamp(width_mm * ratio, width_mm * 0.35, width_mm * 1.1);
}

const Strip* StepPictures::strip_of_move(const Move& move) const {
    return move.parts.empty() ? nullptr : find_strip(card_, move.parts.front());
}

void StepPictures::draw_part(PagePen& pen, const std::string& id, bool now) const {
    const auto outline = [&](const Convex& body, const PadOutline& first, const PadOutline& second,
                             bool signs) {
        const Stroke edge{(now ? 0.4 : 0.15) * unit_, now ? kBlack : grey(0.3), {}};
        pen.convex(body, edge, kWhite);
        for (const PadOutline* pad : {&first, &second}) {
            if (!pad->outline.empty()) {
                pen.convex(pad->outline, Stroke{(now ? 0.25 : 0.12) * unit_, edge.ink, {}},
                           now ? kWhite : kDone);
            }
        }
        if (now && signs) { // beyond the pads, where there is room for them to be seen
            const Vec2 out = unit(second.at_mm - first.at_mm) * (2.2 * unit_);
            draw_sign(pen, second.at_mm + out, '+', 0.9 * unit_, 0.3 * unit_);
            draw_sign(pen, first.at_mm - out, '-', 0.9 * unit_, 0.3 * unit_);
        }
    };
    for (std::size_t i = 0; i < card_.leds.size(); ++i) {
        if (card_.leds[i].id == id) {
            outline(led_body(card_, parts_, static_cast<int>(i)), conductors_.led_pads[2 * i],
                    conductors_.led_pads[2 * i + 1], true);
        }
    }
    for (std::size_t i = 0; i < card_.resistors.size(); ++i) {
        if (card_.resistors[i].id == id) {
            outline(resistor_body(card_, parts_, static_cast<int>(i)), conductors_.resistor_pads[2 * i],
                    conductors_.resistor_pads[2 * i + 1], false);
        }
    }
}

void StepPictures::draw_holder(PagePen& pen, bool now) const {
    const Stroke edge{(now ? 0.4 : 0.18) * unit_, now ? kBlack : grey(0.3), {}};
    if (!shape_.flap) {
        pen.convex(shape_.body, edge, {});
        pen.convex(shape_.pad[0], edge, kDone);
        pen.convex(shape_.pad[1], edge, kDone);
        return;
    }
    pen.disc(shape_.disc_at_mm[0], shape_.disc_radius_mm[0], edge, {});
    pen.disc(shape_.disc_at_mm[1], shape_.disc_radius_mm[1],
             Stroke{edge.width_mm, edge.ink, {0.8 * unit_, 0.5 * unit_}}, {});
}

void StepPictures::draw_so_far(PagePen& pen) const {
    pen.box({0, 0}, {card_.sheet.width_mm, card_.sheet.height_mm}, Stroke{0.2 * unit_, kBlack, {}}, kWhite);
    for (const FoldLine& fold : card_.sheet.folds) {
        pen.line(fold.from_mm, fold.to_mm, {0.12 * unit_, kFaint, {1.2 * unit_, 0.6 * unit_}});
    }
    if (card_.leds.size() + card_.laid.size() > kMostDrawn) {
        if (holder_) {
            draw_holder(pen, false);
        }
        return;
    }
    for (const Tape& foam : foam_) {
        pen.shape(band(foam.from_mm, foam.to_mm, foam.width_mm), Stroke{0.1 * unit_, kFaint, {}}, grey(0.93));
    }
    if (marks_) {
        for (const PadOutline& pad : conductors_.led_pads) {
            pen.convex(pad.outline, Stroke{0.1 * unit_, kFaint, {}}, {});
        }
    }
    for (const Tape& tape : tapes_) {
        const bool solid = tape.side == Side::negative;
        pen.shape(band(tape.from_mm, tape.to_mm, tape.width_mm),
                  Stroke{0.15 * unit_, grey(0.35),
                         solid ? std::vector<double>{} : std::vector<double>{0.9 * unit_, 0.5 * unit_}},
                  solid ? kDone : kWhite);
    }
    for (const PatchShape& patch : conductors_.patches) {
        if (holds(patches_, id_of(card_.laid[static_cast<std::size_t>(patch.laid_index)]))) {
            pen.convex(patch.outline, Stroke{0.15 * unit_, grey(0.35), {}}, {});
        }
    }
    for (const std::string& id : placed_) {
        draw_part(pen, id, false);
    }
    if (holder_) {
        draw_holder(pen, false);
    }
    if (cell_) {
        pen.disc(shape_.flap ? shape_.disc_at_mm[0] : card_.holder.at_mm, 8.5, {}, kDone);
    }
}

void StepPictures::draw_place(PagePen& pen, Vec2 at_mm) const {
    pen.disc(at_mm, 2.0 * unit_, Stroke{0.4 * unit_, kBlack, {}}, {});
    pen.disc(at_mm, 0.55 * unit_, {}, kBlack);
}

void StepPictures::draw_distances(PagePen& pen, Vec2 at_mm) const {
    const auto distance_line = [&](Vec2 from, Vec2 label, double mm) {
        draw_arrow(pen, from, at_mm, 0.25 * unit_, kBlack);
        // Bare millimetres; inches need their sign.
        const bool inches = words_.unit() == LengthUnit::inch;
        const std::string text = inches ? words_.mm(mm) : words_.number(mm, 1);
        const Vec2 size{(0.9 + 1.25 * static_cast<double>(text.size())) * unit_, 2.6 * unit_};
        pen.box(label - size * 0.5, size, {}, kWhite);
        pen.text(label + Vec2{0, 0.9 * unit_}, text, 2.6 * unit_, true, TextAlign::centre);
    };
    distance_line({0, at_mm.y}, {at_mm.x * 0.5, at_mm.y}, at_mm.x);
    distance_line({at_mm.x, 0}, {at_mm.x, at_mm.y * 0.5}, at_mm.y);
}

void StepPictures::draw_fold(PagePen& pen, const Move& move) const {
    const Vec2 at = move.path_mm.front();
    const Vec2 out = turned(heading_, move.turn_deg);
    const double arm = 6.0 * unit_;
    pen.line(at - heading_ * arm, at, {0.9 * unit_, kBlack, {}});
    pen.disc(at, 0.45 * unit_, {}, kBlack);
    draw_arrow(pen, at, at + out * arm, 0.9 * unit_, kBlack);
}

void StepPictures::draw_lights(PagePen& pen, const Move& move) const {
    std::vector<std::string> lit;
    if (move.check) {
        for (const LightExpectation& light : move.check->lights) {
            if (light.state != "dark") {
                lit.push_back(light.led);
            }
        }
    }
    for (const Led& led : card_.leds) {
        if (!lit.empty() && !holds(lit, led.id)) {
            continue;
        }
        pen.disc(led.at_mm, 2.0 * unit_, {}, kWhite);
        pen.disc(led.at_mm, 0.75 * unit_, Stroke{0.25 * unit_, kBlack, {}}, kWhite);
        for (int ray = 0; ray < 8; ++ray) {
            const Vec2 out = direction(45.0 * ray);
            pen.line(led.at_mm + out * (1.15 * unit_), led.at_mm + out * (1.8 * unit_),
                     {0.22 * unit_, kBlack, {}});
        }
    }
}

void StepPictures::draw_move(PagePen& pen, const Move& move) const {
    const bool has_place = !move.path_mm.empty();
    const Vec2 place = has_place ? move.path_mm.front() : Vec2{};
    switch (move.kind) {
    case MoveKind::measure:
        draw_holder(pen, true);
        draw_distances(pen, place);
        return;
    case MoveKind::peel:
    case MoveKind::press:
        draw_holder(pen, true);
        return;
    case MoveKind::flap_way:
        draw_holder(pen, true);
        if (shape_.flap) {
            draw_arrow(pen, shape_.disc_at_mm[0], shape_.disc_at_mm[1], 0.6 * unit_, kBlack);
        }
        return;
    case MoveKind::mark_pad:
        draw_part(pen, move.parts.empty() ? "" : move.parts.front(), true);
        if (has_place) {
            draw_distances(pen, place);
        }
        return;
    case MoveKind::run:
    case MoveKind::carry_across:
    case MoveKind::leave_tail:
        for (std::size_t i = 1; i < move.path_mm.size(); ++i) {
            const bool last = i + 1 == move.path_mm.size();
            if (last && move.kind != MoveKind::leave_tail) {
                draw_arrow(pen, move.path_mm[i - 1], move.path_mm[i], 1.1 * unit_, kBlack);
            } else {
                pen.line(move.path_mm[i - 1], move.path_mm[i],
                         {1.1 * unit_, kBlack, std::vector<double>{1.0 * unit_, 0.7 * unit_}});
            }
        }
        if (move.path_mm.size() == 1) {
            draw_place(pen, place);
        }
        return;
    case MoveKind::fold:
        if (has_place) {
            draw_fold(pen, move);
        }
        return;
    case MoveKind::cut: {
        const Vec2 across = quarter_turn(heading_) * (2.6 * unit_);
        pen.line(place - across, place + across, {0.7 * unit_, kBlack, {}});
        draw_place(pen, place);
        return;
    }
    case MoveKind::patch:
        for (const PatchShape& patch : conductors_.patches) {
            if (holds(move.parts, id_of(card_.laid[static_cast<std::size_t>(patch.laid_index)]))) {
                const std::span<const Vec2> corners = patch.outline.corners();
                pen.convex(patch.outline, Stroke{0.4 * unit_, kBlack, {}}, kWhite);
                draw_hatch(pen, {corners.begin(), corners.end()}, 0.8 * unit_, {0.15 * unit_, kBlack, {}});
            }
        }
        return;
    case MoveKind::place_led:
    case MoveKind::place_resistor:
        draw_part(pen, move.parts.empty() ? "" : move.parts.front(), true);
        return;
    case MoveKind::adult_notice:
        draw_warning_triangle(pen, {card_.sheet.width_mm / 2.0, card_.sheet.height_mm / 2.0 + 7.0 * unit_},
                              14.0 * unit_);
        return;
    case MoveKind::cell_in: {
        const Vec2 at = shape_.flap ? shape_.disc_at_mm[0] : card_.holder.at_mm;
        pen.disc(at, 9.0, Stroke{0.5 * unit_, kBlack, {}}, kDone);
        draw_sign(pen, at, card_.cell.face_down == CellFace::negative ? '+' : '-', 1.2 * unit_, 0.4 * unit_);
        return;
    }
    case MoveKind::light_test:
        draw_lights(pen, move);
        return;
    case MoveKind::foam:
        if (move.path_mm.size() == 2) {
            pen.shape(band(move.path_mm[0], move.path_mm[1], kFoamBand_mm), Stroke{0.4 * unit_, kBlack, {}},
                      grey(0.6));
        }
        return;
    case MoveKind::start_strip:
    case MoveKind::joint:
    case MoveKind::close:
    case MoveKind::label:
        if (has_place) {
            draw_place(pen, place);
        }
        return;
    }
}

void StepPictures::take_in(const Move& move) {
    const Strip* strip = strip_of_move(move);
    switch (move.kind) {
    case MoveKind::measure:
    case MoveKind::press:
        holder_ = true;
        break;
    case MoveKind::mark_pad:
        marks_ = true;
        break;
    case MoveKind::run:
    case MoveKind::carry_across:
        if (strip != nullptr) {
            const auto tape = parts_.tapes.find(strip->tape);
            const double width = tape == parts_.tapes.end() ? 5.0 : tape->second.width_mm;
            for (std::size_t i = 1; i < move.path_mm.size(); ++i) {
                tapes_.push_back({move.path_mm[i - 1], move.path_mm[i], width, strip->side});
                heading_ = unit(move.path_mm[i] - move.path_mm[i - 1]);
            }
        }
        break;
    case MoveKind::fold:
        if (!tapes_.empty()) { // half a width on, so that the corner is filled
            tapes_.back().to_mm = tapes_.back().to_mm + heading_ * (tapes_.back().width_mm / 2.0);
        }
        heading_ = turned(heading_, move.turn_deg);
        break;
    case MoveKind::patch:
        patches_.insert(patches_.end(), move.parts.begin(), move.parts.end());
        break;
    case MoveKind::place_led:
    case MoveKind::place_resistor:
        if (!move.parts.empty()) {
            placed_.push_back(move.parts.front());
        }
        break;
    case MoveKind::cell_in:
        cell_ = true;
        break;
    case MoveKind::foam:
        if (move.path_mm.size() == 2) {
            foam_.push_back({move.path_mm[0], move.path_mm[1], kFoamBand_mm, Side::link});
        }
        break;
    default:
        break;
    }
}

std::vector<PageMark> StepPictures::draw(const Move& move, Vec2 size_mm) {
    const double scale = std::min(size_mm.x / card_.sheet.width_mm, size_mm.y / card_.sheet.height_mm);
    unit_ = 1.0 / scale;
    std::vector<PageMark> drawing;
    PagePen pen(drawing);
    draw_so_far(pen);
    draw_move(pen, move);
    take_in(move);
    std::vector<PageMark> marks;
    place(drawing, {{0, 0}, scale, false}, marks);
    return marks;
}

} // namespace lanternleaf
