// What tests of printed sheets share: the face, and the tools that look at a PDF from outside.
#pragma once

#include "files/files.h"
#include "sheets/lettering.h"

#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>

namespace lanternleaf::make {

/// Andika where Debian's package puts it; else the built-in face, and a warning.
inline PrintFonts font_files() {
    const char* given = std::getenv("LANTERNLEAF_FONTS");
    const std::string folder = given != nullptr ? given : "/usr/share/fonts/truetype/andika";
    if (!std::filesystem::exists(folder + "/Andika-Regular.ttf")) {
        WARN("Andika is not in " << folder << ": the built-in face is tested instead");
        return {};
    }
    return {folder + "/Andika-Regular.ttf", folder + "/Andika-Bold.ttf"};
}

inline Lettering lettering() {
    return Lettering::open(font_files()).value();
}

struct ToolAnswer {
    int status = -1;
    std::string out;
};

/// Runs a command line; what it writes to its standard output.
inline ToolAnswer run_tool(const std::string& command) {
    ToolAnswer answer;
    std::FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return answer;
    }
    std::array<char, 65536> buffer{};
    for (std::size_t got = 0; (got = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
        answer.out.append(buffer.data(), got);
    }
    answer.status = pclose(pipe);
    return answer;
}

/// Whether the tool is installed; says so where it is not, so that a skipped check is seen.
inline bool has_tool(const std::string& name) {
    const bool there = run_tool("command -v " + name + " 2>/dev/null").status == 0;
    if (!there) {
        WARN(name << " is not installed: the check with it is SKIPPED");
    }
    return there;
}

/// A page as pdftoppm draws it, at 254 dots an inch: ten a millimetre.
struct Raster {
    int width = 0;
    int height = 0;
    std::string grey;

    /// 0 black .. 255 white; outside is white.
    [[nodiscard]] int at(int x, int y) const {
        const bool inside = x >= 0 && y >= 0 && x < width && y < height;
        return inside ? static_cast<unsigned char>(
                            grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                                 static_cast<std::size_t>(x)])
                      : 255;
    }

    /// From a place (mm) along a direction of whole pixels: where the middle of the first dark line lies,
    /// in pixels from the start, weighted by darkness; -1 when there is none within `reach_mm`.
    [[nodiscard]] double first_line(double x_mm, double y_mm, int dx, int dy, double reach_mm) const {
        const int x0 = static_cast<int>(x_mm * 10.0);
        const int y0 = static_cast<int>(y_mm * 10.0);
        double weight = 0.0;
        double sum = 0.0;
        for (int i = 0; i < static_cast<int>(reach_mm * 10.0); ++i) {
            const int dark = 255 - at(x0 + i * dx, y0 + i * dy);
            if (dark >= 64) {
                weight += dark;
                sum += dark * (i + 0.5);
            } else if (weight > 0.0) {
                break;
            }
        }
        return weight > 0.0 ? sum / weight : -1.0;
    }
};

/// Page `page` (from 1) of a PDF.
inline Raster rasterise(const std::string& pdf, int page) {
    const std::string number = std::to_string(page);
    const ToolAnswer drawn =
        run_tool("pdftoppm -gray -r 254 -f " + number + " -l " + number + " '" + pdf + "' 2>/dev/null");
    Raster raster;
    int most = 0;
    int used = 0;
    if (drawn.status != 0 ||
        std::sscanf(drawn.out.c_str(), "P5 %d %d %d%n", &raster.width, &raster.height, &most, &used) != 3) {
        FAIL("pdftoppm made no picture of page " << page);
    }
    raster.grey = drawn.out.substr(static_cast<std::size_t>(used) + 1);
    return raster;
}

} // namespace lanternleaf::make
