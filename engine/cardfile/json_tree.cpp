#include "cardfile/json_tree.h"

#include <algorithm>
#include <unordered_set>
#include <utility>
#include <vector>

namespace lanternleaf::cardfile {

namespace {

bool continues_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

std::string line_and_column(std::string_view text, std::size_t index) {
    const std::string_view before = text.substr(0, std::min(index, text.size()));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const std::size_t start = before.rfind('\n') + 1; // npos + 1 is 0: the first line
    const std::size_t column = 1 + characters(before.substr(start));
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

// The library says "[...] parse error at line 1, column 2: syntax error while parsing value - unexpected ']';
// expected end of input". Of that only the last two pieces help a person.
std::string spoken_syntax(const std::string& said) {
    const auto piece = [&said](const std::string& from, const std::string& to) {
        std::size_t start = said.find(from);
        if (start == std::string::npos) {
            return std::string();
        }
        start += from.size();
        return said.substr(start, said.find(to, start) - start);
    };
    std::string found = piece(" - ", ";");
    if (found.rfind("unexpected ", 0) == 0) {
        found = found.substr(11);
    }
    const std::string wanted = piece("; expected ", ";");
    return "expected " + (wanted.empty() ? "valid JSON" : wanted) + ", found " +
           (found.empty() ? "something else" : shortened(found, 120));
}

// Builds the tree from the parser's events. The parser itself does not recurse, and the walk below stops at
// kMostDepth, so no file can exhaust the stack.
class Builder : public nlohmann::json_sax<Tree> {
public:
    explicit Builder(std::string_view text) : text_(text) {}

    bool null() override { return add(nullptr); }

    bool boolean(bool value) override { return add(value); }

    bool number_integer(number_integer_t value) override { return add(value); }

    bool number_unsigned(number_unsigned_t value) override { return add(value); }

    bool number_float(number_float_t value, const string_t&) override { return add(value); }

    bool string(string_t& value) override { return add(std::move(value)); }

    bool binary(binary_t&) override { return false; } // JSON text has none

    bool start_object(std::size_t) override { return open(true); }

    bool start_array(std::size_t) override { return open(false); }

    bool key(string_t& value) override {
        Level& level = levels_.back();
        if (!level.seen.insert(value).second) {
            return refuse(place(), "expected each key once, found \"" + shortened(value, 40) + "\" twice");
        }
        level.keys.push_back(std::move(value));
        return true;
    }

    bool end_object() override {
        Level level = close();
        Tree made = Tree::object();
        Tree::object_t& members = made.get_ref<Tree::object_t&>();
        members.reserve(level.keys.size());
        for (std::size_t i = 0; i < level.keys.size(); ++i) {
            members.emplace_back(std::move(level.keys[i]), std::move(level.values[i]));
        }
        return put(std::move(made));
    }

    bool end_array() override {
        Level level = close();
        Tree made = Tree::array();
        made.get_ref<Tree::array_t&>() = std::move(level.values);
        return put(std::move(made));
    }

    bool parse_error(std::size_t position, const std::string&,
                     const nlohmann::detail::exception& error) override {
        const std::string where = line_and_column(text_, position == 0 ? 0 : position - 1);
        if (error.id == 406) { // a number beyond what a double can hold
            return refuse(where, "expected a number within +-1e308, found a larger one");
        }
        return refuse(where, spoken_syntax(error.what()));
    }

    [[nodiscard]] const Problem& problem() const { return problem_; }

    [[nodiscard]] Tree take() { return std::move(root_); }

private:
    struct Level {
        bool is_object = false;
        std::vector<std::string> keys;
        std::unordered_set<std::string> seen;
        Tree::array_t values;
    };

    bool refuse(std::string where, std::string expected) {
        problem_ = {"", std::move(where), std::move(expected)};
        return false;
    }

    // Shows no more than the first few steps: a place sixty deep helps nobody.
    [[nodiscard]] std::string place() const {
        std::string path;
        for (std::size_t i = 0; i + 1 < levels_.size(); ++i) {
            if (i == 6) {
                return path + "/…";
            }
            const Level& level = levels_[i];
            path = level.is_object ? place_below(path, level.keys.back())
                                   : place_below(path, level.values.size());
        }
        return path;
    }

    bool open(bool is_object) {
        if (levels_.size() == kMostDepth) {
            return refuse(place(), "expected at most " + std::to_string(kMostDepth) +
                                       " lists or objects within one another, found more");
        }
        levels_.emplace_back();
        levels_.back().is_object = is_object;
        return true;
    }

    Level close() {
        Level level = std::move(levels_.back());
        levels_.pop_back();
        return level;
    }

    bool add(Tree value) { return put(std::move(value)); }

    bool put(Tree value) {
        if (++count_ > kMostValues) {
            return refuse("", "expected at most " + std::to_string(kMostValues) + " values, found more");
        }
        if (levels_.empty()) {
            root_ = std::move(value);
        } else {
            levels_.back().values.push_back(std::move(value));
        }
        return true;
    }

    std::string_view text_;
    std::vector<Level> levels_;
    std::size_t count_ = 0;
    Tree root_;
    Problem problem_;
};

} // namespace

Tree parse_tree(const std::string& text) {
    if (text.size() > kMostTextBytes) {
        throw Refused{{"", "", "expected at most " + std::to_string(kMostTextBytes) + " bytes, found more"}};
    }
    // The library takes a zero byte for the end of the text and would not look at what follows.
    if (const std::size_t zero = text.find('\0'); zero != std::string::npos) {
        throw Refused{{"", line_and_column(text, zero), "expected text, found a zero byte"}};
    }
    Builder builder(text);
    if (!Tree::sax_parse(text, &builder)) {
        throw Refused{builder.problem()};
    }
    return builder.take();
}

std::size_t characters(std::string_view text) {
    return text.size() -
           static_cast<std::size_t>(std::count_if(text.begin(), text.end(), continues_character));
}

std::string shortened(std::string_view text, std::size_t most) {
    std::string shown;
    std::size_t count = 0;
    for (const char c : text) {
        if (!continues_character(c) && count++ == most) {
            return shown + "…";
        }
        const auto code = static_cast<unsigned char>(c);
        shown += code < 0x20U || code == 0x7FU ? '?' : c;
    }
    return shown;
}

std::string place_below(const std::string& place, std::string_view key) {
    std::string step;
    for (const char c : shortened(key, 60)) {
        step += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
    }
    return place + "/" + step;
}

std::string place_below(const std::string& place, std::size_t index) {
    return place + "/" + std::to_string(index);
}

} // namespace lanternleaf::cardfile
