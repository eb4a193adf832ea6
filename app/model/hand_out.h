// Hand out: a finished file into a folder of the person's own, where a device has folders.
// Exists so that what is handed over never writes over a file that is there and appears whole or not at all.
#pragma once

#include "base/outcome.h"
#include "host/host.h"

#include <string>
#include <string_view>
#include <vector>

namespace lanternleaf {

/// Writes the file into the folder, which is made when missing, with " (2)" behind its name when that name is
/// taken. Gives the path. Only the last part of `file_name` counts.
[[nodiscard]] Outcome<std::string> hand_out(const std::string& folder, const std::string& file_name,
                                            std::string_view bytes);

/// The same of several files, into a new folder `name` in `folder`, with " (2)" behind its name when that is
/// taken. Gives the new folder's path. On a Problem it is taken away again.
[[nodiscard]] Outcome<std::string> hand_out_folder(const std::string& folder, const std::string& name,
                                                   const std::vector<SharedFile>& files);

/// The folder that XDG_DOWNLOAD_DIR names in the text of the desk's user-dirs.dirs (freedesktop.org,
/// xdg-user-dirs: `XDG_NAME_DIR="$HOME/folder"` or an absolute path), else "Downloads" in the home folder.
[[nodiscard]] std::string downloads_folder(const std::string& home, const std::string& user_dirs);

} // namespace lanternleaf
