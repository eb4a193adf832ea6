#include "guide/change.h"

#include "base/readout.h"

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

std::string at(Vec2 at_mm) {
    return readout_number(at_mm.x, 1) + ", " + readout_mm(at_mm.y);
}

std::string shift(Vec2 by_mm) {
    std::string text;
    if (by_mm.x != 0.0) {
        text = readout_mm(std::abs(by_mm.x)) + (by_mm.x > 0.0 ? " to the right" : " to the left");
    }
    if (by_mm.y != 0.0) {
        text += text.empty() ? "" : ", ";
        text += readout_mm(std::abs(by_mm.y)) + (by_mm.y > 0.0 ? " down" : " up");
    }
    return text.empty() ? "0 mm" : text;
}

} // namespace

std::string describe(const Change& change) {
    switch (change.kind) {
    case ChangeKind::joint_cut:
        return change.part + " cut at " + at(change.at_mm) +
               (change.mm > 0.0 ? ", ends lapped " + readout_mm(change.mm)
                                : ", ends " + readout_mm(-change.mm) + " apart");
    case ChangeKind::tape_swapped:
        return change.part + " laid in " + change.type;
    case ChangeKind::strip_moved:
        return change.part + " lies " + shift(change.at_mm) + " of the plan";
    case ChangeKind::tear:
        return change.part + " torn at " + at(change.at_mm) + ", " +
               readout_mm(change.mm > 0.0 ? change.mm : 1.0) + " gap";
    case ChangeKind::bridged:
        return change.part + " bridged at " + at(change.at_mm) + " with " +
               readout_mm(change.mm > 0.0 ? change.mm : 15.0) + " of tape";
    case ChangeKind::led_turned:
        return change.part + " turned round";
    case ChangeKind::led_swapped:
        return change.part + " is now " + change.type;
    case ChangeKind::led_moved:
        return change.part + " moved to " + at(change.at_mm);
    case ChangeKind::patch_missing:
        return change.part + " left out";
    case ChangeKind::patch_moved:
        return change.part + " moved to " + at(change.at_mm);
    case ChangeKind::patch_added:
        return "A " + readout_mm(change.mm) + " patch added at " + at(change.at_mm);
    case ChangeKind::cells_stacked:
        return std::to_string(change.count) + (change.count == 1 ? " cell" : " cells stacked");
    case ChangeKind::cell_upside_down:
        return "The cell is the other way up";
    case ChangeKind::cell_swapped:
        return "The cell is now " + change.type;
    case ChangeKind::holder_swapped:
        return "The holder is now " + change.type;
    case ChangeKind::foam_layers:
        return std::to_string(change.count) + (change.count == 1 ? " layer of foam" : " layers of foam");
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
