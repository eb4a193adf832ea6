#include "guide/strip_changes.h"

#include "geometry/ribbon.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kTear_mm = 1.0;
constexpr double kBridge_mm = 15.0;
// The shortest piece worth keeping when a strip is parted near its end.
constexpr double kShortest_mm = 0.1;
// Folds flatter than this have no square of doubled tape to lap on; the reach of a lap is held at this
// angle's.
constexpr double kLeastSine = 0.3;

bool id_taken(const Card& card, const std::string& id) {
    const auto same = [&](const auto& item) { return item.id == id; };
    return std::any_of(card.laid.begin(), card.laid.end(),
                       [&](const Laid& item) { return id_of(item) == id; }) ||
           std::any_of(card.leds.begin(), card.leds.end(), same) ||
           std::any_of(card.resistors.begin(), card.resistors.end(), same);
}

// What follows the strip's own id in the names of its pieces: "b".."z", then "b2".."z2" and so on.
std::string piece_id(const Card& card, const std::string& base) {
    for (int round = 1;; ++round) {
        for (char letter = 'b'; letter <= 'z'; ++letter) {
            if (letter == 'r') {
                continue; // kept for repairs
            }
            std::string id = base;
            id.push_back(letter);
            if (round > 1) {
                id += std::to_string(round);
            }
            if (!id_taken(card, id)) {
                return id;
            }
        }
    }
}

std::string repair_id(const Card& card, const std::string& base) {
    std::string id = base + "r";
    for (int number = 2; id_taken(card, id); ++number) {
        id = base + "r" + std::to_string(number);
    }
    return id;
}

std::vector<std::size_t> pieces_of(const Card& card, const std::string& base, bool repairs) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < card.laid.size(); ++i) {
        if (std::holds_alternative<Strip>(card.laid[i]) && is_piece_of(id_of(card.laid[i]), base, repairs)) {
            found.push_back(i);
        }
    }
    return found;
}

double width_of(const Parts& parts, const Strip& strip) {
    const auto found = parts.tapes.find(strip.tape);
    return found == parts.tapes.end() ? 5.0 : found->second.width_mm;
}

double distance_to(const Strip& strip, Vec2 p) {
    double least = 1e300;
    for (std::size_t i = 1; i < strip.path_mm.size(); ++i) {
        least = std::min(least, distance_to_segment(p, strip.path_mm[i - 1], strip.path_mm[i]));
    }
    return least;
}

// The piece nearest to a place; npos when there is none.
std::size_t nearest_piece(const Card& card, const std::string& base, Vec2 p) {
    std::size_t best = std::string::npos;
    double best_mm = 1e300;
    for (const std::size_t i : pieces_of(card, base, true)) {
        const double mm = distance_to(std::get<Strip>(card.laid[i]), p);
        if (mm < best_mm) {
            best_mm = mm;
            best = i;
        }
    }
    return best;
}

// The same tape along another line.
Strip piece(const Strip& whole, std::vector<Vec2> path_mm) {
    Strip made = whole;
    made.path_mm = std::move(path_mm);
    return made;
}

std::vector<Vec2> path_up_to(const Strip& strip, const Ribbon& ribbon, double stop_mm) {
    std::vector<Vec2> path{strip.path_mm.front()};
    for (const Run& run : ribbon.runs) {
        if (run.starts_at_mm + run.length_mm >= stop_mm - 1e-9) {
            break;
        }
        path.push_back(run.to_mm);
    }
    path.push_back(point_at(ribbon, stop_mm));
    return path;
}

std::vector<Vec2> path_from(const Strip& strip, const Ribbon& ribbon, double start_mm) {
    std::vector<Vec2> path{point_at(ribbon, start_mm)};
    for (const Run& run : ribbon.runs) {
        if (run.starts_at_mm > start_mm + 1e-9) {
            path.push_back(run.from_mm);
        }
    }
    path.push_back(strip.path_mm.back());
    return path;
}

// Replaces laid[index] by two pieces, the second right on top of the first.
void part_in_two(Card& card, std::size_t index, const std::string& base, std::vector<Vec2> first,
                 std::vector<Vec2> second) {
    const Strip whole = std::get<Strip>(card.laid[index]);
    Strip before = piece(whole, std::move(first));
    Strip after = piece(whole, std::move(second));
    before.ends[1] = EndStyle::plain;
    after.ends[0] = EndStyle::plain;
    after.id = piece_id(card, base);
    card.laid[index] = std::move(before);
    card.laid.insert(card.laid.begin() + static_cast<std::ptrdiff_t>(index) + 1, std::move(after));
}

