#include "base/at.h"
#include "guide/phrases.h"
#include "mend/model.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr double kFreshCell_V = 2.9; ///< the least that a good cell reads alone (common practice)

// What the answers that are about a light say of it, by their message.
AnswerShows shows_of(std::string_view answer) {
    for (const char* key :
         {"mend.they_came_on", "mend.it_lights", "mend.something_changes", "mend.lit", "mend.does_shine",
          "mend.others_came_on", "mend.some_came_on", "mend.something_glows"}) {
        if (answer == key) {
            return AnswerShows::came_on;
        }
    }
    for (const char* key : {"mend.no_change", "mend.stays_dark", "mend.dark", "mend.all_dark"}) {
        if (answer == key) {
            return AnswerShows::stays_dark;
        }
    }
    return AnswerShows::other;
}

using Answers = std::vector<const char*>; // messages

// Seconds are estimates for a steady hand with the things at hand (engineering judgement); only their ratios
// matter for the order.
class TestList {
public:
    explicit TestList(MendModel& made_for)
        : model_(made_for), words_(made_for.words), flap_(holder_shape(model_.card, model_.parts).flap) {}

    void all() {
        hold_ = words_(flap_ ? "mend.hold_flap" : "mend.hold_switch");
        cell_tests();
        touch_tests();
        for (int i = 0; i < static_cast<int>(model_.card.leds.size()); ++i) {
            led_tests(i);
        }
        for (int s = 0; s < static_cast<int>(model_.conductors.strips.size()); ++s) {
            strip_tests(strip_of(model_.card, model_.conductors, s).id);
        }
        rare_tests();
        voltage_tests();
        meter_tests();
    }

private:
    // The test of that name is "mend.try_NAME" and says "mend.do_NAME", or what `how` names instead. `about`
    // goes on after the name in its id.
    MendTest& add(TestKind kind, std::string name, const std::string& about, double effort_s, Fills fills,
                  const Answers& answers, TestNeeds needs = TestNeeds::hands, const char* how = nullptr) {
        MendTest test;
        test.id = about.empty() ? name : name + "/" + about;
        std::replace(name.begin(), name.end(), '-', '_');
        test.kind = kind;
        test.needs = needs;
        test.effort_s = effort_s;
        test.title = words_("mend.try_" + name, fills);
        test.sentence = words_(how == nullptr ? "mend.do_" + name : std::string(how), fills);
        for (const char* answer : answers) {
            test.offered.push_back(static_cast<int>(test.outcomes.size()));
            test.outcomes.push_back(words_(answer, fills));
            test.shows.push_back(shows_of(answer));
        }
        model_.tests.push_back(std::move(test));
        return model_.tests.back();
    }

    void set_places(MendTest& test, const std::vector<int>& places, double per_place_s) {
        test.per_place_s = per_place_s;
        for (const int p : places) {
            const FaultPlace& place = model_.places[at(p)];
            test.places.push_back(p);
            test.at_mm.push_back(place.at_mm);
            test.offered.push_back(static_cast<int>(test.outcomes.size()));
            std::string label = place.name;
            label[0] =
                label[0] >= 'a' && label[0] <= 'z' ? static_cast<char>(label[0] - 'a' + 'A') : label[0];
            test.outcomes.push_back(std::move(label));
            test.shows.push_back(AnswerShows::other);
        }
    }

    // Places of these kinds, once each, that have `part` among their parts (any place when it is empty).
    [[nodiscard]] std::vector<int> places_of(std::initializer_list<FaultKind> kinds,
                                             const std::string& part) const {
        std::vector<int> found;
        for (const Fault& fault : model_.faults) {
            if (fault.place < 0 || std::find(kinds.begin(), kinds.end(), fault.kind) == kinds.end() ||
                std::find(found.begin(), found.end(), fault.place) != found.end()) {
                continue;
            }
            const std::vector<std::string>& parts = model_.places[at(fault.place)].parts;
            if (part.empty() || std::find(parts.begin(), parts.end(), part) != parts.end()) {
                found.push_back(fault.place);
            }
        }
        return found;
    }

