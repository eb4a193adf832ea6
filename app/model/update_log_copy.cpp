// Save a copy: the open record as a folder in the library, and as one file for the person.
#include "files/files.h"
#include "model/update.h"
#include "model/update_log.h"
#include "report/copy.h"

#include <filesystem>

namespace lanternleaf {

namespace {

// A name that is not taken yet: a copy is never written over.
std::string free_folder(const std::string& folder, const std::string& name) {
    std::error_code ignored;
    std::string path = folder + "/" + name;
    for (int again = 2; std::filesystem::exists(path, ignored); ++again) {
        path = folder + "/" + name + "-" + std::to_string(again);
    }
    return path;
}

// The shipped faces where both are there, else the built-in one.
PrintFonts printing_faces(const std::string& folder) {
    const PrintFonts faces{folder + "/Andika-Regular.ttf", folder + "/Andika-Bold.ttf"};
    std::error_code ignored;
    const bool there = !folder.empty() && std::filesystem::exists(faces.regular, ignored) &&
                       std::filesystem::exists(faces.bold, ignored);
    return there ? faces : PrintFonts{};
}

// A copy leaves the library, so it does not name the maker.
std::string without_name(const std::string& text, const std::string& path) {
    Outcome<std::vector<Event>> events = read_journal(text, path);
    if (!events || events.value().empty()) {
        return "";
    }
    events.value().front().maker.clear();
    std::string out;
    int number = 0;
    for (const Event& event : events.value()) {
        out += write_event(event, ++number) + "\n";
    }
    return out;
}

} // namespace

void save_copy(AppState& state, const Surroundings& around) {
    Record record = *state.log;
    CopyWish wish;
    wish.fonts = printing_faces(around.fonts);
    if (const Outcome<std::string> journal = read_file(state.log_shelf.path)) {
        wish.journal =
            record.maker.empty() ? journal.value() : without_name(journal.value(), state.log_shelf.path);
    }
    record.maker.clear();
    for (const LogPhoto& photo : state.log_page.photos) {
        if (Outcome<std::string> bytes = read_file(photo.path)) {
            wish.photos.push_back({photo.file, std::move(bytes).value()});
        }
    }
    Outcome<std::vector<CopiedFile>> files =
        copy_of(record, state.log_page.events, around.shipped, state.log_shelf.card_name, wish, around.words);
    if (!files) {
        say(state, around, files.problem().sentence());
        return;
    }
    const std::string copies = around.library + "/copies";
    const std::string folder = free_folder(copies, record.id);
    Outcome<Done> written = make_folder(copies);
    if (written) {
        written = write_copy(folder, files.value());
    }
    if (!written) {
        say(state, around, written.problem().sentence());
        return;
    }
    const std::string name = std::filesystem::path(folder).filename().string();
    state.to_give.push_back({name + ".zip", zip(name, files.value()), "application/zip"});
}

} // namespace lanternleaf
