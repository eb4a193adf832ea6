#include "exchange/bundle.h"
#include "findings/review.h"
#include "verbs/plain_text.h"
#include "verbs/verb.h"

#include <ostream>

namespace lanternleaf {

Outcome<ExitStatus> import_verb(const Arguments& args, std::ostream& out, const VerbSurroundings& around) {
    const Outcome<Parts> shipped = load_parts(around.assets);
    if (!shipped) {
        return shipped.problem();
    }
    const Outcome<std::vector<LooseFile>> files = read_bundle_folder(args.at("FOLDER"));
    if (!files) {
        return files.problem();
    }
    const Outcome<CardBundle> bundle = check_bundle(files.value(), shipped.value());
    if (!bundle) {
        return bundle.problem();
    }
    const std::string library = args.at("--into");
    const Outcome<KeptCard> kept = keep_bundle(bundle.value(), {library, around.assets + "/cards"});
    if (!kept) {
        return kept.problem();
    }
    const std::string path = library + "/cards/" + kept.value().name + ".card.json";
    const Outcome<OpenCard> card = open_card(path, parts_beside(path, shipped.value()));
    if (!card) {
        return card.problem();
    }
    const Review found = review(card.value().card, card.value().parts);
    out << printable(path) << (kept.value().was_there ? " was there already\n" : " is written\n")
        << counted(found.count(Level::problem), "problem") << ", "
        << counted(found.count(Level::caution), "caution") << "\n";
    if (bundle.value().art_missing) {
        out << "its picture " << printable(bundle.value().card.sheet.art->file) << " did not come with it\n";
    }
    return found.count(Level::problem) == 0 ? ExitStatus::well : ExitStatus::card_problem;
}

} // namespace lanternleaf
