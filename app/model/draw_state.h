// DrawState: the plan on the drawing table: its history, what is shown of it, the tool in hand and what that
// tool is in the middle of. Plain data; only update_draw*.cpp change it.
#pragma once

#include "drawing/fixes.h"
#include "drawing/history.h"
#include "drawing/snap.h"
#include "findings/review.h"
#include "routing/route.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

enum class DrawTool { select, strip_plus, strip_minus, light, patch, holder, foam };

/// What lies under a finger.
struct DrawHit {
    std::string id;  ///< of a part, patch or strip, or kHolderId; empty for bare paper
    int corner = -1; ///< of the selected strip
    int run = -1;    ///< of a strip

    [[nodiscard]] bool none() const { return id.empty(); }
};

/// A drag under way.
struct DrawDrag {
    DrawHit hit;
    Vec2 from_mm;
    Vec2 was_mm;              ///< where the part or corner was
    std::optional<Edit> edit; ///< what letting go would do
};

/// The strip that is being laid.
struct Laying {
    std::optional<Vec2> start; ///< first place tapped; no strip yet
    std::string strip;         ///< the strip that grows
    int end = 1;               ///< at which end
    std::optional<Snap> aim;   ///< where the finger is
    bool fresh = false;        ///< the drag at hand set the start

    [[nodiscard]] bool under_way() const { return start.has_value() || !strip.empty(); }
};

/// Traces being looked for, a piece a frame.
struct TraceSearch {
    std::shared_ptr<RouteSearch> work; ///< none: nothing is looked for
    double began_s = 0.0;              ///< on the steady clock
};

struct DrawState {
    explicit DrawState(Card first) : history(std::move(first)) {}

    History history;
    Parts parts;                         ///< shipped, with the card's own laid over
    Words words = english();             ///< what findings, fixes and the names of edits are told in
    Card card;                           ///< as shown: the history's, or with the drag at hand done
    Review review;                       ///< of `card`
    std::vector<std::vector<Fix>> fixes; ///< one list per finding; empty while a finger drags

    std::string path;        ///< file it is saved in; for a card that came with the app, its own until edited
    std::string card_folder; ///< where its picture is
    bool ours = false;       ///< the file lies in the library
    std::string written;     ///< the file's text as last read or written by us
    bool saved = true;
    std::int64_t saved_at_s = 0; ///< UTC; 0: not saved since it was opened
    std::string trouble;         ///< why it is not saved

    DrawTool tool = DrawTool::select;
    std::string tape;
    std::string led_type;
    double led_turn_deg = 270.0;
    double ohm = 0.0; ///< above 0: the Light tool places resistors of this value

    std::string selected; ///< id, or kHolderId; "foam" for the foam; empty for none
    Vec2 selected_at_mm;  ///< where it was tapped
    int corner = -1;      ///< of the selected strip
    Laying laying;
    std::optional<DrawDrag> drag;
    int shown_finding = -1;
    std::optional<std::string> title; ///< while it is typed
    TraceSearch search;
    std::optional<RouteResult> suggested; ///< traces that were found and are being looked at
    int suggestion = 0;
    bool lights = true; ///< layers: predicted light, number badges
    bool notes = true;
};

/// The sheet laid under paper on a lit screen.
struct LightBox {
    bool open = false;
    bool calibrating = false;
    bool locked = false;
    double draft_px_per_mm = 0.0; ///< while calibrating
    Card card;
    Parts parts;
    Vec2 look_at_mm; ///< what of a sheet larger than the screen lies in its middle
};

} // namespace lanternleaf
