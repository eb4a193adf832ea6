// Opposite sides that nearly touch. For each pair of strips: what lies within 2 mm of the other, less what a
// patch between keeps apart, less the surroundings of pads (which must come close) and of crossings already
// reported.
#include "base/tolerance.h"
#include "findings/rule_tools.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// Pads bring the two sides together on purpose; this far round a part the gap is the part's affair.
constexpr double kRoundParts_mm = 3.0;
/// A bare or barely covered crossing is reported by its own rule; this far round it nothing is added.
constexpr double kRoundCrossings_mm = 5.0;
/// Rounding of the measured gap: hands do not lay to a hundredth.
constexpr double kRounding_mm = 0.01;

/// Shapes that take ground away from a pair of strips, made when the first close pair turns up.
struct Exempt {
    bool made = false;
    std::vector<Convex> round_parts;
};

void make_exempt(const ReviewFacts& facts, Exempt& exempt) {
    exempt.made = true;
    const auto add = [&](const Convex& shape) {
        if (!shape.empty()) {
            exempt.round_parts.push_back(grown(shape, kRoundParts_mm));
        }
    };
    for (std::size_t i = 0; i < facts.card.leds.size(); ++i) {
        add(led_body(facts.card, facts.parts, static_cast<int>(i)));
    }
    for (std::size_t i = 0; i < facts.card.resistors.size(); ++i) {
        add(resistor_body(facts.card, facts.parts, static_cast<int>(i)));
    }
    for (const PadOutline& pad : facts.conductors.led_pads) {
        add(pad.outline);
    }
    for (const PadOutline& pad : facts.conductors.resistor_pads) {
        add(pad.outline);
    }
}

/// A crossing that crossing-bare or patch-small speaks of: its surroundings need no second finding.
bool is_reported(const ReviewFacts& facts, const Overlap& overlap) {
    if (overlap.patches.empty() || overlap.bare_mm2 > tolerance::kTouch_mm2) {
        return true;
    }
    return left_bare_mm2(facts, overlap, tolerance::kPatchSpare_mm) > tolerance::kTouch_mm2;
}

class PairOfStrips {
public:
    PairOfStrips(const ReviewFacts& facts, int first, int second)
        : facts_(facts), first_(first), second_(second) {}

    /// The closest approach below the limit that nothing excuses; mm stays huge when there is none.
    Nearest closest(Exempt& exempt) {
        const Ribbon& a = ribbon(first_);
        const Ribbon& b = ribbon(second_);
        for (const Run& one : a.runs) {
            const Box reach = one.box.grown(tolerance::kClearance_mm);
            if (!reach.touches(b.box)) {
                continue;
            }
            for (const Run& other : b.runs) {
                if (reach.touches(other.box) && nearest(one.outline, other.outline).mm < limit()) {
                    look(one, other, exempt);
                }
            }
        }
        return best_;
    }

private:
    static double limit() { return tolerance::kClearance_mm - kRounding_mm; }

    const Ribbon& ribbon(int strip) const {
        return facts_.conductors.strips[static_cast<std::size_t>(strip)].ribbon;
    }

    void look(const Run& one, const Run& other, Exempt& exempt) {
        if (!exempt.made) {
            make_exempt(facts_, exempt);
        }
        pieces_.clear();
        pieces_.push_back(clip(other.outline, grown(one.outline, tolerance::kClearance_mm)));
        const Box box = bounds(pieces_.front());
        for (const Convex& hole : exempt.round_parts) {
            take_out(hole, box);
        }
        const int low = std::min(laid(first_), laid(second_));
        const int high = std::max(laid(first_), laid(second_));
        for (const PatchShape& patch : facts_.conductors.patches) {
            if (patch.laid_index > low && patch.laid_index < high) {
                take_out(patch.outline, box);
            }
        }
        for (const Overlap& overlap : facts_.conductors.overlaps) {
            const bool ours = (overlap.lower == first_ && overlap.upper == second_) ||
                              (overlap.lower == second_ && overlap.upper == first_);
            if (ours && is_reported(facts_, overlap)) {
                for (const Convex& piece : overlap.pieces) {
                    take_out(grown(piece, kRoundCrossings_mm), box);
                }
            }
        }
        for (const Convex& piece : pieces_) {
            if (area(piece) < tolerance::kTouch_mm2) {
                continue;
            }
            const Nearest here = nearest(one.outline, piece);
            if (here.mm < limit() && here.mm < best_.mm) {
                best_ = nearest_middle(one.outline, piece);
            }
        }
    }

