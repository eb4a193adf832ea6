#include "verbs/verb.h"

#include <charconv>

namespace lanternleaf {

namespace {

constexpr int kMostPixels = 8192;

// The whole number that `text` is, 0 when it is none or outside 1..kMostPixels.
int pixels(std::string_view text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool whole = error == std::errc() && end == text.data() + text.size();
    return whole && value >= 1 && value <= kMostPixels ? value : 0;
}

} // namespace

Outcome<ExitStatus> shot_verb(const Arguments& args, std::ostream&, const VerbSurroundings& around) {
    ShotRequest request;
    request.card = args.at("CARD");
    request.screen = args.at("--screen");
    request.out = args.at("--out");
    if (args.has("--language")) {
        request.language = args.at("--language");
    }
    const std::string_view size = args.at("--size");
    const std::size_t cross = size.find('x');
    if (cross != std::string_view::npos) {
        request.width = pixels(size.substr(0, cross));
        request.height = pixels(size.substr(cross + 1));
    }
    if (request.width == 0 || request.height == 0) {
        return Problem{"--size", "",
                       "expected WIDTHxHEIGHT in pixels, such as 1280x800, each from 1 to " +
                           std::to_string(kMostPixels)};
    }
    const Outcome<Done> drawn = around.shot(request);
    if (!drawn) {
        return drawn.problem();
    }
    return ExitStatus::well;
}

} // namespace lanternleaf
