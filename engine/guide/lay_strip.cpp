#include "guide/moves.h"
#include "guide/phrases.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kSliver_mm = 0.05; // shorter pieces of a run are not a move
constexpr double kSquare_deg = 2.0; // this near a right angle a fold is called square
constexpr double kFoldBack_deg = 178.0;

// One strip being laid: what the sentences need.
struct Laying {
    const GuideFacts& facts;
    const Stage& stage;
    const Predictor& predictor;
    const StripPortion& portion;
    const Strip& strip;
    int index;            ///< among the whole card's strips
    const Ribbon& ribbon; ///< of the whole strip
    double fed_from_mm;   ///< from here on readings are possible; beyond the end when nothing feeds it
    std::vector<Move>& out;

    Move& add(const std::string& name, MoveKind kind) const {
        out.push_back(make_move(portion.step, strip.id, name, kind));
        return out.back();
    }
};

// ---- words

// The message that says on which contact a strip starts; empty when on none.
std::string start_on_contact(const GuideFacts& facts, const Strip& strip) {
    const HolderShape holder = holder_shape(facts.card, facts.parts);
    const Vec2 start = strip.path_mm.front();
    for (int i = 0; i < 2; ++i) {
        if (holder.flap && distance(start, holder.disc_at_mm[i]) <= holder.disc_radius_mm[i]) {
            return i == 0 ? "guide.start_bed" : "guide.start_flap";
        }
        if (!holder.flap && !holder.pad[i].empty() && contains(holder.pad[i], start)) {
            return i == 0 ? "guide.start_holder_minus" : "guide.start_holder_plus";
        }
    }
    return {};
}

std::string start_why(const Laying& laying, bool on_contact) {
    if (!on_contact) {
        return laying.facts.words("guide.start_long_why");
    }
    return laying.facts.words(laying.strip.side == Side::positive ? "guide.start_positive_why"
                                                                  : "guide.start_negative_why");
}

void word_fold(Move& move, double turn_deg, const std::string& near, Vec2 at_mm, const Words& words) {
    const double size = std::abs(turn_deg);
    const bool at_corner = !near.empty();
    const Fill where{at_corner ? "near" : "place", at_corner ? near : from_edges_short(at_mm, words)};
    move.why = words("guide.fold_why");
    if (size >= kFoldBack_deg) {
        move.title = words(at_corner ? "guide.fold_back_near" : "guide.fold_back_at", {where});
        move.sentence = words("guide.fold_back_how");
        return;
    }
    const Fill hand{"hand", words(turn_deg > 0.0 ? "guide.hand_right" : "guide.hand_left")};
    if (std::abs(size - 90.0) <= kSquare_deg) {
        move.title = words(at_corner ? "guide.fold_near" : "guide.fold_at", {hand, where});
        move.sentence = words("guide.fold_how", {hand});
        return;
    }
    const Fill by{"deg", words.number(size, 0)};
    move.title = words(at_corner ? "guide.fold_by_near" : "guide.fold_by_at", {hand, by, where});
    move.sentence = words("guide.fold_by_how", {hand, by});
}

std::vector<std::string> shown_names(const std::vector<const PadRef*>& pads) {
    std::vector<std::string> names;
    for (const PadRef* pad : pads) {
        names.push_back(shown(pad->name));
    }
    return names;
}

// ---- what lies along the way

std::vector<const PadRef*> pads_between(const Laying& laying, double from_mm, double to_mm) {
    std::vector<const PadRef*> found;
    for (const PadRef& pad : laying.facts.pads) {
        if (pad.strip == laying.portion.laid_index && pad.along_mm >= from_mm && pad.along_mm < to_mm) {
            found.push_back(&pad);
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const PadRef* a, const PadRef* b) { return a->along_mm < b->along_mm; });
    return found;
}

std::vector<const Overlap*> laps_between(const Laying& laying, double from_mm, double to_mm) {
    std::vector<const Overlap*> found;
    for (const Overlap& overlap : laying.facts.conductors.overlaps) {
        const bool same_trace =
            strip_of(laying.facts.card, laying.facts.conductors, overlap.lower).side == laying.strip.side;
        if (overlap.upper == laying.index && same_trace && overlap.bare_mm2 > 0.0 &&
            overlap.along_upper_mm >= from_mm && overlap.along_upper_mm < to_mm) {
            found.push_back(&overlap);
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const Overlap* a, const Overlap* b) {
        return a->along_upper_mm < b->along_upper_mm;
    });
    return found;
}

