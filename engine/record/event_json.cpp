#include "record/event_json.h"

#include "cardfile/cardfile.h"
#include "record/event.h"

namespace lanternleaf {

using cardfile::Cursor;
using cardfile::Members;
using cardfile::Tree;

namespace {

// Wide enough for any reading in ohms or volts and any length; a file with more was not written by a meter.
constexpr cardfile::Range kReading{-1e12, 1e12, false, ""};
constexpr cardfile::Range kLength{-10'000, 10'000, false, " mm"};
constexpr cardfile::Range kBrightness{0, 1e6, false, ""};
constexpr int kMostCount = 1000;
constexpr std::size_t kMostLights = 10'000;

} // namespace

Tree change_json(const Change& change) {
    Tree json = {{"kind", name_of(change.kind)}};
    if (!change.part.empty()) {
        json["part"] = change.part;
    }
    if (!(change.at_mm == Vec2{})) {
        json["at_mm"] = {change.at_mm.x, change.at_mm.y};
    }
    if (change.mm != 0.0) {
        json["mm"] = change.mm;
    }
    if (!change.type.empty()) {
        json["type"] = change.type;
    }
    if (change.count != 0) {
        json["count"] = change.count;
    }
    return json;
}

Change change_from_json(const Cursor& json) {
    Members in(json);
    Change change;
    const Cursor kind = in.need("kind");
    if (!change_kind_from(kind.text(), change.kind)) {
        kind.refuse("a change that is known here, such as \"led-turned\"");
    }
    if (const auto part = in.maybe("part")) {
        change.part = part->text();
    }
    if (const auto at = in.maybe("at_mm")) {
        change.at_mm = at->point();
    }
    if (const auto mm = in.maybe("mm")) {
        change.mm = mm->number(kLength);
    }
    if (const auto type = in.maybe("type")) {
        change.type = type->text();
    }
    if (const auto count = in.maybe("count")) {
        change.count = count->integer(-kMostCount, kMostCount);
    }
    return change;
}

Tree reading_json(const Reading& reading) {
    Tree json = {{"check", reading.check}};
    if (reading.open) {
        json["value"] = "OL";
    } else if (reading.value) {
        json["value"] = *reading.value;
    }
    if (reading.yes) {
        json["yes"] = *reading.yes;
    }
    if (!reading.seen.empty()) {
        Tree seen = Tree::array();
        for (const LightExpectation& light : reading.seen) {
            Tree one = {{"led", light.led}, {"state", light.state}};
            if (light.brightness != 0.0) {
                one["brightness"] = light.brightness;
            }
            seen.push_back(one);
        }
        json["seen"] = seen;
    }
    json["by"] = reading.meter ? "meter" : "eye";
    if (reading.simulated) {
        json["simulated"] = true;
    }
    return json;
}

std::string light_state_from_json(const Cursor& json) {
    const char* state = json.choice<const char*>({{"lit", "lit"}, {"dim", "dim"}, {"dark", "dark"}});
    return state;
}

Reading reading_from_json(const Cursor& json) {
    Members in(json);
    Reading reading;
    reading.check = in.need("check").name();
    if (const auto value = in.maybe("value"); value && value->value().is_string()) {
        reading.open = value->choice<bool>({{"OL", true}});
    } else if (value) {
        reading.value = value->number(kReading);
    }
    if (const auto yes = in.maybe("yes")) {
        reading.yes = flag_from_json(*yes);
    }
    if (const auto seen = in.maybe("seen")) {
        for (const Cursor& one : seen->items(kMostLights, "lights")) {
            Members light(one);
            const auto brightness = light.maybe("brightness");
            reading.seen.push_back({light.need("led").name(), light_state_from_json(light.need("state")),
                                    brightness ? brightness->number(kBrightness) : 0.0});
        }
    }
    if (const auto by = in.maybe("by")) {
        reading.meter = by->choice<bool>({{"meter", true}, {"eye", false}});
    }
    if (const auto simulated = in.maybe("simulated")) {
        reading.simulated = flag_from_json(*simulated);
    }
    return reading;
}

bool flag_from_json(const Cursor& json) {
    if (!json.value().is_boolean()) {
        json.refuse("true or false");
    }
    return json.value().get<bool>();
}

Audience audience_from_json(const Cursor& json) {
    Audience audience = Audience::small_children;
    if (!audience_from(json.text(), audience)) {
        json.refuse("\"adults\", \"children\", \"small-children\", \"class\" or \"sale\"");
    }
    return audience;
}

void read_version(Members& in) {
    const Cursor given = in.need("lanternleaf");
    const int version = given.integer(1, 1'000'000);
    if (version > kFileVersion) {
        given.refuse_saying("expected version " + std::to_string(kFileVersion) + ", found version " +
                            std::to_string(version) + " of a newer Lanternleaf");
    }
}

} // namespace lanternleaf
