// JSON cursor: a value of the file that knows its own place, and says in one sentence what was expected
// there. Exists so that the readers of cards and parts state only what a file must hold; every check that
// fails throws Refused with the place and both halves of the sentence ("expected two numbers, found the text
// \"left\"").
#pragma once

#include "card/card.h"
#include "cardfile/json_tree.h"
#include "geometry/vec2.h"

#include <initializer_list>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace lanternleaf::cardfile {

/// What a number may be. `above`: low itself is not allowed.
struct Range {
    double low = 0.0;
    double high = 0.0;
    bool above = false;
    const char* unit = ""; ///< " mm", with its space; "" for plain numbers
};

/// Coordinates stay within ten metres: no sheet is larger, and nothing later needs to fear an overflow.
inline constexpr Range kPlace{-10'000, 10'000, false, " mm"};
inline constexpr Range kSize{0, 10'000, true, " mm"};
inline constexpr Range kTurn{-10'000, 10'000, false, " degrees"};
inline constexpr std::size_t kMostCharacters = 10'000;

class Cursor {
public:
    Cursor(const Tree& value, std::string place) : value_(&value), place_(std::move(place)) {}

    [[nodiscard]] const Tree& value() const { return *value_; }

    [[nodiscard]] const std::string& place() const { return place_; }

    /// "expected WHAT, found THIS": THIS is worked out from the value.
    [[noreturn]] void refuse(const std::string& what) const;
    /// The whole sentence is the caller's.
    [[noreturn]] void refuse_saying(const std::string& sentence) const;

    [[nodiscard]] double number(Range range) const;
    [[nodiscard]] int integer(int low, int high) const;
    /// Two numbers: a place or displacement.
    [[nodiscard]] Vec2 point() const;
    /// Two numbers above zero.
    [[nodiscard]] Vec2 size() const;
    [[nodiscard]] std::vector<Vec2> points(std::size_t least, std::size_t most) const;
    /// Text of at most kMostCharacters, of any number of lines.
    [[nodiscard]] std::string text() const;
    /// Text that names something: not empty, one line.
    [[nodiscard]] std::string name() const;
    /// The elements of a list of at most `most`.
    [[nodiscard]] std::vector<Cursor> items(std::size_t most, const char* what) const;

    /// One of the words of an enumeration.
    template <class E>
    [[nodiscard]] E choice(std::initializer_list<std::pair<const char*, E>> words) const {
        std::vector<std::string> known;
        for (const auto& [word, meaning] : words) {
            if (is_text(word)) {
                return meaning;
            }
            known.emplace_back(word);
        }
        refuse(one_of(known));
    }

private:
    [[nodiscard]] bool is_text(const char* word) const;
    [[nodiscard]] static std::string one_of(const std::vector<std::string>& words);
    [[nodiscard]] static Vec2 pair_of(const Tree& value, const std::string& place, Range range);

    const Tree* value_;
    std::string place_;
};

/// The members of an object. Every key that the reader asks for is a known one; what is left over are extras.
class Members {
public:
    explicit Members(const Cursor& object);

    [[nodiscard]] Cursor need(const char* key);
    [[nodiscard]] std::optional<Cursor> maybe(const char* key);
    /// The keys nobody asked for, as the JSON text of an object; "" when there are none.
    [[nodiscard]] std::string extras() const;

private:
    Cursor object_;
    std::set<std::string> known_;
};

/// The members of an object whose keys are ids: (id, value), at most `most`.
[[nodiscard]] std::vector<std::pair<std::string, Cursor>> entries(const Cursor& object, std::size_t most);

} // namespace lanternleaf::cardfile
