// A words file's text made into Words: sections of messages, each a sentence or its plural forms.
#include "words/words.h"

#include <nlohmann/json.hpp>

namespace lanternleaf {

namespace {

using Json = nlohmann::json;

// Every "{" opens a name of letters, digits and "_" that a "}" closes.
bool well_formed(const std::string& sentence) {
    for (std::size_t at = 0; at < sentence.size(); ++at) {
        if (sentence[at] == '}') {
            return false;
        }
        if (sentence[at] != '{') {
            continue;
        }
        const std::size_t close = sentence.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_", at + 1);
        if (close == std::string::npos || sentence[close] != '}' || close == at + 1) {
            return false;
        }
        at = close;
    }
    return true;
}

std::string text_at(const Json& json, const char* key) {
    const auto found = json.find(key);
    return found != json.end() && found->is_string() ? found->get<std::string>() : std::string();
}

} // namespace

Outcome<Words> read_words(const std::string& text, const std::string& file) {
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_object()) {
        return Problem{file, "", "expected a JSON object with words"};
    }
    if (text_at(json, "kind") != "words" || !json.contains("lanternleaf") || json["lanternleaf"] != 1) {
        return Problem{file, "/kind", R"(expected "lanternleaf": 1 and "kind": "words")"};
    }
    Words words;
    words.language_ = text_at(json, "language");
    words.name_ = text_at(json, "name");
    words.decimal_ = text_at(json, "decimal");
    if (words.language_.empty() || words.name_.empty() || words.decimal_.empty()) {
        return Problem{file, "", R"(expected "language", "name" and "decimal" as words)"};
    }
    const std::string plural = text_at(json, "plural");
    if (plural != "one-other" && plural != "other") {
        return Problem{file, "/plural", R"(expected "one-other" or "other")"};
    }
    words.rule_ = plural == "other" ? PluralRule::other : PluralRule::one_other;
    if (!json.contains("say") || !json["say"].is_object()) {
        return Problem{file, "/say", "expected an object of sections"};
    }
    Words::Table table;
    for (const auto& [section, messages] : json["say"].items()) {
        const std::string place = "/say/" + section;
        if (!messages.is_object()) {
            return Problem{file, place, "expected an object of messages"};
        }
        for (const auto& [name, value] : messages.items()) {
            Words::Message message;
            if (value.is_string()) {
                message.other = value.get<std::string>();
            } else if (value.is_object() && value.size() == 2 && words.rule_ == PluralRule::one_other) {
                message.one = text_at(value, "one");
                message.other = text_at(value, "other");
            }
            if (message.other.empty() || (value.is_object() && message.one.empty())) {
                return Problem{file, place + "/" + name, "expected a sentence, or its plural forms"};
            }
            if (!well_formed(message.one) || !well_formed(message.other)) {
                return Problem{file, place + "/" + name, "expected every { to open a name that a } closes"};
            }
            std::string key = section;
            key.append(".").append(name);
            table.emplace(std::move(key), std::move(message));
        }
    }
    words.table_ = std::make_shared<const Words::Table>(std::move(table));
    return words;
}

} // namespace lanternleaf
