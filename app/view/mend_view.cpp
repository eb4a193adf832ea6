#include "view/mend_view.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace lanternleaf {

namespace {

constexpr double kSamePlace_mm = 4.0; ///< under this two rings would lie on each other

std::string counted(int count, const char* one, const char* many) {
    return std::to_string(count).append(" ").append(count == 1 ? one : many);
}

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

const char* is_or_are(const std::vector<std::string>& names) {
    return names.size() == 1 ? " is " : " are ";
}

// What the lights say by themselves, in plain words.
std::string explained(const MendState& mend) {
    const MendSession& session = mend.session;
    if (!mend.lights_there) {
        return "The lights come in step 6. Until then the causes follow your readings.";
    }
    const std::vector<std::string> lit = lights_that(session, Look::lit);
    const std::vector<std::string> dim = lights_that(session, Look::dim);
    const std::vector<std::string> dark = lights_that(session, Look::dark);
    const std::vector<std::string> flickers = lights_that(session, Look::flickers);
    const std::size_t seen = lit.size() + dim.size() + dark.size() + flickers.size();
    if (seen == 0) {
        return "Tap a light once when it is lit, twice when it is dim, three times when it is dark, and four "
               "times when it flickers.";
    }
    std::string text;
    if (dark.size() == session.evidence.looks.size()) {
        text = "All lights are dark, so look first at what they share: the cell, the flap, and where + and − "
               "may touch.";
    } else if (!lit.empty()) {
        text = names_in_line(lit) + is_or_are(lit) + "lit, so the cell, the flap and the tape that feeds " +
               (lit.size() == 1 ? "it" : "them") + " are working.";
    }
    if (!dim.empty() && dark.size() != session.evidence.looks.size()) {
        text += std::string(text.empty() ? "" : " ").append(names_in_line(dim)) +
                (dim.size() == 1 ? " gets" : " get") + " current, but too little.";
    }
    if (!flickers.empty()) {
        text += std::string(text.empty() ? "" : " ").append(names_in_line(flickers)) +
                (flickers.size() == 1 ? " flickers" : " flicker") + ": something there touches now and then.";
    }
    if (text.empty() && !dark.empty()) {
        text = names_in_line(dark) + is_or_are(dark) + "dark.";
    }
    if (seen < session.evidence.looks.size()) {
        text += " Tap the other lights too.";
    }
    return text;
}

MendCauseRow row_of(const MendState& mend, std::size_t index) {
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
    row.picture = fix_picture(cause, model.card, model.parts);
    std::vector<std::string> parts;
    for (const FaultPlace& place : cause.places) {
        for (const std::string& part : place.parts) {
            if (std::find(parts.begin(), parts.end(), part) == parts.end()) {
                parts.push_back(part);
            }
        }
    }
    row.parts = names_in_line(parts);
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

std::string seconds_text(double seconds) {
    const int rounded = std::max(5, static_cast<int>(std::lround(seconds / 5.0)) * 5);
    return std::string("about ").append(rounded < 90 ? counted(rounded, "second", "seconds")
                                                     : counted((rounded + 30) / 60, "minute", "minutes"));
}

// Which of the causes shown the test tells apart from the likeliest.
std::string tells(const MendState& mend, int test) {
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
    return "This test tells " + names_in_line(with_first) + " from " + names_in_line(others) + ".";
}

MendTestView test_view(const MendState& mend) {
    const MendTest& test = *mend.test;
    MendTestView view;
    view.title = test.title;
    view.seconds = seconds_text(effort_of(test));
    view.sentence = test.sentence;
    const MendTest* stored = find_test(*mend.session.model, test.id);
    if (stored != nullptr) {
        view.tells = tells(mend, static_cast<int>(stored - mend.session.model->tests.data()));
    }
    if (reads_ohms(test.kind) || reads_volts(test.kind)) {
        view.meter = mend_meter_view(*mend.session.model, test);
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

std::string names_in_line(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += i == 0 ? "" : i + 1 == names.size() ? " and " : ", ";
        text += names[i];
    }
    return text;
}

std::string percent_text(double probability) {
    const double percent = probability * 100.0;
    if (percent < 1.0) {
        return std::string("<1%");
    }
    std::string text = percent > 99.0 ? std::string(">99") : std::to_string(std::lround(percent));
    return text.append("%");
}

MendView make_mend_view(const MendState& mend) {
    MendView view;
    view.heading = !mend.warm_asked    ? "What is wrong?"
                   : mend.lights_there ? "Which lights are lit?"
                                       : "No lights yet";
    view.sentence = !mend.warm_asked    ? "The cell comes first, then the lights."
                    : mend.lights_there ? "Hold the flap shut and tap each light on the picture."
                                        : "Measure along the tape. The readings point at the fault.";
    const auto lights = [&](Look look) { return static_cast<int>(lights_that(mend.session, look).size()); };
    const int flicker = lights(Look::flickers);
    view.lit = counted(lights(Look::lit), "light", "lights");
    view.dim = counted(lights(Look::dim), "light", "lights");
    if (flicker > 0) {
        view.dim.append(", ").append(counted(flicker, "flickers", "flicker"));
    }
    view.dark = counted(lights(Look::dark), "light", "lights");
    view.any_light = lights(Look::unseen) < static_cast<int>(mend.session.evidence.looks.size());
    view.explanation = explained(mend);
    const int answers = static_cast<int>(mend.session.evidence.count());
    view.after = answers == 0 ? std::string("nothing seen yet")
                              : std::string("after ").append(counted(answers, "answer", "answers"));
    for (std::size_t i = 0; i < mend.causes.size(); ++i) {
        view.causes.push_back(row_of(mend, i));
    }
    view.suspects = suspects_of(mend);
    if (mend.test) {
        view.test = test_view(mend);
    }
    view.can_take_back = !mend.before.empty();
    const std::size_t all = mend.session.evidence.looks.size();
    const auto unseen = static_cast<std::size_t>(lights(Look::unseen));
    if (mend.lights_there && unseen > 0) {
        const char* who = unseen == all ? "All are " : unseen == 1 ? "The other is " : "The rest are ";
        view.rest_dark = std::string(who) + "dark";
        view.rest_lit = std::string(who) + "lit";
    }
    view.ask_lights = mend.lights_there && unseen == all &&
                      mend.session.evidence.answers.size() + mend.session.evidence.skipped.size() <= 1;
    view.pressing = mend.session.evidence.pressing_changes;
    view.none_fits = {"Take the cell out.",
                      "Go along each tape with a bright lamp. Rub every joint and fold flat once more.",
                      "Put the cell back with an adult. Press, and tap the lights anew: one slip misleads.",
                      "Let a second pair of eyes look. A photo of the card helps them.",
                      "Still dark? Lay a fresh strip beside the tape that feeds it, from light to light."};
    if (mend.past_mends > 0) {
        view.own_records =
            "The order follows what was mended here before: " + counted(mend.past_mends, "card.", "cards.");
    }
    return view;
}

} // namespace lanternleaf
