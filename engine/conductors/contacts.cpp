// Where current can pass from one piece of metal to another, and through what resistance.
#include "base/tolerance.h"
#include "conductors/stages.h"

#include <algorithm>
#include <limits>

namespace lanternleaf::conductors_stages {

namespace {

/// Parts and the holder lie on top of everything laid.
constexpr int kOnTop = std::numeric_limits<int>::max();
/// A strip meets a pad of a ready-made holder from this overlap on: two thirds of a millimetre of a 6 mm pad
/// is too little to hold, and a strip laid on it at all covers more. Common practice.
constexpr double kPadHolderContact_mm2 = 4.0;

double ohm_through(double ohm_mm2, double area_mm2) {
    return std::max(tolerance::kLeastResistance_ohm, ohm_mm2 / area_mm2);
}

Contact contact_of(const Conductors& made, int strip, Piece other, Share share, double ohm) {
    Contact contact;
    contact.a = {PieceKind::strip, strip, 0};
    contact.b = other;
    contact.ohm = ohm;
    contact.area_mm2 = share.area_mm2;
    contact.at_mm = share.at_mm;
    contact.along_a_mm = along(made.strips[static_cast<std::size_t>(strip)].ribbon, share.at_mm);
    return contact;
}

void add_joints(const Card& card, const Parts& parts, Conductors& made) {
    for (std::size_t i = 0; i < made.overlaps.size(); ++i) {
        const Overlap& overlap = made.overlaps[i];
        if (!overlap.conducts) {
            continue;
        }
        const TapeType& tape = type_of(parts.tapes, strip_of(card, made, overlap.upper).tape);
        const Share bare = share_of(overlap.bare);
        Contact contact = contact_of(made, overlap.lower, {PieceKind::strip, overlap.upper, 0}, bare,
                                     ohm_through(tape.joint_ohm_mm2, bare.area_mm2));
        contact.along_b_mm = along(made.strips[static_cast<std::size_t>(overlap.upper)].ribbon, bare.at_mm);
        contact.overlap = static_cast<int>(i);
        made.contacts.push_back(contact);
    }
}

/// Calls use(strip, share) for every strip whose foil shows inside `window`, patches above the strip taken
/// off. `inside` turns a run's outline into the part of it that counts, `measure` sums up what is left of the
/// parts.
template <class Inside, class Measure, class Use>
void each_strip_in(const Box& window, const RunIndex& index, const Conductors& made, Scratch& scratch,
                   Inside inside, Measure measure, Use use) {
    index.grid.find(window, scratch.found);
    for (std::size_t i = 0; i < scratch.found.size();) {
        const int strip = index.refs[static_cast<std::size_t>(scratch.found[i])].strip;
        scratch.pieces.clear();
        for (; i < scratch.found.size(); ++i) {
            const RunIndex::Ref ref = index.refs[static_cast<std::size_t>(scratch.found[i])];
            if (ref.strip != strip) {
                break;
            }
            const Convex part = inside(run_of(made, ref).outline);
            if (!part.empty()) {
                add_uncovered(part, scratch.pieces, scratch.next);
            }
        }
        const int laid = made.strips[static_cast<std::size_t>(strip)].laid_index;
        take_patches(made.patches, laid, kOnTop, scratch.pieces, scratch.next);
        use(strip, measure(scratch.pieces));
    }
}

void add_pad(const Convex& outline, const Box& box, Piece piece, double least_mm2, auto ohm_of,
             const RunIndex& index, Scratch& scratch, Conductors& made) {
    each_strip_in(
        box, index, made, scratch, [&](const Convex& run) { return clip(run, outline); },
        [](const std::vector<Convex>& pieces) { return share_of(pieces); },
        [&](int strip, Share share) {
            if (share.area_mm2 >= least_mm2) {
                made.contacts.push_back(contact_of(made, strip, piece, share, ohm_of(share.area_mm2)));
            }
        });
}

/// Foil inside a disc: exact area; the middle is that of the disc's 16-sided neighbour, near enough for a
/// place.
Share share_in_disc(const std::vector<Convex>& pieces, Vec2 centre, double radius) {
    Convex around;
    for (int i = 0; i < 16; ++i) {
        around.add(centre + direction(22.5 * i) * radius);
    }
    Share share;
    Vec2 weighted;
    double weight = 0.0;
    for (const Convex& piece : pieces) {
        share.area_mm2 += area_in_disc(piece, centre, radius);
        const Convex part = clip(piece, around);
        const double part_mm2 = area(part);
        weighted = weighted + centroid(part) * part_mm2;
        weight += part_mm2;
    }
    share.at_mm = weight > 0.0 ? weighted * (1.0 / weight) : centre;
    return share;
}

void add_holder(const Card& card, const Parts& parts, const RunIndex& index, Scratch& scratch,
                Conductors& made) {
    const HolderShape shape = holder_shape(card, parts);
    const double ohm =
        std::max(tolerance::kLeastResistance_ohm, type_of(parts.holders, card.holder.type).contact_ohm);
    for (int terminal = 0; terminal < 2; ++terminal) {
        const Piece piece{PieceKind::terminal, 0, terminal};
        if (!shape.flap) {
            add_pad(
                shape.pad[terminal], bounds(shape.pad[terminal]), piece, kPadHolderContact_mm2,
                [ohm](double) { return ohm; }, index, scratch, made);
            continue;
        }
        const Vec2 centre = shape.disc_at_mm[terminal];
        const double radius = shape.disc_radius_mm[terminal];
        Box box;
        box.add(centre);
        each_strip_in(
            box.grown(radius), index, made, scratch, [](const Convex& run) { return run; },
            [&](const std::vector<Convex>& pieces) { return share_in_disc(pieces, centre, radius); },
            [&](int strip, Share share) {
                // The slack lets a piece of exactly 20 mm2 count in spite of rounding.
                if (share.area_mm2 >= tolerance::kDiscContact_mm2 - 1e-6) {
                    made.contacts.push_back(contact_of(made, strip, piece, share, ohm));
                }
            });
    }
}

} // namespace

void find_contacts(const Card& card, const Parts& parts, const RunIndex& index, Scratch& scratch,
                   Conductors& made) {
    made.contacts.reserve(made.overlaps.size() + 2 * made.led_pads.size() + 2 * made.resistor_pads.size() +
                          4);
    add_joints(card, parts, made);
    for (const PadOutline& pad : made.led_pads) {
        const std::string& type = card.leds[static_cast<std::size_t>(pad.piece.index)].type;
        const double ohm_mm2 = type_of(parts.packages, type_of(parts.leds, type).package).pad_ohm_mm2;
        add_pad(
            pad.outline, pad.box, pad.piece, tolerance::kTouch_mm2,
            [ohm_mm2](double area_mm2) { return ohm_through(ohm_mm2, area_mm2); }, index, scratch, made);
    }
    for (const PadOutline& pad : made.resistor_pads) {
        const double ohm_mm2 = parts.resistor ? parts.resistor->pad_ohm_mm2 : 0.0;
        add_pad(
            pad.outline, pad.box, pad.piece, tolerance::kTouch_mm2,
            [ohm_mm2](double area_mm2) { return ohm_through(ohm_mm2, area_mm2); }, index, scratch, made);
    }
    add_holder(card, parts, index, scratch, made);
}

} // namespace lanternleaf::conductors_stages
