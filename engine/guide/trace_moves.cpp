// Steps 3, 4 and 5: the two traces, and what waits for a patch.
#include "guide/moves.h"
#include "guide/phrases.h"

#include <algorithm>

namespace lanternleaf {

namespace {

const Tail* tail_of(const GuideFacts& facts, std::size_t laid_index) {
    const auto found = std::find_if(facts.waits.begin(), facts.waits.end(), [&](const Tail& tail) {
        return tail.laid_index == static_cast<int>(laid_index);
    });
    return found == facts.waits.end() ? nullptr : &*found;
}

double length_of(const GuideFacts& facts, std::size_t laid_index) {
    for (const StripShape& shape : facts.conductors.strips) {
        if (shape.laid_index == static_cast<int>(laid_index)) {
            return shape.ribbon.length_mm;
        }
    }
    return 0.0;
}

// How far a loose tail's stuck part ends before the patch it waits for; 0 when there is no such patch.
double short_of(const GuideFacts& facts, std::size_t laid_index, const Tail& tail) {
    for (const StripShape& strip : facts.conductors.strips) {
        for (const PatchShape& patch : facts.conductors.patches) {
            const bool its_own =
                strip.laid_index == static_cast<int>(laid_index) &&
                id_of(facts.card.laid[static_cast<std::size_t>(patch.laid_index)]) == tail.patch;
            if (its_own) {
                constexpr double kDot_mm = 0.01;
                const Convex end = rectangle(point_at(strip.ribbon, tail.stop_mm), {kDot_mm, kDot_mm}, 0.0);
                return nearest(end, patch.outline).mm + kDot_mm / 2.0;
            }
        }
    }
    return 0.0;
}

void patch_moves(const Patch& patch, const std::string& under, const Words& words, std::vector<Move>& out) {
    Move lay = make_move(StepId::insulate, patch.id, "patch", MoveKind::patch);
    lay.title =
        words(under.empty() ? "guide.patch" : "guide.patch_over", {{"patch", patch.id}, {"under", under}});
    lay.sentence = words("guide.patch_how", {{"width", first_of_two(patch.size_mm.x, words)},
                                             {"height", words.mm(patch.size_mm.y)},
                                             {"place", from_edges_short(patch.at_mm, words)}});
    lay.why = words("guide.patch_why");
    lay.path_mm = {patch.at_mm};
    out.push_back(lay);
    Move rub = make_move(StepId::insulate, patch.id, "rub", MoveKind::press);
    rub.title = words("guide.patch_rub", {{"patch", patch.id}});
    rub.sentence = words("guide.patch_rub_how");
    rub.why = words("guide.patch_rub_why");
    rub.path_mm = {patch.at_mm};
    out.push_back(rub);
}

// The strips that lie under a patch, in words.
std::string strips_under(const GuideFacts& facts, std::size_t laid_index) {
    std::vector<std::string> ids;
    for (const Overlap& overlap : facts.conductors.overlaps) {
        for (const int patch : overlap.patches) {
            const PatchShape& shape = facts.conductors.patches[static_cast<std::size_t>(patch)];
            const std::string& id = strip_of(facts.card, facts.conductors, overlap.lower).id;
            if (shape.laid_index == static_cast<int>(laid_index) &&
                std::find(ids.begin(), ids.end(), id) == ids.end()) {
                ids.push_back(id);
            }
        }
    }
    return facts.words.list(ids);
}

} // namespace

std::vector<Move> trace_moves(const GuideFacts& facts, StepId step) {
    std::vector<Move> out;
    const Stage stage = make_stage(facts, step);
    const Predictor predictor(facts, stage);
    for (std::size_t i = 0; i < facts.card.laid.size(); ++i) {
        const Strip* strip = std::get_if<Strip>(&facts.card.laid[i]);
        if (strip == nullptr || step_of(strip->side) != step) {
            continue;
        }
        StripPortion portion{static_cast<int>(i), 0.0, length_of(facts, i), step, "", 0.0};
        if (const Tail* tail = tail_of(facts, i)) {
            if (tail->stop_mm <= 0.0) {
                continue; // waits whole
            }
            portion.to_mm = tail->stop_mm;
            portion.waits_for = tail->patch;
            portion.before_mm = short_of(facts, i, *tail);
        }
        lay_strip(facts, stage, predictor, portion, out);
    }
    return out;
}

std::vector<Move> crossing_moves(const GuideFacts& facts) {
    std::vector<Move> out;
    const Stage stage = make_stage(facts, StepId::insulate);
    const Predictor predictor(facts, stage);
    // The order of laying is the order of the stack: below, patch, above.
    for (std::size_t i = 0; i < facts.card.laid.size(); ++i) {
        if (const Patch* patch = std::get_if<Patch>(&facts.card.laid[i])) {
            patch_moves(*patch, strips_under(facts, i), facts.words, out);
        } else if (const Tail* tail = tail_of(facts, i)) {
            lay_strip(facts, stage, predictor,
                      {static_cast<int>(i), tail->stop_mm, length_of(facts, i), StepId::insulate, "", 0.0},
                      out);
        }
    }
    return out;
}

} // namespace lanternleaf
