// Every tolerance and limit of the engine on one page, each with its unit and its reason, so that two rules
// never disagree about what "touching" means.
#pragma once

namespace lanternleaf::tolerance {

/// Two points of a strip closer than this along its length are one node: far below what a hand can lay.
inline constexpr double kSamePlace_mm = 0.01;
/// Overlaps smaller than this are rounding of shared edges, not contact (a 0.1 x 0.1 mm square).
inline constexpr double kTouch_mm2 = 0.01;
/// A strip meets a holder disc from this area on (format: "overlaps a disc by 20 mm2 or more").
inline constexpr double kDiscContact_mm2 = 20.0;
/// The least gap between opposite sides (format: clearance rule; common practice 3 mm, 2 mm minimum).
inline constexpr double kClearance_mm = 2.0;
/// What a patch must have to spare round a crossing (format: patch-small rule).
inline constexpr double kPatchSpare_mm = 2.0;
/// How far off square a strip may cross a crease; a hand-laid right angle is within this (common practice).
inline constexpr double kSquareCrossing_deg = 15.0;
/// The resistance given to a path that should be a dead joint, so that matrices stay regular.
inline constexpr double kLeastResistance_ohm = 1e-6;
/// An LED is lit from here on, dim from the next one down to it (format: states).
inline constexpr double kLit_mA = 1.0;
inline constexpr double kDim_mA = 0.05;
/// One light is "plainly dimmer" below this ratio of luminous intensity: one brightness bin of the LED
/// makers, who sort by factors of 1.58 to 1.6 (Lite-On LTST-C170 and OSRAM LG R971 data sheets).
inline constexpr double kPlainlyDimmer = 0.63;

} // namespace lanternleaf::tolerance
