#include "guide/phrases.h"

#include "base/readout.h"

#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kNear_mm = 25.0;
// Below this share of the longer component a heading counts as straight: tan 22.5 degrees, half of an eighth
// turn.
constexpr double kDiagonal = 0.4142;

// "top", "bottom right", ...
std::string side_word(Vec2 heading, bool& corner) {
    const double across = std::abs(heading.x);
    const double down = std::abs(heading.y);
    const bool has_x = across > kDiagonal * down;
    const bool has_y = down > kDiagonal * across;
    corner = has_x && has_y;
    std::string word;
    if (has_y) {
        word = heading.y < 0.0 ? "top" : "bottom";
    }
    if (has_x) {
        word += (word.empty() ? "" : " ");
        word += heading.x < 0.0 ? "left" : "right";
    }
    return word.empty() ? "right" : word;
}

} // namespace

std::string shown(const std::string& pad) {
    if (!pad.empty() && pad.back() == '-') {
        return pad.substr(0, pad.size() - 1) + "−";
    }
    return pad;
}

std::string from_edges(Vec2 at_mm) {
    return readout_mm(at_mm.x) + " from the left edge and " + readout_mm(at_mm.y) + " from the top edge";
}

std::string from_edges_short(Vec2 at_mm) {
    return readout_mm(at_mm.x) + " from the left, " + readout_mm(at_mm.y) + " from the top";
}

std::string near_led(const Card& card, Vec2 at_mm) {
    const Led* best = nullptr;
    double best_mm = kNear_mm;
    for (const Led& led : card.leds) {
        const double mm = distance(led.at_mm, at_mm);
        if (mm < best_mm) {
            best_mm = mm;
            best = &led;
        }
    }
    if (best == nullptr) {
        return {};
    }
    const Vec2 off = at_mm - best->at_mm;
    if (std::abs(off.y) >= std::abs(off.x)) {
        return (off.y > 0.0 ? "below " : "above ") + best->id;
    }
    return (off.x > 0.0 ? "right of " : "left of ") + best->id;
}

std::string which_way(Vec2 heading) {
    bool corner = false;
    return "to the " + side_word(heading, corner);
}

std::string towards(Vec2 heading) {
    bool corner = false;
    const std::string word = side_word(heading, corner);
    return "towards the " + word + (corner ? " corner" : " edge");
}

std::string listed(const std::vector<std::string>& items) {
    std::string text;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (i > 0) {
            text += i + 1 == items.size() ? " and " : ", ";
        }
        text += items[i];
    }
    return text;
}

} // namespace lanternleaf
