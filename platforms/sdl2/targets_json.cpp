#include "targets_json.h"

#include <nlohmann/json.hpp>

namespace lanternleaf {

namespace {

const char* name_of(Role role) {
    switch (role) {
    case Role::Button:
    case Role::Primary:
    case Role::Key:
    case Role::Item:
    case Role::Spot:
        return "button";
    case Role::Toggle:
        return "switch";
    case Role::Tab:
        return "tab";
    case Role::Slider:
        return "slider";
    case Role::Field:
        return "textbox";
    case Role::Note:
        return "note";
    case Role::Scroll:
    case Role::Canvas:
    case Role::Sheet:
    case Role::Scrim:
        return "group";
    }
    return "button";
}

nlohmann::json numbers(const Rect& r) {
    return {r.x, r.y, r.w, r.h};
}

} // namespace

std::string targets_json(const Targets& targets) {
    nlohmann::json all = nlohmann::json::array();
    for (const Target& target : targets.all()) {
        all.push_back({{"name", target.name},
                       {"role", name_of(target.role)},
                       {"label", target.label},
                       {"value", target.value},
                       {"rect", numbers(target.rect)},
                       {"visible", numbers(target.visible)},
                       {"enabled", target.enabled},
                       {"checked", target.checked},
                       {"reachable", targets.reachable(target)}});
    }
    return all.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

} // namespace lanternleaf
