// Does the cell's current have a way to every light, the right way round, and no way past them?
#include "base/readout.h"
#include "base/tolerance.h"
#include "findings/rule_tools.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// Which side a piece is on by its own nature: a strip by what it is meant to be, a holder contact by the
/// face it carries; a pad is on neither.
Side nature_of(const ReviewFacts& facts, Piece piece) {
    if (piece.kind == PieceKind::strip) {
        return strip_at(facts, piece.index).side;
    }
    if (piece.kind == PieceKind::terminal) {
        return terminal_face(facts.card, piece.pad) == CellFace::negative ? Side::negative : Side::positive;
    }
    return Side::link;
}

std::string in_words(const ReviewFacts& facts, Piece piece) {
    if (piece.kind == PieceKind::terminal) {
        return contact_words(facts, piece.pad) + " (" + sign_of(terminal_face(facts.card, piece.pad)) + ")";
    }
    const std::string name = spoken(piece_name(facts, piece));
    if (piece.kind == PieceKind::strip) {
        return name + " (" + sign_of(strip_at(facts, piece.index).side) + ")";
    }
    return name;
}

/// Strips of a net, by index.
std::vector<int> strips_of(const Net& net) {
    std::vector<int> out;
    for (const Piece& piece : net.members) {
        if (piece.kind == PieceKind::strip) {
            out.push_back(piece.index);
        }
    }
    return out;
}

/// Where a dead conductor comes closest to something that leads to the wanted face.
SideGap gap_to_face(const ReviewFacts& facts, const std::vector<int>& strips, CellFace face) {
    const Conductors& made = facts.conductors;
    const NetSide wanted = face == CellFace::negative ? NetSide::negative : NetSide::positive;
    const Side unwanted = face == CellFace::negative ? Side::positive : Side::negative;
    SideGap best;
    const int terminal = terminal_of(facts.card, face);
    for (const int dead : strips) {
        const Ribbon& ribbon = made.strips[static_cast<std::size_t>(dead)].ribbon;
        for (std::size_t i = 0; i < made.strips.size(); ++i) {
            const int net = made.net_of_strip[i];
            if (net == made.net_of_strip[static_cast<std::size_t>(dead)] ||
                made.nets[static_cast<std::size_t>(net)].side != wanted ||
                strip_at(facts, static_cast<int>(i)).side == unwanted) { // never advise joining the two sides
                continue;
            }
            const Nearest here = nearest_of_strips(ribbon, made.strips[i].ribbon);
            if (here.mm < best.mm) {
                best = {here.mm, static_cast<int>(i), -1, here.on_a, here.on_b};
            }
        }
        const Nearest here = nearest_to_contact(facts, ribbon, terminal);
        if (here.mm < best.mm) {
            best = {here.mm, -1, terminal, here.on_a, here.on_b};
        }
    }
    return best;
}

/// The strip not meant for the other side that a lone pad comes closest to.
SideGap gap_from_pad(const ReviewFacts& facts, const PadOutline& pad, CellFace face) {
    const Conductors& made = facts.conductors;
    const Side unwanted = face == CellFace::negative ? Side::positive : Side::negative;
    SideGap best;
    for (std::size_t i = 0; i < made.strips.size(); ++i) {
        if (strip_at(facts, static_cast<int>(i)).side == unwanted) {
            continue;
        }
        for (const Run& run : made.strips[i].ribbon.runs) {
            const Nearest here = nearest(pad.outline, run.outline);
            if (here.mm < best.mm) {
                best = {here.mm, static_cast<int>(i), -1, here.on_a, here.on_b};
            }
        }
    }
    return best;
}

Vec2 middle(Vec2 a, Vec2 b) {
    return (a + b) * 0.5;
}

struct DarkPad {
    int led = 0;
    int pad = 0;
};

std::string pad_name(const ReviewFacts& facts, DarkPad dark) {
    return piece_name(facts, {PieceKind::led_pad, dark.led, dark.pad});
}

int net_of(const ReviewFacts& facts, DarkPad dark) {
    return facts.conductors.net_of_led_pad[static_cast<std::size_t>(2 * dark.led + dark.pad)];
}

CellFace face_of(DarkPad dark) {
    return dark.pad == 0 ? CellFace::negative : CellFace::positive;
}

