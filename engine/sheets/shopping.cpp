#include "sheets/shopping.h"

#include "conductors/conductors.h"
#include "sheets/plan_drawing.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

int percent_up(int count, int percent) {
    return static_cast<int>((static_cast<long long>(count) * percent + 99) / 100);
}

double width_of(const Parts& parts, const std::string& tape) {
    const auto found = parts.tapes.find(tape);
    return found == parts.tapes.end() ? 0.0 : found->second.width_mm;
}

TapeNeed& need_for(std::vector<TapeNeed>& needs, const std::string& type) {
    for (TapeNeed& need : needs) {
        if (need.type == type) {
            return need;
        }
    }
    TapeNeed fresh;
    fresh.type = type;
    return needs.emplace_back(std::move(fresh));
}

void add_tape(const Card& card, const Parts& parts, const Conductors& conductors, Shopping& list) {
    for (std::size_t i = 0; i < conductors.strips.size(); ++i) {
        const Strip& strip = strip_of(card, conductors, static_cast<int>(i));
        const Ribbon& ribbon = conductors.strips[i].ribbon;
        StripCut cut;
        cut.id = strip.id;
        cut.side = strip.side;
        cut.tape = strip.tape;
        for (const EndStyle end : strip.ends) {
            cut.turned_under_mm += end == EndStyle::folded ? width_of(parts, strip.tape) : 0.0;
        }
        cut.length_mm = ribbon.length_mm + cut.turned_under_mm;
        cut.folds = static_cast<int>(ribbon.folds_mm.size());
        TapeNeed& need = need_for(list.tapes, strip.tape);
        ++need.strips;
        need.card_mm += cut.length_mm;
        need.turned_mm += cut.turned_under_mm;
        list.cuts.push_back(std::move(cut));
    }
    for (const Overlap& overlap : conductors.overlaps) {
        const Strip& upper = strip_of(card, conductors, overlap.upper);
        const double width = width_of(parts, upper.tape);
        if (upper.side == strip_of(card, conductors, overlap.lower).side && overlap.bare_mm2 > 0.0 &&
            width > 0.0) {
            need_for(list.tapes, upper.tape).laps_mm += overlap.area_mm2 / width;
        }
    }
}

// As the maker's language has it; an own part may have any colour and package.
std::string spoken(const std::string& section, const std::string& name, const Words& words) {
    const std::string key = section + name;
    return words.has(key) ? words(key) : name;
}

std::string light_words(const Parts& parts, const std::string& type, const Words& words) {
    const auto found = parts.leds.find(type);
    if (found == parts.leds.end()) {
        return type;
    }
    return words("sheets.light", {{"colour", spoken("life.colour_", found->second.colour, words)},
                                  {"package", spoken("part.", found->second.package, words)}});
}

struct Named {
    std::string words;
    std::string full;
};

// Adds to the line with the same words, or a new one.
void add_count(std::vector<CountNeed>& counts, const std::string& pack, const Named& name, int more = 1) {
    for (CountNeed& need : counts) {
        if (need.pack == pack && need.words == name.words) {
            need.per_card += more;
            return;
        }
    }
    counts.push_back({pack, name.words, name.full, more, 0, 0});
}

void add_count(std::vector<CountNeed>& counts, const std::string& pack, const std::string& name) {
    add_count(counts, pack, Named{name, name});
}

void spare(std::vector<CountNeed>& counts, std::size_t from, const Shopping& list, int kits, int percent,
           int least) {
    for (std::size_t i = from; i < counts.size(); ++i) {
        CountNeed& need = counts[i];
        need.batch = need.per_card * (list.cards + kits);
        need.spare = std::max(percent_up(need.per_card * list.cards, percent), least);
    }
}

Named holder_words(const Parts& parts, const std::string& type, const Words& words) {
    const auto found = parts.holders.find(type);
    if (found != parts.holders.end() && found->second.kind == HolderKind::flap) {
        return {words("sheets.holder_folded"), words("sheets.holder_folded")};
    }
    return {words("sheets.holder"), words("sheets.holder_of", {{"type", type}})};
}

