#include "card/card.h"

namespace lanternleaf {

const std::string& id_of(const Laid& item) {
    return std::visit([](const auto& laid) -> const std::string& { return laid.id; }, item);
}

const Strip* find_strip(const Card& card, const std::string& id) {
    for (const Laid& item : card.laid) {
        const Strip* strip = std::get_if<Strip>(&item);
        if (strip != nullptr && strip->id == id) {
            return strip;
        }
    }
    return nullptr;
}

const Led* find_led(const Card& card, const std::string& id) {
    for (const Led& led : card.leds) {
        if (led.id == id) {
            return &led;
        }
    }
    return nullptr;
}

const char* name_of(Side side) {
    switch (side) {
    case Side::negative:
        return "negative";
    case Side::positive:
        return "positive";
    case Side::link:
        return "link";
    }
    return "";
}

const char* name_of(Audience audience) {
    switch (audience) {
    case Audience::adults:
        return "adults";
    case Audience::children:
        return "children";
    case Audience::small_children:
        return "small-children";
    case Audience::school_class:
        return "class";
    case Audience::sale:
        return "sale";
    }
    return "";
}

const char* name_of(Edge edge) {
    switch (edge) {
    case Edge::top:
        return "top";
    case Edge::right:
        return "right";
    case Edge::bottom:
        return "bottom";
    case Edge::left:
        return "left";
    }
    return "";
}

const char* name_of(CellFace face) {
    return face == CellFace::negative ? "negative" : "positive";
}

CellFace other_face(CellFace face) {
    return face == CellFace::negative ? CellFace::positive : CellFace::negative;
}

} // namespace lanternleaf
