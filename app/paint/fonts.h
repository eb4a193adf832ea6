// Fonts: the app's two faces (regular, bold) baked at the sizes of the current metrics, and the measuring of
// text. Exists so that text is sized by the em and set by its baseline. Andika's own line box is 1.6 em, so
// nothing here uses the drawing library's line height: a line is placed by its lead, with the capitals in the
// middle of it.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/outcome.h"
#include "layout/metrics.h"
#include "paint/font_file.h"

struct ImFont;

namespace lanternleaf {

/// The two font files of the app.
struct FontFiles {
    FontFile regular;
    FontFile bold;
};

/// Reads Andika-Regular.ttf and Andika-Bold.ttf from a folder.
[[nodiscard]] Outcome<FontFiles> read_font_files(const std::filesystem::path& folder);

/// A stretch of one line in one weight, x points from the start of the line.
struct TextRun {
    std::string text;
    float x = 0;
    float width = 0;
    Weight weight = Weight::Regular;
};

/// One line of wrapped text.
struct TextLine {
    std::vector<TextRun> runs;
    float width = 0;
};

/// Baked faces. One per app; the drawing library's context must exist before bake() and outlive this.
class Fonts {
public:
    explicit Fonts(FontFiles files);

    /// Bakes every style of these metrics into the current context's atlas, if it is not baked so already.
    /// Between frames only. True when the atlas changed, so that its texture has to be sent to the device
    /// again.
    bool bake(const Metrics& metrics);

    /// Width of one line without markup, in points.
    [[nodiscard]] float width(std::string_view text, TextStyle style) const;
    /// Distance from the top of a line box of height `lead` to the baseline: capitals stand in its middle.
    [[nodiscard]] float baseline(TextStyle style) const;
    [[nodiscard]] float cap_height(TextStyle style) const;

    /// Breaks text into lines no wider than max_width (a single longer word is broken where it must be).
    /// `**words**` are set bold; `\n` starts a new line. Empty text gives no lines.
    [[nodiscard]] std::vector<TextLine> wrap(std::string_view text, TextStyle style, float max_width) const;
    /// Height of that wrapped text: lines x lead.
    [[nodiscard]] float wrapped_height(std::string_view text, TextStyle style, float max_width) const;
    /// The text if it fits, otherwise its longest start that fits with "…" behind it.
    [[nodiscard]] std::string fitted(std::string_view text, TextStyle style, float max_width) const;
    /// True when every character of the text has its own glyph.
    [[nodiscard]] bool has_all(std::string_view text, Weight weight = Weight::Regular) const;

    /// For the pen only: the baked face nearest to a style, and the size to ask the drawing library for.
    [[nodiscard]] ImFont* face(TextStyle style) const;
    [[nodiscard]] float library_size(TextStyle style) const;
    [[nodiscard]] float ascent(TextStyle style) const;

private:
    struct Baked {
        Weight weight = Weight::Regular;
        float em = 0;
        ImFont* font = nullptr;
    };

    [[nodiscard]] const FontFile& file(Weight weight) const;

    FontFiles files_;
    std::vector<Baked> baked_;
    float px_per_pt_ = 0;
};

} // namespace lanternleaf