// What the run carries the strip over: patches, or a strip of the other trace that lies bare.
std::vector<std::string> crossed_between(const Laying& laying, double from_mm, double to_mm) {
    std::vector<std::string> found;
    for (const Overlap& overlap : laying.facts.conductors.overlaps) {
        if (overlap.upper != laying.index || overlap.along_upper_mm < from_mm ||
            overlap.along_upper_mm >= to_mm) {
            continue;
        }
        for (const int patch : overlap.patches) {
            const PatchShape& shape = laying.facts.conductors.patches[static_cast<std::size_t>(patch)];
            found.push_back(id_of(laying.facts.card.laid[static_cast<std::size_t>(shape.laid_index)]));
        }
        const Strip& lower = strip_of(laying.facts.card, laying.facts.conductors, overlap.lower);
        if (overlap.patches.empty() && lower.side != laying.strip.side) {
            found.push_back(lower.id);
        }
    }
    return found;
}

// ---- moves

void add_start(const Laying& laying) {
    Move& move = laying.add("start", MoveKind::start_strip);
    const Vec2 at = laying.strip.path_mm.front();
    const Words& words = laying.facts.words;
    const Fill part{"part", laying.strip.id};
    const std::string contact = start_on_contact(laying.facts, laying.strip);
    const std::string near = near_led(laying.facts.card, at, words);
    const std::vector<const Overlap*> laps = laps_between(laying, 0.0, laying.ribbon.width_mm);
    const std::vector<const PadRef*> pads = pads_between(laying, 0.0, laying.ribbon.width_mm);
    if (!contact.empty()) {
        move.title = words(contact, {part});
    } else if (!laps.empty()) {
        const Strip& other = strip_of(laying.facts.card, laying.facts.conductors, laps.front()->lower);
        move.title = words("guide.start_on", {part, {"other", other.id}});
    } else if (!pads.empty()) {
        move.title = words("guide.start_pad", {part, {"pad", shown(pads.front()->name)}});
    } else {
        move.title = near.empty() ? words("guide.start_mark", {part})
                                  : words("guide.start_near", {part, {"near", near}});
    }
    move.sentence = words("guide.start_how", {{"place", from_edges_short(at, words)},
                                              {"length", words.mm(laying.ribbon.length_mm)}});
    move.why = start_why(laying, !contact.empty());
    move.path_mm = {at};
}

void add_joint(const Laying& laying, const Overlap& overlap, int number) {
    const Strip& lower = strip_of(laying.facts.card, laying.facts.conductors, overlap.lower);
    const bool at_start = overlap.along_upper_mm <= laying.ribbon.width_mm;
    const bool at_end = overlap.along_upper_mm >= laying.ribbon.length_mm - laying.ribbon.width_mm;
    const bool turned = (at_start && laying.strip.ends[0] == EndStyle::folded) ||
                        (at_end && laying.strip.ends[1] == EndStyle::folded);
    Move& move = laying.add("joint-" + std::to_string(number), MoveKind::joint);
    const Words& words = laying.facts.words;
    move.title = words(at_start || at_end ? "guide.joint_lap" : "guide.joint_rub",
                       {{"part", laying.strip.id}, {"other", lower.id}});
    move.sentence = words(turned ? "guide.joint_turned_how" : "guide.joint_how",
                          {{"mm", words.mm(overlap.area_mm2 / laying.ribbon.width_mm)}});
    move.why = words(turned ? "guide.joint_turned_why" : "guide.joint_why");
    move.parts.push_back(lower.id);
    move.path_mm = {overlap.at_mm};
}

