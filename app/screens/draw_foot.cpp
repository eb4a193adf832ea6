// Under the plan: the layers, how bright each light will be, and what can be done with the selected thing.
#include "base/readout.h"
#include "circuit/seen.h"
#include "controls/bars.h"
#include "controls/button.h"
#include "controls/chip.h"
#include "controls/panel.h"
#include "model/draw_hit.h"
#include "screens/draw.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace lanternleaf {

namespace {

struct Choice {
    const char* name;
    const char* label;
    Icon icon;
    Command command;
};

std::string spaced(std::string words) {
    std::replace(words.begin(), words.end(), '-', ' ');
    return words;
}

Command drawn(DrawCommand what) {
    return command::Draw{std::move(what)};
}

const ResistorPart* resistor_in(const Card& card, const std::string& id) {
    for (const ResistorPart& resistor : card.resistors) {
        if (resistor.id == id) {
            return &resistor;
        }
    }
    return nullptr;
}

/// A strip of the same side and tape whose end lies near an end of this one.
const Strip* partner_of(const Card& card, const Strip& strip) {
    constexpr double kNear_mm = 6.0;
    for (const Laid& laid : card.laid) {
        const Strip* other = std::get_if<Strip>(&laid);
        if (other == nullptr || other->id == strip.id || other->side != strip.side ||
            other->tape != strip.tape) {
            continue;
        }
        for (const Vec2 a : {strip.path_mm.front(), strip.path_mm.back()}) {
            for (const Vec2 b : {other->path_mm.front(), other->path_mm.back()}) {
                if (distance(a, b) <= kNear_mm) {
                    return other;
                }
            }
        }
    }
    return nullptr;
}

/// The corner that a new one at the tapped place comes before.
int corner_after(const Strip& strip, Vec2 at) {
    int best = 1;
    double least = 1e300;
    for (std::size_t i = 1; i < strip.path_mm.size(); ++i) {
        const double far = distance_to_segment(at, strip.path_mm[i - 1], strip.path_mm[i]);
        if (far < least) {
            least = far;
            best = static_cast<int>(i);
        }
    }
    return best;
}

struct Selection {
    std::string title;
    std::string words;
    std::vector<Choice> choices;
};

Selection of_strip(const DrawState& draw, const Strip& strip) {
    Selection out;
    const Ribbon ribbon = make_ribbon(strip.path_mm, 1.0);
    const std::size_t folds = ribbon.folds_mm.size();
    out.title = strip.id + ", " +
                (strip.side == Side::positive   ? "+ strip"
                 : strip.side == Side::negative ? "− strip"
                                                : "link");
    out.words = readout_mm(ribbon.length_mm) + " of " + spaced(strip.tape) + ", " + std::to_string(folds) +
                (folds == 1 ? " fold" : " folds");
    const bool inner = draw.corner > 0 && draw.corner + 1 < static_cast<int>(strip.path_mm.size());
    if (inner) {
        out.words = "Corner " + std::to_string(draw.corner) + " of " + std::to_string(folds);
        out.choices.push_back(
            {"draw/do/remove", "Take corner out", Icon::Trash, drawn(draw::RemoveSelected{})});
        return out;
    }
    const Vec2 at = snap_to_grid(draw.selected_at_mm);
    out.choices.push_back(
        {"draw/do/corner", "Corner", Icon::Plus,
         drawn(draw::Do{{edit::InsertCorner{strip.id, corner_after(strip, draw.selected_at_mm), at}}})});
    out.choices.push_back({"draw/do/cut", "Cut", Icon::Cross,
                           drawn(draw::Do{{edit::SplitStrip{strip.id, draw.selected_at_mm}}})});
    if (const Strip* other = partner_of(draw.card, strip)) {
        out.choices.push_back(
            {"draw/do/join", "Join", Icon::Strip, drawn(draw::Do{{edit::JoinStrips{strip.id, other->id}}})});
    }
    out.choices.push_back({"draw/do/tape", "Tape", Icon::Ruler, command::OpenSheet{SheetKind::draw_tape}});
    out.choices.push_back({"draw/do/remove", "Remove", Icon::Trash, drawn(draw::RemoveSelected{})});
    return out;
}

Selection of_foam(const DrawState& draw) {
    Selection out;
    const Foam foam = draw.card.foam.value_or(Foam{1.5, 0, {}, {}});
    out.title = foam.layers == 0
                    ? "No foam"
                    : std::to_string(foam.layers) + " × " + readout_mm(foam.thickness_mm) + " of foam";
    out.words = "Tap an edge of the sheet to pad it or leave it bare";
    const auto with = [&](double thickness_mm, int layers) {
        Foam next = foam;
        next.thickness_mm = thickness_mm;
        next.layers = std::clamp(layers, 1, 20);
        if (next.edges.empty()) {
            next.edges = {Edge::top, Edge::right, Edge::bottom, Edge::left};
        }
        return drawn(draw::Do{{edit::SetFoam{next}}});
    };
    constexpr std::array<double, 4> kSold_mm{1.0, 1.5, 2.0, 3.0}; // common craft foam and foam tape
    const auto next = std::upper_bound(kSold_mm.begin(), kSold_mm.end(), foam.thickness_mm + 1e-9);
    out.choices.push_back({"draw/do/fewer", "Fewer", Icon::Minus, with(foam.thickness_mm, foam.layers - 1)});
    out.choices.push_back({"draw/do/more", "More", Icon::Plus, with(foam.thickness_mm, foam.layers + 1)});
    out.choices.push_back({"draw/do/thickness", "Thickness", Icon::Ruler,
                           with(next == kSold_mm.end() ? kSold_mm.front() : *next, foam.layers)});
    return out;
}

Selection selection_of(const DrawState& draw) {
    Selection out;
    const std::string& id = draw.selected;
    const Choice turn{"draw/do/turn", "Turn", Icon::Repeat, drawn(draw::TurnSelected{90.0})};
    const Choice lean{"draw/do/lean", "15°", Icon::Redo, drawn(draw::TurnSelected{15.0})};
    const Choice copy{"draw/do/copy", "Copy", Icon::Layers, drawn(draw::CopySelected{})};
    const Choice remove{"draw/do/remove", "Remove", Icon::Trash, drawn(draw::RemoveSelected{})};
    if (const Strip* strip = find_strip(draw.card, id)) {
        return of_strip(draw, *strip);
    }
    if (id == "foam") {
        return of_foam(draw);
    }
    if (const Led* led = find_led(draw.card, id)) {
        out.title = id + ", " + spaced(draw.parts.leds.at(led->type).colour);
        out.words = "at " + readout_mm(led->at_mm.x) + " × " + readout_mm(led->at_mm.y);
        out.choices = {turn,
                       lean,
                       {"draw/do/kind", "Kind", Icon::Bulb, command::OpenSheet{SheetKind::draw_light}},
                       copy,
                       remove};
    } else if (const ResistorPart* resistor = resistor_in(draw.card, id)) {
        out.title = id + ", " + readout_ohm(resistor->ohm);
        out.words = "at " + readout_mm(resistor->at_mm.x) + " × " + readout_mm(resistor->at_mm.y);
        const auto ohm = [&](double next) { return drawn(draw::Do{{edit::SetOhm{id, next}}}); };
        // The E12 series (IEC 60063), up and down from the value at hand.
        constexpr std::array<double, 12> kE12{1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2};
        const double decade = std::pow(10.0, std::floor(std::log10(resistor->ohm) + 1e-9));
        const double base = resistor->ohm / decade;
        double less = kE12.back() * decade / 10.0;
        double more = decade * 10.0;
        for (const double value : kE12) {
            less = value < base - 1e-6 ? value * decade : less;
        }
        for (std::size_t i = kE12.size(); i-- > 0;) {
            more = kE12[i] > base + 1e-6 ? kE12[i] * decade : more;
        }
        out.choices = {{"draw/do/less", "Less", Icon::Minus, ohm(less)},
                       {"draw/do/more", "More", Icon::Plus, ohm(more)},
                       turn,
                       copy,
                       remove};
    } else if (id == kHolderId) {
        out.title = "Holder, " + spaced(draw.card.holder.type);
        out.words =
            "at " + readout_mm(draw.card.holder.at_mm.x) + " × " + readout_mm(draw.card.holder.at_mm.y);
        auto next = std::next(draw.parts.holders.find(draw.card.holder.type));
        if (next == draw.parts.holders.end()) {
            next = draw.parts.holders.begin();
        }
        out.choices = {
            turn,
            {"draw/do/kind", "Other kind", Icon::Holder, drawn(draw::Do{{edit::SetHolder{next->first}}})}};
    } else if (!id.empty()) {
        out.title = id + ", patch";
        out.words = "insulates what lies over it from what lies under it";
        out.choices = {turn, lean, copy, remove};
    }
    return out;
}

void draw_choices(Screen& screen, Rect row, const std::vector<Choice>& choices) {
    Ui& ui = screen.ui;
    float wide = 0;
    for (const Choice& choice : choices) {
        wide += button_width(ui, {.label = choice.label, .icon = choice.icon}) + 8;
    }
    const bool words = wide - 8 <= row.w;
    for (const Choice& choice : choices) {
        const ButtonLook look{.label = choice.label, .icon = choice.icon, .spoken = choice.label};
        bool hit = false;
        if (words) {
            hit = button(ui, choice.name, row.cut_left(button_width(ui, look)), look);
        } else {
            // Words are dearer than icons: keep them as long as two lines can hold them.
            const float each = (row.w - 8) / static_cast<float>(choices.size());
            hit = each > 96 ? button(ui, choice.name, row.cut_left(std::min(each - 8, row.w)),
                                     {.label = choice.label, .spoken = choice.label})
                            : icon_button(ui, choice.name, row.cut_left(ui.m.target), look);
        }
        row.cut_left(8);
        if (hit) {
            screen.say(choice.command);
        }
    }
}

void draw_laying_row(Screen& screen, const Rect& area, bool brief) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    Rect inside = area.shrunk(brief ? 4.0f : 16.0f, 0);
    const ButtonLook done{.label = "Done", .icon = Icon::Tick, .bold = true};
    const Rect slot = inside.cut_right(primary_width(ui, done));
    const float h = std::min(area.h - 4, ui.m.primary_h);
    if (primary_button(ui, "draw/done", around(slot.centre(), slot.w, h), done)) {
        act(screen, draw::FinishStrip{});
    }
    inside.cut_right(12);
    const TextStyle body = ui.m.type(Type::Body);
    const bool plus = draw.tool == DrawTool::strip_plus;
    const std::string title =
        std::string(plus ? "+" : "−") + " strip" + (draw.laying.strip.empty() ? "" : " " + draw.laying.strip);
    const std::string words = draw.laying.start
                                  ? "Tap where it turns or ends."
                                  : "Tap its next corner, or its end once more when it is done.";
    if (brief) {
        ui.pen().text_in({inside.x, inside.y, inside.w, inside.h},
                         ui.fonts().fitted(title + ": " + words, ui.m.type(Type::Small), inside.w),
                         ui.m.type(Type::Small), ui.theme().ink, Align::Left);
        return;
    }
    const float text_h = body.lead + ui.fonts().wrapped_height(words, body, inside.w);
    const float y = inside.centre().y - text_h / 2;
    ui.pen().text({inside.x, y}, title, body.bold(), ui.theme().ink);
    ui.pen().paragraph({inside.x, y + body.lead}, inside.w, words, body, ui.theme().ink);
}

} // namespace