    void cell_tests() {
        add(TestKind::warm, "warm", "", 4, {}, {"mend.it_is_cool", "mend.it_is_warm"});
        const char* up = model_.card.cell.face_down == CellFace::negative ? "+" : "−";
        add(TestKind::look_cell, "look-cell", "", 9, {{"cell", model_.card.cell.type}, {"up", up}},
            {"mend.all_right", "mend.other_way_up", "mend.no_cell", "mend.tab_there", "mend.other_type"});
        add(TestKind::press_all, "press-all", "", 8, {{"hold", hold_}},
            {"mend.no_change", "mend.something_changes"});
        add(TestKind::swap_cell, "swap-cell", "", 15, {}, {"mend.no_change", "mend.they_came_on"},
            TestNeeds::known_cell);
    }

    void touch_tests() {
        add(TestKind::feed_holder, "feed-holder", "", 15, {}, {"mend.no_change", "mend.they_came_on"},
            TestNeeds::known_cell);
        set_places(add(TestKind::press_holder, "press-holder", "", 3, {{"hold", hold_}}, {"mend.no_change"}),
                   places_of({FaultKind::switch_open, FaultKind::cell_loose, FaultKind::contact_loose}, ""),
                   3);
        set_places(add(TestKind::foil_holder, "foil-holder", "", 7, {}, {"mend.no_change"}, TestNeeds::foil),
                   places_of({FaultKind::switch_open, FaultKind::contact_loose}, ""), 6);
        if (const std::vector<int> close = places_of({FaultKind::sides_touch, FaultKind::crossing_bare}, "");
            !close.empty()) {
            set_places(add(TestKind::look_close, "look-close", "", 4, {}, {"mend.nothing_touches"}), close,
                       2.5);
        }
    }

    void led_tests(int i) {
        const std::string& id = model_.card.leds[at(i)].id;
        const auto add_led = [&](TestKind kind, const char* name, double effort_s, const Answers& answers,
                                 TestNeeds needs = TestNeeds::hands) -> MendTest& {
            MendTest& test = add(kind, name, id, effort_s, {{"led", id}, {"hold", hold_}}, answers, needs);
            test.led = i;
            test.parts = {id};
            test.at_mm = {model_.card.leds[at(i)].at_mm};
            return test;
        };
        const std::vector<int> pads = places_of({FaultKind::pad_loose}, id);
        if (!pads.empty()) {
            MendTest& test = add_led(TestKind::press_pads, "press-pads", 3, {"mend.no_change"});
            test.at_mm.clear();
            set_places(test, pads, 3);
        }
        add_led(TestKind::look_led, "look-led", 8,
                {"mend.as_drawn", "mend.turned_round", "mend.other_type", "mend.pads_on_one_tape",
                 "mend.hangs_on_other"});
        add_led(TestKind::touch_led, "touch-led", 15,
                {"mend.lights_as_marked", "mend.lights_other_way", "mend.stays_dark", "mend.wrong_colour"},
                TestNeeds::known_cell);
        add_led(TestKind::feed_led, "feed-led", 15, {"mend.it_lights", "mend.stays_dark"},
                TestNeeds::known_cell);
        add_led(TestKind::see_light, "see-light", 4, {"mend.dark", "mend.dim", "mend.lit"});
        add_led(TestKind::see_hidden, "see-hidden", 8, {"mend.no_change", "mend.does_shine"});
        add_led(TestKind::lift_led, "lift-led", 15, {"mend.no_change", "mend.others_came_on"});
    }

