#include "report/html.h"

namespace lanternleaf {

namespace {

const char* const kStyle =
    "<style>body{font-family:Andika,sans-serif;line-height:1.5;max-width:50rem;margin:2rem auto;padding:0 "
    "1rem;color:#22272b;background:#fffcf5}table{border-collapse:collapse;width:100%;margin:0 0 1.5rem}"
    "caption{text-align:left;font-weight:bold;padding:.3rem 0}th,td{text-align:left;vertical-align:top;"
    "padding:.3rem .6rem;border-bottom:1px dashed #857a67}img{max-width:100%;height:auto}"
    "figure{margin:0 0 1.5rem}</style>";

} // namespace

std::string html_text(const std::string& text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        default:
            if (static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t') {
                out += c;
            }
        }
    }
    return out;
}

void HtmlWriter::begin_page(const std::string& language, const std::string& title) {
    line("<!DOCTYPE html>");
    line("<html lang=\"" + html_text(language) + "\" xmlns=\"http://www.w3.org/1999/xhtml\">");
    line("<head>\n<meta charset=\"utf-8\" />");
    line("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" />");
    element("title", title);
    line(kStyle);
    line("</head>\n<body>\n<main>");
}

void HtmlWriter::end_page() {
    line("</main>\n</body>\n</html>");
}

void HtmlWriter::line(const std::string& html) {
    text += html;
    text += '\n';
}

void HtmlWriter::element(const char* name, const std::string& words) {
    text += '<';
    text += name;
    text += '>';
    text += html_text(words);
    text += "</";
    text += name;
    text += ">\n";
}

void HtmlWriter::head_cell(const char* scope, const std::string& words) {
    text += "<th scope=\"";
    text += scope;
    text += "\">";
    text += html_text(words);
    text += "</th>";
}

void HtmlWriter::cell(const std::string& words) {
    text += "<td>";
    text += html_text(words);
    text += "</td>";
}

void HtmlWriter::begin_table(const std::string& caption, const std::vector<std::string>& heads) {
    line("<table>");
    element("caption", caption);
    text += "<thead><tr>";
    for (const std::string& head : heads) {
        head_cell("col", head);
    }
    line("</tr></thead>");
    line("<tbody>");
}

void HtmlWriter::end_table() {
    line("</tbody>\n</table>");
}

void HtmlWriter::list(const std::vector<std::string>& items) {
    line("<ul>");
    for (const std::string& item : items) {
        element("li", item);
    }
    line("</ul>");
}

} // namespace lanternleaf
