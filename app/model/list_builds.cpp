// The builds of a library as the shelf lists them: a glance at each journal, nothing of it kept in memory,
// and a sentence for every file that has to be set aside.
#include "files/files.h"
#include "model/library.h"
#include "record/glance.h"

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

namespace lanternleaf {

namespace {

const char* const kBuildFileEnding = ".build.jsonl";

// Where "-YYYYMMDD-HHMMSS" begins in a build's id; its length when there is none.
std::size_t date_in(const std::string& id) {
    static const std::string kForm = "-dddddddd-dddddd";
    for (std::size_t at = id.size() < kForm.size() ? 0 : id.size() - kForm.size() + 1; at-- > 0;) {
        const auto fits = [](char c, char form) { return form == '-' ? c == '-' : c >= '0' && c <= '9'; };
        if (std::equal(kForm.begin(), kForm.end(), id.begin() + static_cast<std::ptrdiff_t>(at),
                       [&](char form, char c) { return fits(c, form); })) {
            return at;
        }
    }
    return id.size();
}

/// Where a card's front picture lies, looked up once a card instead of once a build.
class Fronts {
public:
    explicit Fronts(const Surroundings& around) {
        for (const std::string& folder : {around.library + "/cards", around.assets + "/cards"}) {
            folders_.push_back(folder);
            for (const std::string& file : files_in(folder, kFront)) {
                places_.emplace(file.substr(0, file.size() - kFront.size()), folder);
            }
        }
    }

    void put_into(ShelfBuild& build) const {
        const auto found = places_.find(build.card_name);
        build.card_folder = found != places_.end() ? found->second : folders_.back();
        build.picture = found != places_.end() ? found->second + "/" + build.card_name + kFront : "";
    }

private:
    const std::string kFront = "-front.png";
    std::vector<std::string> folders_;
    std::unordered_map<std::string, std::string> places_; ///< the maker's own first
};

void take_glance(ShelfBuild& shelf, const Glance& glance) {
    shelf.title = glance.title;
    shelf.step = glance.step;
    shelf.finished = glance.finished;
    shelf.started_s = glance.started_s;
    shelf.last_s = glance.last_s;
    shelf.batch = glance.batch;
    shelf.maker = glance.maker;
    shelf.stopped_s = glance.stopped_s;
    shelf.stops = glance.stops;
}

// A synchroniser that finds two versions of a file keeps both, one under another name. When one is only the
// other's beginning, nothing is lost by showing the longer one; else both are shown, for both hold work.
std::string told_of_copy(const std::string& folder, const std::string& file, const std::string& text,
                         const std::string& original, const Words& words) {
    const Outcome<std::string> other = read_file(folder + "/" + original);
    if (!other) {
        return "";
    }
    const std::size_t shared = std::min(text.size(), other.value().size());
    if (other.value().compare(0, shared, text, 0, shared) != 0) {
        return "";
    }
    const bool earlier = text.size() <= other.value().size();
    return words(earlier ? "model.earlier_copy" : "model.longer_copy",
                 {{"file", file}, {"original", original}});
}

} // namespace

std::vector<ShelfBuild> list_builds(const Surroundings& around) {
    std::vector<ShelfBuild> builds;
    const std::string folder = around.library + "/builds";
    const std::vector<std::string> files = files_in(folder, kBuildFileEnding);
    const std::set<std::string> names(files.begin(), files.end());
    const Fronts pictures(around);
    for (const std::string& file : files) {
        ShelfBuild shelf;
        shelf.path = folder + "/" + file;
        shelf.id = file.substr(0, file.size() - std::char_traits<char>::length(kBuildFileEnding));
        // An id is NAME-YYYYMMDD-HHMMSS, perhaps with a device's tag and -2 behind it: the card's name is
        // what stands before the date.
        shelf.card_name = shelf.id.substr(0, date_in(shelf.id));
        shelf.title = shelf.card_name;
        pictures.put_into(shelf);
        const Outcome<std::string> text = read_file(shelf.path);
        const Outcome<Glance> glance =
            text ? glance_at(text.value(), shelf.path) : Outcome<Glance>(text.problem());
        if (!glance) {
            shelf.trouble = glance.problem().sentence();
        } else if (glance.value().events == 0) {
            shelf.trouble = around.words("model.no_line_yet", {{"file", file}});
        } else if (glance.value().abandoned) {
            continue;
        } else {
            take_glance(shelf, glance.value());
            const std::string original = glance.value().id + kBuildFileEnding;
            if (original != file && names.count(original) != 0) {
                shelf.trouble = told_of_copy(folder, file, text.value(), original, around.words);
            }
        }
        builds.push_back(std::move(shelf));
    }
    std::sort(builds.begin(), builds.end(), [](const ShelfBuild& a, const ShelfBuild& b) {
        return a.started_s != b.started_s ? a.started_s < b.started_s : a.id < b.id;
    });
    std::map<std::string, int> made;
    for (ShelfBuild& build : builds) {
        build.number = build.trouble.empty() ? ++made[build.card_name] : 0;
    }
    std::reverse(builds.begin(), builds.end());
    return builds;
}

} // namespace lanternleaf
