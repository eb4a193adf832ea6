#include "batch/batch.h"

#include <algorithm>

namespace lanternleaf {

namespace {

void take_event(Batch& batch, const BatchEvent& event) {
    switch (event.kind) {
    case BatchEventKind::started:
        batch.id = event.text;
        batch.card = event.card;
        batch.title = event.title;
        batch.count = event.count;
        batch.purpose = event.purpose;
        batch.cells_each = event.cells_each;
        batch.audience = event.audience;
        batch.holder = event.holder;
        batch.gives_cell = event.gives_cell;
        batch.started_s = event.at_s;
        break;
    case BatchEventKind::opened:
        break;
    case BatchEventKind::joined:
        if (std::find(batch.makers.begin(), batch.makers.end(), event.text) == batch.makers.end()) {
            batch.makers.push_back(event.text);
        }
        break;
    case BatchEventKind::shown_as:
        batch.shown_as[event.text] = event.as;
        break;
    case BatchEventKind::cells_out:
        batch.cells_out += event.count;
        break;
    case BatchEventKind::cells_back:
        batch.cells_back += event.count;
        break;
    case BatchEventKind::note:
        batch.notes.push_back(event.text);
        break;
    case BatchEventKind::closed:
        batch.closed = {event.at_s, event.out, event.back, event.in_cards, event.missing};
        break;
    case BatchEventKind::reopened:
        batch.closed.reset();
        break;
    }
}

} // namespace

Outcome<Batch> fold_batch(const std::vector<std::vector<BatchEvent>>& files) {
    std::vector<const BatchEvent*> events;
    const BatchEvent* start = nullptr;
    for (const std::vector<BatchEvent>& file : files) {
        for (const BatchEvent& event : file) {
            if (event.kind == BatchEventKind::started) {
                if (start != nullptr) {
                    return Problem{"", "", "expected one start of a batch, found two"};
                }
                start = &event;
            } else {
                events.push_back(&event);
            }
        }
    }
    if (start == nullptr) {
        return Problem{"", "",
                       "expected the file in which the batch was started; it may still be on its way"};
    }
    for (const BatchEvent* event : events) {
        if (event->kind == BatchEventKind::opened && event->text != start->text) {
            return Problem{"", "", "expected files of the batch " + start->text + ", found " + event->text};
        }
    }
    // Sums, names and notes come out the same in any order; only 'shown as' and 'closed' go by the clocks.
    std::stable_sort(events.begin(), events.end(),
                     [](const BatchEvent* a, const BatchEvent* b) { return a->at_s < b->at_s; });
    Batch batch;
    take_event(batch, *start);
    for (const BatchEvent* event : events) {
        take_event(batch, *event);
    }
    return batch;
}

std::string shown_maker(const Batch& batch, const std::string& nickname) {
    const auto found = batch.shown_as.find(nickname);
    return found == batch.shown_as.end() ? nickname : found->second;
}

CellBalance cell_balance(const Batch& batch, const std::vector<BuildProgress>& builds) {
    CellBalance cells;
    cells.out = batch.cells_out;
    cells.back = batch.cells_back;
    for (const BuildProgress& build : builds) {
        (build.finished ? cells.in_finished : cells.in_open) += build.cell_in ? batch.cells_each : 0;
    }
    cells.missing = cells.out - cells.back - cells.in_finished;
    return cells;
}

} // namespace lanternleaf
