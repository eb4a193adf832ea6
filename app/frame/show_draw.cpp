#include "frame/show_draw.h"

#include "model/update_draw.h"

namespace lanternleaf {

namespace {

void act(App& app, DrawCommand command) {
    update(app.state, app.around, command::Draw{std::move(command)});
}

constexpr double kReach_mm = 7.0;

void tap(App& app, Vec2 at_mm) {
    act(app, draw::Tap{at_mm, kReach_mm});
}

void place_lights(App& app) {
    act(app, draw::NewCard{});
    act(app, draw::Do{{edit::SetAudience{Audience::adults}}});
    for (const Vec2 at : {Vec2{50, 40}, Vec2{74, 40}, Vec2{98, 40}, Vec2{122, 40}}) {
        tap(app, at);
    }
    act(app, draw::SelectPart{""});
}

} // namespace

bool show_draw(App& app, const std::string& name, const std::string& card_path) {
    if (name == "draw/empty") {
        act(app, draw::NewCard{});
        return true;
    }
    if (name == "draw/lights") {
        place_lights(app);
        return true;
    }
    if (name == "draw/suggest") {
        place_lights(app);
        act(app, draw::Suggest{});
        while (app.state.draw->search.work != nullptr) {
            act(app, draw::SearchOn{});
        }
        return app.state.draw->suggested.has_value();
    }
    if (name == "draw/search") {
        place_lights(app);
        act(app, draw::Suggest{});
        act(app, draw::SearchOn{});
        return true;
    }
    if (name == "draw/laying") {
        place_lights(app);
        act(app, draw::PickTool{DrawTool::strip_minus});
        tap(app, {22, 59});
        tap(app, {22, 45});
        act(app, draw::DragStart{{23, 46}, kReach_mm});
        act(app, draw::DragTo{{86, 46}, kReach_mm});
        return true;
    }
    act(app, draw::Open{card_path});
    if (!app.state.draw) {
        return false;
    }
    const Card& card = app.state.draw->card;
    if (name == "draw") {
        return true;
    }
    if (name == "draw/part" && !card.leds.empty()) {
        act(app, draw::SelectPart{card.leds.front().id});
        return true;
    }
    if (name == "draw/strip") {
        for (const Laid& laid : card.laid) {
            if (const Strip* strip = std::get_if<Strip>(&laid)) {
                const std::string id = strip->id;
                act(app, draw::SelectPart{id});
                return true;
            }
        }
        return false;
    }
    if (name == "draw/fault") {
        std::vector<Edit> edits;
        for (const Laid& laid : card.laid) {
            if (std::holds_alternative<Patch>(laid)) {
                edits.push_back({edit::RemovePart{id_of(laid)}});
            }
        }
        if (!card.leds.empty()) {
            edits.push_back({edit::TurnPart{card.leds.back().id, card.leds.back().turn_deg + 180.0}});
        }
        act(app, draw::Do{{EditList{"two slips", edits}}});
        return true;
    }
    if (name == "draw/card") {
        update(app.state, app.around, command::OpenSheet{SheetKind::draw_card});
        return true;
    }
    if (name == "draw/print") {
        update(app.state, app.around, command::OpenSheet{SheetKind::print});
        return true;
    }
    if (name == "draw/box" || name == "draw/box-measure") {
        if (name == "draw/print") {
            update(app.state, app.around, command::OpenSheet{SheetKind::print});
            return true;
        }
        if (name == "draw/box") {
            app.state.settings.px_per_mm = 5.0;
        }
        act(app, draw::OpenLightBox{});
        return true;
    }
    return false;
}

} // namespace lanternleaf
