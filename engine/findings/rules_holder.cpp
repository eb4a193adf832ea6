// The holder and the cell in it.
#include "base/readout.h"
#include "base/tolerance.h"
#include "findings/rule_tools.h"

namespace lanternleaf {

namespace {

bool touches_holder(const ReviewFacts& facts, int strip) {
    const Piece piece{PieceKind::strip, strip, 0};
    for (const Contact& contact : facts.conductors.contacts) {
        if ((contact.a == piece && contact.b.kind == PieceKind::terminal) ||
            (contact.b == piece && contact.a.kind == PieceKind::terminal)) {
            return true;
        }
    }
    return false;
}

} // namespace

void rule_outside_holder(const ReviewFacts& facts, Findings& out) {
    const Conductors& made = facts.conductors;
    if (made.strips.empty() && facts.card.leds.empty()) {
        return; // an empty sheet has nothing to say yet
    }
    const int terminal = terminal_of(facts.card, CellFace::positive);
    const std::string contact = contact_words(facts, terminal);
    Nearest best;
    int closest = -1;
    for (std::size_t i = 0; i < made.strips.size(); ++i) {
        if (strip_at(facts, static_cast<int>(i)).side != Side::positive) {
            continue;
        }
        if (touches_holder(facts, static_cast<int>(i))) {
            return;
        }
        const Nearest here = nearest_to_contact(facts, made.strips[i].ribbon, terminal);
        if (here.mm < best.mm) {
            best = here;
            closest = static_cast<int>(i);
        }
    }
    const bool flap = holder_type(facts).kind == HolderKind::flap;
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    Finding found{"outside-holder", Level::problem, shape.at_mm[terminal], {"holder"}, "", ""};
    if (closest < 0) {
        found.text = "No + trace starts inside the holder: none is laid yet.";
        found.fix = "Start a + trace on " + contact + ".";
    } else {
        const std::string& id = strip_at(facts, closest).id;
        const Ribbon& ribbon = made.strips[static_cast<std::size_t>(closest)].ribbon;
        found.parts.insert(found.parts.begin(), id);
        found.at_mm = best.on_a;
        if (best.mm > tolerance::kSamePlace_mm) {
            found.text = "The + trace " + id + " does not start inside the holder: it is " +
                         readout_below_mm(best.mm, 0.0) + " short of " + contact + ".";
        } else {
            found.text = "The + trace " + id + " lies on " + contact + " by only " +
                         readout_mm2(area_on_contact(facts, ribbon, terminal)) + "; " +
                         (flap ? readout_mm2(tolerance::kDiscContact_mm2) + " make contact."
                               : std::string("its metal does not meet the pad."));
        }
        found.fix = "Start " + id + " in the middle of " + contact +
                    (flap ? ", so that the press closes on it." : ".");
    }
    out.push_back(std::move(found));
}

void rule_cells_stacked(const ReviewFacts& facts, Findings& out) {
    const int count = facts.card.cell.count;
    if (count <= 1) {
        return;
    }
    const CellState stack = fresh_cell(facts.card, facts.parts);
    Finding found{"cells-stacked", Level::caution, facts.card.holder.at_mm, {"holder"}, "", ""};
    found.text = std::to_string(count) + " cells are stacked: together they give " +
                 readout_volts(stack.open_V) + " and stand " +
                 readout_mm(count * cell_type(facts).height_mm) + " high.";
    found.fix =
        "Use one cell; if you must stack, give every light a resistor and never mix old cells with new.";
    out.push_back(std::move(found));
}

void rule_cell_in_reach(const ReviewFacts& facts, Findings& out) {
    const Card& card = facts.card;
    if (holder_type(facts).closure != Closure::finger || card.audience == Audience::adults ||
        card.audience == Audience::children) {
        return;
    }
    const bool sale = card.audience == Audience::sale;
    Finding found{
        "cell-in-reach", sale ? Level::note : Level::problem, card.holder.at_mm, {"holder"}, "", ""};
    const std::string opens = "Fingers can open this holder";
    if (sale) {
        found.text = opens + ", and the card is for sale: many markets have rules for goods with coin cells.";
        found.fix =
            "Look up the rules of every market you sell in, and think of a holder that opens only with "
            "a tool.";
        out.push_back(std::move(found));
        return;
    }
    // "As little as 2 hours" is the standard public wording on swallowed lithium coin cells (National Capital
    // Poison Center, Ontario Poison Centre).
    const std::string harm = " A swallowed coin cell can burn a child badly in 2 hours.";
    if (card.audience == Audience::school_class) {
        found.text = opens + ", and each card goes to a home you do not know." + harm;
    } else if (card.audience_given) {
        found.text = opens + ", and a child under 6 may get at the card." + harm;
    } else {
        found.text = opens + "; nobody was named for this card, so a child under 6 is assumed." + harm;
    }
    found.fix =
        "Use a holder that opens only with a tool, or give the card without its cell, and follow your "
        "local rules.";
    out.push_back(std::move(found));
}

} // namespace lanternleaf
