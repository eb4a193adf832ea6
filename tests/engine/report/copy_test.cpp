// A copy of a record, judged from outside: xmllint (libxml2) and tidy read the page, qpdf and pdftotext
// (poppler) the printed sheet, Python's csv module the table, Python's zipfile the archive. A judge that is
// not installed is named in a warning; the checks in code below hold anyway.
#include "files/files.h"
#include "report/copy.h"
#include "report/readings_table.h"
#include "report/record_page.h"
#include "report/record_sheet.h"
#include "support/make_build.h"
#include "support/words_of.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <stb/stb_image_write.h>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

std::vector<Event> events_with_awkward_words() {
    std::vector<Event> events = make::every_event();
    Event note = event_at(make::kMorning_s, EventKind::note, 0,
                          "=SUM(A1) <script>alert(\"x\")</script> & \x01 'quotes', commas; Ω µ ✓");
    Event photo = event_at(make::kMorning_s, EventKind::photo, 4, "Front \"& <back>\"");
    photo.photo = "photo-2.jpg";
    Event lost = event_at(make::kMorning_s, EventKind::photo, 0, "After dark");
    lost.photo = "photo-3.jpg";
    events.insert(events.end(), {note, photo, lost});
    return events;
}

struct Told {
    std::vector<Event> events;
    Record record;
    Story story;
};

Told told() {
    Told out;
    out.events = events_with_awkward_words();
    Outcome<Record> record = fold(out.events, make::kParts);
    REQUIRE(record.ok());
    out.record = std::move(record).value();
    out.story = tell(out.record, out.events, make::kParts);
    return out;
}

bool has_tool(const std::string& tool) {
    return std::system(("command -v " + tool + " >/dev/null 2>&1").c_str()) == 0;
}

// Runs an outside judge on a file; warns when it is not there.
void judged(const std::string& tool, const std::string& command) {
    if (!has_tool(tool)) {
        WARN(tool << " is not installed: not judged by it");
        return;
    }
    INFO(command);
    CHECK(std::system((command + " >/dev/null 2>&1").c_str()) == 0);
}

std::vector<CopiedFile> files_of(const Told& build) {
    CopyWish wish;
    wish.photos.push_back({"photo-2.jpg", "not looked at here"});
    Outcome<std::vector<CopiedFile>> files =
        copy_of(build.record, build.events, make::kParts, "one-window", wish);
    REQUIRE(files.ok());
    return std::move(files).value();
}

} // namespace

TEST_CASE("The page is well-formed, speaks to a screen reader and runs nothing", "[report]") {
    const Told build = told();
    const std::string page = record_page(build.story);
    const make::TempFolder folder("lanternleaf-page");
    const std::string path = folder.at("record.html");
    REQUIRE(write_file(path, page).ok());
    judged("xmllint", "xmllint --noout --nonet " + path); // strict: as XML
    judged("tidy", "tidy -q -e " + path);                 // status 0: no warning and no error
    CHECK_THAT(page, Contains("<html lang=\"en\""));
    CHECK(page.find("<script") == std::string::npos);
    CHECK(page.find("http://www.w3.org/1999/xhtml") != std::string::npos);
    CHECK(page.find("src=\"http") == std::string::npos);
    CHECK(page.find('\x01') == std::string::npos);
    CHECK_THAT(page, Contains("scope=\"col\"") && Contains("scope=\"row\"") && Contains("<caption>"));
    CHECK_THAT(page, Contains("alt=\"Photo: Front &quot;&amp; &lt;back&gt;&quot;, step 4\""));
    // One h1 and no level left out.
    CHECK(page.find("<h1>") == page.rfind("<h1>"));
    CHECK(page.find("<h3>") == std::string::npos);
}

