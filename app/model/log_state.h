// Log state: what the Log place shows of the record that is open, told once and not again in every frame.
#pragma once

#include "history/compare.h"
#include "history/figures.h"
#include "history/story.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

/// A photo of the record and whether its file is there.
struct LogPhoto {
    std::string file; ///< as in the journal
    std::string path;
    std::string caption;
    bool there = false;
};

/// A picture that came in and waits for its caption; nothing of it is kept before that.
struct NewPhoto {
    std::string jpeg; ///< our own encoding of it: nothing of the file that came in but its pixels
    int w = 0;
    int h = 0;
    std::string caption;
};

/// Another build beside the one that is open.
struct LogCompare {
    std::string journal; ///< the other build's
    std::string title;   ///< "Harbour lighthouse"
    std::string left;    ///< "Build 3", the one that is open
    std::string right;
    Comparison rows;
};

/// Few words on each build of the card, as far as they have been read.
struct BuildDigest {
    std::string journal;
    std::string time;      ///< "1 h 04"
    std::string outcome;   ///< "7 of 7 lit"
    std::string put_right; ///< empty: nothing was
};

/// The figures over the library, counted some builds a frame.
struct FiguresRun {
    FigureCount count;
    std::vector<std::string> journals; ///< all that are to be read, newest first
    std::size_t taken = 0;
    int unreadable = 0;
    std::vector<BuildDigest> digests; ///< of the builds of the card that is open
    bool begun = false;

    [[nodiscard]] bool done() const { return begun && taken >= journals.size(); }
};

struct LogState {
    std::vector<Event> events;         ///< those AppState::log is the fold of
    Story story;                       ///< the same in words
    int step = 0;                      ///< whose particulars lie open, 1..7
    std::string note;                  ///< being typed
    std::optional<LogCompare> compare; ///< shown in place of the record
    std::vector<LogPhoto> photos;
    int photo = -1; ///< the one that is seen large
    std::optional<NewPhoto> new_photo;
    FiguresRun figures;
};

/// Longest note and caption, in bytes: a few sentences, a few words.
inline constexpr std::size_t kLongestNote = 400;
inline constexpr std::size_t kLongestCaption = 60;
/// Journals read in one frame while the figures are counted.
inline constexpr std::size_t kJournalsAFrame = 8;

} // namespace lanternleaf
