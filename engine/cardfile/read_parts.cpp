#include "cardfile/read_parts.h"

#include "cardfile/cardfile.h"
#include "cardfile/known_types.h"

#include <algorithm>

namespace lanternleaf::cardfile {

namespace {

constexpr std::size_t kMostTypes = 500; // of one sort
constexpr Range kPositive{0, 1e9, true, ""};
constexpr Range kNotNegative{0, 1e9, false, ""};
constexpr Range kForward{0, 100, true, " V"};
constexpr Range kLength{0, 10'000, false, " mm"};
constexpr std::size_t kMostMarkCharacters = 40; // it stands in the middle of a sentence

std::vector<PadShape> read_pads(const Cursor& list, const char* first, const char* second) {
    const std::vector<Cursor> items = list.items(2, "pads");
    if (items.size() != 2) {
        list.refuse("two pads");
    }
    std::vector<PadShape> pads;
    for (const Cursor& item : items) {
        Members members(item);
        PadShape pad;
        pad.name = members.need("name").choice<std::string>({{first, first}, {second, second}});
        if (!pads.empty() && pads.front().name == pad.name) {
            members.need("name").refuse_saying("expected one pad \"" + std::string(first) +
                                               "\" and one pad \"" + second + "\", found \"" + pad.name +
                                               "\" twice");
        }
        pad.at_mm = members.need("at_mm").point();
        pad.size_mm = members.need("size_mm").size();
        pad.extras = members.extras();
        pads.push_back(std::move(pad));
    }
    return pads;
}

Package read_package(const Cursor& cursor) {
    Members members(cursor);
    Package package;
    package.body_mm = members.need("body_mm").size();
    package.pads = read_pads(members.need("pads"), "-", "+");
    package.pad_ohm_mm2 = members.need("pad_ohm_mm2").number(kNotNegative);
    package.extras = members.extras();
    return package;
}

// A resistor's package may leave out its body and its pads' resistance, as format version 1 shows it.
Package read_resistor(const Cursor& cursor, std::string& extras) {
    Members outer(cursor);
    Members members(outer.need("package"));
    Package package;
    package.pads = read_pads(members.need("pads"), "1", "2");
    if (const auto body = members.maybe("body_mm")) {
        package.body_mm = body->size();
    }
    if (const auto ohm = members.maybe("pad_ohm_mm2")) {
        package.pad_ohm_mm2 = ohm->number(kNotNegative);
    }
    package.extras = members.extras();
    extras = outer.extras();
    return package;
}

std::vector<std::pair<double, double>> read_mcd(const Cursor& cursor) {
    std::vector<std::pair<double, double>> table;
    for (const Cursor& item : cursor.items(100, "pairs of mA and mcd")) {
        const std::vector<Cursor> pair = item.items(2, "numbers");
        if (pair.size() != 2) {
            item.refuse("two numbers, mA and mcd");
        }
        const double mA = pair[0].number(kPositive);
        if (!table.empty() && mA <= table.back().first) {
            pair[0].refuse("more mA than in the pair before");
        }
        table.emplace_back(mA, pair[1].number(kPositive));
    }
    if (table.empty()) {
        cursor.refuse("at least one pair of mA and mcd");
    }
    return table;
}

ForwardSpread read_forward(const Cursor& cursor) {
    Members members(cursor);
    ForwardSpread forward;
    forward.at_mA = members.need("at_mA").number(kPositive);
    forward.least_V = members.need("least_V").number(kForward);
    const Cursor typical = members.need("typical_V");
    forward.typical_V = typical.number(kForward);
    if (forward.typical_V < forward.least_V) {
        typical.refuse("no less than least_V");
    }
    const Cursor most = members.need("most_V");
    forward.most_V = most.number(kForward);
    if (forward.most_V < forward.typical_V) {
        most.refuse("no less than typical_V");
    }
    forward.extras = members.extras();
    return forward;
}

LedMark read_mark(const Cursor& cursor) {
    Members members(cursor);
    LedMark mark;
    mark.negative = members.need("means").choice<bool>({{"negative", true}, {"positive", false}});
    const Cursor looks = members.need("looks");
    mark.looks = looks.name();
    if (characters(mark.looks) > kMostMarkCharacters) {
        looks.refuse("a few words of at most " + std::to_string(kMostMarkCharacters) + " letters");
    }
    mark.extras = members.extras();
    return mark;
}

// "2026-05-04T10:00:00Z" and nothing else, so that times compare as text.
std::string read_moment(const Cursor& cursor) {
    static const std::string kForm = "0000-00-00T00:00:00Z";
    const std::string text = cursor.name();
    const bool fits = text.size() == kForm.size() &&
                      std::equal(text.begin(), text.end(), kForm.begin(), [](char given, char form) {
                          return form == '0' ? given >= '0' && given <= '9' : given == form;
                      });
    if (!fits) {
        cursor.refuse("a time in UTC such as \"2026-05-04T10:00:00Z\"");
    }
    return text;
}

FoamType read_foam_type(const Cursor& cursor) {
    Members members(cursor);
    FoamType foam;
    foam.thickness_mm = members.need("thickness_mm").number({0, 100, true, " mm"});
    if (const auto squeezed = members.maybe("squeezed_mm")) {
        foam.squeezed_mm = squeezed->number({0, 100, true, " mm"});
        if (foam.squeezed_mm > foam.thickness_mm) {
            squeezed->refuse("no more than thickness_mm");
        }
    }
    if (const auto moment = members.maybe("measured_at")) {
        foam.measured_at = read_moment(*moment);
    }
    foam.source = members.need("source").name();
    foam.extras = members.extras();
    return foam;
}

// What a phase and a whole LED have in common.
template <class Light>
void read_light(Members& members, Light& light) {
    light.colour = members.need("colour").name();
    light.saturation_A = members.need("saturation_A").number({0, 1, true, " A"});
    light.ideality = members.need("ideality").number({0.1, 50, false, ""});
    light.series_ohm = members.need("series_ohm").number(kNotNegative);
    light.dominant_nm = members.need("dominant_nm").number({200, 2000, false, " nm"});
    light.mcd = read_mcd(members.need("mcd"));
}

std::vector<LedPhase> read_phases(const Cursor& cursor) {
    std::vector<LedPhase> phases;
    for (const Cursor& item : cursor.items(20, "phases")) {
        Members members(item);
        LedPhase phase;
        read_light(members, phase);
        phase.extras = members.extras();
        phases.push_back(std::move(phase));
    }
    return phases;
}

LedType read_led(const Cursor& cursor, const Parts& own, const Parts* shipped) {
    Members members(cursor);
    LedType led;
    const Cursor package = members.need("package");
    led.package = package.name();
    require_known(package, led.package, "package", own.packages,
                  shipped != nullptr ? &shipped->packages : nullptr);
    read_light(members, led);
    led.max_mA = members.need("max_mA").number(kPositive);
    led.max_reverse_V = members.need("max_reverse_V").number(kPositive);
    if (const auto forward = members.maybe("forward")) {
        led.forward = read_forward(*forward);
    }
    if (const auto slope = members.maybe("forward_mV_per_K")) {
        led.forward_mV_per_K = slope->number({-20, 20, false, " mV/K"});
    }
    if (const auto phases = members.maybe("phases")) {
        led.phases = read_phases(*phases);
    }
    if (const auto least = members.maybe("driver_least_V")) {
        led.driver_least_V = least->number(kForward);
    }
    if (const auto mark = members.maybe("mark")) {
        led.mark = read_mark(*mark);
    }
    if (const auto moment = members.maybe("measured_at")) {
        led.measured_at = read_moment(*moment);
    }
    led.source = members.need("source").name();
    led.extras = members.extras();
    return led;
}

CellType read_cell(const std::string& id, const Cursor& cursor) {
    require_primary(cursor, id);
    Members members(cursor);
    CellType cell;
    cell.diameter_mm = members.need("diameter_mm").number(kSize);
    cell.height_mm = members.need("height_mm").number(kSize);
    cell.open_V = members.need("open_V").number({0, 100, true, " V"});
    cell.series_ohm = members.need("series_ohm").number(kPositive);
    cell.capacity_mAh = members.need("capacity_mAh").number(kPositive);
    cell.max_continuous_mA = members.need("max_continuous_mA").number(kPositive);
    if (const auto pulse = members.maybe("max_pulse_mA")) {
        cell.max_pulse_mA = pulse->number(kPositive);
    }
    if (const auto steady = members.maybe("steady_ohm")) {
        cell.steady_ohm = steady->number(kPositive);
    }
    if (const auto curve = members.maybe("curve")) {
        cell.curve = curve->text();
    }
    cell.source = members.need("source").name();
    cell.extras = members.extras();
    return cell;
}

TapeType read_tape(const Cursor& cursor) {
    Members members(cursor);
    TapeType tape;
    tape.width_mm = members.need("width_mm").number(kSize);
    tape.ohm_per_square = members.need("ohm_per_square").number(kPositive);
    tape.adhesive = members.need("adhesive")
                        .choice<Adhesive>({{"conductive", Adhesive::conductive},
                                           {"non-conductive", Adhesive::non_conductive}});
    tape.joint_ohm_mm2 = members.need("joint_ohm_mm2").number(kPositive);
    if (const auto moment = members.maybe("measured_at")) {
        tape.measured_at = read_moment(*moment);
    }
    tape.source = members.need("source").name();
    tape.extras = members.extras();
    return tape;
}

HolderType read_holder(const Cursor& cursor) {
    Members members(cursor);
    HolderType holder;
    holder.kind =
        members.need("kind").choice<HolderKind>({{"flap", HolderKind::flap}, {"pads", HolderKind::pads}});
    holder.cell_diameter_mm = members.need("cell_diameter_mm").number(kSize);
    const auto paper = members.maybe("paper_mm");
    const auto travel = members.maybe("travel_mm");
    if (holder.kind == HolderKind::flap) {
        holder.bed_radius_mm = members.need("bed_radius_mm").number(kSize);
        holder.flap_offset_mm = members.need("flap_offset_mm").number(kSize);
        holder.flap_radius_mm = members.need("flap_radius_mm").number(kSize);
        holder.paper_mm = members.need("paper_mm").number(kLength);
        holder.travel_mm = members.need("travel_mm").number(kLength);
    } else {
        holder.pads = read_pads(members.need("pads"), "-", "+");
        holder.paper_mm = paper ? paper->number(kLength) : 0.0;
        holder.travel_mm = travel ? travel->number(kLength) : 0.0;
    }
    if (const auto body = members.maybe("body_mm")) {
        holder.body_mm = body->size();
    }
    holder.contact_ohm = members.need("contact_ohm").number(kPositive);
    if (const auto closure = members.maybe("closure")) {
        holder.closure = closure->choice<Closure>({{"finger", Closure::finger}, {"tool", Closure::tool}});
    }
    holder.source = members.need("source").name();
    holder.extras = members.extras();
    return holder;
}

} // namespace

Parts read_parts_object(Members& members, const Parts* shipped) {
    Parts parts;
    const auto each = [&members](const char* key, const auto& take) {
        if (const auto sort = members.maybe(key)) {
            for (const auto& [id, cursor] : entries(*sort, kMostTypes)) {
                take(id, cursor);
            }
        }
    };
    each("packages", [&](const std::string& id, const Cursor& at) { parts.packages[id] = read_package(at); });
    each("leds",
         [&](const std::string& id, const Cursor& at) { parts.leds[id] = read_led(at, parts, shipped); });
    each("cells", [&](const std::string& id, const Cursor& at) { parts.cells[id] = read_cell(id, at); });
    each("tapes", [&](const std::string& id, const Cursor& at) { parts.tapes[id] = read_tape(at); });
    each("holders", [&](const std::string& id, const Cursor& at) { parts.holders[id] = read_holder(at); });
    each("foams", [&](const std::string& id, const Cursor& at) { parts.foams[id] = read_foam_type(at); });
    if (const auto resistor = members.maybe("resistor")) {
        parts.resistor = read_resistor(*resistor, parts.resistor_extras);
    }
    parts.extras = members.extras();
    return parts;
}

void check_heading(Members& members, const char* kind) {
    const Cursor version = members.need("lanternleaf");
    const int given = version.integer(1, 1'000'000);
    if (given > kFileVersion) {
        version.refuse_saying("made by a newer Lanternleaf (version " + std::to_string(given) +
                              "); this one reads version " + std::to_string(kFileVersion));
    }
    const Cursor named = members.need("kind");
    if (named.text() != kind) {
        named.refuse(std::string("the kind \"") + kind + "\"");
    }
}

} // namespace lanternleaf::cardfile

namespace lanternleaf {

namespace {

Outcome<Parts> read_parts_file(const std::string& text, const std::string& file, const Parts* shipped) {
    using namespace cardfile;
    try {
        const Tree tree = parse_tree(text);
        Members members(Cursor(tree, ""));
        check_heading(members, "parts");
        return read_parts_object(members, shipped);
    } catch (Refused& refused) {
        refused.problem.file = file;
        return std::move(refused.problem);
    }
}

} // namespace

Outcome<Parts> read_parts(const std::string& text, const std::string& file) {
    return read_parts_file(text, file, nullptr);
}

Outcome<Parts> read_own_parts(const std::string& text, const std::string& file, const Parts& shipped) {
    return read_parts_file(text, file, &shipped);
}

} // namespace lanternleaf
