#include "safety/regions.h"

#include <nlohmann/json.hpp>

namespace lanternleaf {

namespace {

using nlohmann::json;

Problem expected(const std::string& file, const std::string& place, const std::string& what) {
    return {file, place, what};
}

// `month_key` is the beginning of the month's message, its number the end.
std::string dated(const std::string& iso_date, const Words& words, const char* whole, const char* month_key) {
    if (iso_date.size() != 10 || iso_date[4] != '-' || iso_date[7] != '-') {
        return iso_date;
    }
    const int month = (iso_date[5] - '0') * 10 + (iso_date[6] - '0');
    const int day = (iso_date[8] - '0') * 10 + (iso_date[9] - '0');
    if (month < 1 || month > 12 || day < 1 || day > 31) {
        return iso_date;
    }
    return words(whole, {{"day", day},
                         {"month", words(std::string(month_key).append(std::to_string(month)))},
                         {"year", iso_date.substr(0, 4)}});
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
    if (const auto in = document.find("in"); in != document.end()) {
        for (const auto& [language, said] : in->items()) {
            if (!said.is_object() || !text_at(said, "checked_how", table.checked_how_in[language])) {
                return expected(file, "/in/" + language + "/checked_how", "expected text");
            }
        }
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
        if (const auto in = entry.find("in"); in != entry.end()) {
            for (const auto& [language, said] : in->items()) {
                const std::string there = place + "/in/" + language;
                if (!said.is_object()) {
                    return expected(file, there, "expected an object");
                }
                RegionWords& words = region.in[language];
                const std::pair<const char*, std::string*> told_fields[] = {{"name", &words.name},
                                                                            {"help_name", &words.help_name},
                                                                            {"first", &words.first},
                                                                            {"food", &words.food}};
                for (const auto& [key, target] : told_fields) {
                    if (!text_at(said, key, *target)) {
                        return expected(file, there + "/" + key, "expected text");
                    }
                }
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

Region built_in_region(const Words& words) {
    Region region;
    region.id = "any";
    region.name = words("safety.any_name");
    region.first = words("safety.any_first");
    region.food = words("safety.any_food");
    region.source = "built in";
    return region;
}

Region told(const Region& region, const Words& words) {
    Region out = region;
    if (const auto said = region.in.find(words.language()); said != region.in.end()) {
        out.name = said->second.name;
        out.help_name = said->second.help_name;
        out.first = said->second.first;
        out.food = said->second.food;
    }
    return out;
}

std::string checked_how(const RegionTable& table, const Words& words) {
    const auto said = table.checked_how_in.find(words.language());
    return said == table.checked_how_in.end() ? table.checked_how : said->second;
}

std::string spoken_date(const std::string& iso_date, const Words& words) {
    return dated(iso_date, words, "safety.date", "safety.month_");
}

std::string short_date(const std::string& iso_date, const Words& words) {
    return dated(iso_date, words, "safety.short_date", "safety.short_month_");
}

} // namespace lanternleaf
