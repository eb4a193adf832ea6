// Short builders for batches in tests.
#pragma once

#include "batch/batch_event.h"
#include "support/make_build.h"

namespace lanternleaf::make {

inline BatchEvent batch_event(BatchEventKind kind, std::int64_t after_s, const std::string& text = {}) {
    BatchEvent event;
    event.kind = kind;
    event.at_s = kMorning_s + after_s;
    event.text = text;
    return event;
}

inline BatchEvent batch_started(const std::string& id, int count, BatchFor purpose) {
    BatchEvent event = batch_event(BatchEventKind::started, 0, id);
    event.card = "harbour-lighthouse";
    event.title = "Harbour lighthouse";
    event.count = count;
    event.purpose = purpose;
    return event;
}

inline BatchEvent cells(BatchEventKind kind, int count, std::int64_t after_s) {
    BatchEvent event = batch_event(kind, after_s);
    event.count = count;
    return event;
}

/// One event of every kind that a batch's first file may hold.
inline std::vector<BatchEvent> every_batch_event(const std::string& id) {
    BatchEvent shown = batch_event(BatchEventKind::shown_as, 2, "Ines");
    shown.as = "Builder 1";
    BatchEvent started = batch_started(id, 3, BatchFor::repeater);
    started.cells_each = 2;
    started.audience = "adults";
    started.holder = "screw-2032";
    started.gives_cell = false;
    BatchEvent closed = batch_event(BatchEventKind::closed, 7);
    closed.out = 3;
    closed.back = 1;
    closed.in_cards = 1;
    closed.missing = 1;
    return {started,
            batch_event(BatchEventKind::joined, 1, "Ines"),
            shown,
            cells(BatchEventKind::cells_out, 3, 3),
            cells(BatchEventKind::cells_back, 2, 4),
            cells(BatchEventKind::cells_back, -1, 5),
            batch_event(BatchEventKind::note, 6, "Grün, \"quoted\""),
            closed,
            batch_event(BatchEventKind::reopened, 8)};
}

inline std::string batch_text(const std::vector<BatchEvent>& events) {
    std::string text;
    int number = 0;
    for (const BatchEvent& event : events) {
        text += write_batch_event(event, ++number) + "\n";
    }
    return text;
}

} // namespace lanternleaf::make
