// Batch file: a batch's events on the disk. Each device writes a file of its own and reads all: so a class
// set of tablets shares a batch through any file synchroniser, and nothing has to be merged.
#pragma once

#include "batch/batch_event.h"
#include "files/line_file.h"

#include <string>
#include <utility>

namespace lanternleaf {

/// A batch's file open for adding. Locking, syncing and torn lines are as in LineFile.
class BatchFile {
public:
    [[nodiscard]] static Outcome<BatchFile> open(const std::string& path);
    /// As open, but a file that is already there is a Problem.
    [[nodiscard]] static Outcome<BatchFile> create(const std::string& path);
    [[nodiscard]] Outcome<Done> add(const BatchEvent& event);

    [[nodiscard]] int count() const { return file_.count(); }

private:
    explicit BatchFile(LineFile file) : file_(std::move(file)) {}

    LineFile file_;
};

} // namespace lanternleaf
