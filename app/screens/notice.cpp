// The coin-cell notice: full screen, before the cell goes in (an adult holds to confirm) and whenever the
// chip is tapped (to read, with the emergency words and numbers first). Never hidden by a setting.
#include "controls/button.h"
#include "controls/hold_button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/make.h"
#include "screens/screen.h"

#include <algorithm>

namespace lanternleaf {

namespace {

struct Line {
    Icon icon;
    const char* key;
};

constexpr Line kCautions[] = {{Icon::People, "notice.adult"},
                              {Icon::Lock, "notice.locked"},
                              {Icon::Holder, "notice.flap"},
                              {Icon::Mouth, "notice.under_three"},
                              {Icon::Eye, "notice.count"}};

// The picture of the cell about to go in, to scale with nothing but itself, and the spares locked up.
void draw_cell_picture(Ui& ui, const Rect& r, const std::string& across) {
    Pen& pen = ui.pen();
    const Theme& t = ui.theme();
    pen.fill(r, t.sheet, ui.m.radius);
    pen.outline(r, t.line, 1, ui.m.radius);
    const TextStyle body = ui.m.type(Type::Body);
    pen.text({r.x + 24, r.y + 16}, ui.words("notice.cell_to_come"), body.bold(), t.ink);
    const Point c{r.x + r.w * 0.32f, r.y + r.h * 0.55f};
    const float rx = std::min(80.0f, r.w * 0.21f);
    const float ry = rx * 0.34f;
    const auto oval = [&](float dy, float k, Colour colour, bool fill) {
        std::vector<Point> points;
        for (int i = 0; i < 48; ++i) {
            const float a = 2 * kPi * static_cast<float>(i) / 48;
            points.push_back({c.x + k * rx * std::cos(a), c.y + dy + k * ry * std::sin(a)});
        }
        if (fill) {
            pen.fill_convex(points, colour);
        } else {
            pen.stroke(points, colour, 2.5f, true);
        }
    };
    const float height = rx * 0.26f;
    oval(height, 1.0f, t.ag_lo, true);
    oval(height, 1.0f, t.ink, false);
    pen.fill({c.x - rx, c.y, 2 * rx, height}, t.ag_lo, 0);
    pen.line({c.x - rx, c.y}, {c.x - rx, c.y + height}, t.ink, 2.5f);
    pen.line({c.x + rx, c.y}, {c.x + rx, c.y + height}, t.ink, 2.5f);
    oval(0, 1.0f, t.ag_hi, true);
    oval(0, 1.0f, t.ink, false);
    oval(0, 0.82f, t.ag_lo, false);
    pen.line({c.x - 13, c.y}, {c.x + 13, c.y}, rgb(0x22272B), 4);
    pen.line({c.x, c.y - 9}, {c.x, c.y + 9}, rgb(0x22272B), 4);
    const float foot = c.y + height + ry + 18;
    pen.line({c.x - rx, foot}, {c.x + rx, foot}, t.ink2, 2);
    pen.line({c.x - rx, foot - 6}, {c.x - rx, foot + 6}, t.ink2, 2);
    pen.line({c.x + rx, foot - 6}, {c.x + rx, foot + 6}, t.ink2, 2);
    pen.text({c.x, foot + 10}, ui.words("notice.across", {{"length", across}}), body, t.ink, Align::Centre);
    // Spares: the pack with its lock.
    const Rect pack = around({r.x + r.w * 0.79f, r.y + r.h * 0.5f}, std::min(94.0f, r.w * 0.25f),
                             std::min(142.0f, r.h * 0.5f));
    pen.fill(pack, t.panel, 6);
    pen.fill({pack.x, pack.y, pack.w, pack.h * 0.26f}, t.plum_tint, 6, kCornersTop);
    pen.outline(pack, t.ink, 3, 6);
    pen.line({pack.x, pack.y + pack.h * 0.26f}, {pack.right(), pack.y + pack.h * 0.26f}, t.ink, 2.5f);
    draw_icon(pen, Icon::Lock, {pack.centre().x, pack.y + pack.h * 0.13f}, 24, t.plum);
    for (int i = 0; i < 4; ++i) {
        const Point at{pack.x + pack.w * (i % 2 == 0 ? 0.28f : 0.72f),
                       pack.y + pack.h * (i < 2 ? 0.45f : 0.76f)};
        pen.disc(at, pack.w * 0.16f, t.ag_hi);
        pen.ring(at, pack.w * 0.16f, t.ink, 2);
    }
    const std::string spares = ui.words("notice.spares");
    const float half = ui.fonts().width(spares, body) / 2;
    pen.text({std::min(pack.centre().x, r.right() - 14 - half), foot + 10}, spares, body, t.ink,
             Align::Centre);
}

float draw_section(Ui& ui, const Rect& r, float y, const std::string& head, const std::string& words) {
    const TextStyle body = ui.m.type(Type::Body);
    const float top = y;
    y += ui.pen().paragraph({r.x, y}, r.w, head, ui.m.type(Type::H2), ui.theme().ink) + 4;
    y += ui.pen().paragraph({r.x, y}, r.w, words, body, ui.theme().ink) + 16;
    return y - top;
}

// Who to call, by region, with the date of the last check. The region is changed by tapping through the list.
float draw_region(Screen& screen, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const float top = y;
    const RegionTable& table = screen.state.regions;
    const Region region = told(region_of(table, screen.state.settings.region), ui.words);
    const TextStyle body = ui.m.type(Type::Body);
    std::string numbers;
    if (!region.ambulance.empty()) {
        numbers = ui.words("notice.ambulance", {{"number", region.ambulance}});
    }
    if (!region.help.empty()) {
        numbers += (numbers.empty() ? "" : "   ") + region.help_name + " **" + region.help + "**";
    }
    y += ui.pen().paragraph({r.x, y}, r.w, region.first, body.bold(), ui.theme().ink) + 4;
    if (!numbers.empty()) {
        y += ui.pen().paragraph({r.x, y}, r.w, numbers, ui.m.type(Type::H2).regular(), ui.theme().plum) + 4;
    }
    y += ui.pen().paragraph({r.x, y}, r.w, region.food, body, ui.theme().ink) + 10;
    std::size_t index = 0;
    for (std::size_t i = 0; i < table.regions.size(); ++i) {
        index = table.regions[i].id == region.id ? i : index;
    }
    const ButtonLook look{.label = ui.words("notice.region", {{"region", region.name}}),
                          .icon = Icon::Repeat};
    if (button(ui, "notice/region", {r.x, y, std::min(r.w, button_width(ui, look)), ui.m.button_h}, look)) {
        Settings settings = screen.state.settings;
        settings.region = table.regions[(index + 1) % table.regions.size()].id;
        screen.say(command::ChangeSettings{settings});
    }
    y += ui.m.button_h + 8;
    const std::string how = checked_how(table, ui.words);
    const std::string checked =
        table.checked.empty()
            ? how
            : ui.words("notice.checked", {{"date", spoken_date(table.checked, ui.words)}, {"how", how}});
    y += ui.pen().paragraph({r.x, y}, r.w, checked, ui.m.type(Type::Small), ui.theme().ink2) + 12;
    return y - top;
}

// The plum box: what to do when it may have happened. First on the sheet when it is read, since someone may
// be in a hurry.
float draw_emergency(Screen& screen, const Rect& r, float y, bool with_region) {
    Ui& ui = screen.ui;
    const TextStyle h2 = ui.m.type(Type::H2);
    const TextStyle body = ui.m.type(Type::Body);
    const std::string head = ui.words("notice.emergency");
    const std::string words = ui.words("notice.meanwhile");
    const float indent = ui.m.phone() ? 16.0f : 80.0f;
    const float width = r.w - indent - 20;
    const float height =
        ui.fonts().wrapped_height(head, h2, width) + ui.fonts().wrapped_height(words, body, width) + 40;
    const Rect box{r.x, y, r.w, height};
    ui.pen().fill(box, ui.theme().plum_tint, ui.m.radius_small);
    ui.pen().outline(box, ui.theme().plum, 2, ui.m.radius_small);
    if (!ui.m.phone()) {
        draw_icon(ui.pen(), Icon::Phone, {box.x + 42, box.y + 40}, 46, ui.theme().plum);
    }
    float at = box.y + 18;
    at += ui.pen().paragraph({box.x + indent, at}, width, head, h2, ui.theme().ink) + 4;
    ui.pen().paragraph({box.x + indent, at}, width, words, body, ui.theme().ink);
    float used = height + 14;
    if (with_region) {
        used += draw_region(screen, r, y + used);
    }
    return used;
}

float draw_words(Screen& screen, const Rect& r, float y, bool reading) {
    Ui& ui = screen.ui;
    const float top = y;
    const TextStyle body = ui.m.type(Type::Body);
    const std::string harm = ui.words("notice.harm");
    if (reading) {
        y += draw_emergency(screen, r, y, true);
    }
    y +=
        ui.pen().paragraph({r.x, y}, r.w, ui.words("notice.head"), ui.m.type(Type::Hero), ui.theme().ink) + 6;
    y += ui.pen().paragraph({r.x, y}, r.w, harm, body, ui.theme().ink) + 16;
    if (!reading) {
        y += draw_emergency(screen, r, y, false) + 6;
    }
    for (const Line& line : kCautions) {
        const std::string words = ui.words(line.key);
        const float height = ui.fonts().wrapped_height(words, body, r.w - 50);
        draw_icon(ui.pen(), line.icon, {r.x + 17, y + body.lead / 2 + 1}, 30, ui.theme().plum);
        ui.pen().paragraph({r.x + 50, y}, r.w - 50, words, body, ui.theme().ink);
        y += height + 12;
    }
    return y - top;
}

float draw_aside(Screen& screen, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const float top = y;
    y += draw_section(ui, r, y, ui.words("notice.building"), ui.words("notice.building_words"));
    y += draw_section(ui, r, y, ui.words("notice.flat"), ui.words("notice.flat_words"));
    y += draw_section(ui, r, y, ui.words("notice.warm"), ui.words("notice.warm_words"));
    return y - top;
}

std::string cell_across(const AppState& state, const Words& words) {
    if (state.build) {
        const auto cell = state.build->parts.cells.find(state.build->record.as_built.cell.type);
        if (cell != state.build->parts.cells.end()) {
            return words.mm(std::round(cell->second.diameter_mm));
        }
    }
    return words.mm(20);
}

void draw_notice_bar(Screen& screen, const Regions& regions) {
    Ui& ui = screen.ui;
    bar(ui, regions.top, true);
    Rect inside = regions.content(regions.top).shrunk(ui.m.page_margin, 0);
    draw_mark(ui.pen(), {inside.x + 20, inside.centre().y}, 40, ui.theme());
    const bool asking = screen.state.notice == Notice::asking;
    const TextStyle body = ui.m.type(Type::Body);
    const float used = ui.pen().text_in({inside.x + 52, inside.y, inside.w - 52, inside.h},
                                        asking ? ui.words("notice.before") : ui.words("top.safety"),
                                        body.bold(), ui.theme().ink, Align::Left);
    if (screen.state.build) {
        const std::string build =
            ui.words("notice.build", {{"title", screen.state.build->record.title},
                                      {"number", std::to_string(screen.state.build->shelf.number)}});
        const float room = inside.w - 52 - used - 24;
        if (room > 120) {
            ui.pen().text_in({inside.right() - room, inside.y, room, inside.h},
                             ui.fonts().fitted(build, body, room), body, ui.theme().ink2, Align::Right);
        }
    }
}

} // namespace

void draw_notice(Screen& screen) {
    Ui& ui = screen.ui;
    const bool asking = screen.state.notice == Notice::asking;
    const float actions = ui.m.phone() ? 176.0f : 112.0f;
    const Regions regions =
        make_regions(ui.m, {.actions_h = actions * std::max(1.0f, ui.m.text_scale * 0.8f)});
    const Rect page = regions.page;
    const bool wide = ui.m.form == Form::Landscape;
    Rect main_rect = page.shrunk(ui.m.phone() ? 10.0f : 28.0f, 20);
    Rect aside;
    if (wide) {
        aside = main_rect.cut_left(380);
        main_rect.cut_left(28);
    }
    if (wide) {
        Scroll scroll(ui, "notice/aside", {aside.x - 4, page.y, aside.w + 8, page.h}, ui.theme().table);
        float y = scroll.top() + 20;
        draw_cell_picture(ui, {aside.x, y, aside.w, 282}, cell_across(screen.state, ui.words));
        y += 282 + 22;
        y += draw_aside(screen, aside, y);
        scroll.done(y - scroll.top());
    }
    panel(ui, main_rect);
    ui.pen().fill({main_rect.x, main_rect.y, main_rect.w, 9}, ui.theme().plum, ui.m.radius, kCornersTop);
    {
        Scroll scroll(ui, "notice", {main_rect.x, main_rect.y + 10, main_rect.w, main_rect.h - 12});
        const Rect r = Rect{main_rect.x, 0, main_rect.w, 0}.shrunk(ui.m.phone() ? 16.0f : 28.0f, 0);
        float y = scroll.top() + 20;
        y += draw_words(screen, {r.x, y, main_rect.w - 2 * (r.x - main_rect.x), 0}, y, !asking);
        if (!wide) {
            y += draw_aside(screen, {r.x, y, main_rect.w - 2 * (r.x - main_rect.x), 0}, y);
        }
        scroll.done(y + 8 - scroll.top());
    }
    draw_notice_bar(screen, regions);
    bar(ui, regions.actions, false);
    Rect foot = regions.content(regions.actions).shrunk(ui.m.phone() ? 8.0f : ui.m.page_margin, 0);
    const ButtonLook back{.label = asking ? ui.words("notice.not_now") : ui.words("notice.back"),
                          .icon = Icon::Back};
    const HoldLook hold{.label = ui.words("notice.i_have_read"),
                        .idle = ui.words("notice.hold"),
                        .one_more = ui.words("notice.one_more"),
                        .more = ui.words("notice.more")};
    if (ui.m.phone()) {
        foot.cut_top(8);
        Rect back_r = foot;
        if (asking) {
            if (hold_button(ui, "notice/adult", foot.cut_top(ui.m.hold_h), hold)) {
                screen.say(command::AdultConfirms{});
            }
            foot.cut_top(8);
            back_r = foot.cut_top(ui.m.button_h);
        } else {
            back_r = foot.cut_top(ui.m.primary_h);
        }
        if (asking ? button(ui, "notice/back", back_r, back)
                   : primary_button(ui, "notice/back", back_r, back)) {
            screen.say(command::CloseNotice{});
        }
        return;
    }
    const float back_w = button_width(ui, back);
    const Rect back_slot = foot.cut_left(back_w);
    if (button(ui, "notice/back", {back_slot.x, foot.centre().y - 34, back_w, 68}, back) ||
        ui.take_key(Key::Escape)) {
        screen.say(command::CloseNotice{});
    }
    if (asking) {
        const float one_line = ui.fonts().width(hold.label, ui.m.type(Type::Action)) + 116;
        const float width = std::min(std::max(540 * std::max(1.0f, ui.m.text_scale), one_line), foot.w - 20);
        const Rect slot = foot.cut_right(width);
        if (hold_button(ui, "notice/adult", {slot.x, slot.centre().y - ui.m.hold_h / 2, slot.w, ui.m.hold_h},
                        hold)) {
            screen.say(command::AdultConfirms{});
        }
    }
}

} // namespace lanternleaf
