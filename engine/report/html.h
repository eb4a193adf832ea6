// Html: the few elements our pages are made of. Exists so that every page has the same head, the same style
// and no text that was not made safe for HTML.
#pragma once

#include <string>
#include <vector>

namespace lanternleaf {

/// Text for HTML and attribute values: & < > " ' replaced, control characters left out.
[[nodiscard]] std::string html_text(const std::string& text);

/// A page that is HTML 5 and well-formed XML too, so that strict readers take it. No script, nothing loaded.
class HtmlWriter {
public:
    std::string text;

    void begin_page(const std::string& language, const std::string& title);
    void end_page();
    void line(const std::string& html);
    void element(const char* name, const std::string& words);
    void head_cell(const char* scope, const std::string& words);
    void cell(const std::string& words);
    void begin_table(const std::string& caption, const std::vector<std::string>& heads);
    void end_table();
    void list(const std::vector<std::string>& items);
};

} // namespace lanternleaf
