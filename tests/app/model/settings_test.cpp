// Settings: read back as written, each line by itself, and those of a device kept apart from a shared
// library.
#include "files/files.h"
#include "model/library.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>

using namespace lanternleaf;

namespace {

std::string own_folder() {
    std::string path = (std::filesystem::temp_directory_path() / "lanternleaf-settings-XXXXXX").string();
    REQUIRE(mkdtemp(path.data()) != nullptr);
    return path;
}

} // namespace

TEST_CASE("two devices that share a library keep their own glass and light", "[model]") {
    const std::string top = own_folder();
    Surroundings one;
    one.library = top + "/library";
    one.device = top + "/one";
    Surroundings other = one;
    other.device = top + "/other";
    Settings fine;
    fine.px_per_mm = 10.4;
    fine.night = true;
    fine.region = "any";
    write_settings(one, fine);
    CHECK(read_settings(one) == fine);
    CHECK(read_settings(other) == Settings{});
    Settings coarse;
    coarse.px_per_mm = 5.2;
    write_settings(other, coarse);
    CHECK(read_settings(one) == fine);
    CHECK(read_settings(other) == coarse);
    // One device with a library of its own has no such folder beside it.
    Surroundings alone;
    alone.library = top + "/alone";
    write_settings(alone, fine);
    CHECK(read_settings(alone) == fine);
    std::filesystem::remove_all(top);
}

TEST_CASE("a line of the settings that makes no sense costs only itself", "[model]") {
    const std::string top = own_folder();
    Surroundings around;
    around.library = top;
    REQUIRE(write_file(top + "/settings.txt",
                       "night yes\npx_per_mm 1e9\ntext_scale hello\nwhat ever\nleft_handed yes\n")
                .ok());
    const Settings read = read_settings(around);
    CHECK(read.night);
    CHECK(read.left_handed);
    CHECK(read.px_per_mm == 0.0);
    CHECK(read.text_scale == 1.0);
    std::filesystem::remove_all(top);
}
