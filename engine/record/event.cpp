#include "record/event.h"

#include <iterator>
#include <utility>

namespace lanternleaf {

namespace {

// In the order of EventKind.
constexpr const char* kNames[] = {
    "started",    "audience",  "move-done", "move-undone", "reading",       "change",      "verdict",
    "regardless", "adult",     "cell-in",   "cell-out",    "note",          "step-opened", "finished",
    "abandoned",  "mend-told", "mended",    "photo",       "photo-removed", "learnt",
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

bool is_photo_name(const std::string& name) {
    if (name.empty() || name.size() > 60 || name.front() == '.' || name.back() == '.' ||
        name.find("..") != std::string::npos) {
        return false;
    }
    for (const char c : name) {
        if (!((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '.')) {
            return false;
        }
    }
    return true;
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
