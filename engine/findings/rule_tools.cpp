#include "findings/rule_tools.h"

#include "base/readout.h"
#include "base/tolerance.h"

#include <algorithm>
#include <cassert>

namespace lanternleaf {

namespace {

/// The entry of a parts table that the card names; the file reader has made sure that it is there.
template <class Table>
const typename Table::mapped_type& entry(const Table& table, const std::string& id) {
    const auto found = table.find(id);
    assert(found != table.end());
    return found->second;
}

} // namespace

std::string spoken(const std::string& name) {
    if (!name.empty() && name.back() == '-') {
        return name.substr(0, name.size() - 1) + "−";
    }
    return name;
}

std::string spoken_list(const std::vector<std::string>& names, const Words& words) {
    std::vector<std::string> said;
    said.reserve(names.size());
    for (const std::string& name : names) {
        said.push_back(spoken(name));
    }
    return words.list(said);
}

std::string area_text(double mm2, const Words& words) {
    return words.number(mm2, mm2 < 9.95 ? 1 : 0) + " mm²";
}

std::string fine_mm(double mm, const Words& words) {
    return words.unit() == LengthUnit::mm ? words.number(mm, 2) + " mm" : words.mm(mm);
}

std::string below_mm(double mm, double limit_mm, const Words& words) {
    if (words.mm(mm) != words.mm(limit_mm)) {
        return words.mm(mm);
    }
    if (words.unit() == LengthUnit::mm) {
        return words.number(std::floor(mm * 100.0) / 100.0, 2) + " mm";
    }
    constexpr double kInch_mm = 25.4; // exactly (international yard and pound agreement, 1959)
    return words.number(std::floor(mm / kInch_mm * 1000.0) / 1000.0, 3) + " in";
}

std::string mA_beside(double mA, double limit_mA, const Words& words) {
    for (int decimals = 1; decimals <= 3; ++decimals) {
        if (std::abs(mA) >= 0.0995 && readout_mA(mA) == readout_mA(limit_mA) &&
            readout_number(mA, decimals) != readout_number(limit_mA, decimals)) {
            return words.number(mA, decimals) + " mA";
        }
    }
    return words.mA(mA);
}

const char* sign_of(CellFace face) {
    return face == CellFace::negative ? "−" : "+";
}

std::string sign_of(Side side, const Words& words) {
    switch (side) {
    case Side::negative:
        return "−";
    case Side::positive:
        return "+";
    case Side::link:
        return words("findings.link");
    }
    return "";
}

std::string trace_words(CellFace face, const Words& words) {
    return words(face == CellFace::negative ? "findings.trace_minus" : "findings.trace_plus");
}

std::string with_sign(const ReviewFacts& facts, const Strip& strip) {
    return facts.words("findings.with_sign",
                       {{"name", strip.id}, {"sign", sign_of(strip.side, facts.words)}});
}

std::string part_words(const std::string& id, const Words& words) {
    return id == "holder" ? words("findings.holder") : id;
}

std::string contact_words(const ReviewFacts& facts, int terminal) {
    if (holder_type(facts).kind == HolderKind::flap) {
        return facts.words(terminal == 0 ? "findings.bed" : "findings.flap_inside");
    }
    return facts.words(terminal == 0 ? "findings.holder_minus" : "findings.holder_plus");
}

const Strip& strip_at(const ReviewFacts& facts, int strip) {
    return strip_of(facts.card, facts.conductors, strip);
}

const std::string& patch_id(const ReviewFacts& facts, int patch) {
    const int laid = facts.conductors.patches[static_cast<std::size_t>(patch)].laid_index;
    return id_of(facts.card.laid[static_cast<std::size_t>(laid)]);
}

std::string piece_name(const ReviewFacts& facts, Piece piece) {
    return name_of(facts.card, facts.conductors, piece);
}

const CellType& cell_type(const ReviewFacts& facts) {
    return entry(facts.parts.cells, facts.card.cell.type);
}

const HolderType& holder_type(const ReviewFacts& facts) {
    return entry(facts.parts.holders, facts.card.holder.type);
}

const LedType& led_type(const ReviewFacts& facts, int led) {
    return entry(facts.parts.leds, facts.card.leds[static_cast<std::size_t>(led)].type);
}

bool opposite(Side a, Side b) {
    return (a == Side::negative && b == Side::positive) || (a == Side::positive && b == Side::negative);
}

std::vector<PartShapes> part_shapes(const ReviewFacts& facts) {
    std::vector<PartShapes> out;
    const auto add = [&](const std::string& id, const Convex& body, const std::vector<PadOutline>& pads,
                         std::size_t index) {
        PartShapes part;
        part.id = id;
        if (!body.empty()) {
            part.solids.push_back(body);
        }
        for (std::size_t pad = 2 * index; pad < std::min(pads.size(), 2 * index + 2); ++pad) {
            part.solids.push_back(pads[pad].outline);
        }
        out.push_back(std::move(part));
    };
    out.reserve(facts.card.leds.size() + facts.card.resistors.size() + 1);
    for (std::size_t i = 0; i < facts.card.leds.size(); ++i) {
        add(facts.card.leds[i].id, led_body(facts.card, facts.parts, static_cast<int>(i)),
            facts.conductors.led_pads, i);
    }
    for (std::size_t i = 0; i < facts.card.resistors.size(); ++i) {
        add(facts.card.resistors[i].id, resistor_body(facts.card, facts.parts, static_cast<int>(i)),
            facts.conductors.resistor_pads, i);
    }
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    PartShapes holder;
    holder.id = "holder";
    for (std::size_t i = 0; i < 2; ++i) {
        if (shape.flap) {
            holder.discs_mm.push_back(shape.disc_at_mm[i]);
            holder.disc_radius_mm[i] = shape.disc_radius_mm[i];
        } else if (!shape.pad[i].empty()) {
            holder.solids.push_back(shape.pad[i]);
        }
    }
    if (!shape.body.empty()) {
        holder.solids.push_back(shape.body);
    }
    out.push_back(std::move(holder));
    return out;
}

Reach reach_of_net(const ReviewFacts& facts, int net, bool through_leds, int without_led) {
    const Conductors& made = facts.conductors;
    Reach reach;
    std::vector<bool> seen(made.nets.size(), false);
    std::vector<int> open{net};
    seen[static_cast<std::size_t>(net)] = true;
    const int minus_net = made.net_of_terminal[terminal_of(facts.card, CellFace::negative)];
    const int plus_net = made.net_of_terminal[terminal_of(facts.card, CellFace::positive)];
    const auto visit = [&](const std::vector<int>& net_of_pad, std::size_t part, int from) {
        for (std::size_t pad = 0; pad < 2; ++pad) {
            const int to = net_of_pad[2 * part + 1 - pad];
            if (net_of_pad[2 * part + pad] == from && !seen[static_cast<std::size_t>(to)]) {
                seen[static_cast<std::size_t>(to)] = true;
                open.push_back(to);
            }
        }
    };
    while (!open.empty()) {
        const int at = open.back();
        open.pop_back();
        reach.negative = reach.negative || at == minus_net;
        reach.positive = reach.positive || at == plus_net;
        if (at == minus_net || at == plus_net) {
            continue;
        }
        for (std::size_t i = 0; i < facts.card.resistors.size(); ++i) {
            visit(made.net_of_resistor_pad, i, at);
        }
        if (through_leds) {
            for (std::size_t i = 0; i < facts.card.leds.size(); ++i) {
                if (static_cast<int>(i) != without_led) {
                    visit(made.net_of_led_pad, i, at);
                }
            }
        }
    }
    return reach;
}

LedReach reach_of_led(const ReviewFacts& facts, int led, bool through_leds) {
    const std::size_t pad = 2 * static_cast<std::size_t>(led);
    const std::vector<int>& nets = facts.conductors.net_of_led_pad;
    return {reach_of_net(facts, nets[pad], through_leds, led),
            reach_of_net(facts, nets[pad + 1], through_leds, led)};
}

bool is_reversed(const ReviewFacts& facts, int led) {
    if (cell_shorted(facts)) {
        return false;
    }
    const LedReach direct = reach_of_led(facts, led, false);
    if (direct.minus.positive && direct.plus.negative && !(direct.minus.negative && direct.plus.positive)) {
        return true;
    }
    // Through other LEDs the graph alone cannot tell; the solved voltage can. A tenth of a volt is far above
    // what tape and joints drop, and far below what a reversed LED holds off.
    constexpr double kAgainst_V = 0.1;
    const bool live = facts.solution.ok() && facts.lighting.cell_V > kAgainst_V;
    return live && facts.lighting.lights[static_cast<std::size_t>(led)].volts < -kAgainst_V &&
           reach_of_led(facts, led, true).both();
}

bool cell_shorted(const ReviewFacts& facts) {
    return facts.conductors.net_of_terminal[0] == facts.conductors.net_of_terminal[1];
}

bool has_light(const ReviewFacts& facts) {
    return facts.solution.ok() && !cell_shorted(facts);
}

void subtract_from(std::vector<Convex>& pieces, const Convex& hole, std::vector<Convex>& scratch) {
    scratch.clear();
    for (const Convex& piece : pieces) {
        subtract(piece, hole, scratch);
    }
    pieces.swap(scratch);
}

double total_area(const std::vector<Convex>& pieces) {
    double sum = 0.0;
    for (const Convex& piece : pieces) {
        sum += area(piece);
    }
    return sum;
}

Convex grown_blunt(const Convex& shape, double by_mm) {
    Convex out = grown(shape, by_mm);
    const auto corners = shape.corners();
    constexpr double kFar_mm = 2000.0;
    for (std::size_t i = 0; i < corners.size() && by_mm > 0.0; ++i) {
        const Vec2 before = unit(corners[i] - corners[(i + corners.size() - 1) % corners.size()]);
        const Vec2 after = unit(corners[i] - corners[(i + 1) % corners.size()]);
        const Vec2 outward = before + after;
        if (length(outward) < 1e-9) {
            continue; // a corner in the middle of a straight edge
        }
        // Everything on the near side of a line square to the corner's bisector.
        const Vec2 way = unit(outward);
        const double turn_deg = degrees(std::atan2(way.y, way.x));
        out = clip(out, rectangle(corners[i] + way * (by_mm - kFar_mm / 2), {kFar_mm, kFar_mm}, turn_deg));
    }
    return out;
}

double left_bare_mm2(const ReviewFacts& facts, const Overlap& overlap, double spare_mm) {
    std::vector<Convex> pieces;
    std::vector<Convex> scratch;
    for (const Convex& piece : overlap.pieces) {
        pieces.push_back(grown_blunt(piece, spare_mm));
    }
    for (const int patch : overlap.patches) {
        subtract_from(pieces, facts.conductors.patches[static_cast<std::size_t>(patch)].outline, scratch);
    }
    return total_area(pieces);
}

double distance_to(const Convex& shape, Vec2 p) {
    if (contains(shape, p)) {
        return 0.0;
    }
    double least = 1e300;
    const auto corners = shape.corners();
    for (std::size_t i = 0; i < corners.size(); ++i) {
        least = std::min(least, distance_to_segment(p, corners[i], corners[(i + 1) % corners.size()]));
    }
    return least;
}

bool segment_inside(const Convex& shape, Vec2 a, Vec2 b, double least_mm, Vec2& from, Vec2& to) {
    // Cyrus and Beck's parametric clip; the shape is shrunk by a hair so that a shared edge does not count.
    constexpr double kHair_mm = 1e-6;
    const auto corners = shape.corners();
    double low = 0.0;
    double high = 1.0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec2 along = unit(corners[(i + 1) % corners.size()] - corners[i]);
        const double start = cross(along, a - corners[i]) - kHair_mm;
        const double step = cross(along, b - a);
        if (std::abs(step) < 1e-12) {
            if (start < 0.0) {
                return false;
            }
            continue;
        }
        const double at = -start / step;
        (step > 0.0 ? low : high) = step > 0.0 ? std::max(low, at) : std::min(high, at);
    }
    if (corners.size() < 3 || (high - low) * distance(a, b) < least_mm) {
        return false;
    }
    from = a + (b - a) * low;
    to = a + (b - a) * high;
    return true;
}

