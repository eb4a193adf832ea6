// HostWeb: what the app may ask of a browser.
// Exists so that handing over a file, the screen and the keyboard go through the page; all else is as with
// SDL.
#pragma once

#include "host_sdl2.h"

namespace lanternleaf {

class HostWeb final : public HostSdl2 {
public:
    using HostSdl2::HostSdl2;

    /// The folder that the page keeps in the browser's storage.
    [[nodiscard]] std::filesystem::path data_folder() const override { return "/library"; }

    /// The share sheet where the device has one for files, else a download.
    Outcome<std::string> share_file(std::string_view file_name, std::string_view bytes,
                                    std::string_view mime) override;

    /// One share sheet for all of them, else a download each.
    Outcome<std::string> share_files(std::string_view folder, const std::vector<SharedFile>& files) override;

    [[nodiscard]] bool can_pick() const override { return true; }

    void pick_picture() override;
    void pick_card() override;
    void keep_screen_on(bool on) override;
    void show_keyboard(bool shown, const Rect& field) override;
    void tick() override;

    /// A page is closed by whoever opened it.
    void quit() override {}

private:
    bool screen_on_ = false;
};

} // namespace lanternleaf
