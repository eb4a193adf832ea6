#include "guide/facts.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// A pad whose middle is this little past a cut end still lies mostly on the tape.
constexpr double kSlack_mm = 0.01;

// The other end of a contact when one end is `piece`; null when it is not about that piece.
const Piece* other_end(const Contact& contact, Piece piece, double& along_mm) {
    if (contact.a == piece) {
        along_mm = contact.along_b_mm;
        return &contact.b;
    }
    if (contact.b == piece) {
        along_mm = contact.along_a_mm;
        return &contact.a;
    }
    return nullptr;
}

// How much of a pad lies on tape of each side (indexed by Side).
struct Under {
    double area_mm2[3] = {0.0, 0.0, 0.0};

    [[nodiscard]] bool on(Side side) const { return area_mm2[static_cast<int>(side)] > 0.0; }
};

Under under_pad(const Card& card, const Conductors& conductors, Piece pad) {
    Under under;
    for (const Contact& contact : conductors.contacts) {
        double along_mm = 0.0;
        const Piece* other = other_end(contact, pad, along_mm);
        if (other != nullptr && other->kind == PieceKind::strip) {
            const Side side = strip_of(card, conductors, other->index).side;
            under.area_mm2[static_cast<int>(side)] += contact.area_mm2;
        }
    }
    return under;
}

// Turns those LEDs that lie the wrong way round on their traces; true when any was turned.
bool turn_to_marks(Card& card, const Conductors& conductors) {
    bool any = false;
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        const int led = static_cast<int>(i);
        const Under minus = under_pad(card, conductors, {PieceKind::led_pad, led, 0});
        const Under plus = under_pad(card, conductors, {PieceKind::led_pad, led, 1});
        const int right = (minus.on(Side::negative) ? 1 : 0) + (plus.on(Side::positive) ? 1 : 0);
        const int wrong = (minus.on(Side::positive) ? 1 : 0) + (plus.on(Side::negative) ? 1 : 0);
        if (wrong > right) {
            card.leds[i].turn_deg = std::fmod(card.leds[i].turn_deg + 180.0, 360.0);
            any = true;
        }
    }
    return any;
}

Side meant_for(const Under& under, Piece piece) {
    if (piece.kind == PieceKind::resistor_pad) {
        for (const Side side : {Side::negative, Side::positive}) {
            if (under.on(side)) {
                return side;
            }
        }
        return Side::link;
    }
    const Side own = piece.pad == 0 ? Side::negative : Side::positive;
    return !under.on(own) && under.on(Side::link) ? Side::link : own;
}

void find_near_strip(PadRef& pad, const Card& card, const Conductors& conductors, const PadOutline& outline) {
    double least_mm = 1e300;
    for (std::size_t i = 0; i < conductors.strips.size(); ++i) {
        if (strip_of(card, conductors, static_cast<int>(i)).side != pad.want) {
            continue;
        }
        for (const Run& run : conductors.strips[i].ribbon.runs) {
            const Nearest here = nearest(run.outline, outline.outline);
            if (here.mm < least_mm) {
                least_mm = here.mm;
                pad.near_strip = conductors.strips[i].laid_index;
                pad.near_along_mm = along(conductors.strips[i].ribbon, here.on_a);
            }
        }
    }
}

PadRef pad_ref(const Card& card, const Conductors& conductors, const PadOutline& outline) {
    PadRef pad;
    pad.piece = outline.piece;
    pad.at_mm = outline.at_mm;
    pad.name = name_of(card, conductors, outline.piece);
    const auto index = static_cast<std::size_t>(outline.piece.index);
    pad.part = outline.piece.kind == PieceKind::led_pad ? card.leds[index].id : card.resistors[index].id;
    pad.want = meant_for(under_pad(card, conductors, pad.piece), pad.piece);
    double most_mm2 = 0.0;
    for (const Contact& contact : conductors.contacts) {
        double along_mm = 0.0;
        const Piece* other = other_end(contact, pad.piece, along_mm);
        if (other == nullptr || other->kind != PieceKind::strip || contact.area_mm2 <= most_mm2) {
            continue;
        }
        if (strip_of(card, conductors, other->index).side == pad.want) {
            most_mm2 = contact.area_mm2;
            pad.strip = conductors.strips[static_cast<std::size_t>(other->index)].laid_index;
            pad.along_mm = along_mm;
        }
    }
    if (pad.strip < 0) {
        find_near_strip(pad, card, conductors, outline);
    }
    return pad;
}

