#include "safety/regions.h"

#include <nlohmann/json.hpp>

namespace lanternleaf {

namespace {

using nlohmann::json;

Problem expected(const std::string& file, const std::string& place, const std::string& what) {
    return {file, place, what};
}

} // namespace

Outcome<RegionTable> read_regions(const std::string& text, const std::string& file) {
    const json document = json::parse(text, nullptr, false);
    if (document.is_discarded() || !document.is_object()) {
        return expected(file, "", "expected a JSON object with a list of regions");
    }
    RegionTable table;
    const auto text_at = [](const json& object, const char* key, std::string& out) {
        const auto found = object.find(key);
        if (found == object.end() || !found->is_string()) {
            return false;
        }
        out = found->get<std::string>();
        return true;
    };
    if (!text_at(document, "checked", table.checked) ||
        !text_at(document, "checked_how", table.checked_how)) {
        return expected(file, "/checked", "expected the date and the manner of the last check, as text");
    }
    const auto list = document.find("regions");
    if (list == document.end() || !list->is_array() || list->empty()) {
        return expected(file, "/regions", "expected a list with at least one region");
    }
    bool any = false;
    for (std::size_t i = 0; i < list->size(); ++i) {
        const json& entry = (*list)[i];
        const std::string place = "/regions/" + std::to_string(i);
        Region region;
        if (!entry.is_object()) {
            return expected(file, place, "expected an object");
        }
        const std::pair<const char*, std::string*> fields[] = {
            {"id", &region.id},     {"name", &region.name},    {"ambulance", &region.ambulance},
            {"help", &region.help}, {"first", &region.first},  {"help_name", &region.help_name},
            {"food", &region.food}, {"source", &region.source}};
        for (const auto& [key, target] : fields) {
            if (!text_at(entry, key, *target)) {
                return expected(file, place + "/" + key, "expected text");
            }
        }
        any = any || region.id == "any";
        table.regions.push_back(std::move(region));
    }
    if (!any) {
        return expected(file, "/regions", "expected a region with the id \"any\"");
    }
    return table;
}

const Region& region_of(const RegionTable& table, const std::string& id) {
    const Region* fallback = &table.regions.front();
    for (const Region& region : table.regions) {
        if (region.id == id) {
            return region;
        }
        if (region.id == "any") {
            fallback = &region;
        }
    }
    return *fallback;
}

std::string spoken_date(const std::string& iso_date) {
    static const char* const kMonths[] = {"January",   "February", "March",    "April",
                                          "May",       "June",     "July",     "August",
                                          "September", "October",  "November", "December"};
    if (iso_date.size() != 10 || iso_date[4] != '-' || iso_date[7] != '-') {
        return iso_date;
    }
    const int month = (iso_date[5] - '0') * 10 + (iso_date[6] - '0');
    const int day = (iso_date[8] - '0') * 10 + (iso_date[9] - '0');
    if (month < 1 || month > 12 || day < 1 || day > 31) {
        return iso_date;
    }
    return std::to_string(day) + " " + kMonths[month - 1] + " " + iso_date.substr(0, 4);
}

} // namespace lanternleaf
