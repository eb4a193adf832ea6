// Ways to look moves, checks and steps up by their ids in the guide's tests.
#pragma once

#include "guide/sequence.h"
#include "guide/verdict.h"

#include <algorithm>
#include <stdexcept>

namespace lanternleaf::look {

inline Step step(const std::vector<Step>& steps, StepId id) {
    return steps.at(static_cast<std::size_t>(id) - 1);
}

inline Move move(const Step& step, const std::string& id) {
    for (const Move& one : step.moves) {
        if (one.id == id) {
            return one;
        }
    }
    throw std::runtime_error("no move " + id);
}

inline bool has_move(const Step& step, const std::string& id) {
    return std::any_of(step.moves.begin(), step.moves.end(), [&](const Move& one) { return one.id == id; });
}

inline Check check(const Step& step, const std::string& id) {
    for (const Check& one : step.proof) {
        if (one.id == id) {
            return one;
        }
    }
    throw std::runtime_error("no check " + id);
}

inline bool has_check(const Step& step, const std::string& id) {
    return std::any_of(step.proof.begin(), step.proof.end(), [&](const Check& one) { return one.id == id; });
}

inline std::vector<MoveKind> kinds(const Step& step) {
    std::vector<MoveKind> out;
    for (const Move& one : step.moves) {
        out.push_back(one.kind);
    }
    return out;
}

inline bool has_rule(const StepVerdict& verdict, const std::string& rule) {
    return std::any_of(verdict.findings.begin(), verdict.findings.end(),
                       [&](const Finding& one) { return one.rule == rule; });
}

} // namespace lanternleaf::look
