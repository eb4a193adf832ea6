#include "guide/change.h"

#include "guide/phrases.h"

#include <cmath>

namespace lanternleaf {

namespace {

struct KindName {
    ChangeKind kind;
    const char* name;
};

constexpr KindName kNames[] = {
    {ChangeKind::joint_cut, "joint-cut"},
    {ChangeKind::tape_swapped, "tape-swapped"},
    {ChangeKind::strip_moved, "strip-moved"},
    {ChangeKind::tear, "tear"},
    {ChangeKind::bridged, "bridged"},
    {ChangeKind::led_turned, "led-turned"},
    {ChangeKind::led_swapped, "led-swapped"},
    {ChangeKind::led_moved, "led-moved"},
    {ChangeKind::patch_missing, "patch-missing"},
    {ChangeKind::patch_moved, "patch-moved"},
    {ChangeKind::patch_added, "patch-added"},
    {ChangeKind::cells_stacked, "cells-stacked"},
    {ChangeKind::cell_upside_down, "cell-upside-down"},
    {ChangeKind::cell_swapped, "cell-swapped"},
    {ChangeKind::holder_swapped, "holder-swapped"},
    {ChangeKind::foam_layers, "foam-layers"},
};

std::string at(Vec2 at_mm, const Words& words) {
    return words("change.at", {{"x", first_of_two(at_mm.x, words)}, {"y", words.mm(at_mm.y)}});
}

std::string moved(const std::string& part, Vec2 by_mm, const Words& words) {
    std::string shift;
    if (by_mm.x != 0.0) {
        shift = words(by_mm.x > 0.0 ? "change.shift_right" : "change.shift_left",
                      {{"mm", words.mm(std::abs(by_mm.x))}});
    }
    if (by_mm.y != 0.0) {
        const std::string down = words(by_mm.y > 0.0 ? "change.shift_down" : "change.shift_up",
                                       {{"mm", words.mm(std::abs(by_mm.y))}});
        shift = shift.empty() ? down : words("list.more", {{"before", shift}, {"item", down}});
    }
    return shift.empty() ? words("change.strip_not_moved", {{"part", part}})
                         : words("change.strip_moved", {{"part", part}, {"shift", shift}});
}

} // namespace

std::string describe(const Change& change, const Words& words) {
    const Fill part{"part", change.part};
    const Fill type{"type", change.type};
    const auto place = [&] { return Fill{"at", at(change.at_mm, words)}; };
    const auto length = [&](double mm) { return Fill{"mm", words.mm(mm)}; };
    switch (change.kind) {
    case ChangeKind::joint_cut:
        return change.mm > 0.0 ? words("change.joint_cut_lapped", {part, place(), length(change.mm)})
                               : words("change.joint_cut_apart", {part, place(), length(-change.mm)});
    case ChangeKind::tape_swapped:
        return words("change.tape_swapped", {part, type});
    case ChangeKind::strip_moved:
        return moved(change.part, change.at_mm, words);
    case ChangeKind::tear:
        return words("change.tear", {part, place(), length(change.mm > 0.0 ? change.mm : 1.0)});
    case ChangeKind::bridged:
        return words("change.bridged", {part, place(), length(change.mm > 0.0 ? change.mm : 15.0)});
    case ChangeKind::led_turned:
        return words("change.led_turned", {part});
    case ChangeKind::led_swapped:
        return words("change.led_swapped", {part, type});
    case ChangeKind::led_moved:
    case ChangeKind::patch_moved:
        return words("change.moved_to", {part, place()});
    case ChangeKind::patch_missing:
        return words("change.patch_missing", {part});
    case ChangeKind::patch_added:
        return words("change.patch_added", {place(), length(change.mm)});
    case ChangeKind::cells_stacked:
        return words("change.cells", {{"n", change.count}});
    case ChangeKind::cell_upside_down:
        return words("change.cell_upside_down");
    case ChangeKind::cell_swapped:
        return words("change.cell_swapped", {type});
    case ChangeKind::holder_swapped:
        return words("change.holder_swapped", {type});
    case ChangeKind::foam_layers:
        return words("change.foam_layers", {{"n", change.count}});
    }
    return {};
}

const char* name_of(ChangeKind kind) {
    for (const KindName& entry : kNames) {
        if (entry.kind == kind) {
            return entry.name;
        }
    }
    return "";
}

bool change_kind_from(const std::string& name, ChangeKind& out) {
    for (const KindName& entry : kNames) {
        if (name == entry.name) {
            out = entry.kind;
            return true;
        }
    }
    return false;
}

int step_of(ChangeKind kind, const Card& card, const std::string& part) {
    switch (kind) {
    case ChangeKind::holder_swapped:
        return 1;
    case ChangeKind::joint_cut:
    case ChangeKind::tape_swapped:
    case ChangeKind::strip_moved:
    case ChangeKind::tear:
    case ChangeKind::bridged: {
        const Strip* strip = find_strip(card, part);
        return strip != nullptr && strip->side != Side::negative ? 4 : 3;
    }
    case ChangeKind::patch_missing:
    case ChangeKind::patch_moved:
    case ChangeKind::patch_added:
        return 5;
    case ChangeKind::led_turned:
    case ChangeKind::led_swapped:
    case ChangeKind::led_moved:
    case ChangeKind::cells_stacked:
    case ChangeKind::cell_upside_down:
    case ChangeKind::cell_swapped:
        return 6;
    case ChangeKind::foam_layers:
        return 7;
    }
    return 6;
}

} // namespace lanternleaf
