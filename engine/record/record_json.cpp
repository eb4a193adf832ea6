#include "cardfile/cardfile.h"
#include "cardfile/json_text.h"
#include "record/event_json.h"
#include "record/record.h"
#include "record/utc.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

using Json = cardfile::Tree;

namespace {

// The types that a card names, so that a record can be understood when the shipped figures have moved on.
Parts named_by(const Card& card, const Parts& parts) {
    Parts used;
    const auto take = [](const auto& from, auto& into, const std::string& id) {
        if (const auto found = from.find(id); found != from.end()) {
            into[id] = found->second;
        }
    };
    for (const Led& led : card.leds) {
        take(parts.leds, used.leds, led.type);
        if (const auto type = parts.leds.find(led.type); type != parts.leds.end()) {
            take(parts.packages, used.packages, type->second.package);
        }
    }
    for (const Laid& item : card.laid) {
        if (const Strip* strip = std::get_if<Strip>(&item)) {
            take(parts.tapes, used.tapes, strip->tape);
        }
    }
    take(parts.cells, used.cells, card.cell.type);
    take(parts.holders, used.holders, card.holder.type);
    if (!card.resistors.empty()) {
        used.resistor = parts.resistor;
    }
    return used;
}

double length_mm(const Strip& strip) {
    double sum = 0.0;
    for (std::size_t i = 1; i < strip.path_mm.size(); ++i) {
        sum += distance(strip.path_mm[i - 1], strip.path_mm[i]);
    }
    return sum;
}

double whole_tenths(double mm) {
    return std::round(mm * 10.0) / 10.0;
}

void add_to(Json& counts, const std::string& key, double amount) {
    counts[key] = counts.contains(key) ? Json(counts[key].get<double>() + amount) : Json(amount);
}

void add_one(Json& counts, const std::string& key, int amount = 1) {
    counts[key] = counts.contains(key) ? Json(counts[key].get<int>() + amount) : Json(amount);
}

// What went into the card as built, without waste.
Json used_json(const Card& card) {
    Json tape = Json::object();
    int patches = 0;
    double patch_mm2 = 0.0;
    for (const Laid& item : card.laid) {
        if (const Strip* strip = std::get_if<Strip>(&item)) {
            add_to(tape, strip->tape, length_mm(*strip));
        } else {
            const Patch& patch = std::get<Patch>(item);
            ++patches;
            patch_mm2 += patch.size_mm.x * patch.size_mm.y;
        }
    }
    for (auto& [id, mm] : tape.items()) {
        mm = whole_tenths(mm.get<double>());
    }
    Json leds = Json::object();
    for (const Led& led : card.leds) {
        add_one(leds, led.type);
    }
    Json resistors = Json::array();
    for (const ResistorPart& resistor : card.resistors) {
        resistors.push_back({{"id", resistor.id}, {"ohm", resistor.ohm}});
    }
    double foam_mm = 0.0;
    if (card.foam) {
        for (const Edge edge : card.foam->edges) {
            const bool across = edge == Edge::top || edge == Edge::bottom;
            foam_mm += (across ? card.sheet.width_mm : card.sheet.height_mm) * card.foam->layers;
        }
    }
    return {{"sheets", 1},
            {"tape_mm", tape},
            {"patches", patches},
            {"patch_mm2", whole_tenths(patch_mm2)},
            {"leds", leds},
            {"resistors", resistors},
            {"cells", {{card.cell.type, card.cell.count}}},
            {"holder", card.holder.type},
            {"foam_mm", whole_tenths(foam_mm)}};
}

const char* state_of(const Record& record, int number) {
    const StepRecord& step = record.steps[number - 1];
    return step.proved ? "proved" : step.regardless ? "regardless" : step.opened ? "open" : "waiting";
}

Json step_json(const Record& record, int number) {
    const StepRecord& step = record.steps[number - 1];
    const StepId id = static_cast<StepId>(number);
    Json json = {{"step", number},
                 {"name", name_of(id)},
                 {"title", title_of(id)},
                 {"state", state_of(record, number)},
                 {"stops", step.stops}};
    if (step.regardless) {
        json["regardless_why"] = step.regardless_why;
    }
    if (!step.verdict.empty()) {
        json["verdict"] = step.verdict;
    }
    if (step.opened) {
        json["opened"] = utc_text(step.opened_s);
    }
    if (step.closed()) {
        json["closed"] = utc_text(step.closed_s);
        json["seconds"] = std::max<std::int64_t>(0, step.closed_s - step.opened_s);
    }
    json["moves"] = step.moves_done;
    json["readings"] = Json::array();
    for (const Reading& reading : step.readings) {
        json["readings"].push_back(reading_json(reading));
    }
    return json;
}

Json changes_json(const Record& record) {
    Json list = Json::array();
    for (const ChangeMade& made : record.changes) {
        Json json = change_json(made.change);
        if (made.step != 0) {
            json["step"] = made.step;
        }
        json["at"] = utc_text(made.at_s);
        json["text"] = describe(made.change);
        list.push_back(json);
    }
    return list;
}

Json mends_json(const Record& record) {
    Json list = Json::array();
    for (const MendMade& made : record.mends) {
        Json json = {{"fault", made.fault}, {"text", made.text}, {"at", utc_text(made.at_s)}};
        if (made.step != 0) {
            json["step"] = made.step;
        }
        list.push_back(json);
    }
    return list;
}

Json photos_json(const Record& record) {
    Json list = Json::array();
    for (const PhotoTaken& taken : record.photos) {
        Json json = {{"file", taken.file}, {"caption", taken.caption}, {"at", utc_text(taken.at_s)}};
        if (taken.step != 0) {
            json["step"] = taken.step;
        }
        list.push_back(json);
    }
    return list;
}

bool passed_first_time(const Record& record) {
    for (const StepRecord& step : record.steps) {
        if (!step.proved || step.regardless || step.stops > 0) {
            return false;
        }
    }
    return true;
}

} // namespace

