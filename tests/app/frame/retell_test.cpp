// The language changed in the settings while a build, a search, a plan, a record and the light sheet are on
// the table: every sentence kept in the state is told again, and as it was when the language goes back.
#include "table.h"

#include "view/log_view.h"
#include "view/make_view.h"

#include <algorithm>
#include <cctype>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

// What the maker would do at the settings sheet, over whatever place is open.
void set(Table& table, const std::string& choice) {
    update(table.app.state, table.app.around, command::OpenSheet{SheetKind::settings});
    table.reach("settings/rows", "settings/" + choice);
    table.tap("settings/close");
}

void add_log(const AppState& state, const Words& words, std::vector<std::string>& out) {
    const LogView log = make_log_view(state, words);
    out.insert(out.end(), {log.subtitle, log.badge_line});
    for (const LogRow& row : log.rows) {
        out.push_back(row.spoken);
    }
    for (int step = 1; step <= kStepCount; ++step) {
        const LogStepView one = make_log_step_view(state, step, words);
        out.insert(out.end(), {one.title, one.state, one.verdict});
        for (const LogStepView::MoveRow& move : one.moves) {
            out.push_back(move.title);
        }
    }
    for (const LogLine& line : log.as_built) {
        out.push_back(line.text);
    }
    REQUIRE(state.log_page.compare.has_value());
    out.insert(out.end(), {state.log_page.compare->left, state.log_page.compare->rows.summary});
}

/// Everything in the state that is told in words, in an order that depends on nothing else.
std::vector<std::string> sentences(const Table& table) {
    const AppState& state = table.app.state;
    std::vector<std::string> out;
    for (const Step& step : table.build().steps) {
        out.insert(out.end(), {step.title, step.goal});
        for (const Move& move : step.moves) {
            out.insert(out.end(), {move.title, move.sentence, move.why});
        }
    }
    for (const MoveLesson& lesson : table.build().lessons) {
        out.push_back(lesson.sentence);
    }
    REQUIRE(table.build().verdict.has_value());
    out.push_back(table.build().verdict->sentence);
    const MakeView make = make_view(state);
    out.insert(out.end(), {make.step_text, make.heading, make.sentence, make.primary});
    REQUIRE(state.draw.has_value());
    REQUIRE(state.draw->review.findings.size() >= 2);
    for (const Finding& finding : state.draw->review.findings) {
        out.insert(out.end(), {finding.text, finding.fix});
    }
    for (const std::vector<Fix>& fixes : state.draw->fixes) {
        std::transform(fixes.begin(), fixes.end(), std::back_inserter(out),
                       [](const Fix& fix) { return fix.label; });
    }
    REQUIRE(state.mend.has_value());
    REQUIRE(state.mend->test.has_value());
    out.insert(out.end(), {state.mend->test->title, state.mend->test->sentence});
    for (const Cause& cause : state.mend->causes) {
        out.insert(out.end(), {cause.title, cause.sentence, cause.fix});
    }
    REQUIRE(state.light.has_value());
    REQUIRE_FALSE(state.light->helps.empty());
    for (const Help& help : state.light->helps) {
        out.push_back(help.sentence);
    }
    add_log(state, table.app.around.words, out);
    return out;
}

bool has_a_word(const std::string& text) {
    int run = 0;
    for (const char c : text) {
        run = std::isalpha(static_cast<unsigned char>(c)) != 0 ? run + 1 : 0;
        if (run == 4) {
            return true;
        }
    }
    return false;
}

// Two builds of a card: one whose first light was turned and turned back, and one stopped at its third step.
void set_the_table(Table& table) {
    for (int build = 0; build < 2; ++build) {
        update(table.app.state, table.app.around, command::GoTo{Place::shelf});
        table.start("night-tram");
        table.tap("audience/way/go-on");
        table.build_to(3);
        table.app.state.differs.draft.kind = ChangeKind::led_turned;
        table.app.state.differs.draft.part = table.build().record.card.leds[0].id;
        update(table.app.state, table.app.around, command::SaveDifference{});
        update(table.app.state, table.app.around, command::GoTo{Place::shelf});
    }
    AppState& state = table.app.state;
    const auto act = [&](const Command& command) { update(state, table.app.around, command); };
    act(command::GoTo{Place::make});
    while (table.build().face == MakeFace::move) {
        table.one_move();
    }
    const auto first_strip = [](const Card& card, Side side) {
        const auto found = std::find_if(card.laid.begin(), card.laid.end(), [&](const Laid& laid) {
            const Strip* strip = std::get_if<Strip>(&laid);
            return strip != nullptr && strip->side == side;
        });
        REQUIRE(found != card.laid.end());
        return std::get<Strip>(*found);
    };
    const Strip torn = first_strip(table.build().record.as_built, Side::negative);
    state.differs.draft = {};
    state.differs.draft.kind = ChangeKind::tear;
    state.differs.draft.part = torn.id;
    state.differs.draft.at_mm = (torn.path_mm[0] + torn.path_mm[1]) * 0.5;
    state.differs.draft.mm = 1.5;
    act(command::SaveDifference{});
    act(command::ProveStep{}); // stopped
    act(command::GoTo{Place::mend});
    act(command::Mend{mend::WarmAnswer{false}});
    act(command::Mend{mend::LookAt{1}});
    act(command::GoTo{Place::log});
    const auto other = std::find_if(state.builds.begin(), state.builds.end(), [&](const ShelfBuild& build) {
        return build.path != state.log_shelf.path;
    });
    REQUIRE(other != state.builds.end());
    act(command::Log{logbook::Compare{other->path}});
    act(command::GoTo{Place::draw});
    act(command::OpenLight{}); // of the plan while it is whole
    act(command::Draw{draw::SelectPart{first_strip(state.draw->card, Side::positive).id}});
    act(command::Draw{draw::RemoveSelected{}});
}

} // namespace

TEST_CASE("A change of language or unit tells everything on the table again", "[words]") {
    const OwnFolder library;
    Table table(library.path());
    set_the_table(table);
    const std::vector<std::string> before = sentences(table);

    set(table, "language/de");
    CHECK(table.app.around.words.language() == "de");
    const std::vector<std::string> german = sentences(table);
    REQUIRE(german.size() == before.size());
    std::size_t with_words = 0;
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (has_a_word(before[i])) {
            ++with_words;
            CHECK(german[i] != before[i]);
        }
    }
    CHECK(with_words > 150);
    const AppState& state = table.app.state;
    CHECK(table.build().steps[2].title == table.app.around.words("step.title_lay_negative"));
    CHECK_THAT(state.log_page.story.made_with, Contains("Gewebeband"));
    CHECK(state.mend->chosen == 1); // what was looked at stays
    CHECK(state.mend->warm_asked);
    CHECK(table.build().face == MakeFace::verdict);

    set(table, "language/en");
    CHECK(sentences(table) == before);

    set(table, "lengths/yes");
    const std::vector<Move>& moves = table.build().steps[2].moves;
    CHECK(std::any_of(moves.begin(), moves.end(),
                      [](const Move& move) { return move.sentence.find(" in") != std::string::npos; }));
    set(table, "language/es");
    for (const Place place : {Place::make, Place::draw, Place::mend, Place::log, Place::shelf}) {
        update(table.app.state, table.app.around, command::GoTo{place});
        table.fingers.frame(5);
        CHECK(table.app.state.place == place);
    }
}
