// What lies under a pad: a pad wants one flat layer of tape.
#include "base/tolerance.h"
#include "findings/rule_tools.h"

namespace lanternleaf {

namespace {

/// Less than this under a pad's edge does not rock it.
constexpr double kUnderPad_mm2 = 0.5;

template <class Check>
void for_each_pad(const ReviewFacts& facts, Check check) {
    for (const PadOutline& pad : facts.conductors.led_pads) {
        check(pad);
    }
    for (const PadOutline& pad : facts.conductors.resistor_pads) {
        check(pad);
    }
}

std::string owner_of(const ReviewFacts& facts, Piece pad) {
    const auto index = static_cast<std::size_t>(pad.index);
    return pad.kind == PieceKind::led_pad ? facts.card.leds[index].id : facts.card.resistors[index].id;
}

} // namespace

void rule_led_on_fold(const ReviewFacts& facts, Findings& out) {
    for_each_pad(facts, [&](const PadOutline& pad) {
        double most_mm2 = kUnderPad_mm2;
        int worst = -1;
        Vec2 at_mm;
        for (std::size_t i = 0; i < facts.conductors.strips.size(); ++i) {
            const Ribbon& ribbon = facts.conductors.strips[i].ribbon;
            if (!ribbon.box.touches(pad.box)) {
                continue;
            }
            for (const Convex& fold : ribbon.fold_places) {
                const Convex shared = clip(fold, pad.outline);
                const double shared_mm2 = shared.empty() ? 0.0 : area(shared);
                if (shared_mm2 > most_mm2) {
                    most_mm2 = shared_mm2;
                    worst = static_cast<int>(i);
                    at_mm = centroid(shared);
                }
            }
        }
        if (worst < 0) {
            return;
        }
        const std::string name = piece_name(facts, pad.piece);
        const std::string& strip = strip_at(facts, worst).id;
        Finding found{"led-on-fold", Level::caution, at_mm, {name, strip}, "", ""};
        const Words& words = facts.words;
        found.text = words("findings.on_fold",
                           {{"pad", spoken(name)}, {"strip", strip}, {"area", area_text(most_mm2, words)}});
        found.fix = words("findings.pad_flat_fix", {{"part", owner_of(facts, pad.piece)}});
        out.push_back(std::move(found));
    });
}

void rule_led_on_joint(const ReviewFacts& facts, Findings& out) {
    for_each_pad(facts, [&](const PadOutline& pad) {
        double most_mm2 = kUnderPad_mm2;
        const Overlap* worst = nullptr;
        Vec2 at_mm;
        for (const Overlap& overlap : facts.conductors.overlaps) {
            double shared_mm2 = 0.0;
            Vec2 middle;
            for (const Convex& piece : overlap.pieces) {
                if (!bounds(piece).touches(pad.box)) {
                    continue;
                }
                const Convex shared = clip(piece, pad.outline);
                if (!shared.empty()) {
                    shared_mm2 += area(shared);
                    middle = centroid(shared);
                }
            }
            if (shared_mm2 > most_mm2) {
                most_mm2 = shared_mm2;
                worst = &overlap;
                at_mm = middle;
            }
        }
        if (worst == nullptr) {
            return;
        }
        const std::string name = piece_name(facts, pad.piece);
        const Strip& lower = strip_at(facts, worst->lower);
        const Strip& upper = strip_at(facts, worst->upper);
        Finding found{"led-on-joint", Level::caution, at_mm, {name, lower.id, upper.id}, "", ""};
        const Words& words = facts.words;
        found.text = words(opposite(lower.side, upper.side) ? "findings.on_crossing" : "findings.on_joint",
                           {{"pad", spoken(name)},
                            {"lower", lower.id},
                            {"upper", upper.id},
                            {"area", area_text(most_mm2, words)}});
        found.fix = words("findings.pad_flat_fix", {{"part", owner_of(facts, pad.piece)}});
        out.push_back(std::move(found));
    });
}

} // namespace lanternleaf