void lone_pad(const ReviewFacts& facts, DarkPad dark, Findings& out) {
    const PadOutline& pad = facts.conductors.led_pads[static_cast<std::size_t>(2 * dark.led + dark.pad)];
    const std::string name = pad_name(facts, dark);
    const std::string sign = sign_of(face_of(dark));
    const SideGap gap = gap_from_pad(facts, pad, face_of(dark));
    Finding found{"led-not-reached", Level::problem, pad.at_mm, {name}, "", ""};
    if (gap.strip < 0) {
        found.text = spoken(name) + " touches no tape, and there is no " + sign + " trace to reach it.";
        found.fix = "Lay a " + sign + " trace from the holder to " + spoken(name) + ".";
    } else {
        const std::string& strip = strip_at(facts, gap.strip).id;
        found.parts.push_back(strip);
        if (gap.mm > tolerance::kSamePlace_mm) {
            found.text = spoken(name) + " touches no tape: it is " + readout_below_mm(gap.mm, 0.0) +
                         " short of " + strip + ".";
            found.fix = "Lengthen " + strip + " up to " + spoken(name) + ", or move " +
                        facts.card.leds[static_cast<std::size_t>(dark.led)].id + " onto it.";
        } else {
            found.text = spoken(name) + " is over " + strip + ", but its metal touches none of the tape.";
            found.fix = "Let the whole pad lie on " + strip + ", with no patch between.";
        }
    }
    out.push_back(std::move(found));
}

void both_on_one(const ReviewFacts& facts, DarkPad dark, Findings& out) {
    const Led& led = facts.card.leds[static_cast<std::size_t>(dark.led)];
    const std::vector<int> strips =
        strips_of(facts.conductors.nets[static_cast<std::size_t>(net_of(facts, dark))]);
    const std::string name = pad_name(facts, dark);
    Finding found{"led-not-reached", Level::problem, led.at_mm, {name, led.id}, "", ""};
    std::string where = "the same metal";
    if (!strips.empty()) {
        found.parts.push_back(strip_at(facts, strips.front()).id);
        where += " (" + strip_at(facts, strips.front()).id + ")";
    }
    found.text = "Both pads of " + led.id + " rest on " + where + ", so no current goes through it.";
    found.fix = "Let " + spoken(name) + " rest on the " + sign_of(face_of(dark)) +
                " trace only, and see that the two traces do not touch.";
    out.push_back(std::move(found));
}

/// Pads that rest on one conductor which does not lead to the face they need.
void dead_conductor(const ReviewFacts& facts, const std::vector<DarkPad>& pads, Findings& out) {
    const DarkPad first = pads.front();
    const CellFace face = face_of(first);
    const std::vector<int> strips =
        strips_of(facts.conductors.nets[static_cast<std::size_t>(net_of(facts, first))]);
    Finding found{"led-not-reached", Level::problem, {}, {}, "", ""};
    for (const DarkPad& pad : pads) {
        found.parts.push_back(pad_name(facts, pad));
    }
    const std::string names = spoken_list(found.parts);
    const std::string rests = pads.size() == 1 ? " rests on " : " rest on ";
    const SideGap gap = gap_to_face(facts, strips, face);
    const Reach reach = reach_of_net(facts, net_of(facts, first), true, first.led);
    std::string from = strip_at(facts, strips.front()).id;
    for (const int strip : strips) { // speak of the strip that comes closest
        const Ribbon& ribbon = facts.conductors.strips[static_cast<std::size_t>(strip)].ribbon;
        for (const Run& run : ribbon.runs) {
            if (distance_to(run.outline, gap.on_a) < tolerance::kSamePlace_mm) {
                from = strip_at(facts, strip).id;
            }
        }
    }
    found.parts.push_back(from);
    const std::string goal =
        gap.strip >= 0 ? strip_at(facts, gap.strip).id : contact_words(facts, gap.terminal);
    found.parts.push_back(gap.strip >= 0 ? goal : "holder");
    found.at_mm = middle(gap.on_a, gap.on_b);
    found.text = names + rests + from + ", which " +
                 (reach.none() ? std::string("does not lead to the cell: ")
                               : std::string("does not lead to the cell's ") + sign_of(face) + " face: ");
    if (gap.mm > tolerance::kSamePlace_mm) {
        found.text += "it is " + readout_below_mm(gap.mm, 0.0) + " short of " + goal + ".";
        found.fix = "Lay tape from " + from + " to " + goal + ".";
    } else if (gap.strip >= 0) {
        found.text += "it lies over " + goal + " but their metal does not meet.";
        found.fix = "Join " + from + " and " + goal + ": foil to foil, with no patch between.";
    } else {
        found.text += "too little of it lies on " + goal + "; " + readout_mm2(tolerance::kDiscContact_mm2) +
                      " make contact.";
        found.fix = "Lay " + from + " further onto " + goal + ".";
    }
    out.push_back(std::move(found));
}

} // namespace

