// The holder and the cell in it.
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
    const Words& words = facts.words;
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
        found.text = words("findings.outside_none");
        found.fix = words("findings.outside_none_fix", {{"contact", contact}});
    } else {
        const std::string& id = strip_at(facts, closest).id;
        const Ribbon& ribbon = made.strips[static_cast<std::size_t>(closest)].ribbon;
        found.parts.insert(found.parts.begin(), id);
        found.at_mm = best.on_a;
        if (best.mm > tolerance::kSamePlace_mm) {
            found.text = words("findings.outside_short",
                               {{"part", id}, {"mm", below_mm(best.mm, 0.0, words)}, {"contact", contact}});
        } else {
            const Fill part{"part", id};
            const Fill on{"contact", contact};
            const Fill area{"area", area_text(area_on_contact(facts, ribbon, terminal), words)};
            const Fill needed{"needed", area_text(tolerance::kDiscContact_mm2, words)};
            found.text = flap ? words("findings.outside_scant", {part, on, area, needed})
                              : words("findings.outside_no_metal", {part, on, area});
        }
        found.fix = words(flap ? "findings.outside_flap_fix" : "findings.outside_fix",
                          {{"part", id}, {"contact", contact}});
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
    const Words& words = facts.words;
    found.text = words("findings.cells_stacked", {{"n", count},
                                                  {"volts", words.volts(stack.open_V)},
                                                  {"mm", words.mm(count * cell_type(facts).height_mm)}});
    found.fix = words("findings.cells_stacked_fix");
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
    const Words& words = facts.words;
    if (sale) {
        found.text = words("findings.reach_sale");
        found.fix = words("findings.reach_sale_fix");
        out.push_back(std::move(found));
        return;
    }
    // "As little as 2 hours" is the standard public wording on swallowed lithium coin cells (National Capital
    // Poison Center, Ontario Poison Centre).
    if (card.audience == Audience::school_class) {
        found.text = words("findings.reach_class");
    } else if (card.audience_given) {
        found.text = words("findings.reach_child");
    } else {
        found.text = words("findings.reach_nobody_named");
    }
    found.fix = words("findings.reach_fix");
    out.push_back(std::move(found));
}

} // namespace lanternleaf
