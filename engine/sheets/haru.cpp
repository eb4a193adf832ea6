#include "sheets/haru.h"

namespace lanternleaf {

Outcome<Haru> open_haru(const PrintFonts& files) {
    Haru made;
    made.document.reset(HPDF_New(nullptr, nullptr));
    HPDF_Doc document = made.document.get();
    if (document == nullptr) {
        return Problem{"", "", "expected enough memory for the printout"};
    }
    HPDF_SetCompressionMode(document, HPDF_COMP_ALL);
    HPDF_UseUTFEncodings(document);
    const std::string* paths[] = {&files.regular, &files.bold};
    const char* const built_in[] = {"Helvetica", "Helvetica-Bold"};
    for (int i = 0; i < 2; ++i) {
        if (paths[i]->empty()) {
            made.face[i] = HPDF_GetFont(document, built_in[i], "WinAnsiEncoding");
        } else if (i == 1 && files.bold == files.regular) {
            made.face[1] = made.face[0];
        } else {
            const char* name = HPDF_LoadTTFontFromFile(document, paths[i]->c_str(), HPDF_TRUE);
            made.face[i] = name == nullptr ? nullptr : HPDF_GetFont(document, name, "UTF-8");
        }
        if (made.face[i] == nullptr || HPDF_GetError(document) != HPDF_OK) {
            return Problem{*paths[i], "", "expected a TrueType font that may be embedded"};
        }
    }
    return made;
}

} // namespace lanternleaf
