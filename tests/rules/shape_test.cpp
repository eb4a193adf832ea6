// The shape of the code as rules: files of readable length, no upward or foreign includes, nothing at the top
// level that does not belong there, no absolute paths. The compiler enforces module edges; this covers what
// it cannot see.
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace fs = std::filesystem;

namespace {

const fs::path kTop = LANTERNLEAF_SOURCE;

std::string text_of(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

std::vector<fs::path> sources_in(const std::string& folder) {
    std::vector<fs::path> found;
    for (const auto& entry : fs::recursive_directory_iterator(kTop / folder)) {
        const std::string ending = entry.path().extension().string();
        if (entry.is_regular_file() && (ending == ".h" || ending == ".cpp")) {
            found.push_back(entry.path());
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

std::vector<std::string> includes_of(const std::string& text) {
    std::vector<std::string> found;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        const std::size_t at = line.find("#include");
        if (at == 0) {
            found.push_back(line.substr(line.find_first_of("<\"") + 1));
            found.back().resize(found.back().find_last_of(">\""));
        }
    }
    return found;
}

bool starts(const std::string& text, const std::string& with) {
    return text.rfind(with, 0) == 0;
}

} // namespace

TEST_CASE("No source file is longer than 400 lines", "[rules]") {
    for (const char* folder : {"engine", "app", "platforms", "tests"}) {
        for (const fs::path& path : sources_in(folder)) {
            const std::string text = text_of(path);
            const auto lines = std::count(text.begin(), text.end(), '\n');
            INFO(path);
            CHECK(lines <= 400);
        }
    }
}

TEST_CASE("A type's name is defined in one header only", "[rules]") {
    // All modules end up in one program and one namespace: two types of one name would break the
    // one-definition rule without a word from the linker.
    std::map<std::string, std::string> home;
    for (const char* folder : {"engine", "app", "platforms"}) {
        for (const fs::path& path : sources_in(folder)) {
            if (path.extension() != ".h") {
                continue;
            }
            std::istringstream lines(text_of(path));
            std::string space;
            for (std::string line; std::getline(lines, line);) {
                if (starts(line, "namespace ")) {
                    space = line; // commands of one place may share their names with those of another
                }
                std::string rest;
                for (const char* kind : {"enum class ", "class ", "struct "}) {
                    if (starts(line, kind)) {
                        rest = line.substr(std::string(kind).size());
                        break;
                    }
                }
                const std::size_t end = rest.find_first_of(" :{;<");
                if (rest.empty() || line.find('{') == std::string::npos || end == std::string::npos) {
                    continue;
                }
                const std::string name = space + " " + rest.substr(0, end);
                const auto known = home.emplace(name, path.string()).first;
                INFO(name << " in " << path << " and in " << known->second);
                CHECK(known->second == path.string());
            }
        }
    }
    CHECK(home.size() > 50);
}

TEST_CASE("Every header opens by saying why it exists", "[rules]") {
    for (const char* folder : {"engine", "app", "platforms"}) {
        for (const fs::path& path : sources_in(folder)) {
            if (path.extension() == ".h") {
                INFO(path);
                CHECK(starts(text_of(path), "//"));
            }
        }
    }
}

TEST_CASE("The engine knows no screen and no window; only platforms knows SDL", "[rules]") {
    const std::set<std::string> without_imgui = {"host", "motion", "layout", "model", "view", "verbs"};
    for (const fs::path& path : sources_in("engine")) {
        for (const std::string& include : includes_of(text_of(path))) {
            INFO(path << " includes " << include);
            CHECK_FALSE(starts(include, "imgui"));
            CHECK_FALSE(starts(include, "SDL"));
            CHECK(include.find("..") == std::string::npos);
        }
    }
    for (const fs::path& path : sources_in("app")) {
        const std::string module = path.parent_path().filename().string();
        for (const std::string& include : includes_of(text_of(path))) {
            INFO(path << " includes " << include);
            CHECK_FALSE(starts(include, "SDL"));
            CHECK(include.find("..") == std::string::npos);
            if (without_imgui.count(module) != 0) {
                CHECK_FALSE(starts(include, "imgui"));
            }
        }
    }
}

TEST_CASE("The engine asks no clock", "[rules]") {
    for (const fs::path& path : sources_in("engine")) {
        const std::string text = text_of(path);
        INFO(path);
        CHECK(text.find("std::chrono") == std::string::npos);
        CHECK(text.find("time(nullptr)") == std::string::npos);
    }
}

TEST_CASE("JSON is read and written in few places", "[rules]") {
    for (const fs::path& path : sources_in("engine")) {
        for (const std::string& include : includes_of(text_of(path))) {
            if (starts(include, "nlohmann")) {
                const std::string module = path.parent_path().filename().string();
                INFO(path);
                CHECK(
                    (module == "cardfile" || module == "record" || module == "safety" || module == "words"));
            }
        }
    }
}

TEST_CASE("The top level holds what it should and nothing else", "[rules]") {
    const std::set<std::string> allowed = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE",  "app",
                                           "engine",         "assets",    "tests",         "platforms"};
    for (const auto& entry : fs::directory_iterator(kTop)) {
        const std::string name = entry.path().filename().string();
        if (name.front() != '.' && !starts(name, "build")) {
            INFO(name);
            CHECK(allowed.count(name) == 1);
        }
    }
}

TEST_CASE("No absolute paths of one machine in the sources", "[rules]") {
    const std::vector<std::string> unwanted = {std::string("/wo") + "rk/", std::string("/ro") + "ot/",
                                               std::string("/ho") + "me/"};
    for (const char* folder : {"engine", "app", "platforms", "tests", "assets"}) {
        for (const auto& entry : fs::recursive_directory_iterator(kTop / folder)) {
            const std::string ending = entry.path().extension().string();
            if (!entry.is_regular_file() || ending == ".png" || ending == ".ttf") {
                continue;
            }
            const std::string text = text_of(entry.path());
            for (const std::string& path : unwanted) {
                INFO(entry.path());
                CHECK(text.find(path) == std::string::npos);
            }
        }
    }
}
