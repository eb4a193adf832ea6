#include "view/mend_meter_view.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// What a fresh cell of this kind reads alone, and the least that still counts as fresh (common practice).
constexpr double kFreshest_V = 3.35;
constexpr double kFresh_V = 2.9;

void set_range(MendMeterView& view, double low, double high, const Words& words) {
    view.low = low;
    view.high = high;
    view.full = std::max(high * 2.0 + 0.4, 1.0);
    view.low_text = words.number(low, 1);
    view.high_text = words.number(high, 1);
    view.expect = view.low_text + "–" + view.high_text + " " + view.unit;
}

} // namespace

MendMeterView mend_meter_view(const MendModel& model, const MendTest& test, const Words& words) {
    MendMeterView view;
    if (!reads_volts(test.kind) && !reads_ohms(test.kind)) {
        return view;
    }
    view.title = test.title;
    view.volts = reads_volts(test.kind);
    view.unit = view.volts ? "V" : "Ω";
    if (test.kind == TestKind::meter_cell) {
        const double count = std::max(1, model.card.cell.count);
        set_range(view, kFresh_V * count, kFreshest_V * count, words);
    } else if (view.volts) {
        const double volts =
            static_cast<double>(model.as_built.node_V[static_cast<std::size_t>(test.from_node)] -
                                model.as_built.node_V[static_cast<std::size_t>(test.to_node)]);
        // The span within which class_of_volts still calls a reading fine.
        set_range(view, std::max(0.0, 0.9 * std::fabs(volts) - 0.12), 1.05 * std::fabs(volts) + 0.1, words);
    } else {
        const double ohm = model.ohms.between(test.from_node, test.to_node);
        if (ohm < kNoPath_ohm) {
            set_range(view, std::floor(ohm * 10.0) / 10.0, 4.0 * ohm + 0.5, words);
        } else {
            view.expect = "OL";
            view.full = 10.0;
        }
    }
    return view;
}

} // namespace lanternleaf
