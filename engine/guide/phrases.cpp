#include "guide/phrases.h"

#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kNear_mm = 25.0;
// Below this share of the longer component a heading counts as straight: tan 22.5 degrees, half of an eighth
// turn.
constexpr double kDiagonal = 0.4142;

// "top", "bottom_right", ...: the end of a message's key.
std::string side_key(Vec2 heading) {
    const double across = std::abs(heading.x);
    const double down = std::abs(heading.y);
    std::string key;
    if (down > kDiagonal * across) {
        key = heading.y < 0.0 ? "top" : "bottom";
    }
    if (across > kDiagonal * down) {
        key += key.empty() ? "" : "_";
        key += heading.x < 0.0 ? "left" : "right";
    }
    return key.empty() ? "right" : key;
}

} // namespace

std::string shown(const std::string& pad) {
    if (!pad.empty() && pad.back() == '-') {
        return pad.substr(0, pad.size() - 1) + "−";
    }
    return pad;
}

std::string from_edges(Vec2 at_mm, const Words& words) {
    return words("guide.from_edges", {{"x", words.mm(at_mm.x)}, {"y", words.mm(at_mm.y)}});
}

std::string from_edges_short(Vec2 at_mm, const Words& words) {
    return words("guide.from_edges_short", {{"x", words.mm(at_mm.x)}, {"y", words.mm(at_mm.y)}});
}

std::string near_led(const Card& card, Vec2 at_mm, const Words& words) {
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
        return words(off.y > 0.0 ? "guide.below" : "guide.above", {{"led", best->id}});
    }
    return words(off.x > 0.0 ? "guide.right_of" : "guide.left_of", {{"led", best->id}});
}

std::string which_way(Vec2 heading, const Words& words) {
    return words("guide.way_" + side_key(heading));
}

std::string towards(Vec2 heading, const Words& words) {
    return words("guide.towards_" + side_key(heading));
}

std::string first_of_two(double mm, const Words& words) {
    return words.unit() == LengthUnit::mm ? words.number(mm, 1) : words.mm(mm);
}

} // namespace lanternleaf
