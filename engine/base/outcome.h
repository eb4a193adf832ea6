// Outcome: either a value, or the one problem that kept it from being made.
// Exists so that an expected error (a file someone mistyped, a disk that is full) is a value the caller must
// look at. A Problem is a sentence for a person, never a code: it names the file, the place in it, and what
// was expected.
#pragma once

#include <cassert>
#include <string>
#include <utility>
#include <variant>

namespace lanternleaf {

/// What went wrong with something that came from outside.
struct Problem {
    std::string file;  ///< which file or source, as the caller named it; may be empty while still unknown
    std::string place; ///< where in it: "line 3, column 7", "/leds/2/at_mm"; empty for the file as a whole
    std::string
        expected; ///< what was expected, as the rest of a sentence: "expected two numbers, found a word"

    /// One line without a newline: "file: place: expected".
    [[nodiscard]] std::string sentence() const;
};

/// Stands for "done, nothing to hand back" in an Outcome.
struct Done {};

/// A value of type T or a Problem, never both. Asking for the wrong one is our own bug and asserts.
template <class T>
class [[nodiscard]] Outcome {
public:
    Outcome(T value) : held_(std::in_place_index<0>, std::move(value)) {} // NOLINT: implicit by design

    Outcome(Problem problem)
        : held_(std::in_place_index<1>, std::move(problem)) {} // NOLINT: implicit by design

    [[nodiscard]] bool ok() const { return held_.index() == 0; }

    explicit operator bool() const { return ok(); }

    [[nodiscard]] const T& value() const& {
        assert(ok());
        return std::get<0>(held_);
    }

    [[nodiscard]] T& value() & {
        assert(ok());
        return std::get<0>(held_);
    }

    [[nodiscard]] T&& value() && {
        assert(ok());
        return std::get<0>(std::move(held_));
    }

    [[nodiscard]] const Problem& problem() const {
        assert(!ok());
        return std::get<1>(held_);
    }

private:
    std::variant<T, Problem> held_;
};

} // namespace lanternleaf