void add_counts(const Card& card, const Parts& parts, const SpareRules& rules, const Words& words,
                Shopping& list) {
    std::vector<CountNeed>& counts = list.counts;
    for (const Led& led : card.leds) {
        add_count(counts, led.type, light_words(parts, led.type, words));
    }
    for (const ResistorPart& part : card.resistors) {
        add_count(counts, "resistor", words("sheets.resistor", {{"ohm", words.ohm(part.ohm)}}));
    }
    spare(counts, 0, list, list.spare_kits, rules.led_percent, rules.least_leds);
    std::size_t from = counts.size();
    add_count(counts, card.cell.type,
              {words("sheets.coin_cell"), words("sheets.coin_cell_of", {{"type", card.cell.type}})},
              card.cell.count);
    spare(counts, from, list, 0, rules.cell_percent, 0); // kits are made up without cells
    from = counts.size();
    add_count(counts, card.holder.type, holder_words(parts, card.holder.type, words));
    spare(counts, from, list, list.spare_kits, rules.holder_percent, 0);
    from = counts.size();
    for (const Laid& item : card.laid) {
        if (const Patch* patch = std::get_if<Patch>(&item)) {
            add_count(counts, "patch",
                      words("sheets.patch",
                            {{"width", words.mm(patch->size_mm.x)}, {"height", words.mm(patch->size_mm.y)}}));
        }
    }
    spare(counts, from, list, list.spare_kits, rules.patch_percent, 0);
    from = counts.size();
    add_count(counts, "sheet",
              words("sheets.card_sheet",
                    {{"width", words.mm(card.sheet.width_mm)}, {"height", words.mm(card.sheet.height_mm)}}));
    spare(counts, from, list, list.spare_kits, 0, 0);
}

void add_foam(const Card& card, const Parts& parts, const SpareRules& rules, Shopping& list) {
    if (!card.foam) {
        return;
    }
    FoamNeed need;
    need.thickness_mm = card.foam->thickness_mm;
    need.width_mm = kFoamBand_mm;
    need.layers = card.foam->layers;
    for (const FoamBand& band : foam_bands(card, parts)) {
        need.lengths_mm.push_back(distance(band.from_mm, band.to_mm));
        need.card_mm += need.lengths_mm.back() * need.layers;
    }
    need.buy_mm = need.card_mm * (list.cards + list.spare_kits) * (100 + rules.foam_waste_percent) / 100.0;
    list.foam = std::move(need);
}

} // namespace

SpareRules spare_rules(Audience audience) {
    SpareRules rules;
    if (audience == Audience::school_class) {
        rules.tape_waste_percent = 30;
        rules.led_percent = 25;
        rules.holder_percent = 25;
        rules.kits_percent = 15;
    }
    return rules;
}

Shopping shopping(const Card& card, const Parts& parts, int cards, const SpareRules& rules,
                  const Words& words) {
    Shopping list;
    list.cards = std::clamp(cards, 1, kMostCards);
    list.spare_kits = (list.cards * rules.kits_percent + 50) / 100;
    add_tape(card, parts, find_conductors(card, parts), list);
    for (TapeNeed& need : list.tapes) {
        const double laid = need.card_mm * (list.cards + list.spare_kits);
        need.waste_mm = laid * rules.tape_waste_percent / 100.0;
        need.buy_mm = laid + need.waste_mm;
    }
    add_counts(card, parts, rules, words, list);
    add_foam(card, parts, rules, list);
    return list;
}

Costs costs(const Shopping& list, const SpareRules& rules, const Prices& prices) {
    Costs made;
    made.currency = prices.currency;
    const auto add = [&](const std::string& pack, double per_card, double buy, bool by_length) {
        const auto found = prices.packs.find(pack);
        if (found == prices.packs.end() || found->second.by_length != by_length) {
            if (std::find(made.unpriced.begin(), made.unpriced.end(), pack) == made.unpriced.end()) {
                made.unpriced.push_back(pack);
            }
            return;
        }
        CostLine line;
        line.pack = pack;
        line.per_card = per_card * found->second.price / found->second.holds;
        // A billionth less, so that ten metres from ten-metre rolls are one roll whatever the rounding.
        line.packs = static_cast<int>(std::ceil(std::min(buy / found->second.holds, 1e9) - 1e-9));
        line.outlay = line.packs * found->second.price;
        made.per_card += line.per_card;
        made.outlay += line.outlay;
        made.lines.push_back(std::move(line));
    };
    constexpr double kPerMetre = 1e-3;
    for (const TapeNeed& need : list.tapes) {
        add(need.type, need.card_mm * kPerMetre * (100 + rules.tape_waste_percent) / 100.0,
            need.buy_mm * kPerMetre, true);
    }
    std::vector<std::string> done; // several lines may come from one kind of pack: patches, resistors
    for (const CountNeed& need : list.counts) {
        if (std::find(done.begin(), done.end(), need.pack) != done.end()) {
            continue;
        }
        done.push_back(need.pack);
        int per_card = 0;
        int buy = 0;
        for (const CountNeed& other : list.counts) {
            per_card += other.pack == need.pack ? other.per_card : 0;
            buy += other.pack == need.pack ? other.buy() : 0;
        }
        add(need.pack, per_card, buy, false);
    }
    if (list.foam && !list.foam->lengths_mm.empty()) {
        add("foam", list.foam->card_mm * kPerMetre * (100 + rules.foam_waste_percent) / 100.0,
            list.foam->buy_mm * kPerMetre, true);
    }
    return made;
}

} // namespace lanternleaf
