// Photos of a build: checked and written anew when they come in, beside the journal, then in the journal.
#include "files/files.h"
#include "model/update.h"
#include "model/update_log.h"
#include "report/photo.h"

#include <algorithm>
#include <filesystem>

namespace lanternleaf {

namespace {

std::string photo_folder(const ShelfBuild& shelf) {
    const std::string ending = ".build.jsonl";
    const std::string& path = shelf.path;
    const bool ours =
        path.size() > ending.size() && path.compare(path.size() - ending.size(), ending.size(), ending) == 0;
    return ours ? path.substr(0, path.size() - ending.size()) : path + ".photos";
}

bool is_there(const std::string& path) {
    std::error_code ignored;
    return std::filesystem::is_regular_file(path, ignored);
}

// A name that neither the journal nor the folder has had: a photo taken away leaves its number behind.
std::string free_name_of_photo(const AppState& state, const std::string& folder) {
    for (int number = 1;; ++number) {
        const std::string name = "photo-" + std::to_string(number) + ".jpg";
        const bool told = std::any_of(state.log_page.events.begin(), state.log_page.events.end(),
                                      [&](const Event& event) { return event.photo == name; });
        if (!told && !is_there(folder + "/" + name)) {
            return name;
        }
    }
}

} // namespace

std::vector<LogPhoto> photos_of(const Record& record, const Story& story, const ShelfBuild& shelf) {
    std::vector<LogPhoto> photos;
    for (std::size_t i = 0; i < record.photos.size(); ++i) {
        const std::string path = photo_folder(shelf) + "/" + record.photos[i].file;
        photos.push_back({record.photos[i].file, path, story.photos[i].caption, is_there(path)});
    }
    return photos;
}

void take_photo(AppState& state, const Surroundings& around, const std::string& file_name,
                const std::string& content) {
    Outcome<PlainPhoto> photo = plain_photo(content, file_name);
    if (!photo) {
        say(state, around, photo.problem().sentence());
        return;
    }
    NewPhoto taken;
    taken.jpeg = std::move(photo.value().jpeg);
    taken.w = photo.value().w;
    taken.h = photo.value().h;
    state.log_page.new_photo = std::move(taken);
    state.sheet = SheetKind::log_new_photo;
}

void keep_photo(AppState& state, const Surroundings& around) {
    if (!state.log_page.new_photo) {
        return;
    }
    const std::string folder = photo_folder(state.log_shelf);
    if (const Outcome<Done> made = make_folder(folder); !made) {
        say(state, around, made.problem().sentence());
        return;
    }
    const NewPhoto taken = *state.log_page.new_photo;
    const std::string name = free_name_of_photo(state, folder);
    // The file first: a photo in the journal without its file would be a promise broken.
    if (const Outcome<Done> written = write_file(folder + "/" + name, taken.jpeg); !written) {
        say(state, around, written.problem().sentence());
        return;
    }
    Event event = event_at(around.now_s, EventKind::photo, 0, taken.caption);
    event.photo = name;
    if (add_to_log(state, around, event)) {
        state.log_page.new_photo.reset();
        state.sheet = SheetKind::none;
        say(state, around, around.words("model.photo_in"));
    } else {
        std::error_code ignored;
        std::filesystem::remove(folder + "/" + name, ignored);
    }
}

void remove_photo(AppState& state, const Surroundings& around, int index) {
    if (index < 0 || index >= static_cast<int>(state.log_page.photos.size())) {
        return;
    }
    const LogPhoto photo = state.log_page.photos[static_cast<std::size_t>(index)];
    Event event = event_at(around.now_s, EventKind::photo_removed);
    event.photo = photo.file;
    if (add_to_log(state, around, event)) {
        // After the event: a file that stays behind is harmless, a missing one would be missed.
        std::error_code ignored;
        std::filesystem::remove(photo.path, ignored);
        state.sheet = SheetKind::none;
        state.log_page.photo = -1;
        say(state, around, around.words("model.photo_out"));
    }
}

} // namespace lanternleaf
