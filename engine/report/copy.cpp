#include "report/copy.h"

#include "cardfile/cardfile.h"
#include "files/files.h"
#include "guide/verdict.h"
#include "record/journal.h"
#include "report/readings_table.h"
#include "report/record_page.h"
#include "report/record_sheet.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>

namespace lanternleaf {

namespace {

std::string journal_of(const std::vector<Event>& events) {
    std::string text;
    int number = 0;
    for (const Event& event : events) {
        text += write_event(event, ++number);
        text += '\n';
    }
    return text;
}

// A photo whose file is missing is named and breaks nothing else.
void leave_out_missing(Story& story, const std::vector<CopiedFile>& photos, const Words& words) {
    std::vector<StoryPhoto> there;
    for (const StoryPhoto& photo : story.photos) {
        const auto same = [&](const CopiedFile& file) { return file.name == photo.file; };
        if (std::any_of(photos.begin(), photos.end(), same)) {
            there.push_back(photo);
        } else {
            story.notes.push_back(
                words("record_page.photo_missing", {{"caption", photo.caption}, {"file", photo.file}}));
        }
    }
    story.photos = std::move(there);
}

// A walk's outcome, "7 of 7 lit, 7 of 7 steps proved"; anything else stays.
std::string retold_outcome(const std::string& recorded, const Words& words) {
    int lit = 0;
    int all = 0;
    int proved = 0;
    int steps = 0;
    const bool counted = std::sscanf(recorded.c_str(), "%d of %d lit, %d of %d steps proved", &lit, &all,
                                     &proved, &steps) == 4;
    const auto said = [&](const Words& in) {
        return in("walk.outcome", {{"lit", lit}, {"all", all}, {"proved", proved}, {"steps", steps}});
    };
    return counted && said(english()) == recorded ? said(words) : recorded;
}

// Journals are English: a verdict is told anew where the card as built and the readings still give the same
// one.
void retell(Story& story, const Record& record, const Parts& shipped, const Words& words) {
    if (words.language() == english().language() && words.unit() == english().unit()) {
        return;
    }
    story.outcome = retold_outcome(story.outcome, words);
    const Parts parts = merged(shipped, record.card.own_parts);
    for (StoryStep& step : story.steps) {
        const auto id = static_cast<StepId>(step.number);
        const std::vector<Reading>& readings = record.at(id).readings;
        if (!step.verdict.empty() &&
            judge_step(record.as_built, parts, id, readings).sentence == step.verdict) {
            step.verdict = judge_step(record.as_built, parts, id, readings, words).sentence;
        }
    }
}

} // namespace

Outcome<std::vector<CopiedFile>> copy_of(const Record& record, const std::vector<Event>& events,
                                         const Parts& parts, const std::string& card_name,
                                         const CopyWish& wish, const Words& words) {
    Story story = tell(record, events, parts, words);
    retell(story, record, parts, words);
    leave_out_missing(story, wish.photos, words);
    Outcome<std::string> pdf = record_pdf(story, Paper::a4, wish.fonts, words, wish.photos);
    if (!pdf) {
        return pdf.problem();
    }
    std::vector<CopiedFile> files;
    files.push_back({"record.html", record_page(story, words)});
    files.push_back({"record.pdf", std::move(pdf).value()});
    files.push_back({"readings.csv", readings_table(tell(record, events, parts))});
    files.push_back({"record.json", write_record(record, parts)});
    files.push_back({"build.jsonl", wish.journal.empty() ? journal_of(events) : wish.journal});
    files.push_back({card_name + ".card.json", write_card(record.card)});
    if (!(record.as_built == record.card)) {
        files.push_back({card_name + "-as-built.card.json", write_card(record.as_built)});
    }
    for (const StoryPhoto& photo : story.photos) {
        for (const CopiedFile& file : wish.photos) {
            if (file.name == photo.file) {
                files.push_back({"photos/" + file.name, file.bytes});
            }
        }
    }
    return files;
}

Outcome<Done> write_copy(const std::string& folder, const std::vector<CopiedFile>& files) {
    namespace fs = std::filesystem;
    std::error_code code;
    if (fs::exists(folder, code)) {
        return Problem{folder, "", "expected a folder that is not there yet"};
    }
    const auto refuse = [&](const Problem& problem) {
        std::error_code ignored;
        fs::remove_all(folder, ignored); // ours alone: it was not there before
        return problem;
    };
    if (const Outcome<Done> made = make_folder(folder); !made) {
        return refuse(made.problem());
    }
    for (const CopiedFile& file : files) {
        if (const std::size_t slash = file.name.find('/'); slash != std::string::npos) {
            if (const Outcome<Done> made = make_folder(folder + "/" + file.name.substr(0, slash)); !made) {
                return refuse(made.problem());
            }
        }
        if (const Outcome<Done> written = write_file(folder + "/" + file.name, file.bytes); !written) {
            return refuse(written.problem());
        }
    }
    return Done{};
}

} // namespace lanternleaf
