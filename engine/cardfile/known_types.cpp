#include "cardfile/known_types.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <string_view>

namespace lanternleaf::cardfile {

namespace {

// Levenshtein's distance by the usual row of the table; ids are short, longer ones are compared by their
// beginning.
std::size_t edits_between(std::string_view a, std::string_view b) {
    a = a.substr(0, 64);
    b = b.substr(0, 64);
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U);
            diagonal = row[j];
            row[j] = std::min({changed, row[j] + 1, row[j - 1] + 1});
        }
    }
    return row[b.size()];
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// True for "LIR2032" and "lir 2032", false for "my-ml-cell": the letters must be the code in front of its
// digits.
bool has_code(const std::string& id, std::string_view letters) {
    if (id.size() < letters.size()) {
        return false;
    }
    for (std::size_t i = 0; i < letters.size(); ++i) {
        const char upper = id[i] >= 'a' && id[i] <= 'z' ? static_cast<char>(id[i] - 'a' + 'A') : id[i];
        if (upper != letters[i]) {
            return false;
        }
    }
    std::size_t next = letters.size();
    while (next < id.size() && (id[next] == ' ' || id[next] == '-')) {
        ++next;
    }
    return next == id.size() || is_digit(id[next]);
}

} // namespace

std::vector<std::string> nearest_ids(const std::string& id, const std::vector<std::string>& known) {
    std::vector<std::pair<std::size_t, std::string>> ranked;
    for (const std::string& name : known) {
        ranked.emplace_back(edits_between(id, name), name);
    }
    std::sort(ranked.begin(), ranked.end());
    ranked.erase(std::unique(ranked.begin(), ranked.end()), ranked.end());
    std::vector<std::string> nearest;
    for (std::size_t i = 0; i < ranked.size() && i < 3; ++i) {
        nearest.push_back(ranked[i].second);
    }
    return nearest;
}

void refuse_unknown(const Cursor& at, const std::string& id, const char* sort,
                    const std::vector<std::string>& known) {
    std::string said = "expected a known " + std::string(sort);
    const std::vector<std::string> nearest = nearest_ids(id, known);
    for (std::size_t i = 0; i < nearest.size(); ++i) {
        said += i == 0 ? ", such as " : i + 1 == nearest.size() ? " or " : ", ";
        said += '"';
        said += shortened(nearest[i], 40);
        said += '"';
    }
    at.refuse_saying(said + "; found \"" + shortened(id, 40) + "\"");
}

void require_primary(const Cursor& at, const std::string& id) {
    struct Code {
        const char* letters;
        const char* what;
    };

    // IEC 60086-1 names primary systems by letter (C: lithium manganese dioxide, P: zinc-air); LIR, ML and VL
    // are the makers' codes of rechargeable coin cells (common practice).
    static constexpr std::array<Code, 4> kOthers = {{{"LIR", "a rechargeable lithium-ion cell"},
                                                     {"ML", "a rechargeable manganese lithium cell"},
                                                     {"VL", "a rechargeable vanadium lithium cell"},
                                                     {"PR", "a zinc-air cell"}}};
    for (const Code& other : kOthers) {
        if (has_code(id, other.letters)) {
            at.refuse_saying("expected a primary lithium manganese dioxide cell (code CR), found \"" +
                             shortened(id, 40) + "\", " + other.what);
        }
    }
}

} // namespace lanternleaf::cardfile
