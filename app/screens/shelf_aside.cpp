// What the shelf says of files it cannot open: named, left as they are, below everything that works.
#include "screens/shelf_aside.h"
#include "controls/panel.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr std::size_t kMostNamed = 6; ///< more than that is a matter for the folder, not for the shelf

} // namespace

float draw_set_aside(Screen& screen, const Rect& page, float y) {
    Ui& ui = screen.ui;
    std::vector<const ShelfBuild*> aside;
    for (const ShelfBuild& build : screen.state.builds) {
        if (!build.trouble.empty()) {
            aside.push_back(&build);
        }
    }
    if (aside.empty()) {
        return y;
    }
    const TextStyle head = ui.m.type(Type::H2);
    const TextStyle small = ui.m.type(Type::Small);
    const std::size_t named = std::min(aside.size(), kMostNamed);
    const float pad = ui.m.panel_pad_x;
    const float text_w = page.w - 2 * pad;
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < named; ++i) {
        // The folder is the same for all: only the file's name is worth reading.
        std::string words = aside[i]->trouble;
        const std::string folder = screen.around.library + "/builds/";
        for (std::size_t at = words.find(folder); at != std::string::npos; at = words.find(folder)) {
            words.erase(at, folder.size());
        }
        lines.push_back(words);
    }
    if (aside.size() > named) {
        lines.push_back(ui.words("shelf.aside_more", {{"n", aside.size() - named}}));
    }
    lines.push_back(ui.words("shelf.aside_where"));
    float height = pad * 2 + head.lead + 8;
    for (const std::string& line : lines) {
        height += ui.fonts().wrapped_height(line, small, text_w) + 8;
    }
    const Rect box{page.x, y, page.w, height};
    panel(ui, box);
    ui.add({.name = "shelf/aside", .role = Role::Item, .label = ui.words("shelf.aside"), .rect = box});
    float at = box.y + pad;
    ui.pen().text({box.x + pad, at},
                  aside.size() == 1 ? ui.words("shelf.aside_one") : ui.words("shelf.aside_several"), head,
                  ui.theme().ink);
    at += head.lead + 8;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const bool last = i + 1 == lines.size();
        at += ui.pen().paragraph({box.x + pad, at}, text_w, lines[i], small,
                                 last ? ui.theme().ink2 : ui.theme().ink) +
              8;
    }
    return y + height + 20;
}

} // namespace lanternleaf
