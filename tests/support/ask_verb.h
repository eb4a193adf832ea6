// Ask verb: the command line from outside, in process: what it answers, on both streams, and with which
// status.
#pragma once

#include "support/make_build.h"
#include "verbs/verbs.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

namespace lanternleaf {

struct Answer {
    int status = -1;
    std::string out;
    std::string err;

    [[nodiscard]] nlohmann::json json() const { return nlohmann::json::parse(out); }
};

/// `around` as given, with the shipped assets where it names none and a clock that stands still.
inline Answer ask(const std::vector<std::string>& args, VerbSurroundings around = {}) {
    around.assets = around.assets.empty() ? std::string(LANTERNLEAF_SOURCE) + "/assets" : around.assets;
    around.now_s = [] { return make::kMorning_s; };
    std::ostringstream out;
    std::ostringstream err;
    Answer answer;
    answer.status = run_verb(args, out, err, around);
    answer.out = out.str();
    answer.err = err.str();
    return answer;
}

inline const std::string kTop = LANTERNLEAF_SOURCE;
inline const std::string kSample = kTop + "/tests/data/one-window.card.json";

/// The sample card with one thing replaced.
inline std::string varied(const make::TempFolder& folder, const std::string& what, const std::string& with) {
    std::string text = make::get_file(kSample);
    const std::size_t at = text.find(what);
    REQUIRE(at != std::string::npos);
    text.replace(at, what.size(), with);
    const std::string path = folder.at("varied.card.json");
    make::put_file(path, text);
    return path;
}

} // namespace lanternleaf
