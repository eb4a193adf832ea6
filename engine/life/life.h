// Life: how a card's lights fade, pressed again and again or left on: the answer to "how long will it last?".
// Exists as a range, since two makers' cells under one code last differently, and LEDs sold under one name
// differ too. Prepared once for a card, then asked for any moment: what the slider of the preview does.
//
//   Card + Parts + Conductors -> live -> Life { lines, runs } -> moment_at(run, hours) -> LifeMoment
#pragma once

#include "conductors/conductors.h"
#include "life/discharge.h"
#include "life/fading.h"
#include "life/load_line.h"

#include <array>
#include <optional>
#include <vector>

namespace lanternleaf {

struct LifeOptions {
    double celsius = 23.0;     ///< of the cell and the LEDs
    double press_s = 5.0;      ///< how long one press is taken to be
    double stored_years = 0.0; ///< on the shelf before the first light
    double most_h = 3000.0;    ///< of light, looked at
    bool with_band = true;     ///< also the least and the most forward voltages
    bool with_phases = true;   ///< also each colour of self-cycling LEDs
};

/// Three moments in the fading of one light, in hours of light; infinity when it does not come within the
/// run, 0 when it was so from the start. Each is the last time the light was brighter.
///
/// "Reference" is the light of a fresh cell in the first seconds of a press, but at least that of 1 mA, so
/// that a light that starts dim counts as dim.
enum class Mark {
    /// Seen beside a fresh card it looks dimmer: 0.63 of the reference's intensity, one brightness bin of the
    /// LED makers (base/tolerance.h).
    dimmer,
    /// Plainly dim: it looks half as bright as the reference. By Stevens' law with the exponent 0.33 (B.
    /// Bauer,
    /// Psychological Record 59 (2009) 171-185) that is 0.122 of the intensity.
    plainly_dim,
    /// Dark: less than 0.05 mA, as the card's states have it.
    dark
};

inline constexpr int kMarks = 3;
using MarkHours = std::array<double, kMarks>; ///< by Mark

/// What is known of one LED for all moments.
struct LightScale {
    double full_mcd = 0.0;                ///< at 5 mA: brightness 1
    double fresh_mcd = 0.0;               ///< fresh cell, first seconds
    std::array<double, kMarks> mark_mA{}; ///< below this current the mark has come
};

/// One way the card can live.
struct LifeRun {
    int maker = 0; ///< whose cell, see cell_maker_name
    Use use = Use::left_on;
    int line = 0; ///< index into Life::lines; its condition tells spread and phase
    CellModel cell;
    Discharge discharge;
    std::vector<MarkHours> marks; ///< one per Card::leds
};

struct ReversedLight {
    int led = 0;
    double volts = 0.0; ///< how much stands against it, on a fresh cell, above zero
    double max_V = 0.0; ///< what its maker allows; beyond it the LED may be damaged

    [[nodiscard]] bool beyond() const { return volts > max_V; }
};

struct Life {
    LifeOptions options;
    bool shorted = false;     ///< the cell's faces are joined by metal: no runs
    bool solved = true;       ///< false when a solve failed: figures not to be relied on
    bool estimate = false;    ///< the cell is scaled from the CR2032
    double stored_loss = 0.0; ///< share of the charge lost on the shelf, typical
    int phases = 0;           ///< colours of self-cycling LEDs
    std::vector<LoadLine> lines;
    std::vector<std::vector<LightScale>> scales; ///< per line, per LED
    std::vector<LifeRun> runs; ///< typical LEDs first: maker 0 pressed, maker 0 left on, maker 1 ...
    std::vector<ReversedLight> reversed;
    double brightest_mcd = 0.0; ///< of the typical lights on a fresh cell: 100 % of a plot

    /// The runs a plot shows: typical LEDs, main phase.
    [[nodiscard]] const LifeRun& typical(Use use, int maker) const;
};

[[nodiscard]] Life live(const Card& card, const Parts& parts, const Conductors& conductors,
                        const LifeOptions& options = {});

/// One light at one moment.
struct LightMoment {
    double mA = 0.0;
    double mcd = 0.0;
    double brightness = 0.0; ///< intensity against the same LED's at 5 mA, as `check` gives it
    double seen = 0.0;       ///< as the eye takes it, 0..1 of the card's brightest light on a fresh cell
};

struct LifeMoment {
    double hours = 0.0;
    double drawn_mAh = 0.0;
    double depth = 0.0; ///< 0 fresh, 1 empty
    double cell_V = 0.0;
    double cell_mA = 0.0;
    std::vector<LightMoment> lights; ///< one per Card::leds
};

/// Writes into `out`, whose vector is reused: no allocation when called again. Needs the parts it was made
/// with.
void moment_at(const Life& life, const LifeRun& run, const Card& card, const Parts& parts, double hours,
               LifeMoment& out);

/// Lowest and highest over several runs.
struct HourRange {
    double low_h = 0.0;
    double high_h = 0.0;
};

/// Which runs a range is over.
struct RunChoice {
    Use use = Use::left_on;
    bool whole_band = false;  ///< false: typical LEDs; true: least and most forward voltage too
    std::optional<int> phase; ///< not set: the main entry; else that phase
};

/// Of one LED; `led` -1: of whichever LED comes to it first, those left out that are dark from the start.
[[nodiscard]] HourRange range_of(const Life& life, const RunChoice& choice, Mark mark, int led = -1);
/// LEDs that give no light even on a fresh cell.
[[nodiscard]] std::vector<int> dark_from_start(const Life& life);
[[nodiscard]] double presses_of(const LifeOptions& options, double hours);
/// Stevens' law: how bright, against something of intensity 1.
[[nodiscard]] double seen_ratio(double intensity_ratio);

} // namespace lanternleaf
