#include "learn/own_parts.h"

#include "cardfile/cardfile.h"
#include "files/files.h"
#include "learn/forgotten.h"

#include <algorithm>
#include <map>

namespace lanternleaf {

namespace {

const char* const kEnding = ".parts.json";
constexpr std::size_t kLongestId = 60; // in a file's name

// Small letters, digits and dashes, whatever the id is made of.
std::string plain(const std::string& id) {
    std::string out;
    for (const char c : id) {
        const bool small = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        const bool large = c >= 'A' && c <= 'Z';
        if (small || large) {
            out += small ? c : static_cast<char>(c - 'A' + 'a');
        } else if (!out.empty() && out.back() != '-') {
            out += '-';
        }
    }
    return out.substr(0, kLongestId);
}

// "2026-05-04T10:00:00Z" -> "20260504-100000".
std::string stamp_of(const std::string& at) {
    std::string out;
    for (const char c : at) {
        if (out.size() == 8) {
            out += '-'; // between day and time
        }
        if (c >= '0' && c <= '9') {
            out += c;
        }
    }
    return out;
}

/// A name that no file of the folder has yet.
std::string free_name(const std::string& folder, const std::string& stem, const std::string& ending) {
    std::string name = stem + ending;
    for (int again = 2; !files_in(folder, name).empty(); ++again) {
        name = stem;
        name += "-";
        name += std::to_string(again);
        name += ending;
    }
    return name;
}

Outcome<std::string> write_new(const std::string& library, const std::string& stem, const std::string& ending,
                               const std::string& text) {
    const std::string folder = library + "/parts";
    for (const std::string& needed : {library, folder}) {
        if (const Outcome<Done> made = make_folder(needed); !made) {
            return made.problem();
        }
    }
    const std::string name = free_name(folder, stem, ending);
    if (const Outcome<Done> written = write_file(folder + "/" + name, text); !written) {
        return written.problem();
    }
    return name;
}

template <class T>
std::optional<Problem> unmeasured(const std::map<std::string, T>& types, const std::string& file,
                                  const char* key) {
    for (const auto& [id, type] : types) {
        if (type.measured_at.empty()) {
            return Problem{file, std::string("/") + key + "/" + id,
                           "expected the key \"measured_at\": without it nothing tells which reading holds"};
        }
    }
    return std::nullopt;
}

// Own parts are what the tests of this module give, nothing else.
std::optional<Problem> not_learnable(const Parts& parts, const std::string& file) {
    if (!parts.packages.empty() || !parts.cells.empty() || !parts.holders.empty() || parts.resistor) {
        return Problem{file, "", "expected lights, tapes or foams only"};
    }
    if (parts.leds.empty() && parts.tapes.empty() && parts.foams.empty()) {
        return Problem{file, "", "expected a light, a tape or a foam"};
    }
    for (auto problem : {unmeasured(parts.leds, file, "leds"), unmeasured(parts.tapes, file, "tapes"),
                         unmeasured(parts.foams, file, "foams")}) {
        if (problem) {
            return problem;
        }
    }
    return std::nullopt;
}

template <class T>
void drop_forgotten(std::map<std::string, T>& types, PartSort sort, const std::vector<Forgotten>& forgotten) {
    std::erase_if(types, [&](const auto& entry) {
        return std::any_of(forgotten.begin(), forgotten.end(), [&](const Forgotten& one) {
            return one.sort == sort && one.id == entry.first && entry.second.measured_at <= one.at;
        });
    });
}

template <class T>
void count(const std::map<std::string, T>& types, PartSort sort,
           std::map<std::pair<PartSort, std::string>, int>& times) {
    for (const auto& entry : types) {
        ++times[{sort, entry.first}];
    }
}

template <class T>
void list(const std::map<std::string, T>& types, PartSort sort,
          const std::map<std::pair<PartSort, std::string>, int>& times, std::vector<OwnPart>& out) {
    for (const auto& [id, type] : types) {
        out.push_back({sort, id, type.measured_at, type.source, times.at({sort, id})});
    }
}

template <class T>
void take_used(const std::string& id, const std::map<std::string, T>& known, std::map<std::string, T>& used) {
    const auto found = known.find(id);
    if (found != known.end() && !found->second.measured_at.empty()) {
        used.insert_or_assign(id, found->second);
    }
}

} // namespace

OwnParts load_own_parts(const std::string& library, const Parts& shipped) {
    OwnParts out;
    const std::string folder = library + "/parts";
    const std::vector<Forgotten> forgotten = load_forgotten(folder, out.aside);
    std::map<std::pair<PartSort, std::string>, int> times;
    std::vector<std::string> names = files_in(folder, kEnding);
    if (names.size() > kMostOwnPartFiles) {
        out.aside.push_back({folder, "",
                             "expected at most " + std::to_string(kMostOwnPartFiles) +
                                 " files of own parts; the oldest were left out"});
        names.erase(names.begin(), names.end() - static_cast<std::ptrdiff_t>(kMostOwnPartFiles));
    }
    for (const std::string& name : names) {
        const Outcome<std::string> text = read_file(folder + "/" + name, kMostOwnPartBytes);
        if (!text) {
            out.aside.push_back(text.problem());
            continue;
        }
        Outcome<Parts> parts = read_own_parts(text.value(), name, shipped);
        if (!parts) {
            out.aside.push_back(parts.problem());
            continue;
        }
        if (const std::optional<Problem> wrong = not_learnable(parts.value(), name)) {
            out.aside.push_back(*wrong);
            continue;
        }
        Parts kept = std::move(parts).value();
        drop_forgotten(kept.leds, PartSort::led, forgotten);
        drop_forgotten(kept.tapes, PartSort::tape, forgotten);
        drop_forgotten(kept.foams, PartSort::foam, forgotten);
        kept.extras.clear();
        count(kept.leds, PartSort::led, times);
        count(kept.tapes, PartSort::tape, times);
        count(kept.foams, PartSort::foam, times);
        out.parts = merged(out.parts, kept);
    }
    list(out.parts.leds, PartSort::led, times, out.list);
    list(out.parts.tapes, PartSort::tape, times, out.list);
    list(out.parts.foams, PartSort::foam, times, out.list);
    std::stable_sort(out.list.begin(), out.list.end(),
                     [](const OwnPart& a, const OwnPart& b) { return a.measured_at > b.measured_at; });
    return out;
}

Outcome<std::string> keep_learnt(const std::string& library, const Learnt& learnt) {
    std::string at;
    for (const auto& [id, led] : learnt.parts.leds) {
        at = led.measured_at;
    }
    for (const auto& [id, tape] : learnt.parts.tapes) {
        at = tape.measured_at;
    }
    for (const auto& [id, foam] : learnt.parts.foams) {
        at = foam.measured_at;
    }
    const std::string stem = std::string(name_of(learnt.sort)) + "-" + plain(learnt.id) + "-" + stamp_of(at);
    return write_new(library, stem, kEnding, write_parts(learnt.parts));
}

Outcome<Done> forget_part(const std::string& library, PartSort sort, const std::string& id,
                          const std::string& at) {
    const std::string stem = std::string(name_of(sort)) + "-" + plain(id) + "-" + stamp_of(at);
    const Outcome<std::string> name =
        write_new(library, stem, kForgottenEnding, write_forgotten({sort, id, at}));
    return name ? Outcome<Done>(Done{}) : Outcome<Done>(name.problem());
}

Parts carried_by(const Card& card, const Parts& known) {
    Parts used;
    for (const Led& led : card.leds) {
        take_used(led.type, known.leds, used.leds);
    }
    for (const Laid& item : card.laid) {
        if (const Strip* strip = std::get_if<Strip>(&item)) {
            take_used(strip->tape, known.tapes, used.tapes);
        }
    }
    if (card.foam) {
        for (const auto& [id, foam] : known.foams) {
            if (foam.thickness_mm == card.foam->thickness_mm) {
                take_used(id, known.foams, used.foams);
            }
        }
    }
    return merged(card.own_parts, used);
}

} // namespace lanternleaf