    void take_out(const Convex& hole, const Box& box) {
        if (!pieces_.empty() && bounds(hole).touches(box)) {
            subtract_from(pieces_, hole, scratch_);
        }
    }

    int laid(int strip) const { return facts_.conductors.strips[static_cast<std::size_t>(strip)].laid_index; }

    const ReviewFacts& facts_;
    int first_;
    int second_;
    Nearest best_;
    std::vector<Convex> pieces_;
    std::vector<Convex> scratch_;
};

/// Tape that pokes under or over the cell from the wrong side, by too little to count as contact.
void check_discs(const ReviewFacts& facts, int strip, Findings& out) {
    if (holder_type(facts).kind != HolderKind::flap) {
        return;
    }
    const Strip& tape = strip_at(facts, strip);
    const Ribbon& ribbon = facts.conductors.strips[static_cast<std::size_t>(strip)].ribbon;
    for (int terminal = 0; terminal < 2; ++terminal) {
        const CellFace face = terminal_face(facts.card, terminal);
        const Side side = face == CellFace::negative ? Side::negative : Side::positive;
        if (!opposite(tape.side, side)) {
            continue;
        }
        const double area_mm2 = area_on_contact(facts, ribbon, terminal);
        if (area_mm2 <= tolerance::kTouch_mm2 || area_mm2 >= tolerance::kDiscContact_mm2) {
            continue;
        }
        const Nearest here = nearest_to_contact(facts, ribbon, terminal);
        Finding found{"clearance", Level::caution, here.on_a, {tape.id, "holder"}, "", ""};
        const Words& words = facts.words;
        const std::string contact = contact_words(facts, terminal);
        found.text = words("findings.disc_reach", {{"part", tape.id},
                                                   {"sign", sign_of(tape.side, words)},
                                                   {"contact", contact},
                                                   {"face", sign_of(face)},
                                                   {"area", area_text(area_mm2, words)}});
        found.fix =
            words("findings.disc_reach_fix",
                  {{"part", tape.id}, {"mm", words.mm(tolerance::kClearance_mm)}, {"contact", contact}});
        out.push_back(std::move(found));
    }
}

} // namespace

void rule_clearance(const ReviewFacts& facts, Findings& out) {
    const std::vector<StripShape>& strips = facts.conductors.strips;
    Exempt exempt;
    for (int i = 0; i < static_cast<int>(strips.size()); ++i) {
        const Strip& one = strip_at(facts, i);
        const Box reach = strips[static_cast<std::size_t>(i)].ribbon.box.grown(tolerance::kClearance_mm);
        for (int j = i + 1; j < static_cast<int>(strips.size()); ++j) {
            const Strip& other = strip_at(facts, j);
            if (!opposite(one.side, other.side) ||
                !reach.touches(strips[static_cast<std::size_t>(j)].ribbon.box)) {
                continue;
            }
            const Nearest gap = PairOfStrips(facts, i, j).closest(exempt);
            if (gap.mm > tolerance::kClearance_mm) {
                continue;
            }
            Finding found{"clearance", Level::caution, (gap.on_a + gap.on_b) * 0.5, {one.id, other.id}, "",
                          ""};
            const Words& words = facts.words;
            found.text = words("findings.near", {{"a", one.id},
                                                 {"a_sign", sign_of(one.side, words)},
                                                 {"b", other.id},
                                                 {"b_sign", sign_of(other.side, words)},
                                                 {"mm", below_mm(gap.mm, tolerance::kClearance_mm, words)},
                                                 {"least", words.mm(tolerance::kClearance_mm)}});
            // The working distance of common practice; 2 mm is its minimum.
            constexpr double kWorking_mm = 3.0;
            found.fix = words("findings.near_fix", {{"mm", words.mm(kWorking_mm)}});
            out.push_back(std::move(found));
        }
        check_discs(facts, i, out);
    }
}

} // namespace lanternleaf
