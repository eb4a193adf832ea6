#include "mend/model.h"

#include "base/at.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// A short-circuited cell warms the finger within a minute; an overloaded one hardly (engineering judgement).
constexpr double kWarm_mA = 60.0;
// An ohm range lights no LED and reads joints and leads as guide/predict.h spreads them: up to four times the
// figure, and half an ohm of leads and last digits.
constexpr double kOhmTimes = 4.0;
constexpr double kOhmMore = 0.5;
constexpr double kVoltShare = 0.1;
constexpr double kVoltMore = 0.12;
constexpr double kNoVolts = 0.4;
constexpr double kFewOhm = 10.0;

class Predicting {
public:
    explicit Predicting(MendModel& model) : model_(model) {
        model.predictions.assign(model.tests.size() * model.faults.size(), Prediction{});
        for (std::size_t f = 0; f < model.faults.size(); ++f) {
            shows_.push_back(look_different(model.showings[f], model.as_built));
            std::vector<ChangedOhm> changed;
            for (const ElementEdit& edit : model.faults[f].edits) {
                if (edit.what == ElementEdit::What::ohm) {
                    changed.push_back({edit.index, edit.value});
                }
            }
            changed_.push_back(std::move(changed));
        }
    }

    void all() {
        for (std::size_t t = 0; t < model_.tests.size(); ++t) {
            row_ = model_.predictions.data() + t * model_.faults.size();
            const MendTest& test = model_.tests[t];
            for (std::size_t f = 0; f < model_.faults.size(); ++f) {
                predict(test, f);
            }
        }
    }

private:
    void set(std::size_t f, int outcome, double sure) {
        row_[f] = {static_cast<std::uint8_t>(outcome), static_cast<std::uint8_t>(std::lround(255.0 * sure))};
    }

    // The outcome of a test of places: where the fault sits.
    void by_place(const MendTest& test, std::size_t f, double sure) {
        const auto found = std::find(test.places.begin(), test.places.end(), model_.faults[f].place);
        if (found != test.places.end() && sure > 0.0) {
            set(f, static_cast<int>(found - test.places.begin()) + 1, sure);
        }
    }

    void predict(const MendTest& test, std::size_t f) {
        const Fault& fault = model_.faults[f];
        const FaultTraits& traits = traits_of(fault.kind);
        const bool mine = fault.led >= 0 && (fault.led == test.led || fault.led_b == test.led);
        const bool touching = fault.kind == FaultKind::sides_touch || fault.kind == FaultKind::crossing_bare;
        using K = FaultKind;
        const auto when = [&](K kind, int outcome, double sure) {
            if (fault.kind == kind) {
                set(f, outcome, sure);
            }
        };
        switch (test.kind) {
        case TestKind::warm:
            if (model_.showings[f].cell_mA > kWarm_mA) {
                set(f, 1, 0.8);
            }
            return;
        case TestKind::look_cell:
            when(K::cell_upside_down, 1, traits.look);
            when(K::cell_missing, 2, traits.look);
            when(K::tab_left, 3, traits.look);
            when(K::cell_wrong, 4, traits.look);
            return;
        case TestKind::press_all:
            if (shows_[f] && traits.press > 0.0) {
                set(f, 1, kFindsSpot * traits.press);
            }
            return;
        case TestKind::look_led:
            if (mine) {
                when(K::led_turned, 1, traits.look);
                when(K::led_wrong, 2, traits.look);
                when(K::led_swapped, 2, traits.look);
                when(K::led_one_side, 3, traits.look);
                when(K::led_in_series, 4, traits.look);
            }
            return;
        case TestKind::look_along:
        case TestKind::look_close:
            by_place(test, f, traits.look);
            return;
        case TestKind::press_pads:
        case TestKind::press_along:
            by_place(test, f, shows_[f] ? traits.press : 0.0);
            glue(test, f, traits.press);
            return;
        case TestKind::foil_along:
            by_place(test, f, shows_[f] ? traits.foil : 0.0);
            glue(test, f, 0.5);
            return;
        case TestKind::press_holder:
            by_place(test, f, traits.press);
            return;
        case TestKind::foil_holder:
            by_place(test, f, fault.kind == K::tab_left ? 0.0 : traits.foil);
            return;
        case TestKind::feed_holder:
            if (at_holder(fault.kind)) {
                set(f, 1, 0.95);
            }
            return;
        case TestKind::swap_cell:
            when(K::cell_flat, 1, 0.97);
            when(K::cell_wrong, 1, 0.97);
            when(K::cell_missing, 1, 0.97);
            when(K::cell_loose, 1, 0.4);
            when(K::cell_upside_down, 1, 0.6); // most put the new one in the right way
            return;
        case TestKind::touch_led:
            if (mine) {
                when(K::led_turned, 1, 0.97);
                when(K::led_dead, 2, 0.97);
                when(K::led_one_side, 2, 0.9);
                when(K::led_wrong, 3, 0.9);
                when(K::led_swapped, 3, 0.9);
            }
            if (touching) {
                set(f, 2, 0.9); // through its pads the cell is shorted as well
            }
            return;
        case TestKind::feed_led:
            if (mine && fault.kind != K::led_swapped && fault.kind != K::light_hidden) {
                set(f, 1, fault.kind == K::led_wrong ? 0.4 : 0.95);
            } else if (touching) {
                set(f, 1, 0.9);
            }
            return;
        case TestKind::lift_led:
            if (mine && fault.kind == K::led_wrong && others_differ(f)) {
                set(f, 1, 0.9);
            }
            return;
        case TestKind::lift_bridge:
            by_place(test, f, 0.9);
            return;
        case TestKind::see_light: {
            const Glow& glow = model_.showings[f].glows[at(test.led)];
            const LightState state = likeliest(glow);
            set(f,
                state == LightState::dark  ? 0
                : state == LightState::dim ? 1
                                           : 2,
                std::max({glow.dark, glow.dim, glow.lit}));
            return;
        }
        case TestKind::see_hidden:
            if (mine) {
                when(K::light_hidden, 1, traits.look);
            }
            return;
        case TestKind::try_open:
            when(K::sides_touch_shut, 1, 0.97);
            when(K::switch_open, 1, 0.5); // foam that stands too high is out of the way then
            return;
        case TestKind::slip_paper:
            when(K::sides_touch_shut, 1, 0.9);
            return;
        case TestKind::dark_glow:
            when(K::switch_stuck, 1, 0.9);
            return;
        case TestKind::liner:
            when(K::liner_left, 1, 0.85);
            return;
        case TestKind::meter_apart: {
            const double ohm = model_.ohms.between(test.from_node, test.to_node, changed_[f]);
            set(f, ohm > kNoPath_ohm ? 0 : ohm > kFewOhm ? 1 : 2, 0.98);
            return;
        }
        case TestKind::meter_reach:
        case TestKind::meter_joint: {
            const double expected = model_.ohms.between(test.from_node, test.to_node);
            const double ohm = model_.ohms.between(test.from_node, test.to_node, changed_[f]);
            set(f, static_cast<int>(class_of_ohm(ohm, expected)), 0.97);
            return;
        }
        case TestKind::probe_holder:
        case TestKind::probe_led:
        case TestKind::meter_volts:
        case TestKind::meter_holder: {
            const auto across = [&](const Showing& showing) {
                return static_cast<double>(showing.node_V[at(test.from_node)] -
                                           showing.node_V[at(test.to_node)]);
            };
            set(f, static_cast<int>(class_of_volts(across(model_.showings[f]), across(model_.as_built))),
                0.97);
            return;
        }
        case TestKind::meter_cell:
            when(K::cell_flat, 1, 0.7);
            when(K::cell_wrong, 1, 0.98);
            when(K::cell_missing, 2, 0.98);
            return;
        }
    }

