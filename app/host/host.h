// Host: the few things the app asks a device to do. Implemented by platforms/sdl2 and by the tests' fake.
// Exists so that nothing above it names a window system. Every call returns at once; what fails says why.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/outcome.h"
#include "host/point.h"

namespace lanternleaf {

struct SharedFile {
    std::string file_name;
    std::string bytes;
    std::string mime; ///< "image/png"
};

class Host {
public:
    virtual ~Host() = default;

    /// Folder for the library and the settings; it exists.
    [[nodiscard]] virtual std::filesystem::path data_folder() const = 0;
    /// Folder with fonts, words and demo cards that came with the app.
    [[nodiscard]] virtual std::filesystem::path assets_folder() const = 0;
    /// Hands a finished file to the person: a folder of their own on a desk, a share sheet or a download
    /// elsewhere. `mime` such as "application/pdf". Nothing that is there is written over. Gives one sentence
    /// that says where it is, to be shown as it stands.
    virtual Outcome<std::string> share_file(std::string_view file_name, std::string_view bytes,
                                            std::string_view mime) = 0;

    /// Several files that belong together: a folder `folder` of the person's own on a desk, one share sheet
    /// or a download each elsewhere. As share_file() otherwise.
    virtual Outcome<std::string> share_files(std::string_view folder, const std::vector<SharedFile>& files) {
        static_cast<void>(folder);
        Outcome<std::string> last = std::string();
        for (const SharedFile& file : files) {
            last = share_file(file.file_name, file.bytes, file.mime);
            if (!last) {
                break;
            }
        }
        return last;
    }

    /// Whether pick_picture() and pick_card() can open anything here. Where not, a file dropped on the window
    /// comes in by the same door.
    [[nodiscard]] virtual bool can_pick() const { return false; }

    /// Lets the person take or choose a picture. It arrives some frames later, or never, at bring_in()
    /// (model/bring_in.h). To be called in the frame in which the person tapped.
    virtual void pick_picture() {}

    /// The same for a card's file and its pictures, chosen together.
    virtual void pick_card() {}

    /// Keeps the screen on (true) while the template is traced through paper or hands are busy.
    virtual void keep_screen_on(bool on) = 0;
    /// Shows or hides the on-screen keyboard; `field` is what must stay visible.
    virtual void show_keyboard(bool shown, const Rect& field) = 0;
    /// A short tick that can be felt, where the device has one.
    virtual void tick() = 0;
    /// Local date and time for records, "2026-06-14T10:42:00".
    [[nodiscard]] virtual std::string local_time() const = 0;
    virtual void quit() = 0;
};

} // namespace lanternleaf
