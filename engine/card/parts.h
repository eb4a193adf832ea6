// Parts: what is known of LEDs, cells, tapes and holders, each with the source of its figures.
// A card may carry parts of its own, which win over the shipped ones (see Parts::merged).
#pragma once

#include "geometry/vec2.h"

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace lanternleaf {

struct PadShape {
    std::string name; ///< "-" or "+" on LEDs and holders, "1" or "2" on resistors
    Vec2 at_mm;       ///< centre, relative to the part's centre before turning
    Vec2 size_mm;
    std::string extras{}; ///< unknown keys, as JSON text
    friend bool operator==(const PadShape&, const PadShape&) = default;
};

struct Package {
    Vec2 body_mm;
    std::vector<PadShape> pads;
    double pad_ohm_mm2 = 0.0; ///< resistance of a pad on tape x overlap area
    std::string extras;       ///< unknown keys, as JSON text
    friend bool operator==(const Package&, const Package&) = default;
};

/// The forward voltages a maker lets one type have, at one current.
struct ForwardSpread {
    double at_mA = 0.0;
    double least_V = 0.0;
    double typical_V = 0.0;
    double most_V = 0.0;
    std::string extras{};
    friend bool operator==(const ForwardSpread&, const ForwardSpread&) = default;
};

/// One colour of a self-cycling LED: the chip that is on, its driver's resistance included in series_ohm.
struct LedPhase {
    std::string colour;
    double saturation_A = 0.0;
    double ideality = 1.0;
    double series_ohm = 0.0;
    double dominant_nm = 0.0;
    std::vector<std::pair<double, double>> mcd; ///< as LedType::mcd
    std::string extras{};
    friend bool operator==(const LedPhase&, const LedPhase&) = default;
};

/// What the mark on a bag's LEDs stands for, as a touch test showed: makers do not agree, so nothing here
/// takes it for granted.
struct LedMark {
    bool negative = true; ///< the marked side is the cathode; else the anode
    std::string looks;    ///< "green line", "notch", "long leg"
    std::string extras{};
    friend bool operator==(const LedMark&, const LedMark&) = default;
};

/// I = saturation_A (exp((V - I series_ohm) / (ideality Vt)) - 1), Vt = kT/q at 25 C.
struct LedType {
    std::string package;
    std::string colour;
    double saturation_A = 0.0;
    double ideality = 1.0;
    double series_ohm = 0.0;
    double max_mA = 0.0;
    double max_reverse_V = 0.0;
    double dominant_nm = 0.0;
    std::vector<std::pair<double, double>> mcd; ///< (mA, millicandela), rising current
    std::optional<ForwardSpread> forward;       ///< what the file knows of the spread among parts
    double forward_mV_per_K = 0.0;              ///< change of forward voltage with temperature; 0: not given
    std::vector<LedPhase> phases;               ///< of a self-cycling LED, else empty
    double driver_least_V = 0.0;                ///< of a self-cycling LED: below this its driver stops
    std::optional<LedMark> mark;                ///< learnt by a touch test; else not known
    std::string measured_at;                    ///< when the maker measured it, UTC; empty: not measured here
    std::string source;
    std::string extras;
    friend bool operator==(const LedType&, const LedType&) = default;
};

struct CellType {
    double diameter_mm = 0.0;
    double height_mm = 0.0;
    double open_V = 0.0;     ///< fresh, unloaded
    double series_ohm = 0.0; ///< fresh, within seconds of a press
    double capacity_mAh = 0.0;
    double max_continuous_mA = 0.0;
    /// What it stands for about 15 seconds (a press); 0 when the file does not say, and then a press is
    /// judged by max_continuous_mA too.
    double max_pulse_mA = 0.0;
    /// The resistance that develops when a light is left on for hours; 0 when the file does not say, and then
    /// series_ohm stands for it.
    double steady_ohm = 0.0;
    std::string curve;
    std::string source;
    std::string extras;
    friend bool operator==(const CellType&, const CellType&) = default;
};

enum class Adhesive { conductive, non_conductive };

struct TapeType {
    double width_mm = 0.0;
    double ohm_per_square = 0.0;
    Adhesive adhesive = Adhesive::conductive;
    double joint_ohm_mm2 = 0.0; ///< joint resistance x overlap area
    std::string measured_at;    ///< as LedType::measured_at
    std::string source;
    std::string extras;
    friend bool operator==(const TapeType&, const TapeType&) = default;
};

/// Foam as a maker has it.
struct FoamType {
    double thickness_mm = 0.0; ///< of one layer, nothing pressing on it
    double squeezed_mm = 0.0;  ///< of one layer, pressed down hard; 0 when not measured
    std::string measured_at;   ///< as LedType::measured_at
    std::string source;
    std::string extras;
    friend bool operator==(const FoamType&, const FoamType&) = default;
};

enum class HolderKind { flap, pads };
/// How the cell's compartment is opened: by fingers, or only with a tool.
enum class Closure { finger, tool };

struct HolderType {
    HolderKind kind = HolderKind::flap;
    double cell_diameter_mm = 0.0;
    // flap
    double bed_radius_mm = 0.0;
    double flap_offset_mm = 0.0;
    double flap_radius_mm = 0.0;
    double paper_mm = 0.0;
    double travel_mm = 0.0;
    // pads
    std::vector<PadShape> pads;
    Vec2 body_mm; ///< outline of a ready-made holder; {0,0} when the file does not say
    double contact_ohm = 0.0;
    Closure closure = Closure::finger;
    std::string source;
    std::string extras;
    friend bool operator==(const HolderType&, const HolderType&) = default;
};

struct Parts {
    std::map<std::string, Package> packages;
    std::map<std::string, LedType> leds;
    std::map<std::string, CellType> cells;
    std::map<std::string, TapeType> tapes;
    std::map<std::string, HolderType> holders;
    std::map<std::string, FoamType> foams;
    std::optional<Package> resistor;
    std::string resistor_extras{}; ///< unknown keys beside the resistor's package
    std::string extras;
    friend bool operator==(const Parts&, const Parts&) = default;

    [[nodiscard]] bool empty() const;
};

/// `own` laid over `shipped`: an id in both is taken from `own`; of two that a maker measured, the one
/// measured later.
[[nodiscard]] Parts merged(const Parts& shipped, const Parts& own);

} // namespace lanternleaf