// The nets that `from` reaches through LEDs and resistors without passing `barred`.
std::vector<char> nets_through_parts(const Conductors& conductors, int from, int barred) {
    std::vector<char> seen(conductors.nets.size(), 0);
    seen[static_cast<std::size_t>(from)] = 1;
    bool grew = true;
    const auto spread = [&](const std::vector<int>& net_of_pad) {
        for (std::size_t i = 0; i + 1 < net_of_pad.size(); i += 2) {
            const int a = net_of_pad[i];
            const int b = net_of_pad[i + 1];
            for (const auto& [here, there] : {std::pair{a, b}, std::pair{b, a}}) {
                if (here != barred && there != barred && seen[static_cast<std::size_t>(here)] != 0 &&
                    seen[static_cast<std::size_t>(there)] == 0) {
                    seen[static_cast<std::size_t>(there)] = 1;
                    grew = true;
                }
            }
        }
    };
    while (grew) {
        grew = false;
        spread(conductors.net_of_led_pad);
        spread(conductors.net_of_resistor_pad);
    }
    return seen;
}

// Current goes on through a resistor whose two pads lie on tape: the far tape is fed from that far pad's
// place.
void spread_through_resistors(const GuideFacts& facts, const Stage& stage, int barred,
                              std::vector<int>& feed) {
    for (bool grew = true; grew;) {
        grew = false;
        for (std::size_t near = 0; near < facts.pads.size(); ++near) {
            for (std::size_t far = 0; far < facts.pads.size(); ++far) {
                const PadRef& from = facts.pads[near];
                const PadRef& to = facts.pads[far];
                if (near == far || from.piece.kind != PieceKind::resistor_pad || from.part != to.part) {
                    continue;
                }
                const int from_net = net_under(facts, stage, from);
                const int to_net = net_under(facts, stage, to);
                if (from_net < 0 || to_net < 0 || to_net == barred ||
                    feed[static_cast<std::size_t>(from_net)] == kNotFed ||
                    feed[static_cast<std::size_t>(to_net)] != kNotFed) {
                    continue;
                }
                feed[static_cast<std::size_t>(to_net)] = static_cast<int>(far);
                grew = true;
            }
        }
    }
}

// A pad whose tape is not fed by tape and resistors, but would be through other LEDs, sits between lights in
// series, whatever its strip is called: nothing can be measured there before the lights are in.
void find_series_pads(GuideFacts& facts) {
    const Conductors& conductors = facts.conductors;
    if (conductors.net_of_terminal[0] == conductors.net_of_terminal[1]) {
        return;
    }
    const Stage whole = make_stage(facts, facts.card);
    for (const Side side : {Side::negative, Side::positive}) {
        const int own = conductors.net_of_terminal[contact_of(facts, side)];
        const int other = conductors.net_of_terminal[1 - contact_of(facts, side)];
        const std::vector<char> through = nets_through_parts(conductors, own, other);
        for (PadRef& pad : facts.pads) {
            if (pad.want != side || feed_of(facts, whole, pad) != kNotFed) {
                continue;
            }
            const int net = net_under(facts, whole, pad);
            if (net >= 0 && net != other && through[static_cast<std::size_t>(net)] != 0) {
                pad.want = Side::link;
            }
        }
    }
}

void find_terminals(GuideFacts& facts) {
    double area_mm2[2][2] = {{0.0, 0.0}, {0.0, 0.0}}; // by trace, by contact
    for (const Contact& contact : facts.conductors.contacts) {
        for (int terminal = 0; terminal < 2; ++terminal) {
            double along_mm = 0.0;
            const Piece* other = other_end(contact, {PieceKind::terminal, 0, terminal}, along_mm);
            if (other == nullptr || other->kind != PieceKind::strip) {
                continue;
            }
            const Side side = strip_of(facts.card, facts.conductors, other->index).side;
            if (side != Side::link) {
                area_mm2[side == Side::negative ? 0 : 1][terminal] += contact.area_mm2;
            }
        }
    }
    // How much more the strips speak for "negative on contact 0" than for the other way about.
    const double straight = area_mm2[0][0] + area_mm2[1][1];
    const double swapped = area_mm2[0][1] + area_mm2[1][0];
    int negative = terminal_of(facts.card, CellFace::negative);
    if (straight != swapped) {
        negative = straight > swapped ? 0 : 1;
    }
    facts.terminal[0] = negative;
    facts.terminal[1] = 1 - negative;
}

} // namespace

