#include "cardfile/read_laid.h"

#include "cardfile/known_types.h"

#include <map>

namespace lanternleaf::cardfile {

namespace {

constexpr std::size_t kMostLeds = 500;
constexpr std::size_t kMostResistors = 500;
constexpr std::size_t kMostLaid = 5'000;
constexpr std::size_t kMostPathPoints = 500;
constexpr double kLeastLength_mm = 0.01; // tolerance::kSamePlace_mm: shorter is no length

// The ids of one card and where each was first used.
class Ids {
public:
    std::string take(const Cursor& at) {
        std::string id = at.name();
        const auto [first, fresh] = places_.emplace(id, at.place());
        if (!fresh) {
            at.refuse_saying("expected an id of its own, found \"" + shortened(id, 40) + "\", which " +
                             first->second + " has already");
        }
        return id;
    }

private:
    std::map<std::string, std::string> places_;
};

Led read_led(const Cursor& cursor, const Parts& own, const Parts& shipped, Ids& ids) {
    Members members(cursor);
    Led led;
    led.id = ids.take(members.need("id"));
    const Cursor type = members.need("type");
    led.type = type.name();
    require_known(type, led.type, "LED type", own.leds, &shipped.leds);
    led.at_mm = members.need("at_mm").point();
    led.turn_deg = members.need("turn_deg").number(kTurn);
    led.extras.json = members.extras();
    return led;
}

ResistorPart read_resistor(const Cursor& cursor, Ids& ids) {
    Members members(cursor);
    ResistorPart resistor;
    resistor.id = ids.take(members.need("id"));
    resistor.ohm = members.need("ohm").number({0, 1e9, true, " ohm"});
    resistor.at_mm = members.need("at_mm").point();
    resistor.turn_deg = members.need("turn_deg").number(kTurn);
    resistor.extras.json = members.extras();
    return resistor;
}

std::array<EndStyle, 2> read_ends(const Cursor& cursor) {
    const std::vector<Cursor> items = cursor.items(2, "ends");
    if (items.size() != 2) {
        cursor.refuse("two ends, each \"plain\" or \"folded\"");
    }
    std::array<EndStyle, 2> ends{};
    for (std::size_t i = 0; i < 2; ++i) {
        ends[i] = items[i].choice<EndStyle>({{"plain", EndStyle::plain}, {"folded", EndStyle::folded}});
    }
    return ends;
}

Strip read_strip(Members& members, const Parts& own, const Parts& shipped, Ids& ids) {
    Strip strip;
    strip.id = ids.take(members.need("id"));
    strip.side = members.need("side").choice<Side>({{name_of(Side::negative), Side::negative},
                                                    {name_of(Side::positive), Side::positive},
                                                    {name_of(Side::link), Side::link}});
    const Cursor tape = members.need("tape");
    strip.tape = tape.name();
    require_known(tape, strip.tape, "tape", own.tapes, &shipped.tapes);
    const Cursor path = members.need("path_mm");
    strip.path_mm = path.points(2, kMostPathPoints);
    double length_mm = 0.0;
    for (std::size_t i = 1; i < strip.path_mm.size(); ++i) {
        length_mm += distance(strip.path_mm[i - 1], strip.path_mm[i]);
    }
    if (length_mm <= kLeastLength_mm) {
        path.refuse_saying("expected a strip with a length, found all its points in one place");
    }
    if (const auto ends = members.maybe("ends")) {
        strip.ends = read_ends(*ends);
    }
    strip.extras.json = members.extras();
    return strip;
}

Patch read_patch(Members& members, Ids& ids) {
    Patch patch;
    patch.id = ids.take(members.need("id"));
    patch.at_mm = members.need("at_mm").point();
    patch.size_mm = members.need("size_mm").size();
    patch.turn_deg = members.need("turn_deg").number(kTurn);
    patch.extras.json = members.extras();
    return patch;
}

enum class LaidKind { strip, patch };

} // namespace

void read_things(Members& members, const Parts& shipped, Card& card) {
    Ids ids;
    for (const Cursor& item : members.need("leds").items(kMostLeds, "LEDs")) {
        card.leds.push_back(read_led(item, card.own_parts, shipped, ids));
    }
    if (const auto resistors = members.maybe("resistors")) {
        for (const Cursor& item : resistors->items(kMostResistors, "resistors")) {
            card.resistors.push_back(read_resistor(item, ids));
        }
        if (!card.resistors.empty() && !card.own_parts.resistor && !shipped.resistor) {
            resistors->refuse_saying("expected parts that describe a resistor, found none");
        }
    }
    for (const Cursor& item : members.need("laid").items(kMostLaid, "things laid")) {
        Members laid(item);
        const LaidKind kind =
            laid.need("kind").choice<LaidKind>({{"strip", LaidKind::strip}, {"patch", LaidKind::patch}});
        if (kind == LaidKind::strip) {
            card.laid.emplace_back(read_strip(laid, card.own_parts, shipped, ids));
        } else {
            card.laid.emplace_back(read_patch(laid, ids));
        }
    }
}

} // namespace lanternleaf::cardfile
