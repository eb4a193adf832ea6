// Log commands: everything a person can mean in the Log place.
#pragma once

#include <string>
#include <variant>

namespace lanternleaf::logbook {

/// The particulars of one step: moves with their times, readings, changes.
struct ShowStep {
    int step = 1;
};

struct BeginNote {};

/// What the note's field shows now.
struct TypeNote {
    std::string text;
};

/// The note goes into the journal.
struct KeepNote {};

/// The card as built becomes a new card on the shelf.
struct UseAsPlan {};

/// The record as files: a folder of the library, and one file to hand on.
struct SaveCopy {};

/// Another build of the same card beside this one; empty: back to the record.
struct Compare {
    std::string journal;
};

/// Some more journals for the figures.
struct CountOn {};

struct TypeCaption {
    std::string text;
};

/// The picture that came in goes into the build's folder and its journal.
struct KeepPhoto {};

struct DropPhoto {};

struct ShowPhoto {
    int index = 0;
};

struct RemovePhoto {
    int index = 0;
};

} // namespace lanternleaf::logbook

namespace lanternleaf {

using LogCommand = std::variant<logbook::ShowStep, logbook::BeginNote, logbook::TypeNote, logbook::KeepNote,
                                logbook::UseAsPlan, logbook::SaveCopy, logbook::Compare, logbook::CountOn,
                                logbook::TypeCaption, logbook::KeepPhoto, logbook::DropPhoto,
                                logbook::ShowPhoto, logbook::RemovePhoto>;

} // namespace lanternleaf
