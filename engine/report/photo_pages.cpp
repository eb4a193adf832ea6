#include "report/photo_pages.h"

#include "report/photo.h"
#include "report/record_sheet.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr int kAcross = 2;
constexpr int kDown = 3;
constexpr double kCellGap_mm = 6.0;
constexpr std::size_t kCaptionLines = 2;

const CopiedFile* find_file(const std::vector<CopiedFile>& files, const std::string& name) {
    const auto found =
        std::find_if(files.begin(), files.end(), [&](const CopiedFile& file) { return file.name == name; });
    return found == files.end() ? nullptr : &*found;
}

std::string caption_of(const StoryPhoto& photo, const Words& words) {
    return photo.step == 0
               ? words("record_page.photo", {{"caption", photo.caption}})
               : words("record_page.photo_of_step", {{"caption", photo.caption}, {"number", photo.step}});
}

// As large as the cell allows, at its top, its sides in the photo's own proportion.
Box fitted(const PlainPhoto& photo, Vec2 corner, Vec2 room) {
    const double scale = std::min(room.x / photo.w, room.y / photo.h);
    return {corner, corner + Vec2{photo.w * scale, photo.h * scale}};
}

} // namespace

std::vector<PdfPicture> add_photo_pages(const Story& story, const std::vector<CopiedFile>& photos,
                                        Paper paper, const SheetHead& head, const Lettering& lettering,
                                        const Words& words, std::vector<Page>& pages) {
    std::vector<PdfPicture> pictures;
    Box content;
    for (const StoryPhoto& photo : story.photos) {
        const CopiedFile* file = find_file(photos, photo.file);
        if (file == nullptr || pictures.size() == kMostPrintedPhotos) {
            continue;
        }
        Outcome<PlainPhoto> plain = plain_photo(file->bytes, photo.file, kPrintedSide);
        if (!plain) {
            continue; // the copy has the file as it is
        }
        const int place = static_cast<int>(pictures.size()) % (kAcross * kDown);
        if (place == 0) {
            FramedPage framed = framed_page(paper, false, head, lettering);
            content = framed.content;
            pages.push_back(std::move(framed.page));
        }
        const Vec2 size = content.max - content.min;
        const Vec2 cell{(size.x - kCellGap_mm * (kAcross - 1)) / kAcross,
                        (size.y - kCellGap_mm * (kDown - 1)) / kDown};
        const Vec2 corner = content.min + Vec2{(cell.x + kCellGap_mm) * (place % kAcross),
                                               (cell.y + kCellGap_mm) * (place / kAcross)};
        const double caption_mm = height_of(kCaptionLines, kBody_mm) + 1.0;
        const Box box = fitted(plain.value(), corner, cell - Vec2{0.0, caption_mm});
        PagePen pen(pages.back().marks);
        const std::string caption = clean_text(caption_of(photo, words), 400);
        draw_lines(pen, lettering.lines(caption, kBody_mm, cell.x, false, kCaptionLines),
                   {corner.x, box.max.y + 1.0}, kBody_mm);
        pictures.push_back({pages.size() - 1, box, std::move(plain).value().jpeg});
    }
    return pictures;
}

} // namespace lanternleaf