GuideFacts make_facts(const Card& card, const Parts& parts, const Words& words) {
    GuideFacts facts{card, parts, words, find_conductors(card, parts), {}, {}, {0, 1}};
    if (turn_to_marks(facts.card, facts.conductors)) {
        facts.conductors = find_conductors(facts.card, parts);
    }
    facts.waits = tails(facts.card, parts);
    find_terminals(facts);
    for (const auto* outlines : {&facts.conductors.led_pads, &facts.conductors.resistor_pads}) {
        for (const PadOutline& outline : *outlines) {
            facts.pads.push_back(pad_ref(facts.card, facts.conductors, outline));
        }
    }
    find_series_pads(facts);
    return facts;
}

Stage make_stage(const GuideFacts& facts, StepId step) {
    return make_stage(facts, card_after(facts.card, facts.waits, step));
}

Stage make_stage(const GuideFacts& facts, Card on_table) {
    Stage stage;
    stage.card = std::move(on_table);
    stage.conductors = find_conductors(stage.card, facts.parts);
    for (const Side side : {Side::negative, Side::positive}) {
        std::vector<int>& feed = stage.feed[side == Side::negative ? 0 : 1];
        feed.assign(stage.conductors.nets.size(), kNotFed);
        const int own = stage.conductors.net_of_terminal[contact_of(facts, side)];
        const int other = stage.conductors.net_of_terminal[1 - contact_of(facts, side)];
        feed[static_cast<std::size_t>(own)] = kFromContact;
        spread_through_resistors(facts, stage, other, feed);
    }
    return stage;
}

StepId step_of(Side side) {
    return side == Side::negative ? StepId::lay_negative : StepId::lay_positive;
}

int strip_index(const Card& card, const Conductors& conductors, const std::string& id) {
    for (std::size_t i = 0; i < conductors.strips.size(); ++i) {
        if (strip_of(card, conductors, static_cast<int>(i)).id == id) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

namespace {

// The strip (as laid on the card) on `stage`, when it is down there as far as `along_mm`; -1 when it is not.
int strip_down(const GuideFacts& facts, const Stage& stage, int laid_index, double along_mm) {
    const std::string& id = id_of(facts.card.laid[static_cast<std::size_t>(laid_index)]);
    const int strip = strip_index(stage.card, stage.conductors, id);
    const bool down =
        strip >= 0 &&
        along_mm <= stage.conductors.strips[static_cast<std::size_t>(strip)].ribbon.length_mm + kSlack_mm;
    return down ? strip : -1;
}

} // namespace

int net_under(const GuideFacts& facts, const Stage& stage, const PadRef& pad) {
    const int strip = pad.strip < 0 ? -1 : strip_down(facts, stage, pad.strip, pad.along_mm);
    return strip < 0 ? -1 : stage.conductors.net_of_strip[static_cast<std::size_t>(strip)];
}

bool tape_is_down(const GuideFacts& facts, const Stage& stage, const PadRef& pad) {
    if (pad.strip >= 0) {
        return net_under(facts, stage, pad) >= 0;
    }
    return pad.near_strip < 0 || strip_down(facts, stage, pad.near_strip, pad.near_along_mm) >= 0;
}

int feed_of(const GuideFacts& facts, const Stage& stage, const PadRef& pad) {
    const int net = net_under(facts, stage, pad);
    if (net < 0 || pad.want == Side::link) {
        return kNotFed;
    }
    return stage.feed[pad.want == Side::negative ? 0 : 1][static_cast<std::size_t>(net)];
}

bool reached(const GuideFacts& facts, const Stage& stage, const PadRef& pad) {
    if (pad.want != Side::link) {
        return feed_of(facts, stage, pad) != kNotFed;
    }
    const int net = net_under(facts, stage, pad);
    if (net < 0) {
        return false;
    }
    const int* ends = stage.conductors.net_of_terminal;
    return net == ends[0] || net == ends[1] ||
           std::any_of(facts.pads.begin(), facts.pads.end(), [&](const PadRef& other) {
               return other.part != pad.part && net_under(facts, stage, other) == net;
           });
}

std::string contact_key(const GuideFacts& facts, int terminal) {
    if (has_flap(facts)) {
        return terminal == 0 ? "bed" : "flap";
    }
    return terminal == 0 ? "holder-" : "holder+";
}

int contact_of(const GuideFacts& facts, Side side) {
    return facts.terminal[side == Side::negative ? 0 : 1];
}

bool has_flap(const GuideFacts& facts) {
    const auto found = facts.parts.holders.find(facts.card.holder.type);
    return found == facts.parts.holders.end() || found->second.kind == HolderKind::flap;
}

} // namespace lanternleaf
