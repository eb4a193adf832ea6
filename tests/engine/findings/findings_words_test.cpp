#include "cases.h"
#include "support/words_of.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using namespace lanternleaf::cases;

namespace {

// A length in millimetres; areas ("mm²") have no other unit here.
bool names_mm(const std::string& text) {
    for (std::size_t at = text.find(" mm"); at != std::string::npos; at = text.find(" mm", at + 1)) {
        if (text.compare(at + 3, 2, "²") != 0) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("Every finding is told whole in every language, and finds the same", "[findings]") {
    for (const char* language : {"de", "es"}) {
        const Words words = words_of(language);
        for (const Fires& one : all_fires()) {
            const Review plain = review(one.card, one.parts);
            const Review told = review(one.card, one.parts, words);
            REQUIRE(told.findings.size() == plain.findings.size());
            for (std::size_t i = 0; i < told.findings.size(); ++i) {
                const Finding& finding = told.findings[i];
                INFO(language << ", " << one.what << ": " << finding.text << " | " << finding.fix);
                CHECK(finding.rule == plain.findings[i].rule);
                CHECK(finding.parts == plain.findings[i].parts);
                CHECK((said_whole(finding.text) && said_whole(finding.fix)));
                CHECK(finding.text != plain.findings[i].text);
                CHECK(finding.fix != plain.findings[i].fix);
            }
        }
    }
}

TEST_CASE("Findings give lengths in inches to who measures in inches", "[findings]") {
    const Words inches = english().with_unit(LengthUnit::inch);
    for (const Fires& one : all_fires()) {
        for (const Finding& finding : review(one.card, one.parts, inches).findings) {
            INFO(one.what << ": " << finding.text << " | " << finding.fix);
            CHECK_FALSE((names_mm(finding.text) || names_mm(finding.fix)));
        }
    }
}
