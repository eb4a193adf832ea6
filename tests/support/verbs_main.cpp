// The command line without the app: what platforms/ does for the verbs, and nothing else.
#include "verbs/verbs.h"

#include <cstdlib>
#include <ctime>
#include <iostream>
#include <vector>

int main(int count, char** words) {
    const std::vector<std::string> args(words + 1, words + count);
    lanternleaf::VerbSurroundings around;
    around.assets = LANTERNLEAF_SOURCE "/assets";
    if (const char* fonts = std::getenv("LANTERNLEAF_FONTS")) {
        around.fonts = fonts;
    }
    around.now_s = [] { return static_cast<std::int64_t>(std::time(nullptr)); };
    return lanternleaf::run_verb(args, std::cout, std::cerr, around);
}
