// Own parts: what a library's maker has learnt, as plain files library/parts/NAME.parts.json, one for each
// thing learnt, none ever rewritten: of one part the newest reading holds and the earlier ones stay. Exists
// so that devices which share a library share this too, with nothing to merge. Forgetting is one more file.
#pragma once

#include "card/card.h"
#include "learn/learnt.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// A part that is in force.
struct OwnPart {
    PartSort sort = PartSort::led;
    std::string id;
    std::string measured_at;
    std::string source;
    int times = 1; ///< how often it was measured and not forgotten
    friend bool operator==(const OwnPart&, const OwnPart&) = default;
};

struct OwnParts {
    Parts parts;                ///< to be laid over the shipped ones
    std::vector<OwnPart> list;  ///< newest first
    std::vector<Problem> aside; ///< files that could not be taken, each with a sentence; they are left alone
};

/// Above this a file of own parts is set aside unread.
inline constexpr std::size_t kMostOwnPartBytes = 64U * 1024U;
/// What is beyond is set aside.
inline constexpr std::size_t kMostOwnPartFiles = 2000;

/// Reads the library's own parts. A part without measured_at, or of a sort that is not learnt, is refused:
/// nothing would tell which of two holds.
[[nodiscard]] OwnParts load_own_parts(const std::string& library, const Parts& shipped);

/// Writes what was learnt as a new file; on the disk when this returns. Gives the file's name.
[[nodiscard]] Outcome<std::string> keep_learnt(const std::string& library, const Learnt& learnt);

/// From now on the part is as it was shipped: all readings of it up to `at` no longer count.
[[nodiscard]] Outcome<Done> forget_part(const std::string& library, PartSort sort, const std::string& id,
                                        const std::string& at);

/// The parts of `known` that a maker measured and this card uses, laid over the card's own: what the card
/// must carry so that it is the same card elsewhere.
[[nodiscard]] Parts carried_by(const Card& card, const Parts& known);

} // namespace lanternleaf