void draw_layer_chips(Screen& screen, const Rect& row) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    BoardCamera camera = screen.state.camera;
    constexpr float kGap = 6;
    const std::array<const char*, 5> labels{"Picture", "Negative", "Positive", "Lights", "Notes"};
    float wanted = kGap * 4;
    for (const char* label : labels) {
        wanted += chip_width(ui, label);
    }
    const float spare = (row.w - wanted) / 5.0f;
    float x = row.x;
    const auto one = [&](const char* name, const char* label, bool on) {
        const float w = chip_width(ui, label) + std::min(spare, 16.0f);
        const Rect r{x, row.y, w, row.h};
        x += w + kGap;
        return chip(ui, name, r, label, on);
    };
    bool changed = false;
    const auto flip = [&](bool& value, bool hit) {
        value = hit ? !value : value;
        changed = changed || hit;
    };
    flip(camera.picture, one("draw/layer/picture", labels[0], camera.picture));
    flip(camera.negative, one("draw/layer/negative", labels[1], camera.negative));
    flip(camera.positive, one("draw/layer/positive", labels[2], camera.positive));
    if (changed) {
        screen.say(command::MoveCamera{camera});
    }
    bool lights = draw.lights;
    bool notes = draw.notes;
    changed = false;
    flip(lights, one("draw/layer/lights", labels[3], lights));
    flip(notes, one("draw/layer/notes", labels[4], notes));
    if (changed) {
        act(screen, draw::ShowLayers{lights, notes});
    }
}

