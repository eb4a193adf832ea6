#include "batch/needs.h"

#include <cmath>

namespace lanternleaf {

namespace {

// Up to the next decimetre: tape is torn off, not measured to the millimetre.
std::string metres_up(double mm, const Words& words) {
    return words("batch.metres", {{"metres", words.number(std::ceil(mm / 100.0 - 1e-9) / 10.0, 1)}});
}

} // namespace

SpareRules spares_of(BatchFor purpose) {
    return spare_rules(purpose == BatchFor::group ? Audience::school_class : Audience::adults);
}

std::vector<NeedLine> needs_of(const Card& card, const Parts& parts, const Batch& batch, const Words& words) {
    const Shopping list = shopping(card, parts, batch.count, spares_of(batch.purpose), words);
    std::vector<NeedLine> lines;
    for (const CountNeed& need : list.counts) {
        const int for_cards = need.per_card * list.cards;
        NeedLine line{need.words, std::to_string(need.buy()), ""};
        if (need.buy() > for_cards) {
            line.spare = std::to_string(for_cards) + " + " + std::to_string(need.buy() - for_cards);
        }
        lines.push_back(std::move(line));
    }
    for (const TapeNeed& tape : list.tapes) {
        lines.push_back({words("batch.need_tape", {{"tape", tape.type}}), metres_up(tape.buy_mm, words),
                         metres_up(tape.card_mm * list.cards, words) + " + " +
                             metres_up(tape.buy_mm - tape.card_mm * list.cards, words)});
    }
    if (list.foam) {
        lines.push_back({words("batch.need_foam", {{"mm", words.mm(list.foam->thickness_mm)}}),
                         metres_up(list.foam->buy_mm, words), ""});
    }
    return lines;
}

} // namespace lanternleaf