// A straight length from one place along the strip to another.
void add_run(const Laying& laying, std::size_t run, double from_mm, double to_mm) {
    const double mm = to_mm - from_mm;
    const Vec2 from = point_at(laying.ribbon, from_mm);
    const Run& whole = laying.ribbon.runs[run];
    const Vec2 heading = whole.to_mm - whole.from_mm;
    const Vec2 to = from + unit(heading) * mm;
    // The very end belongs to the last run.
    const double past_mm = to_mm >= laying.ribbon.length_mm - kSliver_mm ? to_mm + 1.0 : to_mm;
    const std::vector<const PadRef*> pads = pads_between(laying, from_mm, past_mm);
    const std::vector<std::string> crossed = crossed_between(laying, from_mm, past_mm);
    const std::string number = std::to_string(run + 1);
    const Words& words = laying.facts.words;
    const Fill past{"pads", words.list(shown_names(pads))};
    const Fill length{"mm", words.mm(mm)};

    Move& move = crossed.empty() ? laying.add("run-" + number, MoveKind::run)
                                 : laying.add("carry-" + number, MoveKind::carry_across);
    if (crossed.empty()) {
        move.title = words("guide.run", {length, {"towards", towards(heading, words)}});
        move.sentence = words(pads.empty() ? "guide.run_how" : "guide.run_past_how", {length, past});
        move.why = words("guide.run_why");
    } else {
        move.title = words("guide.carry", {{"part", laying.strip.id}, {"crossed", words.list(crossed)}});
        move.sentence = words(pads.empty() ? "guide.carry_how" : "guide.carry_past_how", {length, past});
        move.why = words("guide.carry_why");
    }
    move.parts.insert(move.parts.end(), crossed.begin(), crossed.end());
    for (const PadRef* pad : pads) {
        if (std::find(move.parts.begin(), move.parts.end(), pad->part) == move.parts.end()) {
            move.parts.push_back(pad->part);
        }
    }
    move.path_mm = {from, to};
    move.length_mm = mm;
    if (to_mm + kSliver_mm < laying.fed_from_mm) {
        return;
    }
    for (auto pad = pads.rbegin(); pad != pads.rend(); ++pad) {
        const int feed = feed_of(laying.facts, laying.stage, **pad);
        const bool is_probe = feed >= 0 && &laying.facts.pads[static_cast<std::size_t>(feed)] == *pad;
        if (feed != kNotFed && !is_probe) {
            move.check = pad_check(laying.facts, laying.stage, laying.predictor, **pad, false);
            break;
        }
    }
}

void add_fold(const Laying& laying, std::size_t run) {
    const Run& before = laying.ribbon.runs[run];
    const Run& after = laying.ribbon.runs[run + 1];
    const Vec2 in = before.to_mm - before.from_mm;
    const Vec2 out = after.to_mm - after.from_mm;
    // cross() is positive for a clockwise turn on the table (y down): to the right of the way the strip runs.
    const double turn_deg = degrees(std::atan2(cross(in, out), dot(in, out)));
    if (std::abs(turn_deg) < 1.0) {
        return; // a vertex on a straight line is no fold
    }
    Move& move = laying.add("fold-" + std::to_string(run + 1), MoveKind::fold);
    move.turn_deg = turn_deg;
    move.path_mm = {after.from_mm};
    const Words& words = laying.facts.words;
    word_fold(move, turn_deg, near_led(laying.facts.card, after.from_mm, words), after.from_mm, words);
}

void add_tail(const Laying& laying) {
    Move& move = laying.add("tail", MoveKind::leave_tail);
    const double loose_mm = laying.ribbon.length_mm - laying.portion.to_mm;
    const Words& words = laying.facts.words;
    const std::string& patch = laying.portion.waits_for;
    move.title = words(patch.empty() ? "guide.tail_crossing" : "guide.tail_patch", {{"patch", patch}});
    const double short_mm = laying.portion.before_mm;
    move.sentence = words(short_mm > 0.0 ? "guide.tail_short_how" : "guide.tail_how",
                          {{"short", words.mm(short_mm)}, {"mm", words.mm(loose_mm)}});
    move.why = words("guide.tail_why");
    move.path_mm = {point_at(laying.ribbon, laying.portion.to_mm)};
    move.length_mm = loose_mm;
}

void add_cut(const Laying& laying) {
    Move& move = laying.add("cut", MoveKind::cut);
    const Words& words = laying.facts.words;
    const bool was_tail = laying.portion.from_mm > 0.0;
    const Fill part{"part", laying.strip.id};
    move.title = words(was_tail ? "guide.trim" : "guide.cut", {part});
    move.sentence = words(was_tail ? "guide.trim_how" : "guide.cut_how",
                          {part, {"mm", words.mm(laying.ribbon.length_mm)}});
    move.why = words("guide.cut_why");
    move.path_mm = {laying.strip.path_mm.back()};
}

