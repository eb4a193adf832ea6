#include "cardfile/json_cursor.h"

#include "cardfile/json_text.h"

#include <cmath>

namespace lanternleaf::cardfile {

namespace {

std::string counted(std::size_t count, const char* one) {
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

std::string found(const Tree& value) {
    switch (value.type()) {
    case Tree::value_t::null:
        return "null";
    case Tree::value_t::boolean:
        return value.get<bool>() ? "true" : "false";
    case Tree::value_t::string:
        return "the text \"" + shortened(value.get_ref<const std::string&>(), 40) + "\"";
    case Tree::value_t::array: {
        for (const Tree& item : value) {
            if (!item.is_number()) {
                return "a list of " + counted(value.size(), "value");
            }
        }
        return value.empty() ? "an empty list" : "a list of " + counted(value.size(), "number");
    }
    case Tree::value_t::object:
        return value.empty() ? "an empty object" : "an object";
    default:
        return "the number " + number_text(value);
    }
}

std::string spoken(Range range, const char* what) {
    const std::string low = number_text(range.low);
    const std::string high = number_text(range.high);
    const std::string span = range.above ? "above " + low + " and up to " + high : low + " to " + high;
    return std::string(what) + " " + (range.above ? "" : "from ") + span + range.unit;
}

bool within(double value, Range range) {
    return std::isfinite(value) && value <= range.high &&
           (range.above ? value > range.low : value >= range.low);
}

[[noreturn]] void refuse_at(const std::string& place, const Tree& value, const std::string& what) {
    throw Refused{{"", place, "expected " + what + ", found " + found(value)}};
}

} // namespace

void Cursor::refuse(const std::string& what) const {
    refuse_at(place_, *value_, what);
}

void Cursor::refuse_saying(const std::string& sentence) const {
    throw Refused{{"", place_, sentence}};
}

double Cursor::number(Range range) const {
    if (!value_->is_number() || !within(value_->get<double>(), range)) {
        refuse(spoken(range, "a number"));
    }
    return value_->get<double>();
}

int Cursor::integer(int low, int high) const {
    const std::string what = "a whole number from " + std::to_string(low) + " to " + std::to_string(high);
    if (!value_->is_number()) {
        refuse(what);
    }
    // 2.0 is the whole number 2 in JSON, as it is in JSON Schema.
    const double given = value_->get<double>();
    if (!(given >= low && given <= high) || given != std::floor(given)) {
        refuse(what);
    }
    return static_cast<int>(given);
}

Vec2 Cursor::pair_of(const Tree& value, const std::string& place, Range range) {
    if (!value.is_array() || value.size() != 2 || !value[0].is_number() || !value[1].is_number()) {
        refuse_at(place, value, "two numbers");
    }
    for (std::size_t i = 0; i < 2; ++i) {
        if (!within(value[i].get<double>(), range)) {
            refuse_at(place_below(place, i), value[i], spoken(range, "a number"));
        }
    }
    return {value[0].get<double>(), value[1].get<double>()};
}

Vec2 Cursor::point() const {
    return pair_of(*value_, place_, kPlace);
}

Vec2 Cursor::size() const {
    return pair_of(*value_, place_, kSize);
}

std::vector<Vec2> Cursor::points(std::size_t least, std::size_t most) const {
    if (!value_->is_array() || value_->size() < least || value_->size() > most) {
        refuse("a list of " + std::to_string(least) + " to " + std::to_string(most) + " points");
    }
    std::vector<Vec2> made;
    made.reserve(value_->size());
    for (std::size_t i = 0; i < value_->size(); ++i) {
        made.push_back(pair_of((*value_)[i], place_below(place_, i), kPlace));
    }
    return made;
}

std::string Cursor::text() const {
    if (!value_->is_string()) {
        refuse("text");
    }
    const std::string& given = value_->get_ref<const std::string&>();
    if (characters(given) > kMostCharacters) {
        refuse("text of at most " + std::to_string(kMostCharacters) + " characters");
    }
    if (given.find('\0') != std::string::npos) {
        refuse("text without zero characters");
    }
    return given;
}

std::string Cursor::name() const {
    std::string given = text();
    if (given.empty()) {
        refuse("a name");
    }
    for (const char c : given) {
        if (static_cast<unsigned char>(c) < 0x20U || c == 0x7F) {
            refuse("a name on one line, without control characters");
        }
    }
    return given;
}

std::vector<Cursor> Cursor::items(std::size_t most, const char* what) const {
    if (!value_->is_array()) {
        refuse(std::string("a list of ") + what);
    }
    if (value_->size() > most) {
        refuse_saying("expected at most " + std::to_string(most) + " " + what + ", found " +
                      std::to_string(value_->size()));
    }
    std::vector<Cursor> made;
    made.reserve(value_->size());
    for (std::size_t i = 0; i < value_->size(); ++i) {
        made.emplace_back((*value_)[i], place_below(place_, i));
    }
    return made;
}

bool Cursor::is_text(const char* word) const {
    return value_->is_string() && value_->get_ref<const std::string&>() == word;
}

std::string Cursor::one_of(const std::vector<std::string>& words) {
    std::string said;
    for (std::size_t i = 0; i < words.size(); ++i) {
        said += i == 0 ? "" : i + 1 == words.size() ? " or " : ", ";
        said += '"';
        said += words[i];
        said += '"';
    }
    return said;
}

Members::Members(const Cursor& object) : object_(object) {
    if (!object.value().is_object()) {
        object.refuse("an object");
    }
}

Cursor Members::need(const char* key) {
    if (std::optional<Cursor> member = maybe(key)) {
        return *member;
    }
    object_.refuse_saying(std::string("expected the key \"") + key + "\" here, found none");
}

std::optional<Cursor> Members::maybe(const char* key) {
    known_.insert(key);
    const auto member = object_.value().find(key);
    if (member == object_.value().end()) {
        return std::nullopt;
    }
    return Cursor(*member, place_below(object_.place(), key));
}

std::string Members::extras() const {
    Tree left = Tree::object();
    Tree::object_t& members = left.get_ref<Tree::object_t&>();
    for (const auto& [key, value] : object_.value().get_ref<const Tree::object_t&>()) {
        if (known_.count(key) == 0) {
            members.emplace_back(key, value);
        }
    }
    return left.empty() ? std::string() : compact(left);
}

std::vector<std::pair<std::string, Cursor>> entries(const Cursor& object, std::size_t most) {
    if (!object.value().is_object()) {
        object.refuse("an object of named types");
    }
    if (object.value().size() > most) {
        object.refuse_saying("expected at most " + std::to_string(most) + " entries, found " +
                             std::to_string(object.value().size()));
    }
    std::vector<std::pair<std::string, Cursor>> made;
    for (const auto& [key, value] : object.value().get_ref<const Tree::object_t&>()) {
        const Cursor below(value, place_below(object.place(), key));
        const Tree as_value(key);
        (void)Cursor(as_value, below.place()).name(); // an id obeys the rules of any name
        made.emplace_back(key, below);
    }
    return made;
}

} // namespace lanternleaf::cardfile
