#include "files/files.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#ifdef __linux__
#include <sys/mount.h>
#include <sys/stat.h>
#include <unistd.h>
#endif

using namespace lanternleaf;
namespace fs = std::filesystem;

namespace {

// A folder of its own for one test, gone afterwards.
struct Folder {
    fs::path path;

    Folder() {
        std::string name = (fs::temp_directory_path() / "lanternleaf-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()) != nullptr);
        path = name;
    }

    ~Folder() {
        std::error_code ignored;
        fs::remove_all(path, ignored);
    }

    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    [[nodiscard]] std::string in(const std::string& name) const { return (path / name).string(); }

    [[nodiscard]] std::vector<std::string> all() const { return files_in(path.string(), ""); }
};

bool says(const Problem& problem, const std::string& words) {
    const std::string sentence = problem.sentence();
    INFO(sentence);
    CHECK(sentence.find('\n') == std::string::npos);
    return sentence.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("What is written is read back, and no other file is left", "[files]") {
    const Folder folder;
    const std::string path = folder.in("card.json");
    std::string content = "line one\nline two\r\n";
    content += '\0';
    content += "\xff beyond text";
    REQUIRE(write_file(path, content));
    CHECK(read_file(path).value() == content);
    REQUIRE(write_file(path, ""));
    CHECK(read_file(path).value().empty());
    CHECK(folder.all() == std::vector<std::string>{"card.json"});
}

TEST_CASE("Names with spaces and letters of any language work", "[files]") {
    const Folder folder;
    const std::string path = folder.in("Zimní světlo – 冬.card.json");
    REQUIRE(write_file(path, "x"));
    CHECK(read_file(path).value() == "x");
    CHECK(files_in(folder.path.string(), ".card.json") ==
          std::vector<std::string>{"Zimní světlo – 冬.card.json"});
}

TEST_CASE("What cannot be read is a sentence with the file's name", "[files]") {
    const Folder folder;
    const std::string missing = folder.in("none.json");
    REQUIRE_FALSE(read_file(missing).ok());
    CHECK(says(read_file(missing).problem(), "found nothing of this name"));
    CHECK(read_file(missing).problem().file == missing);
    CHECK(says(read_file(folder.path.string()).problem(), "expected a file, found a folder"));
    CHECK(says(read_file("").problem(), "found nothing of this name"));
#ifdef __linux__
    // A pipe would block for ever and a device never end.
    REQUIRE(mkfifo(folder.in("pipe").c_str(), 0600) == 0);
    CHECK(says(read_file(folder.in("pipe")).problem(), "found a device or a pipe"));
    CHECK(says(read_file("/dev/zero").problem(), "found a device or a pipe"));
#endif
}

TEST_CASE("Too large files are refused, before they are read and before they are written", "[files]") {
    const Folder folder;
    const std::string path = folder.in("large.json");
    REQUIRE(write_file(path, "small"));
    fs::resize_file(path, kMostBytes + 1); // sparse
    CHECK(says(read_file(path).problem(), "at most 32 MB"));
    fs::resize_file(path, kMostBytes);
    CHECK(read_file(path).value().size() == kMostBytes);
    REQUIRE(write_file(path, "small"));
    CHECK(says(write_file(path, std::string(kMostBytes + 1, 'x')).problem(), "at most 32 MB"));
    CHECK(read_file(path).value() == "small");
}

TEST_CASE("What cannot be written is a sentence and changes nothing", "[files]") {
    const Folder folder;
    CHECK(says(write_file(folder.in("no/such/card.json"), "x").problem(), "a folder that can be written to"));
    CHECK_FALSE(fs::exists(folder.in("no")));
    REQUIRE(make_folder(folder.in("sub")));
    CHECK(says(write_file(folder.in("sub"), "x").problem(), "found a folder"));
    CHECK(says(write_file("", "x").problem(), "name of a file"));
    CHECK(says(write_file(folder.in("sub") + "/", "x").problem(), "name of a file"));
    CHECK(folder.all().empty());
}

TEST_CASE("A leftover of an interrupted write is neither used nor removed", "[files]") {
    const Folder folder;
    const std::string path = folder.in("a.json");
    std::ofstream(path + ".tmp1") << "someone else's";
    REQUIRE(write_file(path, "mine"));
    CHECK(read_file(path).value() == "mine");
    CHECK(read_file(path + ".tmp1").value() == "someone else's");
    CHECK(files_in(folder.path.string(), ".json") == std::vector<std::string>{"a.json"});
}

TEST_CASE("A link is written through, and a file keeps its permissions", "[files]") {
    const Folder folder;
    const std::string path = folder.in("real.json");
    REQUIRE(write_file(path, "old"));
    fs::permissions(path, fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink("real.json", folder.in("link.json"));
    REQUIRE(write_file(folder.in("link.json"), "new"));
    CHECK(fs::is_symlink(folder.in("link.json")));
    CHECK(read_file(path).value() == "new");
    CHECK(fs::status(path).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
}

TEST_CASE("Folders are made with those above them, once", "[files]") {
    const Folder folder;
    const std::string deep = folder.in("a/b/c");
    REQUIRE(make_folder(deep));
    CHECK(fs::is_directory(deep));
    CHECK(make_folder(deep).ok());
    REQUIRE(write_file(folder.in("file"), "x"));
    CHECK(says(make_folder(folder.in("file")).problem(), "found a file"));
    CHECK(says(make_folder(folder.in("file/below")).problem(), "expected a folder"));
}

TEST_CASE("The files of a folder come sorted, by ending, without folders", "[files]") {
    const Folder folder;
    for (const char* name : {"b.card.json", "a.card.json", "c.record.json"}) {
        REQUIRE(write_file(folder.in(name), "x"));
    }
    REQUIRE(make_folder(folder.in("d.card.json")));
    CHECK(files_in(folder.path.string(), ".card.json") ==
          std::vector<std::string>{"a.card.json", "b.card.json"});
    CHECK(files_in(folder.in("missing"), ".card.json").empty());
}

#ifdef __linux__
// A disk that is really full: the old file must stay whole and nothing else be left. Needs the right to
// mount.
TEST_CASE("A full disk leaves the old file and no temporary one", "[files]") {
    const Folder folder;
    if (mount("tmpfs", folder.path.c_str(), "tmpfs", 0, "size=64k") != 0) {
        WARN("skipped: mounting a small file system is not allowed here");
        return;
    }

    struct Unmount {
        const fs::path& path;

        ~Unmount() { umount2(path.c_str(), MNT_DETACH); }
    } const unmount{folder.path};

    const std::string path = folder.in("card.json");
    const std::string old(20'000, 'o');
    REQUIRE(write_file(path, old));
    const auto full = write_file(path, std::string(100'000, 'n'));
    REQUIRE_FALSE(full.ok());
    CHECK(says(full.problem(), "nothing was changed: No space left on device"));
    CHECK(read_file(path).value() == old);
    CHECK(folder.all() == std::vector<std::string>{"card.json"});
    CHECK(write_file(path, std::string(20'000, 'n')).ok()); // room is there again
}

TEST_CASE("A read-only disk is a sentence", "[files]") {
    const Folder folder;
    if (mount("tmpfs", folder.path.c_str(), "tmpfs", MS_RDONLY, "size=64k") != 0) {
        WARN("skipped: mounting a small file system is not allowed here");
        return;
    }
    const auto written = write_file(folder.in("card.json"), "x");
    umount2(folder.path.c_str(), MNT_DETACH);
    REQUIRE_FALSE(written.ok());
    CHECK(says(written.problem(), "Read-only file system"));
}
#endif
