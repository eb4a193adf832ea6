#include "cardfile/prices.h"

#include "cardfile/json_cursor.h"
#include "cardfile/read_parts.h"

namespace lanternleaf {

namespace {

using namespace cardfile;

constexpr std::size_t kMostPacks = 1'000;
constexpr Range kPrice{0, 1e6, false, ""};
constexpr Range kHolds{0, 1e6, true, ""};

PackPrice read_pack(const Cursor& cursor) {
    Members members(cursor);
    PackPrice pack;
    pack.price = members.need("price").number(kPrice);
    const auto metres = members.maybe("holds_m");
    if (metres && members.maybe("holds")) {
        cursor.refuse_saying("expected \"holds\" (pieces) or \"holds_m\" (metres), found both");
    }
    pack.by_length = metres.has_value();
    pack.holds = metres ? metres->number(kHolds) : members.need("holds").number(kHolds);
    return pack;
}

} // namespace

Outcome<Prices> read_prices(const std::string& text, const std::string& file) {
    try {
        const Tree tree = parse_tree(text);
        Members members(Cursor(tree, ""));
        check_heading(members, "prices");
        Prices prices;
        prices.currency = members.need("currency").name();
        for (const auto& [id, pack] : entries(members.need("packs"), kMostPacks)) {
            prices.packs.emplace(id, read_pack(pack));
        }
        return prices;
    } catch (Refused& refused) {
        refused.problem.file = file;
        return std::move(refused.problem);
    }
}

} // namespace lanternleaf
