#include "life/cell_tables.h"

namespace lanternleaf::cell_tables {

namespace {

// FDK, -20 C: mAh and V.
constexpr std::array<Point, 11> kFdkCold = {{{1.3, 2.800},
                                             {18.1, 2.682},
                                             {53.6, 2.650},
                                             {106.8, 2.650},
                                             {124.3, 2.640},
                                             {141.9, 2.624},
                                             {159.2, 2.577},
                                             {176.2, 2.505},
                                             {182.1, 2.467},
                                             {187.5, 2.339},
                                             {188.7, 2.000}}};

// FDK, 0 C: mAh and V.
constexpr std::array<Point, 11> kFdkFreezing = {{{1.5, 2.882},
                                                 {20.5, 2.837},
                                                 {56.9, 2.852},
                                                 {114, 2.844},
                                                 {132.8, 2.831},
                                                 {151.6, 2.804},
                                                 {170.2, 2.769},
                                                 {188.5, 2.706},
                                                 {206.1, 2.596},
                                                 {217.8, 2.373},
                                                 {223.4, 2.000}}};

// FDK, 23 C: mAh and V.
constexpr std::array<Point, 11> kFdkRoom = {{{0.9, 2.987},
                                             {15.7, 2.934},
                                             {67.6, 2.955},
                                             {114.7, 2.949},
                                             {138.3, 2.931},
                                             {161.5, 2.891},
                                             {182.4, 2.831},
                                             {217, 2.699},
                                             {229.6, 2.599},
                                             {238.3, 2.291},
                                             {239.7, 1.954}}};

// FDK, 70 C: mAh and V.
constexpr std::array<Point, 11> kFdkHot = {{{0.9, 3.097},
                                            {16.3, 3.060},
                                            {65.5, 3.073},
                                            {118, 3.028},
                                            {130.4, 2.991},
                                            {154.1, 2.941},
                                            {191, 2.891},
                                            {217, 2.790},
                                            {229.3, 2.529},
                                            {239.5, 2.097},
                                            {240.9, 1.978}}};

// Panasonic, -10 C: mAh and V. The chart is against hours; mAh is the integral of V / 15 kohm. Last row:
// the curve carried on from 2.17 V at 1100 h to 2.0 V.
constexpr std::array<Point, 14> kPanasonicCold = {{{1, 2.900},
                                                   {19.3, 2.892},
                                                   {38.6, 2.882},
                                                   {57.7, 2.872},
                                                   {76.8, 2.861},
                                                   {95.9, 2.850},
                                                   {114.8, 2.838},
                                                   {133.7, 2.824},
                                                   {152.5, 2.803},
                                                   {171, 2.747},
                                                   {188.8, 2.589},
                                                   {197.1, 2.438},
                                                   {204.8, 2.170},
                                                   {207, 2.000}}};

// Panasonic, 20 C: mAh and V. The chart is against hours; mAh is the integral of V / 15 kohm. Last row:
// the curve carried on from 2.193 V at 1140 h to 2.0 V.
constexpr std::array<Point, 16> kPanasonicRoom = {{{1, 2.976},
                                                   {19.8, 2.968},
                                                   {39.6, 2.959},
                                                   {59.3, 2.951},
                                                   {78.9, 2.942},
                                                   {98.5, 2.933},
                                                   {118, 2.924},
                                                   {137.5, 2.911},
                                                   {156.8, 2.874},
                                                   {175.8, 2.830},
                                                   {194.3, 2.733},
                                                   {203.3, 2.663},
                                                   {212, 2.536},
                                                   {216.1, 2.398},
                                                   {218.4, 2.193},
                                                   {219.5, 2.000}}};

// Panasonic, 60 C: mAh and V. The chart is against hours; mAh is the integral of V / 15 kohm. Last row:
// the curve carried on from 2.385 V at 1125 h to 2.0 V.
constexpr std::array<Point, 15> kPanasonicHot = {{{1, 3.068},
                                                  {20.4, 3.045},
                                                  {40.7, 3.039},
                                                  {60.9, 3.026},
                                                  {81, 3.010},
                                                  {101, 2.993},
                                                  {120.9, 2.975},
                                                  {140.7, 2.952},
                                                  {160.2, 2.917},
                                                  {179.5, 2.871},
                                                  {198.4, 2.790},
                                                  {207.6, 2.720},
                                                  {216.4, 2.575},
                                                  {220.5, 2.385},
                                                  {224.2, 2.000}}};

// Load in ohm and capacity in mAh to 2.0 V.
constexpr std::array<Point, 4> kFdkRoomLoads = {{{1000, 204.9}, {1400, 215.1}, {2700, 232.1}, {3900, 234.8}}};
constexpr std::array<Point, 5> kPanasonicColdLoads = {
    {{1000, 118.6}, {1500, 136.5}, {2000, 147.9}, {3000, 161.2}, {5000, 174.4}}};
constexpr std::array<Point, 5> kPanasonicRoomLoads = {
    {{1000, 163.5}, {1500, 176.6}, {2000, 184.5}, {3000, 193.7}, {5000, 202.8}}};
constexpr std::array<Point, 5> kPanasonicHotLoads = {
    {{1000, 181.1}, {1500, 190.1}, {2000, 196.1}, {3000, 203.6}, {5000, 211.4}}};

constexpr std::array<Discharge, 4> kFdk = {{{-20, kFdkCold, 189.0, {}, 0},
                                            {0, kFdkFreezing, 235.9, {}, 0},
                                            {23, kFdkRoom, 239.9, kFdkRoomLoads, 0},
                                            {70, kFdkHot, 240.9, {}, 0}}};

// half_ohm: V = 2.975 V - 113 ohm I at 20 C for 0.03-2.6 mA (rms 6 mV); 3.033 V - 74 ohm I at 60 C; 2.879 V -
// 233 ohm I at -10 C; fitted to the chart "voltage at 50 % discharge depth against load".
constexpr std::array<Discharge, 3> kPanasonic = {{{-10, kPanasonicCold, 200.5, kPanasonicColdLoads, 233},
                                                  {20, kPanasonicRoom, 214.9, kPanasonicRoomLoads, 113},
                                                  {60, kPanasonicHot, 220.4, kPanasonicHotLoads, 74}}};

constexpr std::array<Maker, 2> kMakers = {{{"FDK 2010", 23, kFdk}, {"Panasonic 2005", 20, kPanasonic}}};

constexpr std::array<Point, 6> kIdle = {
    {{0, 3.000}, {114.6, 3.000}, {211.7, 2.919}, {234.0, 2.650}, {239.0, 2.350}, {240.1, 2.000}}};

// 2.953 / 2.839 / 2.626 V at 10 mA and 2.382 / 2.034 / 1.704 V at 50 mA.
constexpr std::array<Pulse, 3> kPulses = {{{0, 3.096, 14.3}, {80, 3.040, 20.1}, {160, 2.857, 23.1}}};

} // namespace

std::span<const Maker> makers() {
    return kMakers;
}

std::span<const Point> idle() {
    return kIdle;
}

std::span<const Pulse> pulses() {
    return kPulses;
}

} // namespace lanternleaf::cell_tables