void rule_short_circuit(const ReviewFacts& facts, Findings& out) {
    if (!cell_shorted(facts)) {
        return;
    }
    const Piece minus{PieceKind::terminal, 0, terminal_of(facts.card, CellFace::negative)};
    const Piece plus{PieceKind::terminal, 0, terminal_of(facts.card, CellFace::positive)};
    const std::vector<int> chain = joined_by(facts.conductors, minus, plus);

    // Walk from the - face to the + face; the two sides meet where the first positive piece is entered.
    Finding found{"short-circuit", Level::problem, {}, {}, "", ""};
    Piece at = minus;
    Piece last = minus;
    Piece next = plus;
    bool met = false;
    const auto name_strip = [&](Piece piece) {
        if (piece.kind == PieceKind::strip) {
            const std::string& id = strip_at(facts, piece.index).id;
            if (std::find(found.parts.begin(), found.parts.end(), id) == found.parts.end()) {
                found.parts.push_back(id);
            }
        }
    };
    for (const int index : chain) {
        const Contact& contact = facts.conductors.contacts[static_cast<std::size_t>(index)];
        const Piece to = contact.a == at ? contact.b : contact.a;
        if (!met && nature_of(facts, to) == Side::positive) {
            met = true;
            last = at;
            next = to;
            found.at_mm = contact.at_mm;
        }
        at = to;
        name_strip(at);
    }
    if (found.parts.empty()) {
        found.parts.emplace_back("holder");
        found.at_mm = facts.card.holder.at_mm;
    }
    found.text = "The cell is shorted: " + in_words(facts, last) + " touches " + in_words(facts, next);
    const double current_mA = facts.lighting.cell_mA;
    if (facts.solution.ok() && current_mA > 0.0) {
        found.text += ", so about " + readout_mA(current_mA) + " go past the lights";
    }
    found.text += ".";
    found.fix = "Keep the cell out; put a patch between the two sides there, or lay one of them elsewhere.";
    out.push_back(std::move(found));
}

void rule_led_not_reached(const ReviewFacts& facts, Findings& out) {
    std::vector<DarkPad> dark;
    for (int led = 0; led < static_cast<int>(facts.card.leds.size()); ++led) {
        const LedReach reach = reach_of_led(facts, led, true);
        if (reach.both()) {
            continue;
        }
        if (reach.minus.none()) {
            dark.push_back({led, 0});
        }
        if (reach.plus.none()) {
            dark.push_back({led, 1});
        }
        if (!reach.minus.none() && !reach.plus.none()) { // both lead to the same face
            dark.push_back({led, reach.minus.negative ? 1 : 0});
        }
    }
    // One sentence for all pads on the same dead conductor: they share one cause and one cure.
    std::vector<bool> told(dark.size(), false);
    for (std::size_t i = 0; i < dark.size(); ++i) {
        if (told[i]) {
            continue;
        }
        const int net = net_of(facts, dark[i]);
        if (net == net_of(facts, {dark[i].led, 1 - dark[i].pad})) {
            both_on_one(facts, dark[i], out);
        } else if (strips_of(facts.conductors.nets[static_cast<std::size_t>(net)]).empty()) {
            lone_pad(facts, dark[i], out);
        } else {
            std::vector<DarkPad> together{dark[i]};
            for (std::size_t j = i + 1; j < dark.size(); ++j) {
                if (!told[j] && dark[j].pad == dark[i].pad && net_of(facts, dark[j]) == net &&
                    net_of(facts, {dark[j].led, 1 - dark[j].pad}) != net) {
                    told[j] = true;
                    together.push_back(dark[j]);
                }
            }
            dead_conductor(facts, together, out);
        }
    }
}

void rule_led_reversed(const ReviewFacts& facts, Findings& out) {
    const int count = static_cast<int>(facts.card.leds.size());
    int reversed = 0;
    for (int led = 0; led < count; ++led) {
        reversed += is_reversed(facts, led) ? 1 : 0;
    }
    for (int led = 0; reversed > 0 && led < count; ++led) {
        if (!is_reversed(facts, led)) {
            continue;
        }
        const Led& part = facts.card.leds[static_cast<std::size_t>(led)];
        const double against_V = -facts.lighting.lights[static_cast<std::size_t>(led)].volts;
        Finding found{"led-reversed", Level::problem, part.at_mm, {part.id}, "", ""};
        found.text =
            part.id + " is the wrong way round: " + spoken(part.id + "-") + " leads to the cell's + face";
        if (facts.solution.ok() && against_V > 0.0) {
            found.text += ", " + readout_volts(against_V) + " against it";
        }
        found.text += ", so it stays dark.";
        found.fix = reversed == count && count > 1
                        ? "Every light is turned this way: turn the cell over, or turn each light by 180°."
                        : "Turn " + part.id + " by 180°.";
        out.push_back(std::move(found));
    }
}

} // namespace lanternleaf
