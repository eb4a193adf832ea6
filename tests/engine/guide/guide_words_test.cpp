// The guide in other languages and units: the same steps, told whole.
#include "guide/change.h"
#include "guide/offers.h"
#include "guide/repair.h"
#include "guide/sequence.h"
#include "support/make_card.h"
#include "support/words_of.h"

using namespace lanternleaf;

namespace {

const Parts kParts = make::test_parts();

Card on_pads() {
    Card card = make::sample_card();
    card.holder.type = "slide-20";
    return card;
}

Card with_resistor() {
    Card card = make::sample_card();
    card.resistors.push_back(make::resistor("R1", 100, {40, 40}));
    return card;
}

std::vector<Card> cards() {
    Card waiting = make::sample_card();
    std::erase_if(waiting.laid, [](const Laid& laid) { return std::holds_alternative<Patch>(laid); });
    Card stacked = make::sample_card();
    stacked.cell.count = 2;
    return {make::sample_card(),
            make::row_card(3),
            make::bare_card(),
            with_resistor(),
            on_pads(),
            waiting,
            stacked};
}

void add(const Check& check, std::vector<std::string>& out) {
    out.insert(out.end(), {check.title, check.expect_text, check.without_meter});
}

// Everything the steps and verdicts of a card say.
std::vector<std::string> said(const Card& card, const Words& words) {
    std::vector<std::string> out;
    for (const Step& step : make_steps(card, kParts, words)) {
        out.insert(out.end(), {step.title, step.goal});
        for (const Move& move : step.moves) {
            out.insert(out.end(), {move.title, move.sentence, move.why});
            if (move.check) {
                add(*move.check, out);
            }
        }
        std::vector<Reading> readings;
        for (const Check& check : step.proof) {
            add(check, out);
            Reading off{check.id, std::nullopt, check.kind != CheckKind::open, false, {}, true, false};
            readings.push_back(off);
            out.push_back(judge_reading(check, off, words).text);
        }
        for (const std::vector<Reading>& taken : {std::vector<Reading>(), readings}) {
            const StepVerdict verdict = judge_step(card, kParts, step.id, taken, words);
            out.push_back(verdict.sentence);
            out.insert(out.end(), verdict.to_do.begin(), verdict.to_do.end());
            if (const auto repair = repair_for(card, kParts, verdict, words)) {
                out.push_back(repair->done);
            }
        }
        for (const ChangeOffer& offer :
             offers_for(card, kParts, step, static_cast<int>(step.moves.size()), words)) {
            out.push_back(offer.title);
            if (!offer.question.empty()) {
                out.push_back(offer.question);
            }
            out.push_back(describe(offer.change, words));
        }
    }
    return out;
}

} // namespace

TEST_CASE("Steps, checks, changes and verdicts are told whole in every language", "[guide]") {
    // What reads alike in English and another language: figures, and names put side by side.
    const auto figures_only = [](const std::string& text) {
        return text.find_first_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos ||
               text.find("Ω") != std::string::npos;
    };
    for (const char* language : {"de", "es"}) {
        const Words words = words_of(language);
        for (const Card& card : cards()) {
            const std::vector<std::string> plain = said(card, english());
            const std::vector<std::string> told = said(card, words);
            REQUIRE(told.size() == plain.size());
            for (std::size_t i = 0; i < told.size(); ++i) {
                INFO(language << ": " << told[i] << " | " << plain[i]);
                CHECK(said_whole(told[i]));
                CHECK((told[i] != plain[i] || figures_only(plain[i])));
            }
        }
    }
}

TEST_CASE("Nothing the program goes by changes with the language", "[guide]") {
    const Words words = words_of("de");
    for (const Card& card : cards()) {
        const std::vector<Step> plain = make_steps(card, kParts);
        const std::vector<Step> told = make_steps(card, kParts, words);
        for (std::size_t i = 0; i < plain.size(); ++i) {
            REQUIRE(told[i].moves.size() == plain[i].moves.size());
            for (std::size_t k = 0; k < plain[i].moves.size(); ++k) {
                CHECK(told[i].moves[k].id == plain[i].moves[k].id);
                CHECK(told[i].moves[k].parts == plain[i].moves[k].parts);
            }
            REQUIRE(told[i].proof.size() == plain[i].proof.size());
            for (std::size_t k = 0; k < plain[i].proof.size(); ++k) {
                CHECK(told[i].proof[k].id == plain[i].proof[k].id);
                CHECK(told[i].proof[k].from == plain[i].proof[k].from);
                CHECK(told[i].proof[k].to == plain[i].proof[k].to);
            }
        }
    }
}

TEST_CASE("The guide measures in inches for who does", "[guide]") {
    const Words inches = english().with_unit(LengthUnit::inch);
    for (const Card& card : cards()) {
        for (const std::string& text : said(card, inches)) {
            INFO(text);
            CHECK((text.find(" mm") == std::string::npos || text.find("mm²") != std::string::npos));
        }
    }
}