// A tear at a fold runs along the edge of the doubled square, before it where there is room: were it drawn
// through the square itself, the two pieces would still overlap there and nothing would be torn.
double beside_folds(const Ribbon& ribbon, double at_mm, double gap_mm) {
    const double clear = (ribbon.width_mm + gap_mm) / 2.0;
    for (std::size_t i = 1; i < ribbon.runs.size(); ++i) {
        const double fold = ribbon.runs[i].starts_at_mm;
        if (std::abs(at_mm - fold) < clear) {
            return fold - clear > kShortest_mm ? fold - clear : fold + clear;
        }
    }
    return at_mm;
}

Outcome<Card> tear(Card card, const Parts& parts, const Change& change, std::size_t index) {
    const Strip strip = std::get<Strip>(card.laid[index]);
    const Ribbon ribbon = make_ribbon(strip.path_mm, width_of(parts, strip));
    const double gap = change.mm > 0.0 ? change.mm : kTear_mm;
    const double at = beside_folds(ribbon, along(ribbon, change.at_mm), gap);
    const double stop = at - gap / 2.0;
    const double go_on = at + gap / 2.0;
    if (stop < kShortest_mm && ribbon.length_mm - go_on < kShortest_mm) {
        return Problem{"", change.part, "expected a gap shorter than the strip"};
    }
    if (ribbon.length_mm - go_on < kShortest_mm) {
        card.laid[index] = piece(strip, path_up_to(strip, ribbon, stop));
    } else if (stop < kShortest_mm) {
        card.laid[index] = piece(strip, path_from(strip, ribbon, go_on));
    } else {
        part_in_two(card, index, change.part, path_up_to(strip, ribbon, stop),
                    path_from(strip, ribbon, go_on));
    }
    return card;
}

// At a fold the first piece ends flush with the corner's far edge; the second comes in along its own way so
// that it overlaps the first by `mm`. On a corner no more than the whole square can overlap: a longer lap
// only sticks out and is taken as the square. On a strip without folds the two run on in line and may overlap
// by any length.
Outcome<Card> cut_joint(Card card, const Parts& parts, const Change& change, std::size_t index) {
    const Strip strip = std::get<Strip>(card.laid[index]);
    const double width = width_of(parts, strip);
    const Ribbon ribbon = make_ribbon(strip.path_mm, width);
    std::size_t fold = 0; // the run after it; 0: no fold
    double best_mm = 1e300;
    for (std::size_t i = 1; i < ribbon.runs.size(); ++i) {
        const double mm = distance(ribbon.runs[i].from_mm, change.at_mm);
        if (mm < best_mm) {
            best_mm = mm;
            fold = i;
        }
    }
    if (fold == 0) {
        const double at = along(ribbon, change.at_mm);
        const double go_on = at - change.mm;
        if (at < kShortest_mm || go_on < 0.0 || ribbon.length_mm - go_on < kShortest_mm) {
            return Problem{"", change.part, "expected a cut with tape left on both sides of it"};
        }
        part_in_two(card, index, change.part, path_up_to(strip, ribbon, at), path_from(strip, ribbon, go_on));
        return card;
    }
    const Run& in = ribbon.runs[fold - 1];
    const Run& out = ribbon.runs[fold];
    const Vec2 in_way = unit(in.to_mm - in.from_mm);
    const Vec2 out_way = unit(out.to_mm - out.from_mm);
    const double sine = std::max(std::abs(cross(in_way, out_way)), kLeastSine);
    const double reach =
        width / (2.0 * sine); // from the corner's middle to the first piece's side, along out_way
    const double lap = std::min(change.mm, 2.0 * reach);
    if (reach - lap >= out.length_mm - kShortest_mm) {
        return Problem{"", change.part, "expected a gap shorter than the run after the corner"};
    }
    std::vector<Vec2> first(path_up_to(strip, ribbon, out.starts_at_mm));
    first.back() = out.from_mm + in_way * (width / 2.0);
    std::vector<Vec2> second = path_from(strip, ribbon, out.starts_at_mm);
    second.front() = out.from_mm + out_way * (reach - lap);
    part_in_two(card, index, change.part, std::move(first), std::move(second));
    return card;
}