std::string write_record(const Record& record, const Parts& parts) {
    const Parts all = merged(parts, record.card.own_parts);
    Json json = {{"lanternleaf", kFileVersion},
                 {"kind", "record"},
                 {"id", record.id},
                 {"title", record.title},
                 {"walked", record.walked},
                 {"state", record.finished    ? "finished"
                           : record.abandoned ? "abandoned"
                                              : "open"},
                 {"started", utc_text(record.started_s)}};
    if (!record.batch.empty()) {
        json["batch"] = record.batch;
    }
    if (!record.maker.empty()) {
        json["maker"] = record.maker;
    }
    if (record.finished || record.abandoned) {
        json["ended"] = utc_text(record.finished_s);
        json["outcome"] = record.outcome;
    }
    json["for"] = {{"who", name_of(record.audience)}, {"asked", record.audience_asked}};
    json["adult_confirmed"] = record.adult_confirmed;
    json["cell_in"] = record.cell_in;
    json["proved"] = proved_count(record);
    json["passed_first_time"] = passed_first_time(record);
    json["steps"] = Json::array();
    for (int number = 1; number <= kStepCount; ++number) {
        json["steps"].push_back(step_json(record, number));
    }
    json["changes"] = changes_json(record);
    json["notes"] = record.notes;
    json["mends"] = mends_json(record);
    json["photos"] = photos_json(record);
    json["used"] = used_json(record.as_built);
    json["events"] = record.event_count;
    json["card"] = Json::parse(write_card(record.card), nullptr, false);
    json["as_built"] = Json::parse(write_card(record.as_built), nullptr, false);
    json["parts"] = Json::parse(write_parts(named_by(record.as_built, all)), nullptr, false);
    return cardfile::pretty(json);
}

} // namespace lanternleaf
