#include "guide/phrases.h"
#include "mend/model.h"

#include <algorithm>

namespace lanternleaf {

namespace {

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

// Seconds are estimates for a steady hand with the things at hand (engineering judgement); only their ratios
// matter for the order.
class TestList {
public:
    explicit TestList(MendModel& made_for)
        : model_(made_for), flap_(holder_shape(model_.card, model_.parts).flap) {}

    void all() {
        hold_ = flap_ ? "Hold the flap shut." : "Leave the switch on.";
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
    MendTest& add(TestKind kind, std::string id, double effort_s, std::string title, std::string sentence,
                  std::vector<std::string> outcomes, TestNeeds needs = TestNeeds::hands) {
        MendTest test;
        test.id = std::move(id);
        test.kind = kind;
        test.needs = needs;
        test.effort_s = effort_s;
        test.title = std::move(title);
        test.sentence = std::move(sentence);
        test.outcomes = std::move(outcomes);
        for (std::size_t k = 0; k < test.outcomes.size(); ++k) {
            test.offered.push_back(static_cast<int>(k));
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
        add(TestKind::warm, "warm", 4, "Is the cell warm?",
            "Take the cell out first. Touch it with a fingertip.", {"It is cool", "It is warm"});
        const std::string up = model_.card.cell.face_down == CellFace::negative ? "+" : "−";
        add(TestKind::look_cell, "look-cell", 9, "Look at the cell",
            "Look for a pull tab or film round the cell. Read its upper face: " + model_.card.cell.type +
                " and " + up + ".",
            {"All is right", "It is the other way up", "There is no cell", "A tab or film is there",
             "It is another type"});
        add(TestKind::press_all, "press-all", 8, "Press the card here and there",
            hold_ + " Press on joints, pads and folds. Watch the lights.",
            {"No change", "Something changes"});
        add(TestKind::swap_cell, "swap-cell", 15, "Try another cell",
            "Put in a cell that you know is good. Press and watch the lights.", {"No change", "They came on"},
            TestNeeds::known_cell);
    }

    void touch_tests() {
        add(TestKind::feed_holder, "feed-holder", 15, "Feed the tapes beside the holder",
            "Take the card's cell out. Hold a good cell to the two tapes beside the holder.",
            {"No change", "They came on"}, TestNeeds::known_cell);
        set_places(add(TestKind::press_holder, "press-holder", 3, "Press at the holder",
                       hold_ + " Press hard on each place. Watch the lights.", {"No change"}),
                   places_of({FaultKind::switch_open, FaultKind::cell_loose, FaultKind::contact_loose}, ""),
                   3);
        set_places(
            add(TestKind::foil_holder, "foil-holder", 7, "Bridge with foil at the holder",
                "Lay a scrap of foil from the cell to the tape, at each place. Press and watch the lights.",
                {"No change"}, TestNeeds::foil),
            places_of({FaultKind::switch_open, FaultKind::contact_loose}, ""), 6);
        if (const std::vector<int> close = places_of({FaultKind::sides_touch, FaultKind::crossing_bare}, "");
            !close.empty()) {
            set_places(add(TestKind::look_close, "look-close", 4, "Look where + and − come close",
                           "Look closely at each place. A hair of foil is enough.", {"Nothing touches"}),
                       close, 2.5);
        }
    }

    void led_tests(int i) {
        const std::string& id = model_.card.leds[at(i)].id;
        const auto add_led = [&](TestKind kind, const char* name, double effort_s, const std::string& title,
                                 const std::string& sentence, std::vector<std::string> outcomes,
                                 TestNeeds needs = TestNeeds::hands) -> MendTest& {
            MendTest& test = add(kind, std::string(name) + "/" + id, effort_s, title, sentence,
                                 std::move(outcomes), needs);
            test.led = i;
            test.parts = {id};
            test.at_mm = {model_.card.leds[at(i)].at_mm};
            return test;
        };
        const std::vector<int> pads = places_of({FaultKind::pad_loose}, id);
        if (!pads.empty()) {
            MendTest& test = add_led(TestKind::press_pads, "press-pads", 3, "Press the pads of " + id,
                                     hold_ + " Press each pad of " + id + " with an eraser. Watch the light.",
                                     {"No change"});
            test.at_mm.clear();
            set_places(test, pads, 3);
        }
        add_led(TestKind::look_led, "look-led", 8, "Look at the marks of " + id,
                "Look which way " + id + " lies, and on which tapes.",
                {"It is as drawn", "It is turned round", "It is another type", "Both pads are on one tape",
                 "It hangs on another light"});
        add_led(TestKind::touch_led, "touch-led", 15, "Touch a cell across " + id,
                "Hold a good cell across the pads of " + id + ". Turn the cell over and try again.",
                {"It lights as marked", "It lights the other way", "It stays dark", "Its colour is wrong"},
                TestNeeds::known_cell);
        add_led(TestKind::feed_led, "feed-led", 15, "Feed " + id + " from beside it",
                "Take the card's cell out. Hold a good cell to the two tapes beside " + id + ".",
                {"It lights", "It stays dark"}, TestNeeds::known_cell);
        add_led(TestKind::see_light, "see-light", 4, "Look at " + id + " once more",
                hold_ + " Look only at " + id + ".", {"Dark", "Dim", "Lit"});
        add_led(TestKind::see_hidden, "see-hidden", 8, "Look at " + id + " from the side",
                "Go somewhere dark. " + hold_ + " Look at " + id + " itself, not at the front.",
                {"No change", "It does shine"});
        add_led(TestKind::lift_led, "lift-led", 15, "Lift " + id + " off its tape",
                "Lift one pad of " + id + ". Watch the other lights.", {"No change", "The others came on"});
    }

    void strip_tests(const std::string& id) {
        const auto add_strip = [&](TestKind kind, const char* name, double effort_s, const std::string& title,
                                   const std::string& sentence, const char* none,
                                   const std::vector<int>& places, double per_place_s, TestNeeds needs) {
            if (places.empty()) {
                return;
            }
            MendTest& test =
                add(kind, std::string(name) + "/" + id, effort_s, title, sentence, {none}, needs);
            test.parts = {id};
            set_places(test, places, per_place_s);
        };
        using K = FaultKind;
        add_strip(TestKind::look_along, "look-along", 3, "Follow " + id + " with a finger",
                  "Run a finger along " + id + ". Look for a gap, a crack or a lifted end.", "It looks whole",
                  places_of({K::joint_loose, K::strip_broken, K::contact_loose}, id), 2, TestNeeds::hands);
        add_strip(TestKind::press_along, "press-along", 3, "Press the joints of " + id,
                  hold_ + " Press each joint of " + id + " with a fingertip. Watch the lights.", "No change",
                  places_of({K::joint_loose}, id), 3, TestNeeds::hands);
        add_strip(TestKind::foil_along, "foil-along", 5, "Bridge " + id + " with foil",
                  hold_ + " Rub a scrap of foil over each place on " + id + ". Watch the lights.",
                  "No change", places_of({K::joint_loose, K::strip_broken, K::run_poor}, id), 4,
                  TestNeeds::foil);
    }

    void rare_tests() {
        for (std::size_t l = 0; l < model_.faults.size(); ++l) {
            const Fault& fault = model_.faults[l];
            if (fault.kind != FaultKind::crossing_bare) {
                continue;
            }
            const FaultPlace& place = model_.places[at(fault.place)];
            MendTest& test =
                add(TestKind::lift_bridge, "lift-bridge/" + place.parts[1] + "-" + place.parts[0], 15,
                    "Lift " + place.parts[1] + " off the crossing",
                    "Take the cell out. Lift " + place.parts[1] + " " + place.name +
                        ". Hold it up, put the cell back and watch the lights.",
                    {"No change", "Some came on"});
            test.places = {fault.place};
            test.at_mm = {place.at_mm};
            test.parts = place.parts;
        }
        add(TestKind::liner, "liner", 15, "Is backing still under the tape?",
            "Lift the ends of the tape in the holder a little. Look for backing paper.",
            {"No backing", "Backing is left"});
        add(TestKind::try_open, "try-open", 6, "Open the card and press",
            "Lay the card open on the table. Press the flap by hand and watch the lights.",
            {"No change", "They came on"});
        add(TestKind::slip_paper, "slip-paper", 12, "Slip paper between",
            "Slip a sheet of paper between the closed halves. Press and watch the lights.",
            {"No change", "They came on"});
        add(TestKind::dark_glow, "dark-glow", 12, "Look at the closed card in the dark",
            "Close the card and do not press. Look in a dark room.", {"All dark", "Something glows"});
    }

    // A spare LED tells by its light what a meter tells in volts.
    void voltage_tests() {
        const auto probe = [&](TestKind kind, const std::string& id, const std::string& title,
                               const std::string& where, int plus, int minus) {
            MendTest& test =
                add(kind, id, 11, title,
                    hold_ + " Hold a light that you know is good to the two tapes beside " + where +
                        ", its + side on the + tape. Then turn it round.",
                    {"It lights", "It lights only dimly", "It stays dark", "It lights turned round"},
                    TestNeeds::known_led);
            test.from_node = plus;
            test.to_node = minus;
        };
        const int plus = model_.tape_on_terminal[terminal_of(model_.card, CellFace::positive)];
        const int minus = model_.tape_on_terminal[terminal_of(model_.card, CellFace::negative)];
        if (plus >= 0 && minus >= 0) {
            probe(TestKind::probe_holder, "probe-holder", "Hold a spare light to the holder's tapes",
                  "the holder", plus, minus);
        }
        for (int i = 0; i < static_cast<int>(model_.card.leds.size()); ++i) {
            const std::string& id = model_.card.leds[at(i)].id;
            const int on_minus = model_.tape_under_pad[at(2 * i)];
            const int on_plus = model_.tape_under_pad[at(2 * i + 1)];
            if (on_minus >= 0 && on_plus >= 0) {
                probe(TestKind::probe_led, "probe-led/" + id, "Hold a spare light beside " + id, id, on_plus,
                      on_minus);
                model_.tests.back().led = i;
                model_.tests.back().at_mm = {model_.card.leds[at(i)].at_mm};
                model_.tests.back().parts = {id};
            }
        }
    }

    void meter_tests() {
        const int bed = model_.tape_on_terminal[0];
        const int flap = model_.tape_on_terminal[1];
        const auto meter = [&](TestKind kind, const std::string& id, double effort_s,
                               const std::string& title, const std::string& sentence,
                               std::vector<std::string> outcomes, int from, int to) {
            MendTest& test = add(kind, id, effort_s, title, sentence, std::move(outcomes), TestNeeds::meter);
            test.from_node = from;
            test.to_node = to;
        };
        const std::vector<std::string> ohms{"As expected", "Much more", "OL"};
        const std::vector<std::string> volts{"As expected", "Lower", "About 0 V", "Below 0 V"};
        const std::string out = "Take the cell out. Read the ohms ";
        const std::string first = flap_ ? "bed" : "the holder's − pad";
        const std::string second = flap_ ? "flap" : "the holder's + pad";
        meter(TestKind::meter_cell, "meter-cell", 10, "Measure the cell alone",
              "Take the cell out. Read its volts.", {"2.9 V or more", "Lower", "About 0 V"}, -1, -1);
        if (bed >= 0 && flap >= 0) {
            meter(TestKind::meter_apart, "meter-apart", 12, "Measure + against −",
                  out + "between the tape in the " + first + " and in the " + second + ".",
                  {"OL", "A path of many ohms", "Almost 0 Ω"}, bed, flap);
            meter(TestKind::meter_holder, "meter-holder", 12, "Measure at the holder",
                  hold_ + " Read the volts between the tape in the bed and in the flap.", volts,
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
                    meter(TestKind::meter_reach, "meter-reach/" + id + pad, 14,
                          "Measure to " + shown(id + pad),
                          out + "from the tape in the " + (terminal == 0 ? first : second) +
                              " to the tape under " + shown(id + pad) + ".",
                          ohms, feed, node);
                    model_.tests.back().led = i;
                }
            }
            if (minus >= 0 && plus >= 0) {
                meter(TestKind::meter_volts, "meter-volts/" + id, 10, "Measure beside " + id,
                      hold_ + " Read the volts between the two tapes beside " + id + ".", volts, plus, minus);
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
            std::string id = "meter-joint/" + a + "-" + b;
            id += "-" + std::to_string(c);
            meter(TestKind::meter_joint, id, 12, "Measure across a joint",
                  out + "from " + a + " to " + b + " on either side of their joint.", ohms, element.a,
                  element.b);
            model_.tests.back().at_mm = {contact.at_mm};
            model_.tests.back().parts = {a, b};
        }
    }

    MendModel& model_;
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
