#include "cases.h"

#include <algorithm>

namespace lanternleaf::cases {

Card sample(const std::function<void(Card&)>& change) {
    Card card = make::sample_card();
    change(card);
    return card;
}

namespace {

Laid& laid(Card& card, const std::string& id) {
    return *std::find_if(card.laid.begin(), card.laid.end(),
                         [&](const Laid& item) { return id_of(item) == id; });
}

} // namespace

Strip& strip(Card& card, const std::string& id) {
    return std::get<Strip>(laid(card, id));
}

Patch& patch(Card& card, const std::string& id) {
    return std::get<Patch>(laid(card, id));
}

void drop(Card& card, const std::string& id) {
    std::erase_if(card.laid, [&](const Laid& item) { return id_of(item) == id; });
}

namespace {

Card over_a_link() {
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {96, 45}}));
    card.laid.emplace_back(make::strip("K1", Side::link, {{82, 35}, {118, 35}}));
    card.laid.emplace_back(
        make::strip("S1", Side::positive, {{54, 80}, {60, 80}, {60, 60}, {110, 60}, {110, 42}}));
    return card;
}

} // namespace

Card with_resistor(double ohm, const std::string& led) {
    Card card = over_a_link();
    card.leds.push_back(make::led("L1", led, {90, 40}, 270));
    card.resistors.push_back(make::resistor("R1", ohm, {110, 40}, 90));
    return card;
}

Card in_series(const std::string& first, const std::string& second) {
    Card card = over_a_link();
    card.leds.push_back(make::led("L1", first, {90, 40}, 270));
    card.leds.push_back(make::led("L2", second, {110, 40}, 90));
    return card;
}

Card on_pads(const std::string& holder, const std::string& led) {
    return sample([&](Card& card) {
        card.holder.type = holder;
        card.leds[0].type = led;
        strip(card, "N1").path_mm = {{16, 83}, {16, 45}, {118, 45}};
        strip(card, "S1").path_mm = {{41, 80}, {60, 80}, {60, 35}, {118, 35}};
    });
}

std::vector<Fires> all_fires() {
    std::vector<Fires> all = electrical_fires();
    for (const auto& more : {layout_fires(), thing_fires()}) {
        all.insert(all.end(), more.begin(), more.end());
    }
    return all;
}

std::vector<Quiet> all_quiet() {
    std::vector<Quiet> all = electrical_quiet();
    for (const auto& more : {layout_quiet(), thing_quiet()}) {
        all.insert(all.end(), more.begin(), more.end());
    }
    return all;
}

const Finding* find(const Review& review, const std::string& rule, const std::string& part) {
    for (const Finding& finding : review.findings) {
        const bool named = part.empty() ||
                           std::find(finding.parts.begin(), finding.parts.end(), part) != finding.parts.end();
        if (finding.rule == rule && named) {
            return &finding;
        }
    }
    return nullptr;
}

std::string found_in(const Review& review) {
    std::string out;
    for (const Finding& finding : review.findings) {
        out += (out.empty() ? "" : "\n") + finding.rule + ": " + finding.text + " | " + finding.fix;
    }
    return out;
}

} // namespace lanternleaf::cases
