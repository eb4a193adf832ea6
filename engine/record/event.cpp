#include "record/event.h"

#include <iterator>
#include <utility>

namespace lanternleaf {

namespace {

// In the order of EventKind.
constexpr const char* kNames[] = {
    "started",     "audience",   "move-done", "move-undone", "reading",  "change",
    "verdict",     "regardless", "adult",     "cell-in",     "cell-out", "note",
    "step-opened", "finished",   "abandoned", "mend-told",   "mended",
};
static_assert(std::size(kNames) == kEventKindCount);

} // namespace

const char* name_of(EventKind kind) {
    return kNames[static_cast<int>(kind)];
}

bool event_kind_from(const std::string& name, EventKind& out) {
    for (int i = 0; i < kEventKindCount; ++i) {
        if (name == kNames[i]) {
            out = static_cast<EventKind>(i);
            return true;
        }
    }
    return false;
}

const char* name_of(VerdictState state) {
    return state == VerdictState::proved ? "proved" : "stopped";
}

bool audience_from(const std::string& name, Audience& out) {
    for (const Audience audience : {Audience::adults, Audience::children, Audience::small_children,
                                    Audience::school_class, Audience::sale}) {
        if (name == name_of(audience)) {
            out = audience;
            return true;
        }
    }
    return false;
}

Event event_at(std::int64_t at_s, EventKind kind, int step, std::string text) {
    Event event;
    event.kind = kind;
    event.at_s = at_s;
    event.step = step;
    event.text = std::move(text);
    return event;
}

} // namespace lanternleaf