// The least place along the strip from which it is joined to something that is fed.
double fed_from(const GuideFacts& facts, const Stage& stage, const StripPortion& portion,
                const Strip& strip) {
    constexpr double kNever_mm = 1e300;
    if (strip.side == Side::link) {
        return kNever_mm;
    }
    const int here = strip_index(stage.card, stage.conductors, strip.id);
    if (here < 0) {
        return kNever_mm;
    }
    const std::vector<int>& feed = stage.feed[strip.side == Side::negative ? 0 : 1];
    const int own =
        feed[static_cast<std::size_t>(stage.conductors.net_of_strip[static_cast<std::size_t>(here)])];
    if (own == kNotFed) {
        return kNever_mm;
    }
    double least_mm = kNever_mm;
    for (const Contact& contact : stage.conductors.contacts) {
        const bool is_a = contact.a == Piece{PieceKind::strip, here, 0};
        if (!is_a && !(contact.b == Piece{PieceKind::strip, here, 0})) {
            continue;
        }
        const Piece other = is_a ? contact.b : contact.a;
        const bool contact_of_trace =
            other.kind == PieceKind::terminal && other.pad == contact_of(facts, strip.side);
        const bool laid_before = other.kind == PieceKind::strip && other.index < here;
        if (contact_of_trace || laid_before) {
            least_mm = std::min(least_mm, is_a ? contact.along_a_mm : contact.along_b_mm);
        }
    }
    if (own >= 0 && facts.pads[static_cast<std::size_t>(own)].strip == portion.laid_index) {
        least_mm = std::min(least_mm, facts.pads[static_cast<std::size_t>(own)].along_mm);
    }
    return least_mm;
}

} // namespace

Move make_move(StepId step, const std::string& part, const std::string& name, MoveKind kind) {
    Move move;
    move.kind = kind;
    move.id = std::to_string(static_cast<int>(step)) + "/" + part + "/" + name;
    move.parts = {part};
    return move;
}

void lay_strip(const GuideFacts& facts, const Stage& stage, const Predictor& predictor,
               const StripPortion& portion, std::vector<Move>& out) {
    const Strip& strip = std::get<Strip>(facts.card.laid[static_cast<std::size_t>(portion.laid_index)]);
    const int index = strip_index(facts.card, facts.conductors, strip.id);
    const Ribbon& ribbon = facts.conductors.strips[static_cast<std::size_t>(index)].ribbon;
    const Laying laying{
        facts, stage, predictor, portion, strip, index, ribbon, fed_from(facts, stage, portion, strip), out};
    int joints = 0;
    const auto joints_between = [&](double from_mm, double to_mm) {
        for (const Overlap* lap : laps_between(laying, from_mm, to_mm)) {
            add_joint(laying, *lap, ++joints);
        }
    };
    double joined_to_mm = portion.from_mm;
    if (portion.from_mm <= 0.0) {
        add_start(laying);
        joints_between(0.0, ribbon.width_mm);
        joined_to_mm = ribbon.width_mm;
    } else {
        joints = static_cast<int>(laps_between(laying, 0.0, portion.from_mm).size());
    }
    for (std::size_t run = 0; run < ribbon.runs.size(); ++run) {
        const double starts_mm = ribbon.runs[run].starts_at_mm;
        const double ends_mm = starts_mm + ribbon.runs[run].length_mm;
        const double from_mm = std::max(starts_mm, portion.from_mm);
        const double to_mm = std::min(ends_mm, portion.to_mm);
        if (to_mm - from_mm > kSliver_mm) {
            add_run(laying, run, from_mm, to_mm);
        }
        const bool last = run + 1 == ribbon.runs.size();
        if (to_mm > joined_to_mm) {
            const double past_mm = last && to_mm >= ends_mm ? to_mm + 1.0 : to_mm;
            joints_between(joined_to_mm, past_mm);
            joined_to_mm = to_mm;
        }
        if (!last && ends_mm >= portion.from_mm && ends_mm < portion.to_mm) {
            add_fold(laying, run);
        }
    }
    if (portion.to_mm < ribbon.length_mm - kSliver_mm) {
        add_tail(laying);
    } else {
        add_cut(laying);
    }
}

} // namespace lanternleaf
