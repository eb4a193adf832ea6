#include "sheets/page.h"

#include <cmath>
#include <numeric>
#include <utility>

namespace lanternleaf {

void PagePen::line(Vec2 from_mm, Vec2 to_mm, const Stroke& stroke) {
    marks_.emplace_back(PathMark{{from_mm, to_mm}, false, stroke, {}});
}

void PagePen::path(std::vector<Vec2> points_mm, const Stroke& stroke) {
    marks_.emplace_back(PathMark{std::move(points_mm), false, stroke, {}});
}

void PagePen::shape(std::vector<Vec2> points_mm, std::optional<Stroke> stroke, std::optional<Ink> fill) {
    marks_.emplace_back(PathMark{std::move(points_mm), true, std::move(stroke), fill});
}

void PagePen::convex(const Convex& shape_mm, std::optional<Stroke> stroke, std::optional<Ink> fill) {
    const std::span<const Vec2> corners = shape_mm.corners();
    shape(std::vector<Vec2>(corners.begin(), corners.end()), std::move(stroke), fill);
}

void PagePen::box(Vec2 corner_mm, Vec2 size_mm, std::optional<Stroke> stroke, std::optional<Ink> fill) {
    const Vec2 far = corner_mm + size_mm;
    shape({corner_mm, {far.x, corner_mm.y}, far, {corner_mm.x, far.y}}, std::move(stroke), fill);
}

void PagePen::round_box(Vec2 corner_mm, Vec2 size_mm, double radius_mm, std::optional<Stroke> stroke,
                        std::optional<Ink> fill) {
    constexpr int kSteps = 8; // a quarter circle in eight chords is round to 0.5 % of its radius
    const double r = std::min({radius_mm, size_mm.x / 2.0, size_mm.y / 2.0});
    const Vec2 far = corner_mm + size_mm - Vec2{r, r};
    const Vec2 near = corner_mm + Vec2{r, r};
    const Vec2 centres[] = {{far.x, near.y}, far, {near.x, far.y}, near};
    std::vector<Vec2> points;
    for (int corner = 0; corner < 4; ++corner) {
        for (int i = 0; i <= kSteps; ++i) {
            points.push_back(centres[corner] + direction(90.0 * (corner - 1) + 90.0 * i / kSteps) * r);
        }
    }
    shape(std::move(points), std::move(stroke), fill);
}

void PagePen::disc(Vec2 at_mm, double radius_mm, std::optional<Stroke> stroke, std::optional<Ink> fill) {
    marks_.emplace_back(DiscMark{at_mm, radius_mm, std::move(stroke), fill});
}

void PagePen::text(Vec2 at_mm, std::string text, double size_mm, bool bold, TextAlign align, Ink ink) {
    marks_.emplace_back(TextMark{at_mm, std::move(text), size_mm, bold, align, ink, 0.0});
}

void PagePen::clip(const Box& box) {
    marks_.emplace_back(ClipMark{box});
}

void PagePen::clip_end() {
    marks_.emplace_back(ClipMark{});
}

namespace {

std::optional<Stroke> scaled(std::optional<Stroke> stroke, double by) {
    if (stroke) {
        stroke->width_mm *= by;
        for (double& mm : stroke->dash_mm) {
            mm *= by;
        }
    }
    return stroke;
}

struct Placer {
    const Placement& placement;

    PageMark operator()(PathMark mark) const {
        for (Vec2& p : mark.points_mm) {
            p = placement(p);
        }
        mark.stroke = scaled(std::move(mark.stroke), placement.scale);
        return mark;
    }

    PageMark operator()(DiscMark mark) const {
        mark.at_mm = placement(mark.at_mm);
        mark.radius_mm *= placement.scale;
        mark.stroke = scaled(std::move(mark.stroke), placement.scale);
        return mark;
    }

    PageMark operator()(TextMark mark) const {
        mark.at_mm = placement(mark.at_mm);
        mark.size_mm *= placement.scale;
        if (placement.mirrored) {
            mark.turn_deg = -mark.turn_deg;
            if (mark.align != TextAlign::centre) {
                mark.align = mark.align == TextAlign::left ? TextAlign::right : TextAlign::left;
            }
        }
        return mark;
    }

    PageMark operator()(ClipMark mark) const {
        if (mark.box) {
            Box moved;
            moved.add(placement(mark.box->min));
            moved.add(placement(mark.box->max));
            mark.box = moved;
        }
        return mark;
    }
};

} // namespace

void place(const std::vector<PageMark>& marks, const Placement& placement, std::vector<PageMark>& out) {
    out.reserve(out.size() + marks.size());
    for (const PageMark& mark : marks) {
        out.push_back(std::visit(Placer{placement}, mark));
    }
}

Box bounds(const PageMark& mark) {
    Box box;
    if (const PathMark* path = std::get_if<PathMark>(&mark)) {
        for (const Vec2 p : path->points_mm) {
            box.add(p);
        }
        return box.grown(path->stroke ? path->stroke->width_mm : 0.0);
    }
    if (const DiscMark* disc = std::get_if<DiscMark>(&mark)) {
        box.add(disc->at_mm);
        return box.grown(disc->radius_mm + (disc->stroke ? disc->stroke->width_mm : 0.0));
    }
    if (const TextMark* text = std::get_if<TextMark>(&mark)) {
        box.add(text->at_mm);
        return box.grown(text->size_mm * (1.0 + 1.2 * static_cast<double>(text->text.size())));
    }
    return box;
}

std::vector<std::vector<Vec2>> dashed(const std::vector<Vec2>& points_mm, bool closed,
                                      const std::vector<double>& dash_mm) {
    std::vector<Vec2> chain = points_mm;
    if (closed && !chain.empty()) {
        chain.push_back(chain.front());
    }
    const double period = std::accumulate(dash_mm.begin(), dash_mm.end(), 0.0);
    double whole = 0.0;
    for (std::size_t i = 1; i < chain.size(); ++i) {
        whole += distance(chain[i - 1], chain[i]);
    }
    const double pieces = period > 0.0 ? whole / period * static_cast<double>(dash_mm.size()) : 0.0;
    if (!(period > 0.0) || pieces > static_cast<double>(kMostDashes)) {
        return {chain};
    }
    std::vector<std::vector<Vec2>> drawn;
    std::size_t index = 0; // into the pattern; even ones are drawn
    double left = dash_mm[0];
    bool fresh = true; // the next drawn piece starts a chain of its own
    for (std::size_t i = 1; i < chain.size(); ++i) {
        const double size = distance(chain[i - 1], chain[i]);
        const Vec2 heading = unit(chain[i] - chain[i - 1]);
        double done = 0.0;
        while (done < size) {
            const double step = std::min(left, size - done);
            if (index % 2 == 0 && step > 0.0) {
                if (fresh) {
                    drawn.push_back({chain[i - 1] + heading * done});
                    fresh = false;
                }
                drawn.back().push_back(chain[i - 1] + heading * (done + step));
            }
            done += step;
            left -= step;
            if (left <= 0.0) {
                index = (index + 1) % dash_mm.size();
                left = dash_mm[index];
                fresh = true;
            }
        }
    }
    return drawn;
}

} // namespace lanternleaf
