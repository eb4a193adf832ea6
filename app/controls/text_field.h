// TextField: one line of typed text, for the few names and notes of the app.
// Exists because the drawing library's own field has neither our touch rules nor our look. Editing is at the
// end of the text; the on-screen keyboard is shown by the host.
#pragma once

#include "controls/ui.h"

namespace lanternleaf {

struct TextFieldLook {
    std::string label{};      ///< read out, and shown small inside while the field is empty
    std::size_t longest = 60; ///< bytes
};

enum class TextFieldHit { None, Changed, Done };

/// A tap begins typing; Enter, Tab or a tap elsewhere ends it (Done once). `text` changes as it is typed.
TextFieldHit text_field(Ui& ui, std::string_view name, const Rect& r, const TextFieldLook& look,
                        std::string& text);

} // namespace lanternleaf
