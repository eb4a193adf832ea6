#include "desk/print_desk.h"

#include "files/files.h"

namespace lanternleaf {

PrintFonts print_fonts_in(const std::string& folder) {
    static const std::string kFaces[2] = {"Andika-Regular.ttf", "Andika-Bold.ttf"};
    if (folder.empty() || files_in(folder, kFaces[0]).empty() || files_in(folder, kFaces[1]).empty()) {
        return {};
    }
    return {folder + "/" + kFaces[0], folder + "/" + kFaces[1]};
}

Outcome<Prices> load_prices(const std::string& path) {
    const Outcome<std::string> text = read_file(path);
    return text ? read_prices(text.value(), path) : Outcome<Prices>(text.problem());
}

} // namespace lanternleaf
