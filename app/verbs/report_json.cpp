#include "verbs/report_json.h"

#include "verbs/json_figure.h"

#include <nlohmann/json.hpp>

namespace lanternleaf {

namespace {

using Json = nlohmann::ordered_json;

Json figure(double value) {
    return json_figure(value);
}

Json place(Vec2 at_mm) {
    return Json::array({figure(at_mm.x), figure(at_mm.y)});
}

std::string written(const Json& json) {
    return json_text(json);
}

Json finding_json(const Finding& finding) {
    return {{"rule", finding.rule},          {"level", name_of(finding.level)},
            {"at_mm", place(finding.at_mm)}, {"parts", finding.parts},
            {"text", finding.text},          {"fix", finding.fix}};
}

Json findings_json(const std::vector<Finding>& findings) {
    Json list = Json::array();
    for (const Finding& finding : findings) {
        list.push_back(finding_json(finding));
    }
    return list;
}

Json leds_json(const Card& card, const Review& review) {
    const auto net_of_pad = [&](std::size_t pad) {
        const int net = review.conductors.net_of_led_pad[pad];
        return review.conductors.nets[static_cast<std::size_t>(net)].id;
    };
    Json leds = Json::array();
    for (const Light& light : review.lighting.lights) {
        const auto i = static_cast<std::size_t>(light.led);
        leds.push_back({{"id", card.leds[i].id},
                        {"current_mA", figure(light.current_mA)},
                        {"volts", figure(light.volts)},
                        {"state", name_of(light.state)},
                        {"brightness", figure(light.brightness)},
                        {"negative_net", net_of_pad(2 * i)},
                        {"positive_net", net_of_pad(2 * i + 1)}});
    }
    return leds;
}

Json nets_json(const Card& card, const Review& review) {
    Json nets = Json::array();
    for (const Net& net : review.conductors.nets) {
        Json members = Json::array();
        for (const Piece& piece : net.members) {
            members.push_back(name_of(card, review.conductors, piece));
        }
        nets.push_back({{"id", net.id}, {"side", name_of(net.side)}, {"members", members}});
    }
    return nets;
}

const char* unit_of(CheckKind kind) {
    switch (kind) {
    case CheckKind::resistance:
        return "ohm";
    case CheckKind::volts:
        return "V";
    case CheckKind::height:
        return "mm";
    case CheckKind::open:
    case CheckKind::lights:
    case CheckKind::look:
        return nullptr;
    }
    return nullptr;
}

Json check_json(const Check& check) {
    Json json = {{"id", check.id}, {"kind", name_of(check.kind)}, {"from", check.from},
                 {"to", check.to}, {"title", check.title},        {"expect", check.expect_text}};
    if (const char* unit = unit_of(check.kind)) {
        json["expected"] = figure(check.expected);
        json["low"] = figure(check.low);
        json["high"] = figure(check.high);
        json["unit"] = unit;
    }
    if (check.kind == CheckKind::lights) {
        json["lights"] = Json::array();
        for (const LightExpectation& light : check.lights) {
            json["lights"].push_back(
                {{"led", light.led}, {"state", light.state}, {"brightness", figure(light.brightness)}});
        }
    }
    json["without_meter"] = check.without_meter;
    json["needed"] = check.needed;
    return json;
}

Json move_json(const Move& move) {
    Json path = Json::array();
    for (const Vec2& at_mm : move.path_mm) {
        path.push_back(place(at_mm));
    }
    Json json = {{"id", move.id},       {"kind", name_of(move.kind)},
                 {"title", move.title}, {"sentence", move.sentence},
                 {"why", move.why},     {"parts", move.parts},
                 {"path_mm", path},     {"length_mm", figure(move.length_mm)}};
    if (move.turn_deg != 0.0) {
        json["turn_deg"] = figure(move.turn_deg);
    }
    json["adult_only"] = move.adult_only;
    json["check"] = move.check ? check_json(*move.check) : Json(nullptr);
    return json;
}

Json walked_json(const StepWalk& step) {
    const char* state = step.state == VerdictState::proved ? "proved"
                        : step.regardless                  ? "regardless"
                                                           : "stopped";
    Json readings = Json::array();
    for (std::size_t i = 0; i < step.readings.size(); ++i) {
        readings.push_back({{"check", step.readings[i].check},
                            {"fit", name_of(step.fits[i].fit)},
                            {"text", step.fits[i].text},
                            {"simulated", step.readings[i].simulated}});
    }
    return {{"step", static_cast<int>(step.step)},
            {"name", name_of(step.step)},
            {"title", title_of(step.step)},
            {"state", state},
            {"stops", step.stops},
            {"moves", step.moves},
            {"verdict", step.sentence},
            {"readings", readings},
            {"findings", findings_json(step.findings)},
            {"to_do", step.to_do}};
}

} // namespace

std::string check_report(const Card& card, const Review& review) {
    Json json = {
        {"title", card.title},
        {"problems", review.count(Level::problem)},
        {"cautions", review.count(Level::caution)},
        {"cell",
         {{"current_mA", figure(review.lighting.cell_mA)}, {"volts", figure(review.lighting.cell_V)}}},
        {"leds", leds_json(card, review)},
        {"nets", nets_json(card, review)},
        {"findings", findings_json(review.findings)}};
    return written(json);
}

std::string steps_report(const Card& card, const std::vector<Step>& steps) {
    Json list = Json::array();
    for (const Step& step : steps) {
        Json moves = Json::array();
        for (const Move& move : step.moves) {
            moves.push_back(move_json(move));
        }
        Json proof = Json::array();
        for (const Check& check : step.proof) {
            proof.push_back(check_json(check));
        }
        list.push_back({{"step", static_cast<int>(step.id)},
                        {"name", name_of(step.id)},
                        {"title", step.title},
                        {"goal", step.goal},
                        {"moves", moves},
                        {"proof", proof}});
    }
    return written({{"title", card.title}, {"steps", list}});
}

std::string make_report(const Walk& walk, const MadeFiles& files) {
    Json steps = Json::array();
    for (const StepWalk& step : walk.steps) {
        steps.push_back(walked_json(step));
    }
    const bool through = walk.record.step > kStepCount;
    Json report = {{"title", walk.record.title},
                   {"id", walk.record.id},
                   {"journal", files.journal},
                   {"record", files.record},
                   {"walked", true},
                   {"proved", proved_count(walk.record)},
                   {"stopped_at", through ? Json(nullptr) : Json(walk.record.step)},
                   {"outcome", walk.record.outcome},
                   {"steps", steps}};
    if (!files.copy.empty()) {
        report["copy"] = files.copy;
    }
    return written(report);
}

} // namespace lanternleaf
