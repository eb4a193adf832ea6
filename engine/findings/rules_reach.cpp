// Does the cell's current have a way to every light, the right way round, and no way past them?
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
        return facts.words("findings.with_sign", {{"name", contact_words(facts, piece.pad)},
                                                  {"sign", sign_of(terminal_face(facts.card, piece.pad))}});
    }
    if (piece.kind == PieceKind::strip) {
        return with_sign(facts, strip_at(facts, piece.index));
    }
    return spoken(piece_name(facts, piece));
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
    const Words& words = facts.words;
    const Fill spoken_pad{"pad", spoken(name)};
    const SideGap gap = gap_from_pad(facts, pad, face_of(dark));
    Finding found{"led-not-reached", Level::problem, pad.at_mm, {name}, "", ""};
    if (gap.strip < 0) {
        const Fill trace{"trace", trace_words(face_of(dark), words)};
        found.text = words("findings.pad_no_trace", {spoken_pad, trace});
        found.fix = words("findings.pad_no_trace_fix", {spoken_pad, trace});
    } else {
        const std::string& strip = strip_at(facts, gap.strip).id;
        found.parts.push_back(strip);
        if (gap.mm > tolerance::kSamePlace_mm) {
            found.text = words("findings.pad_short",
                               {spoken_pad, {"mm", below_mm(gap.mm, 0.0, words)}, {"strip", strip}});
            found.fix = words("findings.pad_short_fix",
                              {spoken_pad,
                               {"strip", strip},
                               {"led", facts.card.leds[static_cast<std::size_t>(dark.led)].id}});
        } else {
            found.text = words("findings.pad_over", {spoken_pad, {"strip", strip}});
            found.fix = words("findings.pad_over_fix", {{"strip", strip}});
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
    const Words& words = facts.words;
    if (strips.empty()) {
        found.text = words("findings.both_on_metal", {{"led", led.id}});
    } else {
        const std::string& strip = strip_at(facts, strips.front()).id;
        found.parts.push_back(strip);
        found.text = words("findings.both_on_strip", {{"led", led.id}, {"strip", strip}});
    }
    found.fix =
        words("findings.both_on_fix", {{"pad", spoken(name)}, {"trace", trace_words(face_of(dark), words)}});
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
    const Words& words = facts.words;
    const std::string names = spoken_list(found.parts, words);
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
    const char* message = nullptr;
    const char* cure = nullptr;
    if (gap.mm > tolerance::kSamePlace_mm) {
        message = reach.none() ? "findings.dead_short" : "findings.dead_face_short";
        cure = "findings.dead_lay_fix";
    } else if (gap.strip >= 0) {
        message = reach.none() ? "findings.dead_over" : "findings.dead_face_over";
        cure = "findings.dead_join_fix";
    } else {
        message = reach.none() ? "findings.dead_scant" : "findings.dead_face_scant";
        cure = "findings.dead_further_fix";
    }
    found.text = words(message, {{"pads", names},
                                 {"n", pads.size()},
                                 {"strip", from},
                                 {"face", sign_of(face)},
                                 {"mm", below_mm(gap.mm, 0.0, words)},
                                 {"goal", goal},
                                 {"needed", area_text(tolerance::kDiscContact_mm2, words)}});
    found.fix = words(cure, {{"from", from}, {"goal", goal}});
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
    const Words& words = facts.words;
    const double current_mA = facts.lighting.cell_mA;
    const bool flows = facts.solution.ok() && current_mA > 0.0;
    found.text = words(
        flows ? "findings.shorted_current" : "findings.shorted",
        {{"a", in_words(facts, last)}, {"b", in_words(facts, next)}, {"current", words.mA(current_mA)}});
    found.fix = words("findings.shorted_fix");
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
        const Words& words = facts.words;
        const bool held_off = facts.solution.ok() && against_V > 0.0;
        found.text =
            words(held_off ? "findings.reversed_volts" : "findings.reversed",
                  {{"led", part.id}, {"pad", spoken(part.id + "-")}, {"volts", words.volts(against_V)}});
        found.fix = reversed == count && count > 1 ? words("findings.reversed_all_fix")
                                                   : words("findings.reversed_fix", {{"led", part.id}});
        out.push_back(std::move(found));
    }
}

} // namespace lanternleaf
