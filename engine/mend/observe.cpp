#include "guide/verdict.h"
#include "mend/session.h"

#include <algorithm>

namespace lanternleaf {

namespace {

int led_index(const Card& card, const std::string& id) {
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        if (card.leds[i].id == id) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

// The node of the tape that a probe stands on; -1 when there is none.
int node_of_place(const MendModel& model, const std::string& place) {
    if (place == "bed") {
        return model.tape_on_terminal[0];
    }
    if (place == "flap") {
        return model.tape_on_terminal[1];
    }
    if (place == "holder-" || place == "holder+") {
        return model.tape_on_terminal[terminal_of(model.card, place == "holder-" ? CellFace::negative
                                                                                 : CellFace::positive)];
    }
    for (std::size_t r = 0; r < model.card.resistors.size(); ++r) { // "R1.1", "R1.2": tape under its pads
        for (std::size_t pad = 0; pad < 2; ++pad) {
            if (place == model.card.resistors[r].id + (pad == 0 ? ".1" : ".2")) {
                return model.tape_under_resistor[2 * r + pad];
            }
        }
    }
    if (place.size() < 2 || (place.back() != '-' && place.back() != '+')) {
        return -1;
    }
    const int led = led_index(model.card, place.substr(0, place.size() - 1));
    return led < 0 ? -1
                   : model.tape_under_pad[static_cast<std::size_t>(2 * led + (place.back() == '+' ? 1 : 0))];
}

class Observing {
public:
    explicit Observing(MendSession& into) : session(into) {}

    Outcome<Done> operator()(const SeenLight& seen) const {
        const int led = led_index(session.model->card, seen.led);
        if (led < 0) {
            return Problem{"", seen.led, "expected an LED of this card, but there is none of that name"};
        }
        session.evidence.looks[static_cast<std::size_t>(led)] = seen.look;
        return Done{};
    }

    Outcome<Done> operator()(const PressingChanges& pressing) const {
        session.evidence.pressing_changes = pressing.changes;
        return Done{};
    }

    Outcome<Done> operator()(const TestAnswer& answer) const {
        const MendTest* test = find_test(*session.model, answer.test);
        if (test == nullptr) {
            return Problem{"", answer.test, "expected a test of this card, but there is none of that name"};
        }
        const int index = static_cast<int>(test - session.model->tests.data());
        if (answer.outcome >= static_cast<int>(test->outcomes.size())) {
            return Problem{"", answer.test,
                           std::string("expected an answer from 0 to ")
                               .append(std::to_string(test->outcomes.size() - 1))};
        }
        if (answer.outcome < 0) {
            session.evidence.skipped.push_back(index);
            return Done{};
        }
        const int choices = static_cast<int>(live_test(session, index).offered.size());
        session.evidence.answers.push_back({index, answer.outcome, std::max(choices, 2)});
        return Done{};
    }

    Outcome<Done> operator()(const Metered& metered) const {
        if (metered.from == "cell" && metered.unit == MeterUnit::volt) {
            return take({MeterUnit::volt, -1, -1, metered.value, metered.open}, metered.from);
        }
        const int from = node_of_place(*session.model, metered.from);
        const int to = node_of_place(*session.model, metered.to);
        for (const auto& [name, node] : {std::pair{metered.from, from}, std::pair{metered.to, to}}) {
            if (node < 0) {
                return Problem{"", name,
                               "expected a place with tape: bed, flap, or a pad such as L3+ or R1.1"};
            }
        }
        return take({metered.unit, from, to, metered.value, metered.open}, metered.from + ":" + metered.to);
    }

    Outcome<Done> operator()(const TestReading& read) const {
        const MendTest* test = find_test(*session.model, read.test);
        if (test == nullptr || (!reads_volts(test->kind) && !reads_ohms(test->kind))) {
            return Problem{"", read.test, "expected a test of this card that is made with a meter"};
        }
        const MeterUnit unit = reads_volts(test->kind) ? MeterUnit::volt : MeterUnit::ohm;
        return take({unit, test->from_node, test->to_node, read.value, read.open}, read.test);
    }

private:
    // Measured again at the same place, the last one counts.
    Outcome<Done> take(const Evidence::Reading& reading, const std::string& place) const {
        if (reading.unit == MeterUnit::ohm && !reading.open && reading.value < 0.0) {
            return Problem{"", place, session.model->words("mend.ohms_below_0")};
        }
        std::vector<Evidence::Reading>& readings = session.evidence.readings;
        const auto same = std::find_if(readings.begin(), readings.end(), [&](const Evidence::Reading& taken) {
            return taken.unit == reading.unit && taken.from_node == reading.from_node &&
                   taken.to_node == reading.to_node;
        });
        if (same == readings.end()) {
            readings.push_back(reading);
        } else {
            *same = reading;
        }
        return Done{};
    }

    MendSession& session;
};

} // namespace

MendSession start_mend(const Card& as_built, const Parts& parts, const MendOptions& options,
                       const Words& words) {
    MendSession session;
    session.model = make_mend_model(as_built, parts, options, words);
    session.evidence.looks.assign(as_built.leds.size(), Look::unseen);
    weigh(session);
    return session;
}

Outcome<MendSession> observe(const MendSession& session, const Observation& observation) {
    MendSession next = session;
    const Outcome<Done> taken = std::visit(Observing{next}, observation);
    if (!taken) {
        return taken.problem();
    }
    weigh(next);
    return next;
}

MendSession observe_reading(const MendSession& session, const Check& check, const Reading& reading) {
    MendSession next = session;
    const Observing observing{next};
    if (check.kind == CheckKind::lights) {
        for (const LightExpectation& seen : reading.seen) {
            (void)observing(SeenLight{seen.led, look_from(seen.state)});
        }
    } else if ((check.kind == CheckKind::resistance || check.kind == CheckKind::open) &&
               (reading.open || reading.value)) {
        (void)observing(
            Metered{check.from, check.to, MeterUnit::ohm, reading.value.value_or(0.0), reading.open});
    } else if (check.kind == CheckKind::volts && reading.value) {
        (void)observing(Metered{"holder+", "holder-", MeterUnit::volt, *reading.value, false});
    } else {
        return session;
    }
    weigh(next);
    return next;
}

const char* name_of(Look look) {
    switch (look) {
    case Look::lit:
        return "lit";
    case Look::dim:
        return "dim";
    case Look::dark:
        return "dark";
    case Look::flickers:
        return "flickers";
    case Look::unseen:
        break;
    }
    return "unseen";
}

Look look_from(const std::string& name) {
    for (const Look look : {Look::lit, Look::dim, Look::dark, Look::flickers}) {
        if (name == name_of(look)) {
            return look;
        }
    }
    return Look::unseen;
}

std::size_t Evidence::count() const {
    const auto unseen = static_cast<std::size_t>(std::count(looks.begin(), looks.end(), Look::unseen));
    return looks.size() - unseen + answers.size() + readings.size() + (pressing_changes ? 1 : 0);
}

} // namespace lanternleaf