    void strip_tests(const std::string& id) {
        const auto add_strip = [&](TestKind kind, const char* name, double effort_s, const char* none,
                                   const std::vector<int>& places, double per_place_s, TestNeeds needs) {
            if (places.empty()) {
                return;
            }
            MendTest& test = add(kind, name, id, effort_s, {{"strip", id}, {"hold", hold_}}, {none}, needs);
            test.parts = {id};
            set_places(test, places, per_place_s);
        };
        using K = FaultKind;
        add_strip(TestKind::look_along, "look-along", 3, "mend.looks_whole",
                  places_of({K::joint_loose, K::strip_broken, K::contact_loose}, id), 2, TestNeeds::hands);
        add_strip(TestKind::press_along, "press-along", 3, "mend.no_change", places_of({K::joint_loose}, id),
                  3, TestNeeds::hands);
        add_strip(TestKind::foil_along, "foil-along", 5, "mend.no_change",
                  places_of({K::joint_loose, K::strip_broken, K::run_poor}, id), 4, TestNeeds::foil);
    }

    void rare_tests() {
        for (std::size_t l = 0; l < model_.faults.size(); ++l) {
            const Fault& fault = model_.faults[l];
            if (fault.kind != FaultKind::crossing_bare) {
                continue;
            }
            const FaultPlace& place = model_.places[at(fault.place)];
            MendTest& test = add(TestKind::lift_bridge, "lift-bridge", place.parts[1] + "-" + place.parts[0],
                                 15, {{"strip", place.parts[1]}, {"where", place.name}},
                                 {"mend.no_change", "mend.some_came_on"});
            test.places = {fault.place};
            test.at_mm = {place.at_mm};
            test.parts = place.parts;
        }
        add(TestKind::liner, "liner", "", 15, {}, {"mend.no_backing", "mend.backing_left"});
        add(TestKind::try_open, "try-open", "", 6, {}, {"mend.no_change", "mend.they_came_on"});
        add(TestKind::slip_paper, "slip-paper", "", 12, {}, {"mend.no_change", "mend.they_came_on"});
        add(TestKind::dark_glow, "dark-glow", "", 12, {}, {"mend.all_dark", "mend.something_glows"});
    }

    // A spare LED tells by its light what a meter tells in volts.
    void voltage_tests() {
        const auto probe = [&](TestKind kind, const char* name, const std::string& id, int plus, int minus) {
            MendTest& test =
                add(kind, name, id, 11, {{"hold", hold_}, {"led", id}},
                    {"mend.it_lights", "mend.lights_dimly", "mend.stays_dark", "mend.lights_turned"},
                    TestNeeds::known_led);
            test.from_node = plus;
            test.to_node = minus;
        };
        const int plus = model_.tape_on_terminal[terminal_of(model_.card, CellFace::positive)];
        const int minus = model_.tape_on_terminal[terminal_of(model_.card, CellFace::negative)];
        if (plus >= 0 && minus >= 0) {
            probe(TestKind::probe_holder, "probe-holder", "", plus, minus);
        }
        for (int i = 0; i < static_cast<int>(model_.card.leds.size()); ++i) {
            const std::string& id = model_.card.leds[at(i)].id;
            const int on_minus = model_.tape_under_pad[at(2 * i)];
            const int on_plus = model_.tape_under_pad[at(2 * i + 1)];
            if (on_minus >= 0 && on_plus >= 0) {
                probe(TestKind::probe_led, "probe-led", id, on_plus, on_minus);
                model_.tests.back().led = i;
                model_.tests.back().at_mm = {model_.card.leds[at(i)].at_mm};
                model_.tests.back().parts = {id};
            }
        }
    }

