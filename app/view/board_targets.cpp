#include "view/board_targets.h"

#include <algorithm>

namespace lanternleaf {

std::vector<BoardTarget> board_targets(const BoardView& view) {
    std::vector<BoardTarget> out;
    for (const PartView& part : view.parts) {
        out.push_back({part.target, part.at_mm, part.width_mm / 2});
    }
    for (const JointView& joint : view.joints) {
        out.push_back({joint.target, joint.at_mm, joint.size_mm / 2});
    }
    for (const PatchView& patch : view.patches) {
        out.push_back({patch.target, patch.at_mm, std::min(patch.size_mm.x, patch.size_mm.y) / 2});
    }
    for (const StripView& strip : view.strips) {
        const std::vector<Vec2>& path = strip.done_mm.size() >= 2 ? strip.done_mm : strip.later_mm;
        if (path.size() >= 2) {
            out.push_back({strip.target + "/start", path.front(), strip.width_mm / 2});
            out.push_back({strip.target + "/end", path.back(), strip.width_mm / 2});
            for (std::size_t i = 1; i < path.size(); ++i) { // and the middle of each straight run
                out.push_back({strip.target, (path[i - 1] + path[i]) * 0.5, strip.width_mm / 2});
            }
        }
    }
    for (std::size_t i = 0; i < view.marks.size(); ++i) {
        out.push_back({"board/mark/" + std::to_string(i), view.marks[i].at_mm, 2.5});
    }
    out.push_back({view.holder.target, view.holder.bed_mm, view.holder.cell_radius_mm});
    return out;
}

std::string target_at(const BoardView& view, const Viewport& viewport, Point p, float least_across_px) {
    std::string best;
    float least = 0.0f;
    for (const BoardTarget& target : board_targets(view)) {
        const float off = distance(viewport.to_px(target.at_mm), p);
        const float reach = std::max(least_across_px / 2, viewport.px(target.half_mm));
        if (off <= reach && (best.empty() || off < least)) {
            best = target.name;
            least = off;
        }
    }
    return best;
}

} // namespace lanternleaf
