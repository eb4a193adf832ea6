#include "view/finding_rows.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr std::size_t kMostNamed = 6;

/// Findings that are one thing to do share a row.
enum class Kind { single, no_tape, short_of_strip, one_metal };

struct Key {
    Kind kind = Kind::single;
    std::string strip; ///< for short_of_strip
    friend bool operator==(const Key&, const Key&) = default;
};

std::string owner(const std::string& pad) {
    return pad.substr(0, pad.size() - 1);
}

// What a finding of led-not-reached names tells its kind: the pad alone; the pad and the strip it misses; the
// pad and its own LED. Several pads on one dead strip are one finding already.
Key key_of(const Finding& finding) {
    if (finding.rule != "led-not-reached" || finding.parts.empty()) {
        return {};
    }
    if (finding.parts.size() == 1) {
        return {Kind::no_tape, ""};
    }
    if (finding.parts[1] == owner(finding.parts[0])) {
        return {Kind::one_metal, ""};
    }
    return finding.parts.size() == 2 ? Key{Kind::short_of_strip, finding.parts[1]} : Key{};
}

std::string spoken(std::string pad) {
    if (!pad.empty() && pad.back() == '-') {
        pad.pop_back();
        pad += "−";
    }
    return pad;
}

/// "L1−, L2− and L3−"; a long list is cut short and counted.
std::string names_of(const std::vector<Finding>& findings, const std::vector<int>& indices, bool parts_whole,
                     const Words& words) {
    const std::size_t named = indices.size() <= kMostNamed ? indices.size() : kMostNamed - 1;
    std::vector<std::string> names;
    for (std::size_t i = 0; i < named; ++i) {
        const std::string& pad = findings[static_cast<std::size_t>(indices[i])].parts.front();
        names.push_back(parts_whole ? owner(pad) : spoken(pad));
    }
    if (named < indices.size()) {
        names.push_back(words(parts_whole ? "findings_list.more" : "findings_list.more_pads",
                              {{"n", indices.size() - named}}));
    }
    return words.list(names);
}

std::string text_of(const Key& key, const std::vector<Finding>& findings, const std::vector<int>& indices,
                    const Words& words) {
    switch (key.kind) {
    case Kind::no_tape:
        return words("findings_list.no_tape", {{"pads", names_of(findings, indices, false, words)}});
    case Kind::short_of_strip:
        return words("findings_list.short_of_strip",
                     {{"strip", key.strip}, {"pads", names_of(findings, indices, false, words)}});
    case Kind::one_metal:
        return words("findings_list.one_metal", {{"lights", names_of(findings, indices, true, words)}});
    case Kind::single:
        break;
    }
    return "";
}

/// Where the two sides meet is the cause; that lights are bridged is what follows from it.
bool is_cause(const Finding& finding) {
    return finding.rule == "short-circuit" || finding.rule == "crossing-bare" ||
           finding.rule == "patch-small";
}

} // namespace

std::vector<FindingRow> finding_rows(const std::vector<Finding>& findings, const Words& words) {
    std::vector<FindingRow> rows;
    std::vector<Key> keys;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const Key key = key_of(findings[i]);
        const auto same = key.kind == Kind::single ? keys.end() : std::find(keys.begin(), keys.end(), key);
        if (same != keys.end()) {
            rows[static_cast<std::size_t>(same - keys.begin())].findings.push_back(static_cast<int>(i));
            continue;
        }
        rows.push_back({{static_cast<int>(i)}, 0, findings[i].level, findings[i].text});
        keys.push_back(key);
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].findings.size() > 1) {
            rows[i].text = text_of(keys[i], findings, rows[i].findings, words);
        }
    }
    std::stable_sort(rows.begin(), rows.end(), [&](const FindingRow& a, const FindingRow& b) {
        const auto cause = [&](const FindingRow& row) {
            return is_cause(findings[static_cast<std::size_t>(row.findings.front())]);
        };
        return a.level != b.level ? a.level < b.level : cause(a) && !cause(b);
    });
    int number = 0;
    for (FindingRow& row : rows) {
        row.number = row.level == Level::note ? 0 : ++number;
    }
    return rows;
}

} // namespace lanternleaf
