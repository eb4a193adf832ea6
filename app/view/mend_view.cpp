#include "view/mend_view.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace lanternleaf {

namespace {

constexpr double kSamePlace_mm = 4.0; ///< under this two rings would lie on each other

std::string letter_of(std::size_t index) {
    return std::string(1, static_cast<char>('A' + index));
}

std::vector<std::string> sentences_of(const std::string& text) {
    std::vector<std::string> out;
    std::size_t begin = 0;
    while (begin < text.size()) {
        const std::size_t end = text.find(". ", begin);
        const std::size_t stop = end == std::string::npos ? text.size() : end + 1;
        out.push_back(text.substr(begin, stop - begin));
        begin = end == std::string::npos ? text.size() : end + 2;
    }
    return out;
}

std::vector<std::string> lights_that(const MendSession& session, Look look) {
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < session.evidence.looks.size(); ++i) {
        if (session.evidence.looks[i] == look) {
            ids.push_back(session.model->card.leds[i].id);
        }
    }
    return ids;
}

// What the lights say by themselves, in plain words: whole sentences, one after the other.
std::string explained(const MendState& mend, const Words& words) {
    const MendSession& session = mend.session;
    if (!mend.lights_there) {
        return words("mend_view.lights_come");
    }
    const std::vector<std::string> lit = lights_that(session, Look::lit);
    const std::vector<std::string> dim = lights_that(session, Look::dim);
    const std::vector<std::string> dark = lights_that(session, Look::dark);
    const std::vector<std::string> flickers = lights_that(session, Look::flickers);
    const std::size_t seen = lit.size() + dim.size() + dark.size() + flickers.size();
    if (seen == 0) {
        return words("mend_view.how_to_tap");
    }
    std::string text;
    const auto add = [&](const char* key, const std::vector<std::string>& lights) {
        text += text.empty() ? "" : " ";
        text += words(key, {{"lights", words.list(lights)}, {"n", lights.size()}});
    };
    const bool all_dark = dark.size() == session.evidence.looks.size();
    if (all_dark) {
        text = words("mend_view.all_are_dark");
    } else if (!lit.empty()) {
        add("mend_view.are_lit", lit);
    }
    if (!dim.empty() && !all_dark) {
        add("mend_view.are_dim", dim);
    }
    if (!flickers.empty()) {
        add("mend_view.are_flickering", flickers);
    }
    if (text.empty() && !dark.empty()) {
        add("mend_view.are_dark", dark);
    }
    if (seen < session.evidence.looks.size()) {
        text += ' ';
        text += words("mend_view.tap_others");
    }
    return text;
}

MendCauseRow row_of(const MendState& mend, std::size_t index, const Words& words) {
    const Cause& cause = mend.causes[index];
    const MendModel& model = *mend.session.model;
    MendCauseRow row;
    row.letter = letter_of(index);
    row.title = cause.title;
    row.percent = percent_text(cause.probability);
    row.share = std::clamp(cause.probability, 0.0, 1.0);
    row.sentence = cause.sentence;
    row.fix = sentences_of(cause.fix);
    row.none_fits = cause.kind == FaultKind::other;
    if (!cause.places.empty()) {
        row.at_mm = cause.places.front().at_mm;
    }
    row.bridge_mm = bridge_path(cause, model.card);
    row.picture = fix_picture(cause, model.card, model.parts, words);
    std::vector<std::string> parts;
    for (const FaultPlace& place : cause.places) {
        for (const std::string& part : place.parts) {
            if (std::find(parts.begin(), parts.end(), part) == parts.end()) {
                parts.push_back(part);
            }
        }
    }
    row.parts = words.list(parts);
    return row;
}

std::vector<MendSuspect> suspects_of(const MendState& mend) {
    std::vector<MendSuspect> out;
    for (std::size_t i = 0; i < mend.causes.size(); ++i) {
        for (const FaultPlace& place : mend.causes[i].places) {
            const auto there = std::find_if(out.begin(), out.end(), [&](const MendSuspect& other) {
                return distance(other.at_mm, place.at_mm) < kSamePlace_mm;
            });
            if (there == out.end()) {
                out.push_back({place.at_mm, letter_of(i), i == 0});
            } else if (there->letters.find(letter_of(i)) == std::string::npos) {
                there->letters += letter_of(i);
            }
        }
    }
    return out;
}

AnswerSign sign_of(AnswerShows shows) {
    return shows == AnswerShows::came_on      ? AnswerSign::came_on
           : shows == AnswerShows::stays_dark ? AnswerSign::stays_dark
                                              : AnswerSign::plain;
}

std::string seconds_text(double seconds, const Words& words) {
    const int rounded = std::max(5, static_cast<int>(std::lround(seconds / 5.0)) * 5);
    return rounded < 90 ? words("mend_view.seconds", {{"n", rounded}})
                        : words("mend_view.minutes", {{"n", (rounded + 30) / 60}});
}