TEST_CASE("The printed sheet is a sound PDF with the record's words", "[report]") {
    const Told build = told();
    const Outcome<std::string> pdf = record_pdf(build.story, Paper::a4, {});
    REQUIRE(pdf.ok());
    CHECK(pdf.value() == record_pdf(build.story, Paper::a4, {}).value());
    const make::TempFolder folder("lanternleaf-pdf");
    const std::string path = folder.at("record.pdf");
    REQUIRE(write_file(path, pdf.value()).ok());
    judged("qpdf", "qpdf --check " + path);
    if (has_tool("pdftotext")) {
        REQUIRE(std::system(("pdftotext -layout " + path).c_str()) == 0);
        const Outcome<std::string> text = read_file(folder.at("record.txt"));
        REQUIRE(text.ok());
        CHECK_THAT(text.value(), Contains("One window") && Contains("Lay the negative trace") &&
                                     Contains("0.1 ohm") && Contains("went on regardless"));
    }
}

TEST_CASE("Page and sheet speak the maker's language; the table stays English", "[report][words]") {
    const Told build = told();
    for (const char* language : {"de", "es"}) {
        const Words words = words_of(language);
        Outcome<std::vector<CopiedFile>> files =
            copy_of(build.record, build.events, make::kParts, "one-window", {}, words);
        REQUIRE(files.ok());
        const std::string& page = files.value().front().bytes;
        INFO(language);
        CHECK_THAT(page, Contains("<html lang=\"" + std::string(language) + "\""));
        CHECK_THAT(page, Contains(words("record_page.how_ended")) && Contains(words("record_page.about")));
        CHECK(page.find("⟦") == std::string::npos);
        for (const CopiedFile& file : files.value()) {
            if (file.name == "readings.csv") {
                CHECK(file.bytes == readings_table(build.story));
            }
        }
    }
}

