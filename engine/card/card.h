// Card: the plan of one light-up card, as a plain value. It says where things lie and what the maker means by
// them; what really touches what is found from the shapes (conductors/), never from the names here.
// Millimetres from the sheet's top-left corner, x right, y down, angles clockwise from +x.
#pragma once

#include "card/parts.h"
#include "geometry/vec2.h"

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace lanternleaf {

/// Keys of a file object that this version does not know, kept as JSON text so that a load and save loses
/// nothing. Empty when there were none.
struct Extras {
    std::string json;
    friend bool operator==(const Extras&, const Extras&) = default;
};

/// What the maker means a strip to be. `link` joins parts in series.
enum class Side { negative, positive, link };

/// Who will have the card. Decides which holders are acceptable; unknown counts as small_children.
enum class Audience { adults, children, small_children, school_class, sale };

enum class EndStyle { plain, folded };

/// The cell face that touches the holder's bed.
enum class CellFace { negative, positive };

struct FoldLine {
    Vec2 from_mm;
    Vec2 to_mm;
    Extras extras;
    friend bool operator==(const FoldLine&, const FoldLine&) = default;
};

struct Keepout {
    std::string why;
    std::vector<Vec2> outline_mm; ///< at least three corners
    Extras extras;
    friend bool operator==(const Keepout&, const Keepout&) = default;
};

/// A picture shown under the plan. `file` is a plain name beside the card file, never a path elsewhere.
struct Art {
    std::string file;
    Vec2 at_mm;
    double width_mm = 0.0;
    Extras extras;
    friend bool operator==(const Art&, const Art&) = default;
};

struct Sheet {
    double width_mm = 0.0;
    double height_mm = 0.0;
    std::vector<FoldLine> folds;
    std::vector<Keepout> keepouts;
    std::optional<Art> art;
    Extras extras;
    friend bool operator==(const Sheet&, const Sheet&) = default;
};

struct CellChoice {
    std::string type;
    int count = 1; ///< stacked in series
    CellFace face_down = CellFace::negative;
    Extras extras;
    friend bool operator==(const CellChoice&, const CellChoice&) = default;
};

struct HolderChoice {
    std::string type;
    Vec2 at_mm;
    double turn_deg = 0.0; ///< towards the open flap, or from pad - to pad +
    Extras extras;
    friend bool operator==(const HolderChoice&, const HolderChoice&) = default;
};

struct Led {
    std::string id;
    std::string type;
    Vec2 at_mm;
    double turn_deg = 0.0; ///< from cathode (-) to anode (+)
    Extras extras;
    friend bool operator==(const Led&, const Led&) = default;
};

struct ResistorPart {
    std::string id;
    double ohm = 0.0;
    Vec2 at_mm;
    double turn_deg = 0.0; ///< from pad 1 to pad 2
    Extras extras;
    friend bool operator==(const ResistorPart&, const ResistorPart&) = default;
};

/// One uncut length of tape along a centre line. Every inner vertex is a fold; the metal runs through it.
struct Strip {
    std::string id;
    Side side = Side::negative;
    std::string tape;
    std::vector<Vec2> path_mm; ///< at least two points
    /// {start, end}; a folded end is turned under so that foil meets foil and conducts whatever the adhesive.
    std::array<EndStyle, 2> ends{EndStyle::plain, EndStyle::plain};
    Extras extras;
    friend bool operator==(const Strip&, const Strip&) = default;
};

/// An insulating rectangle between what lies below it and what lies above it.
struct Patch {
    std::string id;
    Vec2 at_mm;
    Vec2 size_mm;
    double turn_deg = 0.0;
    Extras extras;
    friend bool operator==(const Patch&, const Patch&) = default;
};

/// What lies on the sheet, lowest first.
using Laid = std::variant<Strip, Patch>;

enum class Edge { top, right, bottom, left };

struct Foam {
    double thickness_mm = 0.0; ///< of one layer
    int layers = 1;
    std::vector<Edge> edges;
    Extras extras;
    friend bool operator==(const Foam&, const Foam&) = default;
};

struct Card {
    std::string title;
    std::string note;
    Audience audience = Audience::small_children;
    bool audience_given = false; ///< false: the file did not say, so the careful answer was taken
    Extras audience_extras;
    Sheet sheet;
    CellChoice cell;
    HolderChoice holder;
    std::vector<Led> leds;
    std::vector<ResistorPart> resistors;
    std::vector<Laid> laid;
    std::optional<Foam> foam;
    Parts own_parts; ///< the card's own "parts", which win over the shipped ones
    Extras extras;
    friend bool operator==(const Card&, const Card&) = default;
};

[[nodiscard]] const std::string& id_of(const Laid& item);
[[nodiscard]] const Strip* find_strip(const Card& card, const std::string& id);
[[nodiscard]] const Led* find_led(const Card& card, const std::string& id);

/// Names as they stand in files.
[[nodiscard]] const char* name_of(Side side);
[[nodiscard]] const char* name_of(Audience audience);
[[nodiscard]] const char* name_of(Edge edge);
[[nodiscard]] const char* name_of(CellFace face);
[[nodiscard]] CellFace other_face(CellFace face);

} // namespace lanternleaf
