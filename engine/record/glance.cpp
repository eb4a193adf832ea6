#include "record/glance.h"

#include "cardfile/cardfile.h"
#include "cardfile/json_tree.h"
#include "record/journal.h"
#include "record/utc.h"

#include <array>
#include <charconv>
#include <optional>
#include <string_view>

namespace lanternleaf {

namespace {

/// Which steps are closed, by the rules of apply_event().
struct Steps {
    std::array<bool, kStepCount> proved{};
    std::array<bool, kStepCount> regardless{};
    std::array<std::int64_t, kStepCount> stopped_s{}; ///< 0: its last verdict was not 'stopped'
};

void take(Steps& steps, Glance& out, EventKind kind, int step, bool proved, std::int64_t at_s) {
    const std::size_t i = static_cast<std::size_t>(step - 1);
    if (kind == EventKind::verdict) {
        steps.proved[i] = proved;
        steps.stopped_s[i] = proved ? 0 : steps.stopped_s[i] != 0 ? steps.stopped_s[i] : at_s;
        out.stops += proved ? 0 : 1;
    } else if (kind == EventKind::regardless) {
        steps.regardless[i] = true;
        steps.stopped_s[i] = 0;
    } else if (kind == EventKind::step_opened) {
        steps.proved[i] = false;
        steps.regardless[i] = false;
        out.abandoned = false;
    } else if (kind == EventKind::finished) {
        out.finished = true;
    } else if (kind == EventKind::abandoned) {
        out.abandoned = true;
    }
}

void close(const Steps& steps, Glance& out) {
    out.step = 1;
    while (out.step <= kStepCount && (steps.proved[static_cast<std::size_t>(out.step - 1)] ||
                                      steps.regardless[static_cast<std::size_t>(out.step - 1)])) {
        ++out.step;
    }
    if (out.step <= kStepCount) {
        out.stopped_s = steps.stopped_s[static_cast<std::size_t>(out.step - 1)];
        out.stopped = out.stopped_s != 0;
    }
}

/// Walks along one line; every step says whether the line goes on as expected.
class Walk {
public:
    explicit Walk(std::string_view line) : rest_(line) {}

    bool past(std::string_view words) {
        if (rest_.substr(0, words.size()) != words) {
            return false;
        }
        rest_.remove_prefix(words.size());
        return true;
    }

    bool number(int& out) {
        const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), out);
        if (error != std::errc()) {
            return false;
        }
        rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
        return true;
    }

    /// Up to the closing quote; false when it holds an escape, which is for the JSON reader.
    bool words(std::string_view& out) {
        const std::size_t end = rest_.find('"');
        if (end == std::string_view::npos) {
            return false;
        }
        out = rest_.substr(0, end);
        rest_.remove_prefix(end + 1);
        return out.find('\\') == std::string_view::npos;
    }

    [[nodiscard]] std::string_view rest() const { return rest_; }

private:
    std::string_view rest_;
};

bool matters(EventKind kind) {
    return kind == EventKind::verdict || kind == EventKind::regardless || kind == EventKind::step_opened ||
           kind == EventKind::finished || kind == EventKind::abandoned;
}

// "2026-05-04T10:00:00Z"; seconds of the day are enough work for every line, so only where they are shown.
std::optional<std::int64_t> time_of(std::string_view at) {
    return utc_from(std::string(at));
}

// The first line: id, title and whose it is. The card itself is not read.
bool take_first(std::string_view line, Glance& out, std::string_view& at) {
    Walk walk(line);
    std::string_view id;
    std::string_view title;
    if (!walk.past(R"({"lanternleaf":1,"kind":"build","n":1,"at":")") || !walk.words(at) ||
        !walk.past(R"(,"event":"started","id":")") || !walk.words(id)) {
        return false;
    }
    static_cast<void>(walk.past(R"(,"walked":true)"));
    std::string_view part;
    if (walk.past(R"(,"batch":")")) {
        if (!walk.words(part)) {
            return false;
        }
        out.batch = part;
    }
    if (walk.past(R"(,"maker":")")) {
        if (!walk.words(part)) {
            return false;
        }
        out.maker = part;
    }
    if (!walk.past(R"(,"card":{"lanternleaf":1,"kind":"card","title":")") || !walk.words(title)) {
        return false;
    }
    out.id = id;
    out.title = title;
    return true;
}

