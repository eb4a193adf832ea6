#include "mend/cause_words.h"

namespace lanternleaf {

namespace {

// A scrap that bridges a crack, and a patch that spares 5 mm round a crossing (common practice).
constexpr double kBridge_mm = 15.0;
constexpr double kPatch_mm = 16.0;

const std::string kCellOut = "Take the cell out. ";

std::string upper_first(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    }
    return text;
}

Change change_at(ChangeKind kind, const std::string& part, Vec2 at_mm, double mm) {
    Change change;
    change.kind = kind;
    change.part = part;
    change.at_mm = at_mm;
    change.mm = mm;
    return change;
}

Change foam(const Card& card, int more) {
    Change change;
    change.kind = ChangeKind::foam_layers;
    change.count = card.foam ? card.foam->layers + more : 0;
    return change;
}

struct Words {
    Cause& out;

    void say(std::string title, std::string sentence, std::string fix) const {
        out.title = std::move(title);
        out.sentence = std::move(sentence);
        out.fix = std::move(fix);
    }
};

void led_words(const MendModel& model, const Fault& fault, Cause& out) {
    const Words words{out};
    const std::string& id = model.places[static_cast<std::size_t>(fault.place)].parts.front();
    switch (fault.kind) {
    case FaultKind::led_turned:
        words.say(id + " lies the wrong way round",
                  "A turned light stays dark and leaves the others as they are.",
                  kCellOut + "Turn " + id + " so that its + side lies on the + tape.");
        out.found = change_at(ChangeKind::led_turned, id, {}, 0.0);
        return;
    case FaultKind::led_dead:
        words.say(id + " no longer lights", "A spent light stays dark on a good cell too.",
                  kCellOut + "Put another light of the same kind in place of " + id + ".");
        return;
    case FaultKind::led_wrong:
        words.say(id + " is another type of light",
                  "Red, orange and yellow lights need less push and take it from the others.",
                  kCellOut + "Change " + id + " for the type that the card names.");
        out.found = change_at(ChangeKind::led_swapped, id, {}, 0.0);
        out.found->type = fault.type;
        return;
    case FaultKind::led_swapped:
        words.say(model.places[static_cast<std::size_t>(fault.place)].name + " have changed places",
                  "Each lights in the other's place.", kCellOut + "Exchange the two lights.");
        return;
    case FaultKind::led_one_side:
        words.say("Both pads of " + id + " lie on the same tape",
                  "Without − on one side and + on the other it stays dark.",
                  kCellOut + "Follow both tapes with a finger. Lay " + id + " across the two.");
        return;
    case FaultKind::led_in_series:
        words.say(model.places[static_cast<std::size_t>(fault.place)].name + " hang one behind the other",
                  "Two lights in a row need twice the push of one cell.",
                  kCellOut + "Lay each of the two across both tapes, − on − and + on +.");
        return;
    default:
        words.say(id + " shines where nobody sees it",
                  "The light works; the window over it is shut or too thick.",
                  "Open the window over " + id + ", or thin the paper there.");
        return;
    }
}

void cell_words(const MendModel& model, const Fault& fault, Cause& out) {
    const Words words{out};
    const std::string& type = model.card.cell.type;
    const char* up = model.card.cell.face_down == CellFace::negative ? "+" : "−";
    switch (fault.kind) {
    case FaultKind::cell_upside_down:
        words.say("The cell is the wrong way up", "Turned over, it drives every light backwards.",
                  std::string("Take the cell out. Put it back with ") + up + " facing you.");
        out.found = change_at(ChangeKind::cell_upside_down, "", {}, 0.0);
        return;
    case FaultKind::cell_flat:
        words.say("The cell is flat or weak",
                  "A tired cell reads well alone and sags as soon as a light draws on it.",
                  "Put in a fresh " + type + ". Tape over the old one before it goes to the collection.");
        return;
    case FaultKind::cell_wrong:
        words.say("The cell is of another type", "A 1.5 V cell of the same size has too little push.",
                  "Read the code on the cell. Put in a " + type + ".");
        return;
    case FaultKind::cell_loose:
        words.say("The cell sits loosely", "It touches only now and then.",
                  kCellOut + "Bend the contact up a little, or shim the cell with paper.");
        return;
    case FaultKind::cell_missing:
        words.say("There is no cell in the holder", "Nothing can light without it.",
                  std::string("With an adult, put a ") + type + " in, " + up + " facing you.");
        return;
    default:
        words.say("A tab or film is still between", "It keeps the cell apart from its contact.",
                  "Pull the tab or the film out.");
        return;
    }
}

void touch_words(const MendModel& model, const Fault& fault, Cause& out) {
    const Words words{out};
    const FaultPlace& place = out.places.empty() ? FaultPlace{} : out.places.front();
    switch (fault.kind) {
    case FaultKind::sides_touch:
        words.say("+ and − touch " + place.name,
                  "Where they meet, the current takes the short way and no light gets any.",
                  kCellOut + "Lift or cut away the foil that touches. Lay paper tape between.");
        return;
    case FaultKind::crossing_bare:
        words.say("The patch leaves + and − touching " + place.name,
                  "A patch that slips or is too narrow lets the two tapes meet.",
                  kCellOut + "Lift " + place.parts[1] +
                      ". Lay a wider patch, then carry the tape across again.");
        if (place.parts.size() > 2) {
            out.found = change_at(ChangeKind::patch_missing, place.parts[2], {}, 0.0);
        }
        out.mend = change_at(ChangeKind::patch_added, place.parts[0], place.at_mm, kPatch_mm);
        return;
    case FaultKind::sides_touch_shut:
        words.say("+ and − touch when the card is closed",
                  "Tape on facing halves can meet, or touch the holder's edge.",
                  kCellOut + "Cover one of the two with paper tape.");
        return;
    default:
        words.say("The paper itself leads current",
                  "Damp, metallic or painted paper joins the tapes a little.",
                  kCellOut + "Let the card dry, or lay plain paper under the tapes.");
        return;
    }
    (void)model;
}

void tape_words(const MendModel& model, const Fault& fault, Cause& out) {
    const Words words{out};
    const FaultPlace& place = out.places.front();
    switch (fault.kind) {
    case FaultKind::pad_loose:
        words.say(place.name + (fault.open ? " does not touch its tape" : " hardly touches its tape"),
                  "A lifted or tilted pad, or glue under it, keeps it off the foil.",
                  kCellOut + "Press the pad down and rub it flat. Lay a tab of tape over it.");
        return;
    case FaultKind::joint_loose:
        words.say(upper_first(place.name) + (fault.open ? " does not touch" : " hardly touches"),
                  "Glue between the two foils, or too short a lap, lets little through.",
                  kCellOut + "Fold the upper end under so that foil meets foil. Rub it flat. Check that no "
                             "backing is left.");
        out.mend = change_at(ChangeKind::bridged, place.parts.back(), place.at_mm, kBridge_mm);
        return;
    case FaultKind::glue_plain:
        words.say("The glue of the " + fault.type + " tape does not conduct",
                  "Then every lap of it stays open, however well you rub it.",
                  kCellOut + "Fold each upper end under so that foil meets foil. Rub each lap flat.");
        return;
    case FaultKind::contact_loose:
        words.say(place.name + " does not reach the cell well",
                  "Tape that ends short, is bent away or greasy hardly touches.",
                  kCellOut + "Bring the tape well under the cell's place. Wipe it clean and rub it flat.");
        return;
    case FaultKind::liner_left:
        words.say("Backing is still under " + place.name, "Backing paper keeps foil and cell apart.",
                  kCellOut + "Lift the end, peel the backing off and rub the tape flat.");
        return;
    case FaultKind::run_poor:
        words.say(place.name + " is a long way for the current",
                  "Along a run of high resistance the far lights get less.",
                  kCellOut + "Lay a second strip of copper tape beside or over " + place.name + ".");
        return;
    default:
        words.say(place.name + " is torn or cracked",
                  "Foil cracks at folds and creases, and a gap may hide there.",
                  kCellOut + "Lay 15 mm of tape over the place. Rub it flat.");
        out.found = change_at(ChangeKind::tear, place.parts.front(), place.at_mm, 1.0);
        out.mend = change_at(ChangeKind::bridged, place.parts.front(), place.at_mm, kBridge_mm);
        return;
    }
    (void)model;
}

} // namespace

