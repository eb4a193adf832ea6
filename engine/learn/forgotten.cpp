#include "learn/forgotten.h"

#include "cardfile/json_cursor.h"
#include "cardfile/json_text.h"
#include "cardfile/read_parts.h"
#include "files/files.h"

namespace lanternleaf {

namespace {

constexpr std::size_t kMostBytesOfOne = 4096;

Outcome<Forgotten> read_forgotten(const std::string& text, const std::string& file) {
    using namespace cardfile;
    try {
        const Tree tree = parse_tree(text);
        Members members(Cursor(tree, ""));
        check_heading(members, "forgotten");
        Forgotten one;
        one.sort = members.need("sort").choice<PartSort>(
            {{"led", PartSort::led}, {"tape", PartSort::tape}, {"foam", PartSort::foam}});
        one.id = members.need("id").name();
        one.at = members.need("at").name();
        return one;
    } catch (Refused& refused) {
        refused.problem.file = file;
        return std::move(refused.problem);
    }
}

} // namespace

std::string write_forgotten(const Forgotten& forgotten) {
    const cardfile::Tree json = {{"lanternleaf", 1},
                                 {"kind", "forgotten"},
                                 {"sort", name_of(forgotten.sort)},
                                 {"id", forgotten.id},
                                 {"at", forgotten.at}};
    return cardfile::pretty(json);
}

std::vector<Forgotten> load_forgotten(const std::string& folder, std::vector<Problem>& aside) {
    std::vector<Forgotten> out;
    for (const std::string& name : files_in(folder, kForgottenEnding)) {
        const Outcome<std::string> text = read_file(folder + "/" + name, kMostBytesOfOne);
        const Outcome<Forgotten> one =
            text ? read_forgotten(text.value(), name) : Outcome<Forgotten>(text.problem());
        if (one) {
            out.push_back(one.value());
        } else {
            aside.push_back(one.problem());
        }
    }
    return out;
}

} // namespace lanternleaf