Nearest nearest_middle(const Convex& a, const Convex& b) {
    Nearest best = nearest(a, b);
    constexpr double kStretch_mm = 0.02; // what still counts as equally near
    const Convex narrow = best.mm > 0.0 ? clip(b, grown(a, best.mm + kStretch_mm)) : clip(b, a);
    if (!narrow.empty() && area(narrow) > 0.0) {
        best.on_b = centroid(narrow);
        best.on_a = nearest(a, rectangle(best.on_b, {1e-3, 1e-3}, 0.0)).on_a;
    }
    return best;
}

Nearest nearest_of_strips(const Ribbon& a, const Ribbon& b) {
    Nearest best;
    const Run* nearest_a = nullptr;
    const Run* nearest_b = nullptr;
    for (const Run& one : a.runs) {
        for (const Run& other : b.runs) {
            if (best.mm < 1e299 && !one.box.grown(best.mm).touches(other.box)) {
                continue;
            }
            const Nearest here = nearest(one.outline, other.outline);
            if (here.mm < best.mm) {
                best = here;
                nearest_a = &one;
                nearest_b = &other;
            }
        }
    }
    if (nearest_a != nullptr) {
        best = nearest_middle(nearest_a->outline, nearest_b->outline);
    }
    return best;
}

Nearest nearest_to_contact(const ReviewFacts& facts, const Ribbon& ribbon, int terminal) {
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    const Vec2 centre = shape.at_mm[terminal];
    Nearest best;
    for (const Run& run : ribbon.runs) {
        Nearest here;
        if (shape.flap) {
            here.mm = std::max(0.0, distance_to(run.outline, centre) - shape.disc_radius_mm[terminal]);
            here.on_a = point_at(ribbon, along(ribbon, centre));
            here.on_b = centre + unit(here.on_a - centre) * shape.disc_radius_mm[terminal];
        } else {
            here = nearest(run.outline, shape.pad[terminal]);
        }
        if (here.mm < best.mm) {
            best = here;
        }
    }
    return best;
}

double area_on_contact(const ReviewFacts& facts, const Ribbon& ribbon, int terminal) {
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    double sum = 0.0;
    for (const Run& run : ribbon.runs) {
        sum += shape.flap ? area_in_disc(run.outline, shape.at_mm[terminal], shape.disc_radius_mm[terminal])
                          : area(clip(run.outline, shape.pad[terminal]));
    }
    return sum;
}

} // namespace lanternleaf