    // Cell, switch and the tape that meets them: what a good cell held to the tapes goes round.
    [[nodiscard]] static bool at_holder(FaultKind kind) {
        switch (kind) {
        case FaultKind::contact_loose:
        case FaultKind::liner_left:
        case FaultKind::switch_open:
        case FaultKind::cell_upside_down:
        case FaultKind::cell_flat:
        case FaultKind::cell_wrong:
        case FaultKind::cell_loose:
        case FaultKind::cell_missing:
        case FaultKind::tab_left:
            return true;
        default:
            return false;
        }
    }

    [[nodiscard]] bool others_differ(std::size_t f) const {
        for (std::size_t i = 0; i < model_.card.leds.size(); ++i) {
            if (static_cast<int>(i) != model_.faults[f].led &&
                likeliest(model_.showings[f].glows[i]) != likeliest(model_.as_built.glows[i])) {
                return true;
            }
        }
        return false;
    }

    // Glue that does not conduct shows at the first lap of that tape, and by half: the others stay parted.
    void glue(const MendTest& test, std::size_t f, double sure) {
        const Fault& fault = model_.faults[f];
        if (fault.kind != FaultKind::glue_plain || !shows_[f]) {
            return;
        }
        for (std::size_t k = 0; k < test.places.size(); ++k) {
            for (const Fault& joint : model_.faults) {
                if (joint.kind == FaultKind::joint_loose && joint.place == test.places[k] &&
                    std::any_of(fault.edits.begin(), fault.edits.end(), [&](const ElementEdit& edit) {
                        return edit.index == joint.edits.front().index;
                    })) {
                    set(f, static_cast<int>(k) + 1, sure);
                    return;
                }
            }
        }
    }

    MendModel& model_;
    Prediction* row_ = nullptr;
    std::vector<bool> shows_; ///< per fault: some light looks other than as built
    std::vector<std::vector<ChangedOhm>> changed_;
};

} // namespace

OhmClass class_of_ohm(double ohm, double expected_ohm) {
    if (!(ohm < kNoPath_ohm)) {
        return OhmClass::none;
    }
    return ohm > kOhmTimes * expected_ohm + kOhmMore ? OhmClass::high : OhmClass::fine;
}

VoltClass class_of_volts(double volts, double expected_V) {
    const double way = expected_V < 0.0 ? -1.0 : 1.0;
    if (way * volts < -kNoVolts) {
        return VoltClass::reversed;
    }
    if (std::fabs(expected_V) > kNoVolts && way * volts < kNoVolts) {
        return VoltClass::none;
    }
    return way * (expected_V - volts) > kVoltShare * std::fabs(expected_V) + kVoltMore ? VoltClass::low
                                                                                       : VoltClass::fine;
}

void predict_tests(MendModel& model) {
    Predicting(model).all();
}

} // namespace lanternleaf
