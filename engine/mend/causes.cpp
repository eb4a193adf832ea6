#include "mend/cause_words.h"

#include <algorithm>
#include <map>

namespace lanternleaf {

namespace {

// "The cell is flat" goes on as "the cell is flat"; an id such as L3 stays as it is. No language's title
// begins with a noun of its own (mend.*_title), so that this holds for German too.
std::string within_a_sentence(std::string text) {
    if (text.size() > 1 && text[0] >= 'A' && text[0] <= 'Z' && text[1] >= 'a' && text[1] <= 'z') {
        text[0] = static_cast<char>(text[0] - 'A' + 'a');
    }
    return text;
}

} // namespace

std::vector<CauseChance> cause_chances(const MendSession& session) {
    const MendModel& model = *session.model;
    std::map<std::pair<int, int>, CauseChance> found;
    std::map<std::pair<int, int>, double> top;
    for (std::size_t h = 0; h < session.chance.size(); ++h) {
        int a = static_cast<int>(h);
        int b = -1;
        if (h >= model.faults.size()) {
            const FaultPair& pair = (*session.pairs)[h - model.faults.size()];
            a = pair.a;
            b = pair.b;
        }
        int cause_a = model.faults[static_cast<std::size_t>(a)].cause;
        int cause_b = b < 0 ? -1 : model.faults[static_cast<std::size_t>(b)].cause;
        if (b >= 0 && cause_b < cause_a) {
            std::swap(a, b);
            std::swap(cause_a, cause_b);
        }
        CauseChance& cause = found[{cause_a, cause_b}];
        double& best = top[{cause_a, cause_b}];
        cause.a = cause_a;
        cause.b = cause_b;
        cause.probability += session.chance[h];
        if (session.chance[h] >= best) {
            best = session.chance[h];
            cause.fault = a;
            cause.fault_b = b;
        }
    }
    std::vector<CauseChance> list;
    for (const auto& [key, cause] : found) {
        list.push_back(cause);
    }
    std::stable_sort(list.begin(), list.end(), [](const CauseChance& x, const CauseChance& y) {
        return x.probability > y.probability;
    });
    return list;
}

std::vector<Cause> causes(const MendSession& session, std::size_t most) {
    const Words& words = session.model->words;
    std::vector<Cause> list;
    for (const CauseChance& chance : cause_chances(session)) {
        if (list.size() >= most) {
            break;
        }
        Cause cause = describe_fault(*session.model, chance.fault);
        cause.ids.push_back(chance.a);
        if (chance.b >= 0) {
            const Cause second = describe_fault(*session.model, chance.fault_b);
            cause.title = words("mend.two_title",
                                {{"first", cause.title}, {"second", within_a_sentence(second.title)}});
            cause.sentence = words("mend.two_why");
            cause.fix = words("mend.two_fix", {{"first", cause.fix}, {"second", second.fix}});
            cause.places.insert(cause.places.end(), second.places.begin(), second.places.end());
            cause.ids.push_back(chance.b);
            // Only one change fits in a cause; the session after the first mending names the other.
        }
        cause.probability = chance.probability;
        list.push_back(std::move(cause));
    }
    return list;
}

} // namespace lanternleaf