bool draw_selection(Screen& screen, const Rect& area, bool brief) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    const bool laying = draw.laying.under_way();
    if (!laying && draw.selected.empty()) {
        return false;
    }
    if (!brief) {
        panel(ui, area);
    }
    if (laying) {
        draw_laying_row(screen, area, brief);
        return true;
    }
    const Selection selection = selection_of(draw);
    if (brief) {
        Rect row = area;
        const TextStyle body = ui.m.type(Type::Body).bold();
        const float w = std::min(ui.fonts().width(selection.title, body) + 16, area.w * 0.32f);
        ui.pen().text_in(row.cut_left(w), ui.fonts().fitted(selection.title, body, w - 8), body,
                         ui.theme().ink, Align::Left);
        row.y += 2;
        row.h = ui.m.target;
        draw_choices(screen, row, selection.choices);
        return true;
    }
    Rect inside = area.shrunk(16, 11);
    const TextStyle body = ui.m.type(Type::Body);
    const Rect head = inside.cut_top(body.lead + 4);
    const float used = ui.pen().text_in(head, selection.title, body.bold(), ui.theme().ink, Align::Left);
    const TextStyle small = ui.m.type(Type::Small);
    const float room = head.w - used - 16;
    ui.pen().text_in({head.x + used + 14, head.y, room, head.h},
                     ui.fonts().fitted(selection.words, small, room), small, ui.theme().ink2, Align::Left);
    inside.cut_top(8);
    draw_choices(screen, {inside.x, inside.y, inside.w, ui.m.target}, selection.choices);
    return true;
}

