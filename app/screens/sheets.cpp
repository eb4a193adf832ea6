// The simple sheets: places, steps, why, the menu of a build, settings, going on regardless.
#include "screens/sheets.h"

#include "controls/button.h"
#include "controls/scroll.h"
#include "controls/segmented.h"
#include "controls/slider.h"
#include "screens/batch.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

float sheet_height(const Ui& ui, float content) {
    return std::min(content + 96 * std::max(1.0f, ui.m.text_scale), ui.m.window.h - ui.m.top_h - 24);
}

float draw_rows(Screen& screen, const Rect& r, float y, const std::vector<SheetRow>& rows) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    for (const SheetRow& row : rows) {
        const float text_w = r.w - (row.icon == Icon::None ? 40 : 70);
        const float height = std::max(ui.m.button_h, ui.fonts().wrapped_height(row.label, body, text_w) + 20);
        const Rect box{r.x, y, r.w, height};
        ui.add(
            {.name = row.name, .role = Role::Item, .label = row.label, .rect = box, .checked = row.selected});
        const bool pressed = ui.pressed(row.name);
        ui.pen().fill(box,
                      row.selected ? ui.theme().lamp_tint
                      : pressed    ? ui.theme().well
                                   : ui.theme().panel,
                      ui.m.radius);
        ui.pen().outline(box, row.selected ? ui.theme().ink : ui.theme().edge, 2, ui.m.radius);
        float x = box.x + 20;
        if (row.icon != Icon::None) {
            draw_icon(ui.pen(), row.icon, {x + 13, box.centre().y}, 26, ui.theme().ink);
            x += 36;
        }
        const float text_h = ui.fonts().wrapped_height(row.label, body, text_w);
        ui.pen().paragraph({x, box.centre().y - text_h / 2 + (pressed ? 1.0f : 0.0f)}, text_w, row.label,
                           body, ui.theme().ink);
        if (ui.tapped(row.name)) {
            screen.say(row.command);
        }
        y += height + 10;
    }
    return y;
}

namespace {

// A side or bottom sheet with rows that scroll when there are many.
void rows_sheet(Screen& screen, std::string_view name, const std::string& title, Icon icon,
                const std::string& words, const std::vector<SheetRow>& rows) {
    Ui& ui = screen.ui;
    const float width = ui.m.form == Form::Landscape ? 484 : ui.m.window.w - 40;
    const TextStyle body = ui.m.type(Type::Body);
    float content = words.empty() ? 0 : ui.fonts().wrapped_height(words, body, width) + 14;
    for (const SheetRow& row : rows) {
        content += std::max(ui.m.button_h, ui.fonts().wrapped_height(row.label, body, width - 70) + 20) + 10;
    }
    SheetPaper sheet(ui, name, usual_side(ui.m), true, sheet_height(ui, content), title, icon);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, std::string(name) + "/rows", sheet.body());
    float y = scroll.top();
    if (!words.empty()) {
        y += ui.pen().paragraph({sheet.body().x, y}, sheet.body().w, words, body, ui.theme().ink) + 14;
    }
    y = draw_rows(screen, sheet.body(), y, rows);
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

} // namespace

void draw_places_sheet(Screen& screen) {
    const Ui& ui = screen.ui;
    const auto row = [&](Place place, const char* name, const std::string& label, Icon icon) {
        return SheetRow{name, label, icon, command::GoTo{place}, screen.state.place == place};
    };
    rows_sheet(
        screen, "places", ui.words("sheet.go_to"), Icon::None, "",
        {row(Place::shelf, "places/shelf", ui.words("sheet.shelf"), Icon::Shelf),
         row(Place::draw, "places/draw", ui.words("sheet.draw"), Icon::Draw),
         row(Place::make, "places/make", ui.words("sheet.make"), Icon::Make),
         row(Place::mend, "places/mend", ui.words("sheet.mend"), Icon::Mend),
         row(Place::log, "places/log", ui.words("sheet.log"), Icon::Log),
         {"places/light", ui.words("sheet.light"), Icon::Bulb, command::OpenLight{}, false},
         {"places/learn", ui.words("learn.title"), Icon::Book, command::Learn{learning::OpenList{}}, false},
         {"places/settings", ui.words("settings.title"), Icon::Settings,
          command::OpenSheet{SheetKind::settings}, false}});
}

