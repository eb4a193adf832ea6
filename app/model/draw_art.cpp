// The picture under the plan: brought in from outside, kept beside the card's file.
#include "files/files.h"
#include "model/take_picture.h"
#include "model/update_draw.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// More than a scan of an A4 sheet needs.
constexpr std::size_t kMostArt_bytes = 12U << 20U;

/// "harbour.art.png", with a number when other bytes lie under that name: nothing is written over.
Outcome<std::string> write_beside(const std::string& folder, const std::string& stem, const char* ending,
                                  const std::string& content) {
    for (int number = 1;; ++number) {
        std::string name = stem + "-art";
        if (number > 1) {
            name += "-";
            name += std::to_string(number);
        }
        name += ending;
        const std::vector<std::string> there = files_in(folder, name);
        if (std::find(there.begin(), there.end(), name) == there.end()) {
            const Outcome<Done> written = write_file(folder + "/" + name, content);
            return written ? Outcome<std::string>(name) : Outcome<std::string>(written.problem());
        }
        const Outcome<std::string> same = read_file(folder + "/" + name);
        if (same && same.value() == content) {
            return name;
        }
    }
}

} // namespace

void lay_art(AppState& state, const Surroundings& around, const std::string& file_name,
             const std::string& content) {
    DrawState& draw = *state.draw;
    if (!is_picture(content) || content.size() > kMostArt_bytes) {
        say(state, around, around.words("model.expected_picture", {{"file", file_name}}));
        return;
    }
    if (!draw.ours) {
        save_plan(state, around); // the picture belongs beside the card's own file
        if (!draw.ours) {
            return;
        }
    }
    const bool png = content[0] == '\x89';
    const Outcome<std::string> name =
        write_beside(around.library + "/cards", card_name(draw.path), png ? ".png" : ".jpg", content);
    if (!name) {
        say(state, around, name.problem().sentence());
        return;
    }
    draw.card_folder = around.library + "/cards";
    commit_edit(state, around, {edit::SetArt{Art{name.value(), {0, 0}, draw.card.sheet.width_mm, {}}}});
}

} // namespace lanternleaf
