// The picture under the plan: brought in from outside, kept beside the card's file.
#include "exchange/beside.h"
#include "model/take_picture.h"
#include "model/update_draw.h"

namespace lanternleaf {

namespace {

/// More than a scan of an A4 sheet needs.
constexpr std::size_t kMostArt_bytes = 12U << 20U;

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
    const char* ending = content[0] == '\x89' ? ".png" : ".jpg";
    const Outcome<std::string> name =
        put_beside(around.library + "/cards", card_name(draw.path) + "-art" + ending, content);
    if (!name) {
        say(state, around, name.problem().sentence());
        return;
    }
    draw.card_folder = around.library + "/cards";
    commit_edit(state, around, {edit::SetArt{Art{name.value(), {0, 0}, draw.card.sheet.width_mm, {}}}});
}

} // namespace lanternleaf