void draw_steps_sheet(Screen& screen) {
    const MakeView view = make_view(screen.state);
    const Words& words = screen.ui.words;
    std::vector<SheetRow> rows;
    for (const RailBead& bead : view.rail) {
        const std::string state = bead.state == BeadKind::done         ? words("sheet.step_proved")
                                  : bead.state == BeadKind::regardless ? words("sheet.step_regardless")
                                  : bead.state == BeadKind::now        ? words("sheet.step_now")
                                  : bead.state == BeadKind::stopped    ? words("sheet.step_stopped")
                                                                       : words("sheet.step_opens");
        rows.push_back({"steps/" + std::to_string(bead.step),
                        words("sheet.step",
                              {{"number", std::to_string(bead.step)}, {"step", bead.full}, {"state", state}}),
                        bead.state == BeadKind::done      ? Icon::Tick
                        : bead.state == BeadKind::blocked ? Icon::Lock
                        : bead.state == BeadKind::stopped ? Icon::Problem
                                                          : Icon::Next,
                        command::CloseSheet{},
                        bead.state == BeadKind::now || bead.state == BeadKind::stopped});
    }
    rows_sheet(screen, "steps", words("sheet.seven_steps"), Icon::None, "", rows);
}

void draw_why_sheet(Screen& screen) {
    const MakeView view = make_view(screen.state);
    rows_sheet(
        screen, "why", screen.ui.words("make.why"), Icon::Book, view.why,
        {{"why/back", screen.ui.words("sheet.back_to_move"), Icon::Back, command::CloseSheet{}, false}});
}

void draw_menu_sheet(Screen& screen) {
    const Words& words = screen.ui.words;
    rows_sheet(screen, "menu", words("sheet.this_build"), Icon::None, "",
               {{"menu/log", words("sheet.look_at_record"), Icon::Log,
                 command::OpenLog{screen.state.menu_build}, false},
                {"menu/put-away", words("sheet.put_away"), Icon::Trash,
                 command::PutAway{screen.state.menu_build}, false}});
}

void draw_regardless_sheet(Screen& screen) {
    const Words& words = screen.ui.words;
    rows_sheet(
        screen, "regardless", words("sheet.regardless"), Icon::Caution, words("sheet.regardless_words"),
        {{"regardless/checked", words("sheet.regardless_own_way"), Icon::Eye,
          command::GoOnRegardless{english()("model.why_own_way")}, false},
         {"regardless/later", words("sheet.regardless_later"), Icon::Clock,
          command::GoOnRegardless{english()("model.why_later")}, false},
         {"regardless/practice", words("sheet.regardless_practice"), Icon::Book,
          command::GoOnRegardless{english()("model.why_practice")}, false},
         {"regardless/stay", words("sheet.regardless_stay"), Icon::Back, command::CloseSheet{}, false}});
}

// Each language by the name its own speakers give it, so that nobody is lost in another's.
std::string language_choice(Ui& ui, const Rect& r, const std::string& now) {
    static constexpr const char* kLanguages[][2] = {{"en", "English"}, {"de", "Deutsch"}, {"es", "Español"}};
    std::vector<Segment> segments;
    int index = 0;
    for (const auto& [id, name] : kLanguages) {
        if (id == now) {
            index = static_cast<int>(segments.size());
        }
        segments.push_back({name, Icon::None, id});
    }
    static_cast<void>(segmented(ui, "settings/language", r, segments, index));
    return kLanguages[index][0];
}

void draw_settings_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    SheetPaper sheet(ui, "settings", usual_side(ui.m), true, sheet_height(ui, 520),
                     ui.words("settings.title"), Icon::Settings);
    if (!sheet.shown()) {
        return;
    }
    Settings settings = screen.state.settings;
    Scroll scroll(ui, "settings/rows", sheet.body());
    const Rect& body = sheet.body();
    const TextStyle text = ui.m.type(Type::Body);
    float y = scroll.top();
    const auto label = [&](const std::string& words) {
        ui.pen().text({body.x, y}, words, text.bold(), ui.theme().ink);
        y += text.lead + 6;
    };
    const auto choice = [&](const char* name, bool value, const std::string& no, const std::string& yes) {
        int index = value ? 1 : 0;
        const Segment segments[] = {{no, Icon::None, "no"}, {yes, Icon::None, "yes"}};
        if (segmented(ui, name, {body.x, y, body.w, ui.m.button_h}, segments, index)) {
            value = index == 1;
        }
        y += ui.m.button_h + 16;
        return value;
    };
    label(ui.words("settings.room"));
    settings.night =
        choice("settings/night", settings.night, ui.words("settings.day"), ui.words("settings.night"));
    label(ui.words("settings.text_size"));
    double scale = settings.text_scale * 100;
    StepperLook look;
    look.label = ui.words("settings.text_size");
    look.value_text = std::to_string(static_cast<int>(scale + 0.5)) + " %";
    look.low = 85;
    look.high = 200;
    look.step = 15;
    if (stepper(ui, "settings/text", {body.x, y, body.w, ui.m.button_h}, look, scale)) {
        settings.text_scale = scale / 100;
    }
    y += ui.m.button_h + 16;
    label(ui.words("settings.movement"));
    settings.reduced_motion = choice("settings/motion", settings.reduced_motion, ui.words("settings.moving"),
                                     ui.words("settings.still"));
    label(ui.words("settings.main_button"));
    settings.left_handed =
        choice("settings/hand", settings.left_handed, ui.words("settings.right"), ui.words("settings.left"));
    label(ui.words("kids.who"));
    settings.kids = choice("settings/kids", settings.kids, ui.words("kids.grown"), ui.words("kids.child"));
    label(ui.words("settings.language"));
    settings.language = language_choice(ui, {body.x, y, body.w, ui.m.button_h}, settings.language);
    y += ui.m.button_h + 16;
    label(ui.words("settings.lengths"));
    settings.inches =
        choice("settings/lengths", settings.inches, ui.words("settings.mm"), ui.words("settings.inch"));
    y = draw_rows(screen, body, y,
                  {{"settings/learn", ui.words("learn.title"), Icon::Book,
                    command::Learn{learning::OpenList{}}, false}});
    scroll.done(y - scroll.top());
    if (!(settings == screen.state.settings)) {
        screen.say(command::ChangeSettings{settings});
    }
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

