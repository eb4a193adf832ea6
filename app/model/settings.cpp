// Settings and the safety table: small files read once at the start.
#include "files/files.h"
#include "model/library.h"

#include <cstdio>
#include <cstdlib>
#include <sstream>

namespace lanternleaf {

namespace {

std::string settings_path(const Surroundings& around) {
    return (around.device.empty() ? around.library : around.device) + "/settings.txt";
}

} // namespace

// One "key value" a line: a person can mend it, and a line that makes no sense costs only itself.
Settings read_settings(const Surroundings& around) {
    Settings settings;
    const Outcome<std::string> text = read_file(settings_path(around));
    if (!text) {
        return settings;
    }
    std::istringstream lines(text.value());
    for (std::string key, value; lines >> key >> value;) {
        if (key == "night") {
            settings.night = value == "yes";
        } else if (key == "reduced_motion") {
            settings.reduced_motion = value == "yes";
        } else if (key == "left_handed") {
            settings.left_handed = value == "yes";
        } else if (key == "kids") {
            settings.kids = value == "yes";
        } else if (key == "text_scale") {
            const double scale = std::atof(value.c_str());
            settings.text_scale = scale >= 0.85 && scale <= 2.0 ? scale : 1.0;
        } else if (key == "px_per_mm") {
            const double scale = std::atof(value.c_str());
            settings.px_per_mm = scale >= 1.0 && scale <= 100.0 ? scale : 0.0;
        } else if (key == "region") {
            settings.region = value;
        } else if (key == "language") {
            settings.language = value;
        } else if (key == "inches") {
            settings.inches = value == "yes";
        }
    }
    return settings;
}

void write_settings(const Surroundings& around, const Settings& settings) {
    char scale[32];
    std::snprintf(scale, sizeof scale, "%.2f", settings.text_scale);
    char glass[32];
    std::snprintf(glass, sizeof glass, "%.4f", settings.px_per_mm);
    const auto yes = [](bool on) { return on ? "yes" : "no"; };
    const std::string text = std::string("night ") + yes(settings.night) + "\nreduced_motion " +
                             yes(settings.reduced_motion) + "\nleft_handed " + yes(settings.left_handed) +
                             "\nkids " + yes(settings.kids) + "\ntext_scale " + scale + "\npx_per_mm " +
                             glass + "\nregion " + settings.region + "\nlanguage " + settings.language +
                             "\ninches " + yes(settings.inches) + "\n";
    if (make_folder(around.device.empty() ? around.library : around.device).ok()) {
        static_cast<void>(write_file(settings_path(around), text).ok());
    }
}

Words load_words(const Surroundings& around, const Settings& settings) {
    const LengthUnit unit = settings.inches ? LengthUnit::inch : LengthUnit::mm;
    // A language is a file's name, so it is held to letters and "-": settings are a file people may have
    // changed.
    const bool plain = settings.language.find_first_not_of(
                           "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ-") == std::string::npos;
    if (plain && settings.language != english().language()) {
        const std::string path = around.assets + "/words/" + settings.language + ".json";
        const Outcome<std::string> text = read_file(path);
        const Outcome<Words> words = text ? read_words(text.value(), path) : Outcome<Words>(text.problem());
        if (words) {
            return words.value().with_unit(unit);
        }
    }
    return english().with_unit(unit);
}

bool told_as_in_files(const Words& words) {
    return words.language() == english().language() && words.unit() == LengthUnit::mm;
}

Outcome<RegionTable> load_regions(const Surroundings& around) {
    const std::string path = around.assets + "/safety/regions.json";
    const Outcome<std::string> text = read_file(path);
    return text ? read_regions(text.value(), path) : Outcome<RegionTable>(text.problem());
}

} // namespace lanternleaf
