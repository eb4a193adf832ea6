#include "report/readings_table.h"

#include "base/readout.h"

#include <charconv>

namespace lanternleaf {

namespace {

std::string number(double value) {
    char text[64];
    const auto end = std::to_chars(text, text + sizeof text, value);
    return {text, end.ptr};
}

void add_line(std::string& out, std::initializer_list<std::string> fields) {
    bool first = true;
    for (const std::string& field : fields) {
        if (!first) {
            out += ',';
        }
        first = false;
        out += field;
    }
    out += "\r\n";
}

// Words a person may have typed, as a field no spreadsheet runs.
std::string words(const std::string& text) {
    const bool formula = !text.empty() && std::string("=+-@\t\r").find(text.front()) != std::string::npos;
    std::string safe = formula ? "'" : "";
    safe += text;
    return csv_field(safe);
}

} // namespace

std::string csv_field(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) {
        return text;
    }
    std::string out = "\"";
    for (const char c : text) {
        out += c;
        if (c == '"') {
            out += c;
        }
    }
    out += '"';
    return out;
}

std::string readings_table(const Story& story) {
    std::string out;
    add_line(out, {"build", "card", "step", "step_title", "check", "check_title", "reading", "value", "unit",
                   "low", "high", "as_expected", "by", "step_seconds", "stops"});
    for (const StoryStep& step : story.steps) {
        for (const StoryReading& reading : step.readings) {
            add_line(out, {words(story.id), words(story.title), std::to_string(step.number),
                           words(step.title), words(reading.check), words(reading.title),
                           words(reading.value), reading.has_number ? number(reading.value_si) : "",
                           reading.unit, reading.has_number ? number(reading.low) : "",
                           reading.has_number ? number(reading.high) : "", reading.fits ? "yes" : "no",
                           reading.simulated  ? "simulated"
                           : reading.by_meter ? "meter"
                                              : "eye",
                           std::to_string(step.time.worked_s), std::to_string(step.stops)});
        }
    }
    return out;
}

} // namespace lanternleaf