Rect beside_label(Ui& ui, const Rect& body, float& y, const std::string& label, float control_w) {
    const TextStyle text = ui.m.type(Type::Body);
    if (ui.fonts().width(label, text) + 12 > body.w - control_w) {
        y += ui.pen().paragraph({body.x, y}, body.w, label, text, ui.theme().ink) + 4;
    } else {
        ui.pen().text_in({body.x, y, body.w - control_w, ui.m.button_h}, label, text, ui.theme().ink,
                         Align::Left);
    }
    const Rect place{body.right() - control_w, y, control_w, ui.m.button_h};
    y += ui.m.button_h + 10;
    return place;
}

void draw_open_sheet(Screen& screen) {
    switch (screen.state.sheet) {
    case SheetKind::none:
        break;
    case SheetKind::places:
        draw_places_sheet(screen);
        break;
    case SheetKind::audience:
        draw_audience_sheet(screen);
        break;
    case SheetKind::keypad:
        draw_keypad_sheet(screen);
        break;
    case SheetKind::no_meter:
        draw_no_meter_sheet(screen);
        break;
    case SheetKind::differs:
        draw_differs_sheet(screen);
        break;
    case SheetKind::wrong:
        draw_wrong_sheet(screen);
        break;
    case SheetKind::regardless:
        draw_regardless_sheet(screen);
        break;
    case SheetKind::steps:
        draw_steps_sheet(screen);
        break;
    case SheetKind::why:
        draw_why_sheet(screen);
        break;
    case SheetKind::build_menu:
        draw_menu_sheet(screen);
        break;
    case SheetKind::settings:
        draw_settings_sheet(screen);
        break;
    case SheetKind::log_step:
        draw_log_step_sheet(screen);
        break;
    case SheetKind::log_note:
        draw_log_note_sheet(screen);
        break;
    case SheetKind::log_compare:
        draw_log_compare_sheet(screen);
        break;
    case SheetKind::log_photo:
        draw_log_photo_sheet(screen);
        break;
    case SheetKind::log_new_photo:
        draw_log_new_photo_sheet(screen);
        break;
    case SheetKind::batch_card:
        draw_batch_card_sheet(screen);
        break;
    case SheetKind::batch_new:
        draw_batch_new_sheet(screen);
        break;
    case SheetKind::batch_cells:
        draw_batch_cells_sheet(screen);
        break;
    case SheetKind::batch_name:
        draw_batch_name_sheet(screen);
        break;
    case SheetKind::batch_builder:
        draw_batch_builder_sheet(screen);
        break;
    case SheetKind::batch_take:
        draw_batch_take_sheet(screen);
        break;
    case SheetKind::batch_close:
        draw_batch_close_sheet(screen);
        break;
    case SheetKind::mend_meter:
        draw_mend_meter_sheet(screen);
        break;
    case SheetKind::learn:
        draw_learn_sheet(screen);
        break;
    case SheetKind::draw_card:
    case SheetKind::draw_tape:
    case SheetKind::draw_light:
    case SheetKind::draw_audience:
    case SheetKind::draw_new:
    case SheetKind::print:
        draw_plan_sheet(screen);
        break;
    }
}

} // namespace lanternleaf
