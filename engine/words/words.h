// Words: how Lanternleaf speaks to one person: their language, their units, their decimal mark.
// Exists so that no sentence stands in the code: the code names a message and what goes into it, and the
// words files (assets/words/LANGUAGE.json) say it. Files, journals and machine-readable output never pass
// through here.
#pragma once

#include "base/outcome.h"

#include <initializer_list>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

namespace lanternleaf {

/// One value for one {name} of a message. A count also chooses the plural form when its name is "n".
struct Fill {
    std::string_view name;
    std::string text;
    long long count = 0;
    bool counts = false;

    Fill(std::string_view name_, std::string text_) : name(name_), text(std::move(text_)) {}

    Fill(std::string_view name_, const char* text_) : name(name_), text(text_) {}

    Fill(std::string_view name_, int count_)
        : name(name_), text(std::to_string(count_)), count(count_), counts(true) {}

    Fill(std::string_view name_, std::size_t count_)
        : name(name_), text(std::to_string(count_)), count(static_cast<long long>(count_)), counts(true) {}
};

using Fills = std::initializer_list<Fill>;

/// The unit lengths are shown in. Cards are always kept in millimetres.
enum class LengthUnit { mm, inch };

/// The forms a language has for counted things, by Unicode CLDR's cardinal rules for whole numbers
/// (source: Unicode CLDR, "Language Plural Rules"): one message needs exactly these keys.
enum class PluralRule {
    one_other, ///< en, de, es (whose "many" begins at a million, beyond any count here): 1 / all else
    other      ///< no forms: one sentence for every count
};

class Words {
public:
    /// The message of that key, "section.name", with its {name}s filled. A missing key is our own bug: the
    /// English sentence when there is one, else the key in ⟦⟧.
    [[nodiscard]] std::string operator()(std::string_view key, Fills fills = {}) const;
    [[nodiscard]] bool has(std::string_view key) const;

    /// "A", "A and B", "A, B and C".
    [[nodiscard]] std::string list(const std::vector<std::string>& items) const;
    /// As list, with "or".
    [[nodiscard]] std::string either(const std::vector<std::string>& items) const;

    // Figures as base/readout.h rounds them, in this person's units and with this language's decimal mark.
    /// "12 mm", "1.5 mm"; or "1 3/16 in": the nearest 1/32, as a craft ruler has it; below 1/4 in, where that
    /// is too coarse, "0.06 in".
    [[nodiscard]] std::string mm(double mm) const;
    [[nodiscard]] std::string ohm(double ohm) const;
    [[nodiscard]] std::string ohm_range(double low_ohm, double high_ohm) const;
    [[nodiscard]] std::string volts(double volts) const;
    [[nodiscard]] std::string mA(double mA) const;
    [[nodiscard]] std::string hours(double hours) const;
    [[nodiscard]] std::string percent(double fraction) const;
    [[nodiscard]] std::string number(double value, int decimals) const;

    [[nodiscard]] const std::string& language() const { return language_; } ///< "en"

    [[nodiscard]] const std::string& name() const { return name_; } ///< "English", as its speakers say

    [[nodiscard]] LengthUnit unit() const { return unit_; }

    [[nodiscard]] Words with_unit(LengthUnit unit) const;

    /// All keys, sorted; for tests.
    [[nodiscard]] std::vector<std::string> keys() const;
    /// The forms of a message, by name ("" when it has only one); for tests.
    [[nodiscard]] std::vector<std::pair<std::string, std::string>> forms(std::string_view key) const;

    [[nodiscard]] PluralRule plural_rule() const { return rule_; }

private:
    friend Outcome<Words> read_words(const std::string& text, const std::string& file);

    struct Message {
        std::string one;   ///< empty when it has no forms
        std::string other; ///< the sentence
    };

    struct Hash {
        using is_transparent = void;

        std::size_t operator()(std::string_view key) const { return std::hash<std::string_view>{}(key); }
    };

    using Table = std::unordered_map<std::string, Message, Hash, std::equal_to<>>;

    [[nodiscard]] std::string localised(std::string figure) const;
    [[nodiscard]] std::string joined(const std::vector<std::string>& items, std::string_view last) const;

    std::shared_ptr<const Table> table_ = std::make_shared<const Table>();
    std::string language_;
    std::string name_;
    std::string decimal_ = ".";
    PluralRule rule_ = PluralRule::one_other;
    LengthUnit unit_ = LengthUnit::mm;
};

/// A words file's text. Problem: what is wrong with it and where.
[[nodiscard]] Outcome<Words> read_words(const std::string& text, const std::string& file);

/// The English words the program was built with: the language of tests and of everything nobody chose another
/// for.
[[nodiscard]] const Words& english();

} // namespace lanternleaf