TEST_CASE("The printed record shows its photos, small, and a file that is no picture spoils nothing",
          "[report]") {
    Told build = told();
    build.story.photos.clear();
    std::vector<CopiedFile> photos;
    for (int i = 0; i < 7; ++i) { // one more than a page holds
        const int w = i == 0 ? 2000 : 40;
        const int h = i == 0 ? 1000 : 60;
        std::string name = "photo-";
        name.append(std::to_string(i)).append(".jpg");
        std::vector<unsigned char> noise(static_cast<std::size_t>(w) * static_cast<std::size_t>(h) * 3);
        unsigned state = 1;
        for (unsigned char& value : noise) { // noise: what JPEG can do least with
            state = state * 1664525U + 1013904223U;
            value = static_cast<unsigned char>(state >> 24);
        }
        std::string bytes;
        REQUIRE(stbi_write_jpg_to_func(
                    [](void* out, void* data, int size) {
                        static_cast<std::string*>(out)->append(static_cast<const char*>(data),
                                                               static_cast<std::size_t>(size));
                    },
                    &bytes, w, h, 3, noise.data(), 95) != 0);
        photos.push_back({name, bytes});
        build.story.photos.push_back({name, "Größe " + name, 4});
    }
    photos.push_back({"broken.jpg", "\xFF\xD8\xFF not a picture"});
    build.story.photos.push_back({"broken.jpg", "Broken", 0});
    const Outcome<std::string> pdf = record_pdf(build.story, Paper::a4, {}, english(), photos);
    REQUIRE(pdf.ok());
    CHECK(pdf.value() == record_pdf(build.story, Paper::a4, {}, english(), photos).value());
    CHECK(pdf.value().size() < 600'000);
    const make::TempFolder folder("lanternleaf-photos-pdf");
    const std::string path = folder.at("record.pdf");
    REQUIRE(write_file(path, pdf.value()).ok());
    judged("qpdf", "qpdf --check " + path);
    if (has_tool("pdfimages") && has_tool("pdftotext")) {
        // Poppler's list: two head lines, then a line a picture: page, number, type, width, height, ...
        const std::string list = folder.at("list.txt");
        REQUIRE(std::system(("pdfimages -list " + path + " > " + list).c_str()) == 0);
        const std::string lines = read_file(list).value();
        CHECK(std::count(lines.begin(), lines.end(), '\n') == 2 + 7);
        CHECK_THAT(lines, Contains("900   450") && Contains("40    60") && Contains("jpeg"));
        REQUIRE(std::system(("pdftotext -layout -enc UTF-8 " + path).c_str()) == 0);
        CHECK_THAT(read_file(folder.at("record.txt")).value(),
                   Contains("Photo: Größe photo-6.jpg, step 4") && !Contains("Photo: Broken"));
    }
}

TEST_CASE("The table is read back by another's parser, field for field", "[report]") {
    const Told build = told();
    const std::string table = readings_table(build.story);
    CHECK(csv_field("a,b") == "\"a,b\"");
    CHECK(csv_field("say \"x\"") == "\"say \"\"x\"\"\"");
    CHECK(csv_field("two\nlines") == "\"two\nlines\"");
    CHECK(csv_field("plain Ω") == "plain Ω");
    const make::TempFolder folder("lanternleaf-csv");
    const std::string path = folder.at("readings.csv");
    REQUIRE(write_file(path, table).ok());
    // Python's csv module (PEP 305), strict: every row has the header's width, numbers are numbers.
    const std::string script = folder.at("read.py");
    REQUIRE(write_file(script,
                       "import csv,sys\n"
                       "rows=list(csv.reader(open(sys.argv[1],newline='',encoding='utf-8'),strict=True))\n"
                       "assert len(rows)==5, len(rows)\n"
                       "assert all(len(r)==len(rows[0])==15 for r in rows)\n"
                       "i=rows[0].index('value')\n"
                       "vals=[r[i] for r in rows[1:] if r[i]]\n"
                       "assert vals==['0.1'], vals\n"
                       "assert open(sys.argv[1],'rb').read().count(b'\\r\\n')==5\n")
                .ok());
    judged("python3", "python3 " + script + " " + path);
}

TEST_CASE("A copy holds everything, and names the photo that is missing", "[report]") {
    const Told build = told();
    const std::vector<CopiedFile> files = files_of(build);
    const make::TempFolder folder("lanternleaf-copy");
    const std::string path = folder.at("copy");
    REQUIRE(write_copy(path, files).ok());
    for (const char* name : {"record.html", "record.pdf", "readings.csv", "record.json", "build.jsonl",
                             "one-window.card.json", "one-window-as-built.card.json", "photos/photo-2.jpg"}) {
        INFO(name);
        CHECK(std::filesystem::is_regular_file(path + "/" + name));
    }
    CHECK_FALSE(std::filesystem::exists(path + "/photos/photo-3.jpg"));
    CHECK_THAT(read_file(path + "/record.html").value(), Contains("(photo-3.jpg) is missing"));
    // What was copied is a build again: its journal folds to the same record.
    const Outcome<std::vector<Event>> events = read_journal(read_file(path + "/build.jsonl").value(), "copy");
    REQUIRE(events.ok());
    CHECK(write_record(fold(events.value(), make::kParts).value(), make::kParts) ==
          write_record(build.record, make::kParts));
    CHECK(read_card(read_file(path + "/one-window-as-built.card.json").value(), "copy", make::kParts).ok());
    // Not a second time over the first.
    CHECK_FALSE(write_copy(path, files).ok());
    CHECK(std::filesystem::is_regular_file(path + "/record.html"));
}

TEST_CASE("A folder that cannot be written gives one sentence and leaves nothing", "[report]") {
    const make::TempFolder folder("lanternleaf-refused");
    REQUIRE(write_file(folder.at("file"), "x").ok());
    const Outcome<Done> done = write_copy(folder.at("file/copy"), files_of(told()));
    REQUIRE_FALSE(done.ok());
    CHECK(done.problem().sentence().find('\n') == std::string::npos);
    CHECK(read_file(folder.at("file")).value() == "x");
}

TEST_CASE("The archive is read by another's unpacker", "[report]") {
    CHECK(crc32_of("123456789") == 0xCBF43926U); // the check value of CRC-32 (ITU-T V.42)
    const std::vector<CopiedFile> files = files_of(told());
    const std::string bytes = zip("build-1", files);
    CHECK(bytes == zip("build-1", files));
    const make::TempFolder folder("lanternleaf-zip");
    const std::string path = folder.at("copy.zip");
    REQUIRE(write_file(path, bytes).ok());
    judged("python3",
           "python3 -c \"import zipfile;z=zipfile.ZipFile('" + path +
               "');assert z.testzip() is None;assert len(z.namelist())==" + std::to_string(files.size()) +
               ";assert z.read('build-1/record.html')[:9]==b'<!DOCTYPE'\"");
}
