// Field: what lies on the sheet before any ribbon does: edges, keep-outs, creases, the holder's contacts,
// strips that are kept, parts that are not on the ribbon. Exists so that a link is judged in one place.
#pragma once

#include "card/card.h"
#include "conductors/conductors.h"
#include "routing/link.h"

#include <vector>

namespace lanternleaf::routing_stages {

class Field {
public:
    /// `kept` holds only what stays laid; `others` are the outlines of parts that no ribbon goes through.
    Field(const Card& card, const Parts& parts, const Gauge& gauge, const Card& kept,
          std::vector<Convex> others);

    /// Which of a link's tapes is the positive one, and whether the link leaves the holder.
    struct Role {
        bool from_holder = false;
        bool plus_right = true;
    };

    /// Adds to the link's misfit and price.
    void judge(Link& link, Role role) const;
    /// How much a link passes over these places, other than its own two ends, in mm.
    [[nodiscard]] double over_places(const Link& link, std::span<const Vec2> places, int a, int b) const;

    [[nodiscard]] const Gauge& gauge() const { return gauge_; }

private:
    struct Disc {
        Vec2 at_mm;
        double apart_mm = 0.0;
        bool plus = false; ///< the contact of the + face
    };

    struct Outline {
        std::vector<Vec2> corners;
        Box box;
    };

    struct KeptRun {
        Vec2 from_mm;
        Vec2 to_mm;
        double apart_mm = 0.0;
    };

    using Points = std::array<Vec2, Link::kMost>;

    void judge_tape(const Points& tape, Role role, bool plus, Link& link) const;
    [[nodiscard]] double past_edges(Vec2 p) const;

    Gauge gauge_;
    Vec2 size_mm_;
    std::vector<Disc> contacts_;
    std::vector<Outline> holder_body_;
    std::vector<Outline> outlines_;
    std::vector<KeptRun> kept_;
    std::vector<FoldLine> creases_;
};

} // namespace lanternleaf::routing_stages
