// HostSdl2: what the app may ask of a desk computer, through SDL.
// Exists to implement app/host for this platform; data lies where the system keeps a program's files.
#pragma once

#include <SDL.h>

#include "host/host.h"

namespace lanternleaf {

class HostSdl2 : public Host {
public:
    /// assets: the folder with fonts/, cards/, words/.
    explicit HostSdl2(std::filesystem::path assets);

    [[nodiscard]] std::filesystem::path data_folder() const override;

    [[nodiscard]] std::filesystem::path assets_folder() const override { return assets_; }

    /// Writes into the person's downloads; where there is no such folder, or LANTERNLEAF_DATA keeps
    /// everything in one place, into "exports" in the data folder.
    Outcome<std::string> share_file(std::string_view file_name, std::string_view bytes,
                                    std::string_view mime) override;
    Outcome<std::string> share_files(std::string_view folder, const std::vector<SharedFile>& files) override;
    void keep_screen_on(bool on) override;
    void show_keyboard(bool shown, const Rect& field) override;

    void tick() override {}

    [[nodiscard]] std::string local_time() const override;
    void quit() override;

private:
    [[nodiscard]] std::string own_folder() const; ///< of the person, for what is handed over
    std::filesystem::path assets_;
};

} // namespace lanternleaf
