// Every rule speaks where it should and keeps still where it should not.
#include "cases.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cctype>

using namespace lanternleaf;
using namespace lanternleaf::cases;

TEST_CASE("Every rule speaks on its cards, at the place, naming the part", "[findings]") {
    for (const Fires& one : all_fires()) {
        const Review made = review(one.card, one.parts);
        INFO(one.rule << ": " << one.what << "\n" << found_in(made));
        const Finding* found = find(made, one.rule, one.part);
        CHECK(found != nullptr);
        if (found != nullptr) {
            INFO("at " << found->at_mm.x << ", " << found->at_mm.y);
            CHECK(found->level == one.level);
            CHECK(distance(found->at_mm, one.at_mm) <= 6.0);
            CHECK(found->text.find(one.says) != std::string::npos);
        }
    }
}

TEST_CASE("Every rule keeps still on sound cards", "[findings]") {
    for (const Quiet& one : all_quiet()) {
        const Review made = review(one.card, one.parts);
        INFO(one.rule << ": " << one.what << "\n" << found_in(made));
        CHECK(find(made, one.rule) == nullptr);
    }
}

TEST_CASE("Every rule has two cards on which it speaks and two on which it does not", "[findings]") {
    const auto fires = all_fires();
    const auto quiet = all_quiet();
    for (const Rule& rule : rules()) {
        INFO(rule.id);
        CHECK(std::count_if(fires.begin(), fires.end(),
                            [&](const Fires& one) { return one.rule == rule.id; }) >= 2);
        CHECK(std::count_if(quiet.begin(), quiet.end(),
                            [&](const Quiet& one) { return one.rule == rule.id; }) >= 2);
        CHECK_FALSE(std::string(rule.reason).empty());
    }
}

TEST_CASE("Findings are worded for a maker", "[findings]") {
    for (const Fires& one : all_fires()) {
        for (const Finding& finding : review(one.card, one.parts).findings) {
            INFO(one.rule << ": " << one.what << "\n"
                          << finding.rule << ": " << finding.text << "\n"
                          << finding.fix);
            CHECK_FALSE(finding.parts.empty());
            for (const std::string& sentence : {finding.text, finding.fix}) {
                REQUIRE_FALSE(sentence.empty());
                CHECK(sentence.back() == '.');
                std::string low = sentence;
                std::transform(low.begin(), low.end(), low.begin(), [](char c) {
                    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
                });
                for (const char* word :
                     {"error", "invalid", "fail", "safe", "compliant", "nan", "inf", "  ", ".."}) {
                    INFO(word);
                    CHECK(low.find(word) == std::string::npos);
                }
                // A minus after an id is the true minus sign.
                for (std::size_t i = 1; i + 1 < sentence.size(); ++i) {
                    const bool after_digit = std::isdigit(static_cast<unsigned char>(sentence[i - 1])) != 0;
                    const char next = sentence[i + 1];
                    CHECK_FALSE(
                        (sentence[i] == '-' && after_digit && (next == ' ' || next == ',' || next == '.')));
                }
            }
        }
    }
}

TEST_CASE("Every finding comes from a rule of the table", "[findings]") {
    for (const Fires& one : all_fires()) {
        for (const Finding& finding : review(one.card, one.parts).findings) {
            INFO(finding.rule);
            CHECK(std::any_of(rules().begin(), rules().end(),
                              [&](const Rule& rule) { return finding.rule == rule.id; }));
        }
    }
}