void draw_brightness(Screen& screen, const Rect& area) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    panel(ui, area);
    Rect inside = area.shrunk(16, 12);
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const std::vector<Light>& lights = draw.review.lighting.lights;
    if (lights.empty()) {
        const float text_h = 2 * body.lead;
        ui.pen().text({inside.x, inside.centre().y - text_h / 2}, "No lights yet", body.bold(),
                      ui.theme().ink);
        ui.pen().text({inside.x, inside.centre().y},
                      ui.fonts().fitted("Choose Light, then tap where it should glow.", body, inside.w), body,
                      ui.theme().ink);
        return;
    }
    const float head_w =
        std::max(ui.fonts().width("Brightness", body.bold()), ui.fonts().width("predicted,", body)) + 12;
    Rect head = inside.cut_left(head_w);
    const float y = head.centre().y - (body.lead + 2 * small.lead) / 2;
    ui.pen().text({head.x, y}, "Brightness", body.bold(), ui.theme().ink);
    ui.pen().text({head.x, y + body.lead}, "predicted,", small, ui.theme().ink);
    ui.pen().text({head.x, y + body.lead + small.lead}, "fresh cell", small, ui.theme().ink);

    int on = 0;
    for (const Light& light : lights) {
        on += light.state != LightState::dark ? 1 : 0;
    }
    const std::string count = std::to_string(on) + (on == 1 ? " light on" : " lights on");
    const TextStyle figure = ui.m.type(Type::Figure);
    const std::string current = readout_mA(draw.review.lighting.cell_mA);
    const float figure_w = std::max(ui.fonts().width(current, figure), ui.fonts().width(count, small)) + 24;
    const Rect right = inside.cut_right(std::min(figure_w, inside.w * 0.4f));
    divider(ui, {right.x, right.y + 4}, {right.x, right.bottom() - 4});
    const float top = right.centre().y - (figure.lead + 2 * small.lead) / 2;
    const float middle = right.x + 12 + (right.w - 12) / 2;
    ui.pen().text({middle, top}, current, figure, ui.theme().ink, Align::Centre);
    ui.pen().text({middle, top + figure.lead}, "when pressed,", small, ui.theme().ink, Align::Centre);
    ui.pen().text({middle, top + figure.lead + small.lead}, count, small, ui.theme().ink, Align::Centre);

    inside.cut_right(10);
    const float pitch = std::min(40.0f, inside.w / static_cast<float>(lights.size()));
    const bool named = pitch >= 30;
    const float bar_w = std::min(26.0f, pitch - 3);
    float x = inside.x + std::max(0.0f, (inside.w - pitch * static_cast<float>(lights.size())) / 2);
    for (const Light& light : lights) {
        const Led& led = draw.card.leds[static_cast<std::size_t>(light.led)];
        const bool green = draw.parts.leds.at(led.type).colour == "green";
        const Rect bar{x + (pitch - bar_w) / 2, inside.y, bar_w, inside.h - (named ? small.lead : 0)};
        brightness_bar(ui, bar, static_cast<float>(std::clamp(seen_brightness(light.brightness), 0.0, 1.0)),
                       green);
        if (named) {
            ui.pen().text({x + pitch / 2, inside.bottom() - small.lead}, led.id, small.bold(), ui.theme().ink,
                          Align::Centre);
        }
        x += pitch;
    }
}

} // namespace lanternleaf
