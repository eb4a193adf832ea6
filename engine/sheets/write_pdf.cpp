#include "sheets/write_pdf.h"

#include "sheets/haru.h"

namespace lanternleaf {

namespace {

float points(double mm) {
    return static_cast<float>(mm * kPointsPerMm);
}

void set_fill(HPDF_Page page, const Ink& ink) {
    HPDF_Page_SetRGBFill(page, static_cast<float>(ink.red), static_cast<float>(ink.green),
                         static_cast<float>(ink.blue));
}

void set_stroke(HPDF_Page page, const Stroke& stroke) {
    HPDF_Page_SetRGBStroke(page, static_cast<float>(stroke.ink.red), static_cast<float>(stroke.ink.green),
                           static_cast<float>(stroke.ink.blue));
    HPDF_Page_SetLineWidth(page, points(stroke.width_mm));
}

// Puts one page's marks into the document.
class PageWriter {
public:
    PageWriter(HPDF_Page page, double height_mm, const Haru& haru, const Lettering& lettering)
        : page_(page), height_mm_(height_mm), haru_(haru), lettering_(lettering) {}

    void operator()(const PathMark& mark) {
        if (mark.points_mm.size() < 2) {
            return;
        }
        if (mark.fill) {
            set_fill(page_, *mark.fill);
            chain(mark.points_mm);
            HPDF_Page_ClosePath(page_);
            HPDF_Page_Fill(page_);
        }
        if (mark.stroke) {
            stroke_chain(mark.points_mm, mark.closed, *mark.stroke);
        }
    }

    void operator()(const DiscMark& mark) {
        const float radius = points(mark.radius_mm);
        if (mark.fill) {
            set_fill(page_, *mark.fill);
            HPDF_Page_Circle(page_, x(mark.at_mm), y(mark.at_mm), radius);
            HPDF_Page_Fill(page_);
        }
        if (mark.stroke && mark.stroke->dash_mm.empty()) {
            set_stroke(page_, *mark.stroke);
            HPDF_Page_Circle(page_, x(mark.at_mm), y(mark.at_mm), radius);
            HPDF_Page_Stroke(page_);
        } else if (mark.stroke) {
            constexpr int kChords = 96; // off a true circle by 0.05 % of its radius
            std::vector<Vec2> ring;
            for (int i = 0; i < kChords; ++i) {
                ring.push_back(mark.at_mm + direction(360.0 * i / kChords) * mark.radius_mm);
            }
            stroke_chain(ring, true, *mark.stroke);
        }
    }

    void operator()(const TextMark& mark) {
        const std::string bytes = lettering_.shown(clean_text(mark.text));
        if (bytes.empty()) {
            return;
        }
        const double width_mm = lettering_.width_mm(clean_text(mark.text), mark.size_mm, mark.bold);
        const double before_mm = mark.align == TextAlign::left     ? 0.0
                                 : mark.align == TextAlign::centre ? width_mm / 2.0
                                                                   : width_mm;
        const Vec2 ahead = direction(mark.turn_deg);
        const Vec2 start = mark.at_mm - ahead * before_mm;
        set_fill(page_, mark.ink);
        HPDF_Page_BeginText(page_);
        HPDF_Page_SetFontAndSize(page_, haru_.face[mark.bold ? 1 : 0], points(mark.size_mm));
        const float c = static_cast<float>(ahead.x);
        const float s = static_cast<float>(-ahead.y); // the file's y runs up
        HPDF_Page_SetTextMatrix(page_, c, s, -s, c, x(start), y(start));
        HPDF_Page_ShowText(page_, bytes.c_str());
        HPDF_Page_EndText(page_);
    }

    void operator()(const ClipMark& mark) {
        end_clip();
        if (!mark.box) {
            return;
        }
        HPDF_Page_GSave(page_);
        clipped_ = true;
        const Vec2 size = mark.box->max - mark.box->min;
        HPDF_Page_Rectangle(page_, x(mark.box->min), y(mark.box->max), points(size.x), points(size.y));
        HPDF_Page_Clip(page_);
        HPDF_Page_EndPath(page_);
    }

    void end_clip() {
        if (clipped_) {
            HPDF_Page_GRestore(page_);
            clipped_ = false;
        }
    }

private:
    [[nodiscard]] float x(Vec2 p) const { return points(p.x); }

