#include "view/board_progress.h"

#include "base/at.h"

#include <algorithm>

namespace lanternleaf {

namespace {

bool names(const Move& move, const std::string& id) {
    return std::find(move.parts.begin(), move.parts.end(), id) != move.parts.end();
}

/// The first strip among the parts of a move, as an index into Conductors::strips; -1 when there is none.
int strip_of_move(const Card& card, const Conductors& conductors, const Move& move) {
    for (const std::string& part : move.parts) {
        for (std::size_t i = 0; i < conductors.strips.size(); ++i) {
            if (strip_of(card, conductors, static_cast<int>(i)).id == part) {
                return static_cast<int>(i);
            }
        }
    }
    return -1;
}

bool lays_tape(MoveKind kind) {
    return kind == MoveKind::start_strip || kind == MoveKind::run || kind == MoveKind::fold ||
           kind == MoveKind::joint || kind == MoveKind::leave_tail || kind == MoveKind::carry_across ||
           kind == MoveKind::cut;
}

/// The furthest place along a strip that a move's path reaches.
double reach_of(const Ribbon& ribbon, const Move& move) {
    double reach = 0.0;
    for (const Vec2 p : move.path_mm) {
        reach = std::max(reach, along(ribbon, p));
    }
    return reach;
}

class Walk {
public:
    Walk(const Card& card, const Conductors& conductors) : card_(card), conductors_(conductors) {
        out.pads.assign(card.leds.size(), ItemState::later);
        out.leds.assign(card.leds.size(), ItemState::later);
        out.resistors.assign(card.resistors.size(), ItemState::later);
        out.strips.assign(conductors.strips.size(), {});
        out.patches.assign(conductors.patches.size(), ItemState::later);
    }

    void take(const Move& move, ItemState state) {
        const int strip = lays_tape(move.kind) ? strip_of_move(card_, conductors_, move) : -1;
        if (strip >= 0) {
            lay(strip, move, state);
        }
        switch (move.kind) {
        case MoveKind::measure:
        case MoveKind::peel:
        case MoveKind::press:
        case MoveKind::flap_way:
            if (names(move, "holder")) {
                raise(out.holder, state);
            }
            break;
        case MoveKind::mark_pad:
            parts(move, out.pads, state);
            break;
        case MoveKind::place_led:
            parts(move, out.leds, state);
            break;
        case MoveKind::place_resistor:
            for (std::size_t i = 0; i < card_.resistors.size(); ++i) {
                if (names(move, card_.resistors[i].id)) {
                    raise(out.resistors[i], state);
                }
            }
            break;
        case MoveKind::patch:
            for (std::size_t i = 0; i < conductors_.patches.size(); ++i) {
                if (names(move, id_of(card_.laid[at(conductors_.patches[i].laid_index)]))) {
                    raise(out.patches[i], state);
                }
            }
            break;
        case MoveKind::cell_in:
            out.cell_in = out.cell_in || state == ItemState::done;
            break;
        case MoveKind::foam:
            raise(out.foam, state);
            break;
        default:
            break;
        }
        if (state == ItemState::now) {
            out.moving = true;
            out.kind = move.kind;
            out.strip = strip;
            out.path_mm = move.path_mm;
            out.turn_deg = move.turn_deg;
            out.parts = move.parts;
        }
    }

    /// A finished step leaves nothing of its own kind for later, whatever its moves named.
    void close(StepId step) {
        switch (step) {
        case StepId::mount_holder:
            out.holder = ItemState::done;
            break;
        case StepId::mark_pads:
            std::fill(out.pads.begin(), out.pads.end(), ItemState::done);
            break;
        case StepId::lay_negative:
            all_of(Side::negative);
            break;
        case StepId::insulate:
            std::fill(out.patches.begin(), out.patches.end(), ItemState::done);
            all_of(Side::positive);
            all_of(Side::link);
            break;
        case StepId::place_leds:
            std::fill(out.leds.begin(), out.leds.end(), ItemState::done);
            std::fill(out.resistors.begin(), out.resistors.end(), ItemState::done);
            break;
        case StepId::pad_edges:
            raise(out.foam, ItemState::done);
            break;
        case StepId::lay_positive: // its tails wait for the patches
            break;
        }
    }

    BoardProgress out;

private:
    static void raise(ItemState& item, ItemState state) { item = std::max(item, state); }

    void parts(const Move& move, std::vector<ItemState>& items, ItemState state) {
        for (std::size_t i = 0; i < card_.leds.size(); ++i) {
            if (names(move, card_.leds[i].id)) {
                raise(items[i], state);
            }
        }
    }

    void lay(int strip, const Move& move, ItemState state) {
        const Ribbon& ribbon = conductors_.strips[at(strip)].ribbon;
        StripProgress& progress = out.strips[at(strip)];
        const double reach = reach_of(ribbon, move);
        if (state == ItemState::done) {
            progress.done_mm = std::max(progress.done_mm, reach);
        } else {
            progress.now_mm = std::max(progress.now_mm, std::max(progress.done_mm, reach));
        }
    }

    void all_of(Side side) {
        for (std::size_t i = 0; i < conductors_.strips.size(); ++i) {
            if (strip_of(card_, conductors_, static_cast<int>(i)).side == side) {
                out.strips[i].done_mm = conductors_.strips[i].ribbon.length_mm;
                out.strips[i].now_mm = out.strips[i].done_mm;
            }
        }
    }

    const Card& card_;
    const Conductors& conductors_;
};

/// At a fold the next straight run is shown as what comes: up to the next fold, or where the next move ends.
void look_ahead(Walk& walk, const Card& card, const Conductors& conductors, const Step& step, int move) {
    if (walk.out.strip < 0 || walk.out.kind != MoveKind::fold) {
        return;
    }
    for (std::size_t next = at(move) + 1; next < step.moves.size(); ++next) {
        const Move& then = step.moves[next];
        if (!lays_tape(then.kind) || strip_of_move(card, conductors, then) != walk.out.strip) {
            return;
        }
        const double reach = reach_of(conductors.strips[at(walk.out.strip)].ribbon, then);
        double& now_mm = walk.out.strips[at(walk.out.strip)].now_mm;
        if (reach > now_mm + 0.01) {
            now_mm = reach;
            return;
        }
    }
}

} // namespace

BoardProgress finished_board(const Card& card, const Conductors& conductors) {
    Walk walk(card, conductors);
    for (int s = 1; s <= kStepCount; ++s) {
        walk.close(static_cast<StepId>(s));
    }
    return walk.out;
}

BoardProgress board_after(const Card& card, const Conductors& conductors, const std::vector<Step>& steps,
                          StepId step) {
    Walk walk(card, conductors);
    for (const Step& each : steps) {
        if (each.id > step) {
            break;
        }
        for (const Move& move : each.moves) {
            walk.take(move, ItemState::done);
        }
        walk.close(each.id);
    }
    return walk.out;
}

BoardProgress board_at(const Card& card, const Conductors& conductors, const std::vector<Step>& steps,
                       StepId step, int move) {
    Walk walk(card, conductors);
    for (const Step& each : steps) {
        if (each.id > step) {
            break;
        }
        const int count = static_cast<int>(each.moves.size());
        const bool here = each.id == step;
        for (int m = 0; m < count && (!here || m <= move); ++m) {
            walk.take(each.moves[at(m)], here && m == move ? ItemState::now : ItemState::done);
        }
        if (!here || move >= count) {
            walk.close(each.id);
        } else if (move >= 0) {
            walk.out.number = move + 1;
            look_ahead(walk, card, conductors, each, move);
        }
    }
    return walk.out;
}

} // namespace lanternleaf
