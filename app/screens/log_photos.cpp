// The Log's photos: small prints with their captions, one seen large, and a new one on its way in.
#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "controls/text_field.h"
#include "screens/log.h"
#include "screens/make.h"
#include "screens/sheets.h"

#include <algorithm>

namespace lanternleaf {

namespace {

struct Caption {
    const char* name; ///< of its target
    const char* key;
};

constexpr Caption kCaptions[] = {{"Front", "log.caption_front"},
                                 {"Traces", "log.caption_traces"},
                                 {"After dark", "log.caption_dark"},
                                 {"Inside", "log.caption_inside"},
                                 {"What went wrong", "log.caption_wrong"}};

// The whole picture within a room, in its own shape.
Rect fitted(const Rect& room, const Picture& picture) {
    if (!picture.there() || picture.w <= 0 || picture.h <= 0) {
        return room;
    }
    const float k = std::min(room.w / picture.w, room.h / picture.h);
    const float w = picture.w * k;
    const float h = picture.h * k;
    return {room.centre().x - w / 2, room.centre().y - h / 2, w, h};
}

void draw_print(Screen& screen, const Rect& r, const LogPhoto& photo, int index) {
    Ui& ui = screen.ui;
    const TextStyle small = ui.m.type(Type::Small);
    const std::string name = "log/photo/" + std::to_string(index + 1);
    ui.add({.name = name,
            .role = Role::Item,
            .label = ui.words(photo.there ? "log.photo_spoken" : "log.photo_gone_spoken",
                              {{"caption", photo.caption}}),
            .rect = r});
    ui.pen().shadow(r, 2, Lift::Panel);
    ui.pen().fill(r, ui.pressed(name) ? ui.theme().well : ui.theme().panel, 2);
    ui.pen().outline(r, ui.theme().line, 1, 2);
    Rect paper = r.shrunk(6, 6);
    const Rect caption = paper.cut_bottom(small.lead + 2);
    ui.pen().fill(paper, ui.theme().well);
    const Picture picture = photo.there ? screen.pictures.get(photo.path) : Picture{};
    if (picture.there()) {
        draw_picture(ui.pen(), picture, fitted(paper, picture), rgb(0xFFFFFF));
    } else {
        draw_icon(ui.pen(), photo.there ? Icon::Photo : Icon::Caution, paper.centre(), 30,
                  photo.there ? ui.theme().ink2 : ui.theme().ochre);
    }
    const std::string words =
        photo.there ? photo.caption : ui.words("log.photo_gone", {{"file", photo.file}});
    ui.pen().text_in(caption, ui.fonts().fitted(words, small, caption.w), small, ui.theme().ink,
                     Align::Centre);
    if (ui.tapped(name)) {
        screen.say(command::Log{logbook::ShowPhoto{index}});
    }
}

} // namespace

float draw_log_photos(Screen& screen, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const std::vector<LogPhoto>& photos = screen.state.log_page.photos;
    const TextStyle body = ui.m.type(Type::Body);
    const float width = r.w - 2 * ui.m.panel_pad_x;
    const int columns = std::max(2, static_cast<int>((width + 10) / 150));
    const float print_w = (width - 10 * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    const float print_h = print_w * 0.7f + ui.m.type(Type::Small).lead + 8;
    const int rows = (static_cast<int>(photos.size()) + columns - 1) / columns;
    const std::string hint =
        ui.host().can_pick() ? ui.words("log.no_photo_take") : ui.words("log.no_photo_drop");
    const float empty_h = ui.fonts().wrapped_height(hint, body, width);
    const float content = rows == 0 ? empty_h : static_cast<float>(rows) * (print_h + 10) - 10;
    const float head_h = std::max(ui.m.button_h, ui.m.type(Type::H2).lead);
    const float height = 24 + head_h + 8 + content;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 10);
    Rect head = inside.cut_top(head_h);
    if (ui.host().can_pick()) {
        const ButtonLook look{
            .label = ui.words("log.add"), .icon = Icon::Photo, .spoken = ui.words("log.add_photo")};
        const Rect slot = head.cut_right(button_width(ui, look));
        if (button(ui, "log/add-photo", {slot.x, slot.centre().y - ui.m.button_h / 2, slot.w, ui.m.button_h},
                   look)) {
            ui.host().pick_picture();
        }
    }
    ui.pen().text_in(head, ui.words("log.photos"), ui.m.type(Type::H2), ui.theme().ink, Align::Left);
    inside.cut_top(8);
    if (rows == 0) {
        ui.pen().paragraph({inside.x, inside.y}, inside.w, hint, body, ui.theme().ink2);
    }
    for (std::size_t i = 0; i < photos.size(); ++i) {
        const auto column = static_cast<float>(static_cast<int>(i) % columns);
        const auto row = static_cast<float>(static_cast<int>(i) / columns);
        draw_print(screen,
                   {inside.x + column * (print_w + 10), inside.y + row * (print_h + 10), print_w, print_h},
                   photos[i], static_cast<int>(i));
    }
    return height;
}

void draw_log_photo_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const LogState& page = screen.state.log_page;
    if (page.photo < 0 || page.photo >= static_cast<int>(page.photos.size())) {
        screen.say(command::CloseSheet{});
        return;
    }
    const LogPhoto& photo = page.photos[static_cast<std::size_t>(page.photo)];
    SheetPaper sheet(ui, "log-photo", usual_side(ui.m), true, sheet_height(ui, 900), photo.caption,
                     Icon::Photo);
    if (!sheet.shown()) {
        return;
    }
    Rect body = sheet.body();
    const Rect foot = body.cut_bottom(ui.m.button_h + 4);
    body.cut_bottom(12);
    const Picture picture = photo.there ? screen.pictures.get(photo.path) : Picture{};
    if (picture.there()) {
        draw_picture(ui.pen(), picture, fitted(body, picture), rgb(0xFFFFFF));
    } else {
        const std::string words = photo.there ? ui.words("log.photo_not_shown")
                                              : ui.words("log.photo_file_gone", {{"file", photo.file}});
        ui.pen().paragraph({body.x, body.y}, body.w, words, ui.m.type(Type::Body), ui.theme().ink);
    }
    if (button(ui, "log-photo/remove", {foot.x, foot.y, foot.w, ui.m.button_h},
               {.label = ui.words("log.photo_out"), .icon = Icon::Trash})) {
        screen.say(command::Log{logbook::RemovePhoto{page.photo}});
    }
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_log_new_photo_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const LogState& page = screen.state.log_page;
    if (!page.new_photo) {
        screen.say(command::CloseSheet{});
        return;
    }
    SheetPaper sheet(ui, "log-new-photo", usual_side(ui.m), true, sheet_height(ui, 620),
                     ui.words("log.photo_what"), Icon::Photo);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, "log-new-photo/rows", sheet.body());
    const Rect& body = sheet.body();
    float y = scroll.top();
    y += ui.pen().paragraph({body.x, y}, body.w, ui.words("log.photo_private"), ui.m.type(Type::Small),
                            ui.theme().ink2) +
         12;
    std::vector<SheetRow> rows;
    for (const Caption& each : kCaptions) {
        const std::string words = ui.words(each.key);
        rows.push_back({std::string("log-new-photo/caption/") + each.name, words, Icon::None,
                        command::Log{logbook::TypeCaption{words}}, page.new_photo->caption == words});
    }
    y = draw_rows(screen, body, y, rows);
    std::string caption = page.new_photo->caption;
    static_cast<void>(text_field(ui, "log-new-photo/field", {body.x, y, body.w, ui.m.field_h},
                                 {.label = ui.words("log.own_words"), .longest = kLongestCaption}, caption));
    if (caption != page.new_photo->caption) {
        screen.say(command::Log{logbook::TypeCaption{caption}});
    }
    y += ui.m.field_h + 12;
    const Rect keep{body.x, y, body.w, ui.m.primary_h};
    if (primary_button(ui, "log-new-photo/keep", keep,
                       {.label = ui.words("log.keep_photo"), .icon = Icon::Tick})) {
        ui.typing_in.clear();
        ui.host().show_keyboard(false, keep);
        screen.say(command::Log{logbook::KeepPhoto{}});
    }
    y += ui.m.primary_h + 8;
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        ui.typing_in.clear();
        screen.say(command::Log{logbook::DropPhoto{}});
    }
}

void draw_log_compare_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const LogView view = make_log_view(screen.state, screen.ui.words);
    SheetPaper sheet(ui, "log-compare", usual_side(ui.m), true, sheet_height(ui, 520),
                     ui.words("log.compare_with"), Icon::Differ);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, "log-compare/rows", sheet.body());
    std::vector<SheetRow> rows;
    for (const LogView::Other& other : view.others) {
        if (!other.chosen) {
            rows.push_back(
                {"log-compare/" + other.number,
                 ui.words("log.compare_row",
                          {{"number", other.number}, {"when", other.when}, {"state", other.state}}),
                 Icon::None, command::Log{logbook::Compare{other.journal}}, false});
        }
    }
    const float y = draw_rows(screen, sheet.body(), scroll.top(), rows);
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

} // namespace lanternleaf
