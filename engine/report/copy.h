// Copy: everything about one build as files that need no program of ours: page, printed sheet, table, record,
// journal, card, photos. The one list that the app and the command line write.
#pragma once

#include "base/outcome.h"
#include "history/story.h"
#include "report/zip.h"
#include "sheets/lettering.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// What goes in besides the record itself. Photos are those whose files are there, by the names the record
/// has for them.
struct CopyWish {
    std::string journal; ///< its text, as it stands on the disk; empty: written anew from the events
    std::vector<CopiedFile> photos;
    PrintFonts fonts;
};

/// record.html, record.pdf, readings.csv, record.json, build.jsonl, NAME.card.json (as planned),
/// NAME-as-built.card.json when that differs, photos/. A photo of the record that is not among the wish's is
/// left out of the page and named in its notes. `parts` are the shipped ones.
/// Page and sheet speak `words`; the table and what programs read stay English.
[[nodiscard]] Outcome<std::vector<CopiedFile>> copy_of(const Record& record, const std::vector<Event>& events,
                                                       const Parts& parts, const std::string& card_name,
                                                       const CopyWish& wish, const Words& words = english());

/// Writes them into a new folder, which must not be there yet (its parent must). On a Problem what was
/// written so far is taken away again.
[[nodiscard]] Outcome<Done> write_copy(const std::string& folder, const std::vector<CopiedFile>& files);

} // namespace lanternleaf
