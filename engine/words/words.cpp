#include "words/words.h"

#include "base/readout.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// One inch is 25.4 mm exactly (international yard and pound agreement, 1959).
constexpr double kInch_mm = 25.4;
// The finest mark of a craft ruler, and the length below which it is too coarse to work by.
constexpr int kInchParts = 32;
constexpr double kFineInch = 0.25;

std::string in_inches(double mm) {
    const double inches = mm / kInch_mm;
    if (std::abs(inches) < kFineInch) {
        return readout_number(inches, 2);
    }
    long long parts = std::llround(std::abs(inches) * kInchParts);
    const long long whole = parts / kInchParts;
    parts %= kInchParts;
    long long of = kInchParts;
    while (parts != 0 && parts % 2 == 0) {
        parts /= 2;
        of /= 2;
    }
    std::string text = inches < 0.0 ? "-" : "";
    if (whole != 0 || parts == 0) {
        text += std::to_string(whole);
    }
    if (parts != 0) {
        text += whole != 0 ? " " : "";
        text += std::to_string(parts) + "/" + std::to_string(of);
    }
    return text;
}

} // namespace

std::string Words::operator()(std::string_view key, Fills fills) const {
    const auto found = table_->find(key);
    if (found == table_->end()) {
        if (this != &english() && english().has(key)) {
            return english()(key, fills);
        }
        return "⟦" + std::string(key) + "⟧";
    }
    const Message& message = found->second;
    const auto count = std::find_if(fills.begin(), fills.end(),
                                    [](const Fill& fill) { return fill.counts && fill.name == "n"; });
    const bool one = !message.one.empty() && count != fills.end() && count->count == 1;
    const std::string& form = one ? message.one : message.other;
    std::string said;
    said.reserve(form.size() + 32);
    for (std::size_t at = 0; at < form.size();) {
        const std::size_t open = form.find('{', at);
        said.append(form, at, open - at);
        if (open == std::string::npos) {
            break;
        }
        const std::size_t close = form.find('}', open); // there: the reader saw to it
        const std::string_view name = std::string_view(form).substr(open + 1, close - open - 1);
        const auto fill =
            std::find_if(fills.begin(), fills.end(), [&](const Fill& f) { return f.name == name; });
        if (fill != fills.end()) {
            said += fill->text;
        } else {
            said.append(form, open, close + 1 - open);
        }
        at = close + 1;
    }
    return said;
}

bool Words::has(std::string_view key) const {
    return table_->find(key) != table_->end();
}

std::string Words::joined(const std::vector<std::string>& items, std::string_view last) const {
    if (items.empty()) {
        return "";
    }
    std::string said = items.front();
    for (std::size_t i = 1; i < items.size(); ++i) {
        said = (*this)(i + 1 == items.size() ? last : "list.more", {{"before", said}, {"item", items[i]}});
    }
    return said;
}

std::string Words::list(const std::vector<std::string>& items) const {
    return joined(items, "list.and");
}

std::string Words::either(const std::vector<std::string>& items) const {
    return joined(items, "list.or");
}

std::string Words::localised(std::string figure) const {
    const std::size_t point = figure.find('.');
    if (point != std::string::npos && decimal_ != ".") {
        figure.replace(point, 1, decimal_);
        // A range has two figures.
        const std::size_t second = figure.find('.', point + decimal_.size());
        if (second != std::string::npos) {
            figure.replace(second, 1, decimal_);
        }
    }
    return figure;
}

std::string Words::mm(double mm) const {
    return localised(unit_ == LengthUnit::mm ? readout_mm(mm) : in_inches(mm) + " in");
}

std::string Words::ohm(double ohm) const {
    return localised(readout_ohm(ohm));
}

std::string Words::ohm_range(double low_ohm, double high_ohm) const {
    return localised(readout_ohm_range(low_ohm, high_ohm));
}

std::string Words::volts(double volts) const {
    return localised(readout_volts(volts));
}

std::string Words::mA(double mA) const {
    return localised(readout_mA(mA));
}

std::string Words::hours(double hours) const {
    if (hours < 1.0) {
        return (*this)("unit.about_min", {{"min", readout_number(std::round(hours * 60.0 / 5.0) * 5.0, 0)}});
    }
    return localised(readout_hours(hours));
}

std::string Words::percent(double fraction) const {
    return readout_percent(fraction);
}

std::string Words::number(double value, int decimals) const {
    return localised(readout_number(value, decimals));
}

Words Words::with_unit(LengthUnit unit) const {
    Words other = *this;
    other.unit_ = unit;
    return other;
}

std::vector<std::string> Words::keys() const {
    std::vector<std::string> all;
    for (const auto& [key, message] : *table_) {
        all.push_back(key);
    }
    std::sort(all.begin(), all.end());
    return all;
}

std::vector<std::pair<std::string, std::string>> Words::forms(std::string_view key) const {
    const auto found = table_->find(key);
    if (found == table_->end()) {
        return {};
    }
    if (found->second.one.empty()) {
        return {{"", found->second.other}};
    }
    return {{"one", found->second.one}, {"other", found->second.other}};
}

} // namespace lanternleaf
