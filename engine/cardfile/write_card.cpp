#include "cardfile/cardfile.h"
#include "cardfile/json_text.h"
#include "cardfile/write_parts.h"

namespace lanternleaf {

namespace cardfile {

namespace {

Tree tree_of_points(const std::vector<Vec2>& points) {
    Tree list = Tree::array();
    for (const Vec2 point : points) {
        list.push_back(pair_tree(point));
    }
    return list;
}

Tree tree_of(const Sheet& sheet) {
    Tree made = {{"width_mm", sheet.width_mm}, {"height_mm", sheet.height_mm}};
    for (const FoldLine& fold : sheet.folds) {
        Tree item = {{"from_mm", pair_tree(fold.from_mm)}, {"to_mm", pair_tree(fold.to_mm)}};
        append_extras(item, fold.extras.json);
        made["folds"].push_back(std::move(item));
    }
    for (const Keepout& keepout : sheet.keepouts) {
        Tree item = {{"why", keepout.why}, {"outline_mm", tree_of_points(keepout.outline_mm)}};
        append_extras(item, keepout.extras.json);
        made["keepouts"].push_back(std::move(item));
    }
    if (sheet.art) {
        Tree item = {{"file", sheet.art->file},
                     {"at_mm", pair_tree(sheet.art->at_mm)},
                     {"width_mm", sheet.art->width_mm}};
        append_extras(item, sheet.art->extras.json);
        made["art"] = std::move(item);
    }
    append_extras(made, sheet.extras.json);
    return made;
}

Tree tree_of(const Led& led) {
    Tree made = {
        {"id", led.id}, {"type", led.type}, {"at_mm", pair_tree(led.at_mm)}, {"turn_deg", led.turn_deg}};
    append_extras(made, led.extras.json);
    return made;
}

Tree tree_of(const ResistorPart& resistor) {
    Tree made = {{"id", resistor.id},
                 {"ohm", resistor.ohm},
                 {"at_mm", pair_tree(resistor.at_mm)},
                 {"turn_deg", resistor.turn_deg}};
    append_extras(made, resistor.extras.json);
    return made;
}

Tree tree_of(const Strip& strip) {
    Tree made = {{"kind", "strip"},
                 {"id", strip.id},
                 {"side", name_of(strip.side)},
                 {"tape", strip.tape},
                 {"path_mm", tree_of_points(strip.path_mm)}};
    const auto word = [](EndStyle end) { return end == EndStyle::plain ? "plain" : "folded"; };
    if (strip.ends != std::array<EndStyle, 2>{EndStyle::plain, EndStyle::plain}) {
        made["ends"] = Tree::array({word(strip.ends[0]), word(strip.ends[1])});
    }
    append_extras(made, strip.extras.json);
    return made;
}

Tree tree_of(const Patch& patch) {
    Tree made = {{"kind", "patch"},
                 {"id", patch.id},
                 {"at_mm", pair_tree(patch.at_mm)},
                 {"size_mm", pair_tree(patch.size_mm)},
                 {"turn_deg", patch.turn_deg}};
    append_extras(made, patch.extras.json);
    return made;
}

Tree tree_of(const Foam& foam) {
    Tree edges = Tree::array();
    for (const Edge edge : foam.edges) {
        edges.push_back(name_of(edge));
    }
    Tree made = {{"thickness_mm", foam.thickness_mm}, {"layers", foam.layers}, {"edges", std::move(edges)}};
    append_extras(made, foam.extras.json);
    return made;
}

Tree tree_of(const Card& card) {
    Tree root = {{"lanternleaf", kFileVersion}, {"kind", "card"}, {"title", card.title}};
    if (!card.note.empty()) {
        root["note"] = card.note;
    }
    if (card.audience_given) {
        root["for"] = {{"who", name_of(card.audience)}};
        append_extras(root["for"], card.audience_extras.json);
    }
    root["sheet"] = tree_of(card.sheet);
    root["cell"] = {
        {"type", card.cell.type}, {"count", card.cell.count}, {"face_down", name_of(card.cell.face_down)}};
    append_extras(root["cell"], card.cell.extras.json);
    root["holder"] = {{"type", card.holder.type},
                      {"at_mm", pair_tree(card.holder.at_mm)},
                      {"turn_deg", card.holder.turn_deg}};
    append_extras(root["holder"], card.holder.extras.json);
    root["leds"] = Tree::array();
    for (const Led& led : card.leds) {
        root["leds"].push_back(tree_of(led));
    }
    for (const ResistorPart& resistor : card.resistors) {
        root["resistors"].push_back(tree_of(resistor));
    }
    root["laid"] = Tree::array();
    for (const Laid& item : card.laid) {
        root["laid"].push_back(std::visit([](const auto& laid) { return tree_of(laid); }, item));
    }
    if (card.foam) {
        root["foam"] = tree_of(*card.foam);
    }
    Tree own = Tree::object();
    append_parts(own, card.own_parts);
    if (!own.empty()) {
        root["parts"] = std::move(own);
    }
    append_extras(root, card.extras.json);
    return root;
}

} // namespace

} // namespace cardfile

std::string write_card(const Card& card) {
    return cardfile::pretty(cardfile::tree_of(card));
}

} // namespace lanternleaf