Cause describe_fault(const MendModel& model, int index) {
    const Fault& fault = model.faults[static_cast<std::size_t>(index)];
    Cause out;
    out.kind = fault.kind;
    if (fault.place >= 0) {
        out.places.push_back(model.places[static_cast<std::size_t>(fault.place)]);
    }
    const Words words{out};
    switch (fault.kind) {
    case FaultKind::led_turned:
    case FaultKind::led_dead:
    case FaultKind::led_wrong:
    case FaultKind::led_swapped:
    case FaultKind::led_one_side:
    case FaultKind::led_in_series:
    case FaultKind::light_hidden:
        led_words(model, fault, out);
        break;
    case FaultKind::pad_loose:
    case FaultKind::joint_loose:
    case FaultKind::glue_plain:
    case FaultKind::contact_loose:
    case FaultKind::strip_broken:
    case FaultKind::run_poor:
    case FaultKind::liner_left:
        tape_words(model, fault, out);
        break;
    case FaultKind::sides_touch:
    case FaultKind::crossing_bare:
    case FaultKind::sides_touch_shut:
    case FaultKind::paper_leaks:
        touch_words(model, fault, out);
        break;
    case FaultKind::switch_open:
        words.say("The flap does not close the switch",
                  "Foam that stands too high keeps the contact off the cell.",
                  "Take a layer of foam away, or raise the contact with a fold of tape.");
        if (model.card.foam && model.card.foam->layers > 0) {
            out.mend = foam(model.card, -1);
        }
        break;
    case FaultKind::switch_stuck:
        words.say("The switch is always closed",
                  "Foam that is too low lets the closed card press itself, and the cell runs flat.",
                  "Add a layer of foam.");
        if (model.card.foam) {
            out.mend = foam(model.card, 1);
        }
        break;
    case FaultKind::cell_upside_down:
    case FaultKind::cell_flat:
    case FaultKind::cell_wrong:
    case FaultKind::cell_loose:
    case FaultKind::cell_missing:
    case FaultKind::tab_left:
        cell_words(model, fault, out);
        break;
    case FaultKind::resistor_wrong:
        words.say(out.places.front().name + " is another value",
                  "Ten times the ohms let a tenth of the current through.",
                  kCellOut + "Read the resistor's bands. Change it for the one that the card names.");
        break;
    case FaultKind::as_built:
        words.say(fault.text, "The card as you built it does this by itself.", fault.fix);
        break;
    case FaultKind::other:
        words.say(
            "None of these fits", "What you see is like nothing that Mend can work out on this card.",
            "Ask a second pair of eyes, or take a photo for the record. Then start again with the lights.");
        break;
    }
    return out;
}

} // namespace lanternleaf
