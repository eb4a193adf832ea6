// Files handed to the person: into their own folder, never over what is there.
#include "model/hand_out.h"

#include "files/files.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <string>

using namespace lanternleaf;

namespace {

struct Folder {
    Folder() {
        path = (std::filesystem::temp_directory_path() / "lanternleaf-out-XXXXXX").string();
        REQUIRE(mkdtemp(path.data()) != nullptr);
    }

    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path, ignored);
    }

    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::string path;
};

} // namespace

TEST_CASE("A file handed out twice lies there twice", "[model]") {
    const Folder folder;
    const std::string out = folder.path + "/exports";
    const Outcome<std::string> first = hand_out(out, "lamp.build.html", "one");
    const Outcome<std::string> second = hand_out(out, "lamp.build.html", "two");
    REQUIRE(first.ok());
    REQUIRE(second.ok());
    CHECK(first.value() == out + "/lamp.build.html");
    CHECK(second.value() == out + "/lamp (2).build.html");
    CHECK(read_file(first.value()).value() == "one");
    CHECK(read_file(second.value()).value() == "two");
    CHECK(hand_out(out, "plain", "three").value() == out + "/plain");
    CHECK(hand_out(out, "plain", "four").value() == out + "/plain (2)");
}

TEST_CASE("A file handed out never leaves its folder", "[model]") {
    const Folder folder;
    CHECK(hand_out(folder.path, "../../up.txt", "x").value() == folder.path + "/up.txt");
    for (const char* name : {"", "..", ".", "a/"}) {
        CHECK_FALSE(hand_out(folder.path, name, "x").ok());
    }
    CHECK(files_in(folder.path, "").size() == 1);
}

TEST_CASE("A folder that is no folder is refused with a sentence", "[model]") {
    const Folder folder;
    REQUIRE(write_file(folder.path + "/taken", "").ok());
    const Outcome<std::string> out = hand_out(folder.path + "/taken", "a.txt", "x");
    REQUIRE_FALSE(out.ok());
    CHECK(out.problem().sentence().find("taken") != std::string::npos);
}

TEST_CASE("The desk says which folder its downloads are in", "[model]") {
    // The file's form: freedesktop.org, xdg-user-dirs, user-dirs.dirs(5).
    CHECK(downloads_folder("/people/mia", "") == "/people/mia/Downloads");
    CHECK(downloads_folder("/people/mia",
                           "XDG_DESKTOP_DIR=\"$HOME/Desktop\"\nXDG_DOWNLOAD_DIR=\"$HOME/Hentet\"\n") ==
          "/people/mia/Hentet");
    CHECK(downloads_folder("/people/mia", "XDG_DOWNLOAD_DIR=\"/shared/out\"\n") == "/shared/out");
    CHECK(downloads_folder("/people/mia", "# XDG_DOWNLOAD_DIR=\"/shared/old\"\n") == "/people/mia/Downloads");
    CHECK(downloads_folder("/people/mia", "XDG_DOWNLOAD_DIR=\"$HOME/") == "/people/mia/Downloads");
    CHECK(downloads_folder("/people/mia", "XDG_DOWNLOAD_DIR=\"relative\"\n") == "/people/mia/Downloads");
}
