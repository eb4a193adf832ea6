#include "model/batches.h"

#include "batch/batch_file.h"
#include "files/files.h"
#include "model/device_tag.h"

#include <algorithm>
#include <map>

namespace lanternleaf {

namespace {

const char* const kBatchEnding = ".batch.jsonl";

std::string folder_of(const Surroundings& around) {
    return around.library + "/batches";
}

// "ID" of ID.batch.jsonl and of ID.TAG.batch.jsonl.
std::string id_in(const std::string& file) {
    return file.substr(0, file.find('.'));
}

bool ends_in(const std::string& text, const std::string& end) {
    return text.size() >= end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

// The file this device writes: the batch's own where it was begun here.
std::string own_file(const Surroundings& around, const std::string& id) {
    const std::string tag = device_tag(around);
    const std::string first = folder_of(around) + "/" + id;
    const bool ours = tag.empty() || ends_in(id, "-" + tag) || id.find("-" + tag + "-") != std::string::npos;
    return ours ? first + kBatchEnding : first + "." + tag + kBatchEnding;
}

// A card's name may hold any letter, a batch's id may not.
std::string plain(std::string name) {
    for (char& c : name) {
        c = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ? c : '-';
    }
    return name.substr(name.size() > 120 ? name.size() - 120 : 0);
}

Outcome<Batch> read_files(const Surroundings& around, const std::vector<std::string>& files) {
    std::vector<std::vector<BatchEvent>> events;
    for (const std::string& file : files) {
        const std::string path = folder_of(around) + "/" + file;
        const Outcome<std::string> text = read_file(path);
        if (!text) {
            return text.problem();
        }
        Outcome<std::vector<BatchEvent>> one = read_batch_journal(text.value(), path);
        if (!one) {
            return one.problem();
        }
        events.push_back(std::move(one).value());
    }
    Outcome<Batch> batch = fold_batch(events);
    if (!batch) {
        return Problem{folder_of(around) + "/" + files.front(), "", batch.problem().expected};
    }
    return batch;
}

} // namespace

std::vector<ShelfBatch> list_batches(const Surroundings& around, const std::vector<ShelfBuild>& builds) {
    std::map<std::string, std::vector<std::string>> files;
    for (const std::string& file : files_in(folder_of(around), kBatchEnding)) {
        files[id_in(file)].push_back(file);
    }
    std::vector<ShelfBatch> batches;
    for (const auto& [id, names] : files) {
        ShelfBatch shelf;
        shelf.id = id;
        const Outcome<Batch> batch = read_files(around, names);
        if (!batch) {
            shelf.trouble = batch.problem().sentence();
        } else {
            shelf.title = batch.value().title;
            shelf.card_name = batch.value().card;
            shelf.count = batch.value().count;
            shelf.group = batch.value().purpose == BatchFor::group;
            shelf.closed = batch.value().closed.has_value();
            shelf.started_s = batch.value().started_s;
            shelf.shown_as = batch.value().shown_as;
        }
        for (const ShelfBuild& build : builds) {
            if (build.batch == id && build.trouble.empty()) {
                shelf.begun += 1;
                shelf.done += build.finished ? 1 : 0;
                shelf.stopped += build.stopped_s != 0 && !build.finished ? 1 : 0;
                shelf.picture = build.picture;
            }
        }
        batches.push_back(std::move(shelf));
    }
    std::sort(batches.begin(), batches.end(), [](const ShelfBatch& a, const ShelfBatch& b) {
        return a.started_s != b.started_s ? a.started_s > b.started_s : a.id > b.id;
    });
    return batches;
}

Outcome<Batch> read_batch(const Surroundings& around, const std::string& id) {
    std::vector<std::string> names;
    for (const std::string& file : files_in(folder_of(around), kBatchEnding)) {
        if (id_in(file) == id) {
            names.push_back(file);
        }
    }
    if (names.empty()) {
        return Problem{folder_of(around) + "/" + id + kBatchEnding, "", "is not in the library any more"};
    }
    return read_files(around, names);
}

std::vector<BuildProgress> read_progress(const std::vector<ShelfBuild>& builds, const std::string& batch,
                                         int& unreadable) {
    std::vector<BuildProgress> progress;
    unreadable = 0;
    for (const ShelfBuild& build : builds) {
        if (build.batch != batch) {
            continue;
        }
        const Outcome<std::string> text = read_file(build.path);
        Outcome<BuildProgress> one =
            text ? progress_of(text.value(), build.path) : Outcome<BuildProgress>(text.problem());
        if (one && !one.value().id.empty()) {
            one.value().id = build.id; // the file's: it is what the board opens
            progress.push_back(std::move(one).value());
        } else {
            ++unreadable;
        }
    }
    return progress;
}

Outcome<std::string> start_batch(const Surroundings& around, BatchEvent event) {
    for (const std::string& folder : {around.library, folder_of(around)}) {
        if (const Outcome<Done> made = make_folder(folder); !made) {
            return made.problem();
        }
    }
    const std::string first = plain(event.card + "-" + stamp(around.now_s));
    const std::string tag = device_tag(around);
    for (int again = 1;; ++again) {
        std::string id = first;
        for (const std::string& part : {tag, again == 1 ? std::string() : std::to_string(again)}) {
            id.append(part.empty() ? "" : "-").append(part);
        }
        const std::string path = folder_of(around) + "/" + id + kBatchEnding;
        Outcome<BatchFile> file = BatchFile::create(path);
        if (!file && again < 1000 && path_exists(path)) {
            continue;
        }
        if (!file) {
            return file.problem();
        }
        event.kind = BatchEventKind::started;
        event.text = id;
        event.at_s = around.now_s;
        if (const Outcome<Done> added = file.value().add(event); !added) {
            return added.problem();
        }
        return id;
    }
}

Outcome<Done> add_to_batch(const Surroundings& around, const std::string& id, BatchEvent event) {
    Outcome<BatchFile> file = BatchFile::open(own_file(around, id));
    if (!file) {
        return file.problem();
    }
    if (file.value().count() == 0) {
        BatchEvent opened;
        opened.kind = BatchEventKind::opened;
        opened.text = id;
        opened.at_s = around.now_s;
        if (const Outcome<Done> added = file.value().add(opened); !added) {
            return added.problem();
        }
    }
    event.at_s = around.now_s;
    return file.value().add(event);
}

} // namespace lanternleaf