    [[nodiscard]] float y(Vec2 p) const { return points(height_mm_ - p.y); }

    void chain(const std::vector<Vec2>& chain_mm) {
        HPDF_Page_MoveTo(page_, x(chain_mm.front()), y(chain_mm.front()));
        for (std::size_t i = 1; i < chain_mm.size(); ++i) {
            HPDF_Page_LineTo(page_, x(chain_mm[i]), y(chain_mm[i]));
        }
    }

    void stroke_chain(const std::vector<Vec2>& chain_mm, bool closed, const Stroke& stroke) {
        set_stroke(page_, stroke);
        if (stroke.dash_mm.empty()) {
            chain(chain_mm);
            if (closed) {
                HPDF_Page_ClosePath(page_);
            }
            HPDF_Page_Stroke(page_);
            return;
        }
        const std::vector<std::vector<Vec2>> pieces = dashed(chain_mm, closed, stroke.dash_mm);
        if (pieces.empty()) {
            return;
        }
        for (const std::vector<Vec2>& piece : pieces) {
            chain(piece);
        }
        HPDF_Page_Stroke(page_);
    }

    HPDF_Page page_;
    double height_mm_;
    const Haru& haru_;
    const Lettering& lettering_;
    bool clipped_ = false;
};

void draw_picture(HPDF_Doc document, HPDF_Page page, double height_mm, const PdfPicture& picture) {
    HPDF_Image image =
        HPDF_LoadJpegImageFromMem(document, reinterpret_cast<const HPDF_BYTE*>(picture.jpeg.data()),
                                  static_cast<HPDF_UINT>(picture.jpeg.size()));
    if (image != nullptr) { // else the document keeps the error, and says so at the end
        const Vec2 size = picture.box_mm.max - picture.box_mm.min;
        HPDF_Page_DrawImage(page, image, points(picture.box_mm.min.x),
                            points(height_mm - picture.box_mm.max.y), points(size.x), points(size.y));
    }
}

} // namespace

Outcome<std::string> write_pdf(const std::vector<Page>& pages, const Lettering& lettering,
                               const PdfInfo& info, const std::vector<PdfPicture>& pictures) {
    Outcome<Haru> opened = open_haru(lettering.files());
    if (!opened) {
        return opened.problem();
    }
    const Haru& haru = opened.value();
    HPDF_Doc document = haru.document.get();
    HPDF_SetCurrentEncoder(document, lettering.files().regular.empty() ? "WinAnsiEncoding" : "UTF-8");
    HPDF_SetViewerPreference(document, HPDF_PRINT_SCALING_NONE);
    HPDF_SetInfoAttr(document, HPDF_INFO_TITLE, lettering.shown(clean_text(info.title, 200)).c_str());
    HPDF_SetInfoAttr(document, HPDF_INFO_SUBJECT, lettering.shown(info.subject).c_str());
    HPDF_SetInfoAttr(document, HPDF_INFO_CREATOR, "Lanternleaf");
    for (std::size_t i = 0; i < pages.size(); ++i) {
        const Page& page = pages[i];
        HPDF_Page made = HPDF_AddPage(document);
        HPDF_Page_SetWidth(made, points(page.size_mm.x));
        HPDF_Page_SetHeight(made, points(page.size_mm.y));
        for (const PdfPicture& picture : pictures) {
            if (picture.page == i) {
                draw_picture(document, made, page.size_mm.y, picture);
            }
        }
        PageWriter writer(made, page.size_mm.y, haru, lettering);
        for (const PageMark& mark : page.marks) {
            std::visit(writer, mark);
        }
        writer.end_clip();
    }
    HPDF_SaveToStream(document);
    std::string bytes;
    HPDF_UINT32 size = HPDF_GetStreamSize(document);
    if (HPDF_GetError(document) == HPDF_OK) {
        bytes.resize(size);
        HPDF_ReadFromStream(document, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
        bytes.resize(size);
    }
    const HPDF_STATUS error = HPDF_GetError(document);
    if (error != HPDF_OK && error != HPDF_STREAM_EOF) {
        return Problem{"", "",
                       "expected a printout that the PDF writer can hold (its code " + std::to_string(error) +
                           ")"};
    }
    return bytes;
}

} // namespace lanternleaf
