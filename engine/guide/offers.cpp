#include "guide/offers.h"

#include "geometry/ribbon.h"

#include <algorithm>

namespace lanternleaf {

namespace {

template <class Map>
std::vector<std::string> other_keys(const Map& map, const std::string& not_this) {
    std::vector<std::string> keys;
    for (const auto& [key, value] : map) {
        if (key != not_this) {
            keys.push_back(key);
        }
    }
    return keys;
}

ChangeOffer offer(ChangeKind kind, const std::string& part, std::string title) {
    ChangeOffer made;
    made.change.kind = kind;
    made.change.part = part;
    made.title = std::move(title);
    return made;
}

ChangeOffer ask_length(ChangeOffer made, std::string question, double first, double low, double high) {
    made.question = std::move(question);
    made.needs = OfferNeeds::length;
    made.change.mm = first;
    made.low = low;
    made.high = high;
    return made;
}

ChangeOffer ask_place(ChangeOffer made, std::string question, Vec2 first, OfferNeeds needs) {
    made.question = std::move(question);
    made.needs = needs;
    made.change.at_mm = first;
    made.low = -300.0;
    made.high = 1000.0;
    return made;
}

ChangeOffer ask_type(ChangeOffer made, std::string question, std::vector<std::string> types) {
    made.question = std::move(question);
    made.needs = OfferNeeds::type;
    made.types = std::move(types);
    if (!made.types.empty()) {
        made.change.type = made.types.front();
    }
    return made;
}

ChangeOffer ask_count(ChangeOffer made, std::string question, int first, int low, int high) {
    made.question = std::move(question);
    made.needs = OfferNeeds::count;
    made.change.count = first;
    made.low = low;
    made.high = high;
    return made;
}

Vec2 place_of(const Move* move, Vec2 otherwise) {
    return move == nullptr || move->path_mm.empty() ? otherwise : move->path_mm.back();
}

void offer_for_strip(const Card& card, const Parts& parts, const Strip& strip, const Move* move,
                     const Words& words, std::vector<ChangeOffer>& out) {
    const Vec2 at = place_of(move, strip.path_mm.back());
    const auto tape = parts.tapes.find(strip.tape);
    const double width_mm = tape == parts.tapes.end() ? 5.0 : tape->second.width_mm;
    if (strip.path_mm.size() > 2) {
        ChangeOffer cut = offer(ChangeKind::joint_cut, strip.id, words("change.offer_joint_cut"));
        cut.change.at_mm = at;
        out.push_back(ask_length(std::move(cut), words("change.ask_overlap"), width_mm, -10.0, 30.0));
    }
    ChangeOffer tear = offer(ChangeKind::tear, strip.id, words("change.offer_tear"));
    tear.change.at_mm = at;
    out.push_back(ask_length(std::move(tear), words("change.ask_gap"), 1.0, 0.5, 20.0));
    ChangeOffer bridge = offer(ChangeKind::bridged, strip.id, words("change.offer_bridged"));
    bridge.change.at_mm = at;
    out.push_back(ask_length(std::move(bridge), words("change.ask_piece"), 15.0, 5.0, 60.0));
    out.push_back(ask_type(offer(ChangeKind::tape_swapped, strip.id, words("change.offer_tape_swapped")),
                           words("change.ask_tape"), other_keys(parts.tapes, strip.tape)));
    out.push_back(ask_place(offer(ChangeKind::strip_moved, strip.id, words("change.offer_strip_moved")),
                            words("change.ask_shift"), {0.0, 0.0}, OfferNeeds::shift));
    static_cast<void>(card);
}

void offer_for_led(const Parts& parts, const Led& led, const Words& words, std::vector<ChangeOffer>& out) {
    out.push_back(offer(ChangeKind::led_turned, led.id, words("change.offer_led_turned")));
    const auto type = parts.leds.find(led.type);
    std::vector<std::string> types;
    for (const auto& [id, other] : parts.leds) {
        if (id != led.type && type != parts.leds.end() && other.package == type->second.package) {
            types.push_back(id);
        }
    }
    out.push_back(ask_type(offer(ChangeKind::led_swapped, led.id, words("change.offer_led_swapped")),
                           words("change.ask_which"), types));
    out.push_back(ask_place(offer(ChangeKind::led_moved, led.id, words("change.offer_led_moved")),
                            words("change.ask_middle"), led.at_mm, OfferNeeds::place));
}

void offer_for_cell(const Card& card, const Parts& parts, const Words& words, std::vector<ChangeOffer>& out) {
    out.push_back(offer(ChangeKind::cell_upside_down, "", words("change.cell_upside_down")));
    std::vector<std::string> fitting;
    const auto holder = parts.holders.find(card.holder.type);
    for (const auto& [id, cell] : parts.cells) {
        if (id != card.cell.type && holder != parts.holders.end() &&
            cell.diameter_mm <= holder->second.cell_diameter_mm) {
            fitting.push_back(id);
        }
    }
    out.push_back(ask_type(offer(ChangeKind::cell_swapped, "", words("change.offer_cell_swapped")),
                           words("change.ask_which"), fitting));
    out.push_back(ask_count(offer(ChangeKind::cells_stacked, "", words("change.offer_cells_stacked")),
                            words("change.ask_cells"), std::max(2, card.cell.count), 1, 4));
}

} // namespace

std::vector<ChangeOffer> offers_for(const Card& card, const Parts& parts, const Step& step, int move,
                                    const Words& words) {
    const Move* now = move >= 0 && move < static_cast<int>(step.moves.size())
                          ? &step.moves[static_cast<std::size_t>(move)]
                          : nullptr;
    // The parts of the move at hand first, then the step's others, each once.
    std::vector<std::string> ids;
    const auto add_ids = [&ids](const Move& of) {
        for (const std::string& id : of.parts) {
            if (std::find(ids.begin(), ids.end(), id) == ids.end()) {
                ids.push_back(id);
            }
        }
    };
    if (now != nullptr) {
        add_ids(*now);
    }
    const bool last = now == nullptr;
    for (const Move& other : step.moves) {
        if (last) {
            add_ids(other);
        }
    }

    std::vector<ChangeOffer> offers;
    for (const std::string& id : ids) {
        if (const Strip* strip = find_strip(card, id)) {
            offer_for_strip(card, parts, *strip, now, words, offers);
        } else if (const Led* led = find_led(card, id)) {
            if (step.id == StepId::place_leds) {
                offer_for_led(parts, *led, words, offers);
            } else if (step.id == StepId::mark_pads) {
                offers.push_back(
                    ask_place(offer(ChangeKind::led_moved, led->id, words("change.offer_marked_elsewhere")),
                              words("change.ask_middle"), led->at_mm, OfferNeeds::place));
            }
        }
        for (const Laid& laid : card.laid) {
            if (const Patch* patch = std::get_if<Patch>(&laid); patch != nullptr && patch->id == id) {
                offers.push_back(offer(ChangeKind::patch_missing, id, words("change.offer_patch_missing")));
                offers.push_back(
                    ask_place(offer(ChangeKind::patch_moved, id, words("change.offer_patch_moved")),
                              words("change.ask_middle"), patch->at_mm, OfferNeeds::place));
            }
        }
    }
    if (step.id == StepId::mount_holder) {
        offers.push_back(ask_type(offer(ChangeKind::holder_swapped, "", words("change.offer_holder_swapped")),
                                  words("change.ask_which"), other_keys(parts.holders, card.holder.type)));
    }
    if (step.id == StepId::place_leds) {
        const bool at_cell =
            now == nullptr || now->kind == MoveKind::cell_in || now->kind == MoveKind::light_test;
        std::vector<ChangeOffer> cell;
        offer_for_cell(card, parts, words, cell);
        offers.insert(at_cell ? offers.begin() : offers.end(), cell.begin(), cell.end());
    }
    if (step.id == StepId::pad_edges && card.foam) {
        offers.push_back(ask_count(offer(ChangeKind::foam_layers, "", words("change.offer_foam_layers")),
                                   words("change.ask_layers"), card.foam->layers, 1, 8));
    }
    return offers;
}

} // namespace lanternleaf