    void meter_tests() {
        const int bed = model_.tape_on_terminal[0];
        const int flap = model_.tape_on_terminal[1];
        const auto meter = [&](TestKind kind, const char* name, const std::string& about, double effort_s,
                               Fills fills, const Answers& answers, const char* how, int from, int to) {
            MendTest& test = add(kind, name, about, effort_s, fills, answers, TestNeeds::meter, how);
            test.from_node = from;
            test.to_node = to;
        };
        const Answers ohms{"mend.as_expected", "mend.much_more", "mend.over_range"};
        const Answers volts{"mend.as_expected", "mend.lower", "mend.about_0_volts", "mend.below_0_volts"};
        meter(TestKind::meter_cell, "meter-cell", "", 10, {{"volts", words_.number(kFreshCell_V, 1)}},
              {"mend.volts_or_more", "mend.lower", "mend.about_0_volts"}, nullptr, -1, -1);
        if (bed >= 0 && flap >= 0) {
            meter(TestKind::meter_apart, "meter-apart", "", 12, {},
                  {"mend.over_range", "mend.path_of_ohms", "mend.almost_0_ohms"},
                  flap_ ? "mend.do_meter_apart_flap" : "mend.do_meter_apart_pads", bed, flap);
            meter(TestKind::meter_holder, "meter-holder", "", 12, {{"hold", hold_}}, volts,
                  flap_ ? "mend.do_meter_holder_flap" : "mend.do_meter_holder_pads",
                  model_.tape_on_terminal[terminal_of(model_.card, CellFace::positive)],
                  model_.tape_on_terminal[terminal_of(model_.card, CellFace::negative)]);
        }
        for (int i = 0; i < static_cast<int>(model_.card.leds.size()); ++i) {
            const std::string& id = model_.card.leds[at(i)].id;
            const int minus = model_.tape_under_pad[at(2 * i)];
            const int plus = model_.tape_under_pad[at(2 * i + 1)];
            for (const auto& [pad, node] : {std::pair{"-", minus}, std::pair{"+", plus}}) {
                for (const int terminal : {0, 1}) {
                    const int feed = model_.tape_on_terminal[terminal];
                    if (node < 0 || feed < 0 || model_.ohms.between(feed, node) > kNoPath_ohm) {
                        continue;
                    }
                    const char* how =
                        flap_ ? (terminal == 0 ? "mend.do_meter_reach_bed" : "mend.do_meter_reach_flap")
                              : (terminal == 0 ? "mend.do_meter_reach_minus" : "mend.do_meter_reach_plus");
                    meter(TestKind::meter_reach, "meter-reach", id + pad, 14, {{"pad", shown(id + pad)}},
                          ohms, how, feed, node);
                    model_.tests.back().led = i;
                }
            }
            if (minus >= 0 && plus >= 0) {
                meter(TestKind::meter_volts, "meter-volts", id, 10, {{"led", id}, {"hold", hold_}}, volts,
                      nullptr, plus, minus);
                model_.tests.back().led = i;
            }
        }
        for (int c = 0; c < model_.real_contacts; ++c) {
            const Contact& contact = model_.conductors.contacts[at(c)];
            if (contact.overlap < 0) {
                continue;
            }
            const ResistorElement& element = model_.circuit.resistors[at(model_.contact_element[at(c)])];
            const std::string a = name_of(model_.card, model_.conductors, contact.a);
            const std::string b = name_of(model_.card, model_.conductors, contact.b);
            std::string about = a + "-" + b;
            about.append("-").append(std::to_string(c));
            meter(TestKind::meter_joint, "meter-joint", about, 12, {{"from", a}, {"to", b}}, ohms, nullptr,
                  element.a, element.b);
            model_.tests.back().at_mm = {contact.at_mm};
            model_.tests.back().parts = {a, b};
        }
    }

    MendModel& model_;
    const Words& words_;
    bool flap_ = false;
    std::string hold_;
};

} // namespace

bool reads_volts(TestKind kind) {
    return kind == TestKind::meter_volts || kind == TestKind::meter_holder || kind == TestKind::meter_cell;
}

bool reads_ohms(TestKind kind) {
    return kind == TestKind::meter_apart || kind == TestKind::meter_reach || kind == TestKind::meter_joint;
}

void find_tests(MendModel& model) {
    TestList(model).all();
}

} // namespace lanternleaf
