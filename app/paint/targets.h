// Targets: everything that can be touched in one frame, in the order it was drawn.
// Exists so that one list serves touch, keyboard, tests (which tap by name), the touch-size rule and, later,
// an accessibility bridge. Names are paths ("make/done"), the same in every language.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "host/point.h"

namespace lanternleaf {

enum class Role {
    Button,
    Primary, ///< the one main action of a screen: a foot pedal (Space) presses it
    Toggle,
    Tab,
    Slider,
    Field,
    Key,
    Item, ///< a row or card that can be chosen
    Spot, ///< a place on the card view; where several overlap the nearest is meant
    Note, ///< not touched, but read aloud and found by tests
    // Containers: they take what no target inside them takes.
    Scroll,
    Canvas,
    Sheet,
    Scrim,
};

[[nodiscard]] bool is_container(Role role);

/// Which way a target can be dragged. A slider takes a drag as soon as it is touched.
enum class DragAxis { None, X, Y, Both };

struct Target {
    std::string name{};
    Role role = Role::Button;
    std::string label{}; ///< what it says, as a person would read it out
    Rect rect{};         ///< as drawn
    Rect visible{};      ///< what the clips leave of it; filled in by Targets
    bool enabled = true;
    bool checked = false;
    DragAxis drag = DragAxis::None;
    bool long_press = false; ///< wants long presses; a long press is then no tap
    std::string value{};     ///< what it is set to, where that is not its label
};

class Targets {
public:
    void clear();
    /// Touch outside the rectangle does not reach what is added until pop_clip().
    void push_clip(const Rect& r);
    void pop_clip();

    /// Adds on top of all before. The reference holds until the next add().
    Target& add(Target target);

    [[nodiscard]] const std::vector<Target>& all() const { return targets_; }

    [[nodiscard]] const Target* find(std::string_view name) const;
    /// What a touch there means: the topmost target; beside a small one, what is within `reach` (the smallest
    /// target side) of its centre, the nearest first; nothing where there is only page.
    [[nodiscard]] const Target* at(Point p, float reach = 56) const;
    /// The topmost target there that can be dragged along that axis, through what cannot.
    [[nodiscard]] const Target* draggable_at(Point p, bool horizontal) const;
    /// The topmost container of that role there that no other container covers.
    [[nodiscard]] const Target* container_at(Point p, Role role) const;

    /// True when it is enough in view to be touched and nothing lies over it.
    [[nodiscard]] bool reachable(const Target& target) const;
    /// The next reachable target in drawing order (previous for step -1), round the end; empty when there is
    /// none.
    [[nodiscard]] std::string next_focus(std::string_view from, int step) const;
    /// The nearest reachable target in that direction; `from` itself when there is none.
    [[nodiscard]] std::string focus_towards(std::string_view from, float dx, float dy) const;

private:
    [[nodiscard]] bool can_focus(const Target& target) const;

    std::vector<Target> targets_;
    std::vector<Rect> clips_;
};

} // namespace lanternleaf
