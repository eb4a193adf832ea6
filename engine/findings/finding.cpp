#include "findings/finding.h"

namespace lanternleaf {

const char* name_of(Level level) {
    switch (level) {
    case Level::problem:
        return "problem";
    case Level::caution:
        return "caution";
    case Level::note:
        return "note";
    }
    return "";
}

} // namespace lanternleaf
