#include "cardfile/json_text.h"

#include <array>
#include <cassert>
#include <charconv>
#include <cmath>

namespace lanternleaf::cardfile {

namespace {

constexpr std::size_t kColumns = 110;

std::string scalar_text(const Tree& value) {
    if (value.is_number()) {
        return number_text(value);
    }
    return value.dump(-1, ' ', false, Tree::error_handler_t::replace);
}

// Lists of objects stand one object a line even where they would fit: a moved strip is then one changed line.
bool must_break(const Tree& value) {
    if (!value.is_structured()) {
        return false;
    }
    for (const Tree& item : value) {
        if ((value.is_array() && item.is_object()) || must_break(item)) {
            return true;
        }
    }
    return false;
}

// Writes `value` on one line; false as soon as it grows beyond `room` characters.
bool one_line(const Tree& value, std::size_t room, std::string& out) {
    if (!value.is_structured()) {
        out += scalar_text(value);
    } else if (value.empty()) {
        out += value.is_array() ? "[]" : "{}";
    } else if (value.is_array()) {
        const char* before = "[";
        for (const Tree& item : value) {
            out += before;
            before = ", ";
            if (!one_line(item, room, out)) {
                return false;
            }
        }
        out += "]";
    } else {
        const char* before = "{ ";
        for (const auto& [key, item] : value.get_ref<const Tree::object_t&>()) {
            out += before;
            out += scalar_text(Tree(key));
            out += ": ";
            before = ", ";
            if (!one_line(item, room, out)) {
                return false;
            }
        }
        out += " }";
    }
    return out.size() <= room;
}

// What is left of a line, with one character for the comma.
std::size_t room_after(std::size_t column) {
    return column + 1 < kColumns ? kColumns - 1 - column : 0;
}

bool is_flat(const Tree& list) {
    for (const Tree& item : list) {
        if (item.is_object() || must_break(item)) {
            return false;
        }
    }
    return true;
}

void print(const Tree& value, std::size_t indent, std::size_t column, std::string& out);

// A long list of numbers or points fills its lines.
void print_filled(const Tree& list, std::size_t indent, std::string& out) {
    out += "[\n";
    out.append(indent, ' ');
    std::size_t column = indent;
    for (std::size_t i = 0; i < list.size(); ++i) {
        std::string item;
        if (!one_line(list[i], room_after(indent), item)) {
            item.clear();
            print(list[i], indent, indent, item);
        }
        if (i + 1 < list.size()) {
            item += ',';
        }
        if (column > indent) {
            const bool fits = column + 1 + item.size() <= kColumns;
            out += fits ? ' ' : '\n';
            out.append(fits ? 0 : indent, ' ');
            column = fits ? column + 1 : indent;
        }
        out += item;
        column += item.size();
    }
}

void print(const Tree& value, std::size_t indent, std::size_t column, std::string& out) {
    std::string line;
    const bool breaks = indent == 0 || must_break(value);
    if (!value.is_structured() || value.empty() || (!breaks && one_line(value, room_after(column), line))) {
        if (line.empty()) {
            one_line(value, std::string::npos, line);
        }
        out += line;
        return;
    }
    const std::size_t inner = indent + 2;
    if (value.is_array() && is_flat(value)) {
        print_filled(value, inner, out);
    } else {
        const char* before = value.is_array() ? "[\n" : "{\n";
        for (auto item = value.begin(); item != value.end(); ++item) {
            out += before;
            out.append(inner, ' ');
            before = ",\n";
            std::string key;
            if (value.is_object()) {
                key = scalar_text(Tree(item.key()));
                key += ": ";
            }
            out += key;
            print(item.value(), inner, inner + key.size(), out);
        }
    }
    out += '\n';
    out.append(indent, ' ');
    out += value.is_array() ? ']' : '}';
}

} // namespace

std::string number_text(double value) {
    assert(std::isfinite(value));
    if (!std::isfinite(value) || value == 0.0) {
        return "0";
    }
    // Plain digits where people would write them; std::to_chars alone would write 100000 as 1e+05.
    const double size = std::fabs(value);
    const bool plain = size >= 1e-5 && size < 1e15;
    std::array<char, 64> digits;
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value,
                                   plain ? std::chars_format::fixed : std::chars_format::scientific);
    return {digits.data(), end.ptr};
}

std::string number_text(const Tree& number) {
    return number.is_number_float() ? number_text(number.get<double>()) : number.dump();
}

std::string pretty(const Tree& root) {
    std::string out;
    print(root, 0, 0, out);
    return out + "\n";
}

std::string compact(const Tree& value) {
    std::string out;
    one_line(value, std::string::npos, out);
    return out;
}

void append_extras(Tree& object, const std::string& extras) {
    if (extras.empty()) {
        return;
    }
    const Tree read = Tree::parse(extras, nullptr, false);
    assert(read.is_object());
    if (!read.is_object()) {
        return; // not text that a reader made; there is nothing to keep
    }
    Tree::object_t& members = object.get_ref<Tree::object_t&>();
    for (const auto& [key, value] : read.get_ref<const Tree::object_t&>()) {
        if (!object.contains(key)) {
            members.emplace_back(key, value);
        }
    }
}

} // namespace lanternleaf::cardfile