// One later line; false when it is not as this program writes it.
bool take_line(std::string_view line, int n, Steps& steps, Glance& out, std::string_view& at) {
    Walk walk(line);
    int number = 0;
    std::string_view name;
    if (!walk.past(R"({"n":)") || !walk.number(number) || number != n || !walk.past(R"(,"at":")") ||
        !walk.words(at) || at.size() != 20 || !walk.past(R"(,"event":")") || !walk.words(name) ||
        line.back() != '}') {
        return false;
    }
    EventKind kind = EventKind::note;
    if (!event_kind_from(std::string(name), kind)) {
        return false;
    }
    if (!matters(kind)) {
        return true;
    }
    int step = 1;
    const bool placed = walk.past(R"(,"step":)") && walk.number(step);
    const bool ends = kind == EventKind::finished || kind == EventKind::abandoned;
    if ((!placed && !ends) || step < 1 || step > kStepCount) {
        return false;
    }
    const bool proved = walk.rest().ends_with(R"("state":"proved"})");
    if (kind == EventKind::verdict && !proved && !walk.rest().ends_with(R"("state":"stopped"})")) {
        return false;
    }
    const std::optional<std::int64_t> at_s = time_of(at);
    if (!at_s) {
        return false;
    }
    take(steps, out, kind, step, proved, *at_s);
    return true;
}

bool quick_glance(std::string_view text, Glance& out) {
    Steps steps;
    std::string_view at;
    std::size_t start = 0;
    while (start < text.size()) {
        const std::size_t end = text.find('\n', start);
        const std::string_view line = text.substr(start, end - start);
        ++out.events;
        if (out.events == 1) {
            if (!take_first(line, out, at)) {
                return false;
            }
            const std::optional<std::int64_t> began = time_of(at);
            if (!began || line.back() != '}') {
                return false;
            }
            out.started_s = *began;
        } else if (line.empty() || !take_line(line, out.events, steps, out, at)) {
            return false;
        }
        start = end + 1;
    }
    const std::optional<std::int64_t> last = time_of(at);
    out.last_s = last.value_or(0);
    close(steps, out);
    return last.has_value();
}

Outcome<Glance> full_glance(const std::string& text, const std::string& file) {
    const Outcome<std::vector<Event>> events = read_journal(text, file);
    if (!events) {
        return events.problem();
    }
    Glance out;
    Steps steps;
    for (const Event& event : events.value()) {
        if (out.events == 0 && event.kind != EventKind::started) {
            return Problem{file, "line 1", "expected the start of a build"};
        }
        if (event.kind == EventKind::started) {
            out.id = event.text;
            out.batch = event.batch;
            out.maker = event.maker;
            out.started_s = event.at_s;
            const cardfile::Tree card = cardfile::Tree::parse(event.card, nullptr, false);
            const auto title = card.find("title");
            out.title = title != card.end() && title->is_string() ? title->get<std::string>() : event.text;
        }
        const bool ends = event.kind == EventKind::finished || event.kind == EventKind::abandoned;
        take(steps, out, event.kind, ends || event.step < 1 ? 1 : event.step,
             event.state == VerdictState::proved, event.at_s);
        out.last_s = event.at_s;
        ++out.events;
    }
    close(steps, out);
    return out;
}

} // namespace

Outcome<Glance> glance_at(const std::string& text, const std::string& file) {
    if (text.find_first_not_of('\0') != std::string::npos && text[0] != '{') {
        return Problem{file, "line 1", "expected a build's journal, found something else"};
    }
    const std::size_t end = whole_lines_end(text);
    if (end == 0) {
        return Glance{};
    }
    Glance quick;
    if (quick_glance(std::string_view(text).substr(0, end), quick)) {
        return quick;
    }
    return full_glance(text, file);
}

} // namespace lanternleaf