// Which of the causes shown the test tells apart from the likeliest.
std::string tells(const MendState& mend, int test, const Words& words) {
    std::vector<std::string> with_first;
    std::vector<std::string> others;
    int first_outcome = -1;
    for (std::size_t i = 0; i < mend.chances.size(); ++i) {
        if (mend.causes[i].kind == FaultKind::other || mend.chances[i].b >= 0) {
            continue;
        }
        const Prediction predicted =
            prediction_of(mend.session, static_cast<std::size_t>(mend.chances[i].fault), test);
        if (first_outcome < 0) {
            first_outcome = predicted.outcome;
        }
        (predicted.outcome == first_outcome ? with_first : others).push_back(letter_of(i));
    }
    if (with_first.empty() || others.empty()) {
        return "";
    }
    return words("mend_view.tells", {{"these", words.list(with_first)}, {"those", words.list(others)}});
}

MendTestView test_view(const MendState& mend, const Words& words) {
    const MendTest& test = *mend.test;
    MendTestView view;
    view.title = test.title;
    view.seconds = seconds_text(effort_of(test), words);
    view.sentence = test.sentence;
    const MendTest* stored = find_test(*mend.session.model, test.id);
    if (stored != nullptr) {
        view.tells = tells(mend, static_cast<int>(stored - mend.session.model->tests.data()), words);
    }
    if (reads_ohms(test.kind) || reads_volts(test.kind)) {
        view.meter = mend_meter_view(*mend.session.model, test, words);
    }
    std::vector<int> order = test.offered;
    std::stable_partition(order.begin(), order.end(), [](int outcome) { return outcome != 0; });
    for (const int outcome : order) {
        const auto which = static_cast<std::size_t>(outcome);
        view.answers.push_back({outcome, test.outcomes[which], sign_of(test.shows[which])});
    }
    // A test of places has one per answer from 1 on; show the first that is still open.
    if (!test.at_mm.empty()) {
        std::size_t which = 0;
        if (!test.places.empty() && test.at_mm.size() == test.places.size()) {
            for (const int outcome : order) {
                if (outcome > 0) {
                    which = static_cast<std::size_t>(outcome - 1);
                    break;
                }
            }
        }
        view.at_mm = test.at_mm[std::min(which, test.at_mm.size() - 1)];
        for (const MendSuspect& suspect : suspects_of(mend)) {
            if (distance(suspect.at_mm, *view.at_mm) < kSamePlace_mm) {
                view.letter = suspect.letters.substr(0, 1);
                break;
            }
        }
    }
    return view;
}

} // namespace

std::string percent_text(double probability) {
    const double percent = probability * 100.0;
    if (percent < 1.0) {
        return std::string("<1%");
    }
    std::string text = percent > 99.0 ? std::string(">99") : std::to_string(std::lround(percent));
    return text.append("%");
}

MendView make_mend_view(const MendState& mend, const Words& words) {
    MendView view;
    view.heading = words(!mend.warm_asked    ? "mend_view.what_is_wrong"
                         : mend.lights_there ? "mend_view.which_lights"
                                             : "mend_view.no_lights_yet");
    view.sentence = words(!mend.warm_asked    ? "mend_view.cell_first"
                          : mend.lights_there ? "mend_view.tap_each"
                                              : "mend_view.measure_along");
    const auto lights = [&](Look look) { return static_cast<int>(lights_that(mend.session, look).size()); };
    const int flicker = lights(Look::flickers);
    const auto counted = [&](Look look) { return words("mend_view.lights", {{"n", lights(look)}}); };
    view.lit = counted(Look::lit);
    view.dim = counted(Look::dim);
    if (flicker > 0) {
        view.dim = words("mend_view.lights_flicker", {{"lights", view.dim}, {"n", flicker}});
    }
    view.dark = counted(Look::dark);
    view.any_light = lights(Look::unseen) < static_cast<int>(mend.session.evidence.looks.size());
    view.explanation = explained(mend, words);
    const int answers = static_cast<int>(mend.session.evidence.count());
    view.after =
        answers == 0 ? words("mend_view.nothing_seen") : words("mend_view.after_answers", {{"n", answers}});
    for (std::size_t i = 0; i < mend.causes.size(); ++i) {
        view.causes.push_back(row_of(mend, i, words));
    }
    view.suspects = suspects_of(mend);
    if (mend.test) {
        view.test = test_view(mend, words);
    }
    view.can_take_back = !mend.before.empty();
    const std::size_t all = mend.session.evidence.looks.size();
    const auto unseen = static_cast<std::size_t>(lights(Look::unseen));
    if (mend.lights_there && unseen > 0) {
        view.rest_dark = words(unseen == all ? "mend_view.all_dark"
                               : unseen == 1 ? "mend_view.other_dark"
                                             : "mend_view.rest_dark");
        view.rest_lit = words(unseen == all ? "mend_view.all_lit"
                              : unseen == 1 ? "mend_view.other_lit"
                                            : "mend_view.rest_lit");
    }
    view.ask_lights = mend.lights_there && unseen == all &&
                      mend.session.evidence.answers.size() + mend.session.evidence.skipped.size() <= 1;
    view.pressing = mend.session.evidence.pressing_changes;
    for (const char* key : {"mend_view.none_cell_out", "mend_view.none_look_along", "mend_view.none_tap_anew",
                            "mend_view.none_second_eyes", "mend_view.none_fresh_strip"}) {
        view.none_fits.push_back(words(key));
    }
    if (mend.past_mends > 0) {
        view.own_records = words("mend_view.own_records", {{"n", mend.past_mends}});
    }
    return view;
}

} // namespace lanternleaf