Outcome<Card> bridge(Card card, const Parts& parts, const Change& change, std::size_t index) {
    const Strip& strip = std::get<Strip>(card.laid[index]);
    const Ribbon ribbon = make_ribbon(strip.path_mm, width_of(parts, strip));
    const double at = along(ribbon, change.at_mm);
    const Vec2 way = heading_at(ribbon, at);
    const Vec2 on = point_at(ribbon, at);
    // In a gap the place lies past the end of either piece: its foot on the line they share is the middle.
    const Vec2 middle = on + way * dot(change.at_mm - on, way);
    const double half = (change.mm > 0.0 ? change.mm : kBridge_mm) / 2.0;
    Strip patch = piece(strip, {middle - way * half, middle + way * half});
    patch.id = repair_id(card, change.part);
    // Over glue that does not conduct, a repair is made with both ends turned under (common practice).
    const auto tape = parts.tapes.find(strip.tape);
    const bool glued_open = tape != parts.tapes.end() && tape->second.adhesive == Adhesive::non_conductive;
    patch.ends.fill(glued_open ? EndStyle::folded : EndStyle::plain);
    const std::size_t top = pieces_of(card, change.part, true).back();
    card.laid.insert(card.laid.begin() + static_cast<std::ptrdiff_t>(top) + 1, std::move(patch));
    return card;
}

} // namespace

bool is_piece_of(const std::string& id, const std::string& base, bool repairs) {
    if (id == base) {
        return true;
    }
    if (id.size() <= base.size() || id.compare(0, base.size(), base) != 0) {
        return false;
    }
    const char letter = id[base.size()];
    const bool digits = std::all_of(id.begin() + static_cast<std::ptrdiff_t>(base.size()) + 1, id.end(),
                                    [](char c) { return c >= '0' && c <= '9'; });
    return letter >= 'b' && letter <= 'z' && digits && (repairs || letter != 'r');
}

Problem no_such(const char* what, const std::string& id) {
    return Problem{"", id, std::string("expected ") + what + " of this card, but there is none of that name"};
}

Outcome<Card> change_strip(const Card& card, const Parts& parts, const Change& change) {
    const std::size_t index = nearest_piece(card, change.part, change.at_mm);
    if (index == std::string::npos) {
        return no_such("a strip", change.part);
    }
    Card out = card;
    switch (change.kind) {
    case ChangeKind::tape_swapped:
        if (parts.tapes.find(change.type) == parts.tapes.end()) {
            return no_such("a tape", change.type);
        }
        for (const std::size_t i : pieces_of(card, change.part, false)) {
            std::get<Strip>(out.laid[i]).tape = change.type;
        }
        return out;
    case ChangeKind::strip_moved:
        for (const std::size_t i : pieces_of(card, change.part, false)) {
            for (Vec2& p : std::get<Strip>(out.laid[i]).path_mm) {
                p = p + change.at_mm;
            }
        }
        return out;
    case ChangeKind::joint_cut:
        return cut_joint(std::move(out), parts, change, index);
    case ChangeKind::tear:
        return tear(std::move(out), parts, change, index);
    case ChangeKind::bridged:
        return bridge(std::move(out), parts, change, index);
    default:
        return no_such("a strip", change.part);
    }
}

Outcome<Card> add_patch(const Card& card, const Parts&, const Change& change) {
    const std::size_t index = nearest_piece(card, change.part, change.at_mm);
    if (index == std::string::npos) {
        return no_such("a strip", change.part);
    }
    if (!(change.mm > 0.0)) {
        return Problem{"", "mm", "expected the size of the patch, more than 0 mm"};
    }
    Card out = card;
    Patch patch;
    for (int number = 1; number == 1 || id_taken(card, patch.id); ++number) {
        patch.id = std::to_string(number).insert(0, 1, 'P');
    }
    patch.at_mm = change.at_mm;
    patch.size_mm = {change.mm, change.mm};
    out.laid.insert(out.laid.begin() + static_cast<std::ptrdiff_t>(index) + 1, patch);
    return out;
}

} // namespace lanternleaf
