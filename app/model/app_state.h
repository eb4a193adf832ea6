// AppState: everything a screen shows and a test can look at, as plain data. Screens read it and hand back
// commands; update() is the one place that changes it. What is worth keeping lives in journals and settings
// on disk, never here alone.
#pragma once

#include "desk/desk.h"
#include "findings/review.h"
#include "guide/offers.h"
#include "guide/sequence.h"
#include "history/lessons.h"
#include "model/batch_state.h"
#include "model/draw_state.h"
#include "model/learn_state.h"
#include "model/light_sheet.h"
#include "model/log_state.h"
#include "model/mend_state.h"
#include "record/journal.h"
#include "record/record.h"
#include "safety/audience.h"
#include "safety/regions.h"
#include "sheets/printout.h"
#include "words/words.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

enum class Place { shelf, draw, make, mend, log };

/// What lies over a place. One at a time.
enum class SheetKind {
    none,
    places,     ///< the five places (portrait and phone)
    audience,   ///< who will have this card?
    keypad,     ///< a reading
    no_meter,   ///< what to look for instead
    differs,    ///< Mine is different
    wrong,      ///< Something is wrong
    regardless, ///< go on although the step is not proved
    steps,      ///< the seven steps with their state
    why,        ///< the reason behind a move (phone)
    build_menu, ///< put away an unfinished build
    settings,
    mend_meter,    ///< what the meter shows in a test of Mend
    print,         ///< which sheets to print of the plan
    draw_card,     ///< what the whole card has: title, sheet, creases, who it is for
    draw_tape,     ///< which tape the next strip is of
    draw_light,    ///< which light the next tap places
    draw_audience, ///< who will have the card
    draw_new,      ///< how large the new card's sheet is
    log_step,      ///< the particulars of one step of a record
    log_note,      ///< a note for the record
    log_compare,   ///< which build to set beside this one
    log_photo,     ///< a photo, large
    learn,         ///< a test of a part, and what was learnt so far
    log_new_photo, ///< the caption of a picture that came in
    batch_card,    ///< which card to make several of
    batch_new,     ///< how many, and for whom
    batch_cells,   ///< cells out of the adult's tray and back
    batch_name,    ///< a nickname
    batch_builder, ///< one builder of the board
    batch_take,    ///< what to take along
    batch_close,   ///< whether the cells match
};

/// What the Make place shows.
enum class MakeFace { move, proof, verdict };

/// The full-screen coin-cell notice. `asking`: before the cell goes in, an adult holds to confirm; else to
/// read.
enum class Notice { none, reading, asking };

struct Settings {
    bool night = false;
    bool reduced_motion = false;
    bool left_handed = false;
    bool kids = false;       ///< a child is at the table: large targets, picture first, adult's moves held
    double text_scale = 1.0; ///< 0.85 .. 2.0
    double px_per_mm = 0.0;  ///< device pixels per millimetre of glass, measured with a bank card; 0: not yet
    std::string region = "any";
    std::string language = "en"; ///< a file of assets/words
    bool inches = false;         ///< lengths are shown in inches; cards are kept in millimetres
    friend bool operator==(const Settings&, const Settings&) = default;
};

/// One card as the shelf shows it.
struct ShelfCard {
    std::string path;
    std::string name; ///< file name without its ending
    std::string title;
    int lights = 0;
    int problems = 0;
    int times_built = 0;
    std::string picture; ///< path of its front picture, may be empty
    std::string trouble; ///< why it cannot be opened; empty when it can
};

/// One build as the shelf and the log show it.
struct ShelfBuild {
    std::string path; ///< journal
    std::string id;
    std::string title;
    std::string card_name; ///< the card it makes
    int number = 1;        ///< which making of that card, by start time
    int step = 1;
    bool finished = false;
    std::int64_t started_s = 0;
    std::int64_t last_s = 0;
    std::string picture;
    std::string card_folder;    ///< where the card's art is
    std::string trouble;        ///< why it is set aside; empty when it can be opened
    std::string batch;          ///< the batch it belongs to; empty: none
    std::string maker;          ///< nickname; empty: not told
    std::int64_t stopped_s = 0; ///< since when its open step is stopped; 0: it is not
    int stops = 0;              ///< how often a step was stopped
};

/// The build on the table: its record and what the engine derives from it.
struct OpenBuild {
    ShelfBuild shelf;
    Parts parts; ///< shipped, with the card's own laid over
    Words words = english();
    Record record;
    std::vector<Event> events;       ///< as in the journal, for undo and the log
    std::vector<Step> steps;         ///< of the card as built
    std::vector<MoveLesson> lessons; ///< what earlier builds of the card teach, at this one's moves
    Review now;                      ///< the card as built, up to and with the open step
    Conductors whole;                ///< of the whole card as built, for drawing what is not laid yet
    int move = 0;                    ///< within the open step; may equal the number of moves (all done)
    MakeFace face = MakeFace::move;
    std::optional<StepVerdict> verdict;   ///< last one asked for
    bool by_list = false;                 ///< its moves are confirmed as lists (batch/confirm_list.h)
    std::shared_ptr<JournalFile> journal; ///< held while the build is on the table: it has one writer
    std::string looking_only;             ///< why nothing can be confirmed here; empty when it can
};

/// A finished file on its way to the person: the frame gives it to the host (share sheet, downloads) and says
/// where it went.
struct FileToGive {
    std::string file_name;
    std::string bytes;
    std::string mime;     ///< "application/pdf"
    std::string folder{}; ///< files with one folder are given together; empty: by itself
};

/// A reading being entered.
struct ReadingEntry {
    std::string check; ///< Check::id
    std::string text;
};

/// A change being described in "Mine is different".
struct DifferState {
    int chosen = -1; ///< index into offers
    std::vector<ChangeOffer> offers;
    Change draft;
};

/// Where the card view looks. zoom 1 = whole card.
struct BoardCamera {
    double zoom = 1.0;
    Vec2 centre_mm;
    bool mirrored = false; ///< seen from the front
    bool picture = true;
    bool positive = true;
    bool negative = true;
};

struct AppState {
    Place place = Place::shelf;
    SheetKind sheet = SheetKind::none;
    Notice notice = Notice::none;
    Settings settings;
    RegionTable regions;
    std::vector<ShelfCard> cards;
    std::vector<ShelfBuild> builds;  ///< newest first
    std::vector<ShelfBatch> batches; ///< newest first
    std::optional<BatchState> batch; ///< whose board stands in place of the shelf
    std::optional<NewBatch> new_batch;
    std::optional<OpenBuild> build;
    std::optional<DrawState> draw;   ///< the plan on the drawing table
    std::optional<LearnState> learn; ///< a test of a part, while its sheet is open
    std::optional<MendState> mend;   ///< the search for a fault on `build`
    LightBox light_box;
    std::optional<LightSheet> light; ///< the Light sheet, over any place
    std::string starting;            ///< card path while the audience is being asked
    AudienceAdvice advice;
    Audience asked = Audience::small_children;
    bool audience_answered = false;
    ReadingEntry entry;
    DifferState differs;
    std::vector<LightExpectation> seen; ///< the lights as tapped in the light-up test
    std::optional<Record> log;          ///< the record open in Log
    ShelfBuild log_shelf;
    LogState log_page; ///< what Log shows of it
    BoardCamera camera;
    PrintoutWish print;              ///< as last asked for
    std::vector<FileToGive> to_give; ///< emptied by the frame in which they were made
    std::string said;                ///< one sentence for the maker, shown once by the frame
    double scroll = 0.0;
    std::string menu_build; ///< build whose menu is open
};

} // namespace lanternleaf
