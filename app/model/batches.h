// Batches: the library's files about batches: library/batches/ID.batch.jsonl from the device that began it,
// ID.TAG.batch.jsonl from any other. Exists so that several tablets share a batch and none waits for another.
#pragma once

#include "batch/batch.h"
#include "model/library.h"

#include <string>
#include <vector>

namespace lanternleaf {

[[nodiscard]] std::vector<ShelfBatch> list_batches(const Surroundings& around,
                                                   const std::vector<ShelfBuild>& builds);
/// All files of a batch, folded.
[[nodiscard]] Outcome<Batch> read_batch(const Surroundings& around, const std::string& id);
/// How far every build of it is; what cannot be read is left out and counted.
[[nodiscard]] std::vector<BuildProgress> read_progress(const std::vector<ShelfBuild>& builds,
                                                       const std::string& batch, int& unreadable);

/// A new batch: `event` is its 'started' without time and id. Gives its id.
[[nodiscard]] Outcome<std::string> start_batch(const Surroundings& around, BatchEvent event);
/// One event into this device's file of the batch, on the disk when this returns.
[[nodiscard]] Outcome<Done> add_to_batch(const Surroundings& around, const std::string& id, BatchEvent event);

} // namespace lanternleaf
