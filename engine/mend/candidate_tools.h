// What the candidates are made from: the circuit with its sleeping links, and where everything stands in it.
// Internal to mend/. Exists so that candidates.cpp only says which faults there are.
#pragma once

#include "mend/model.h"

namespace lanternleaf {

/// A length of one strip between two neighbouring contacts.
struct Stretch {
    int strip = 0;
    int element = 0; ///< a resistor in it; opening it parts the stretch
    double mm = 0.0;
    double free_mm = 0.0; ///< of it, with nothing lying on it; below 0 when two contacts meet
    double folds = 0.0;   ///< of the tape
    double creases = 0.0; ///< fold lines of the sheet that it runs over
    Vec2 at_mm;           ///< its likeliest place to break: a crease, a fold, else the middle
    std::string from;     ///< names of what touches at its ends
    std::string to;
};

/// A place where + and - could come to touch.
struct TouchPlace {
    int contact = 0; ///< the sleeping contact
    bool crossing = false;
    double mm = 0.0;
    Vec2 at_mm;
    std::vector<std::string> parts;
    std::string name;
};

class CandidateList {
public:
    /// Appends the sleeping contacts to model.conductors and builds model.circuit.
    explicit CandidateList(MendModel& made_for);

    int add_place(std::string name, Vec2 at_mm, std::vector<std::string> parts);
    Fault& add(FaultKind kind, int place);
    [[nodiscard]] std::vector<int> contacts_of(Piece piece) const;
    /// Another resistance for a contact; negative: the weak grade of its own.
    [[nodiscard]] ElementEdit contact_edit(int contact, double ohm) const;
    int law_of(const std::string& led_type);
    [[nodiscard]] bool has_swap(int a, int b) const;
    [[nodiscard]] StepId laid_in(int strip) const;
    /// Priors from shares, weights and proved steps; causes numbered by place and cure.
    void finish(const MendOptions& options);

    MendModel& model;
    std::vector<Stretch> stretches;
    std::vector<TouchPlace> links;

    /// Two neighbours on the same two traces, and the sleeping contact from the one's + to the other's -.
    struct ChainLink {
        int first = 0;
        int second = 0;
        int contact = 0;
    };

    std::vector<ChainLink> chains;
    int terminal_link = 0;      ///< contact
    int first_part_element = 0; ///< resistor element of Card::resistors[0]

private:
    void add_links();
    void add_chains();
    int sleeping(Piece a, Piece b, Vec2 at_mm, double along_a, double along_b); ///< contact index
    void index_elements();
    void find_stretches();
};

} // namespace lanternleaf
