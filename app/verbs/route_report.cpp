#include "verbs/route_report.h"

#include "verbs/json_figure.h"

#include <nlohmann/json.hpp>

namespace lanternleaf {

std::string route_report(const RouteResult& result, const std::string& file) {
    using Json = nlohmann::ordered_json;
    Json json = {{"clean", result.clean()},
                 {"why_not", result.why_not.empty() ? Json(nullptr) : Json(result.why_not)},
                 {"move_led", result.move_led.empty() ? Json(nullptr) : Json(result.move_led)},
                 {"file", nullptr}};
    if (!result.suggestions.empty()) {
        const Suggestion& best = result.suggestions.front();
        Json findings = Json::array();
        for (const Finding& finding : best.findings) {
            findings.push_back({{"rule", finding.rule},
                                {"level", name_of(finding.level)},
                                {"at_mm", {json_figure(finding.at_mm.x), json_figure(finding.at_mm.y)}},
                                {"parts", finding.parts},
                                {"text", finding.text},
                                {"fix", finding.fix}});
        }
        json["file"] = file;
        json["length_mm"] = json_figure(best.report.length_mm);
        json["bound_mm"] = json_figure(best.report.bound_mm);
        json["ratio"] = json_figure(best.report.ratio);
        json["folds"] = best.report.folds;
        json["joints"] = best.report.joints;
        json["crossings"] = best.report.crossings;
        json["cuts"] = best.report.cuts;
        json["turned"] = best.report.turned;
        json["findings"] = findings;
    }
    return json_text(json);
}

} // namespace lanternleaf
