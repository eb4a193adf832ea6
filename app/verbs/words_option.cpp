#include "verbs/words_option.h"

#include "files/files.h"
#include "verbs/plain_text.h"

namespace lanternleaf {

Outcome<Words> asked_words(const Arguments& args, const VerbSurroundings& around) {
    Words words = english();
    if (args.has("--json")) {
        return words;
    }
    if (args.has("--language") && args.at("--language") != words.language()) {
        const std::string& language = args.at("--language");
        if (language != "de" && language != "es") {
            return Problem{"--language", "", "expected en, de or es, found " + printable(language)};
        }
        const std::string path = around.assets + "/words/" + language + ".json";
        const Outcome<std::string> text = read_file(path);
        if (!text) {
            return text.problem();
        }
        Outcome<Words> read = read_words(text.value(), path);
        if (!read) {
            return read.problem();
        }
        words = std::move(read).value();
    }
    return args.has("--inches") ? words.with_unit(LengthUnit::inch) : words;
}

} // namespace lanternleaf
