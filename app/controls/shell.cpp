#include "controls/shell.h"

#include <algorithm>
#include <utility>

#include <imgui.h>

namespace lanternleaf {

Shell::Shell(FontFiles files, Host& host)
    : context_(ImGui::CreateContext()), fonts_(std::move(files)), ui_(fonts_, host) {
    ImGui::SetCurrentContext(context_);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
}

Shell::~Shell() {
    ImGui::DestroyContext(context_);
}

void Shell::frame(const HostInput& input, const Appearance& appearance,
                  const std::function<void(Ui&)>& draw) {
    ImGui::SetCurrentContext(context_);
    const Metrics metrics = make_metrics(input.window, input.insets, input.px_per_pt, input.pt_per_mm,
                                         appearance.text_scale, appearance.kids);
    ImGuiIO& io = ImGui::GetIO();
    if (fonts_.bake(metrics)) {
        // Any id but null will do where nothing is shown.
        io.Fonts->SetTexID(make_atlas_texture ? make_atlas_texture() : this);
    }
    io.DisplaySize = {std::max(1.0f, input.window.w), std::max(1.0f, input.window.h)};
    io.DisplayFramebufferScale = {metrics.px_per_pt, metrics.px_per_pt};
    io.DeltaTime = std::max(input.dt_s, 1e-4f);
    // Touch is decided on our own targets; the library itself sees no pointer.
    io.MousePos = {-FLT_MAX, -FLT_MAX};
    ImGui::GetStyle().CircleTessellationMaxError = 0.2f / metrics.px_per_pt;
    ImGui::NewFrame();
    Pen pen(*ImGui::GetBackgroundDrawList(), fonts_, metrics.px_per_pt);
    pen.notes = notes;
    if (notes != nullptr) {
        notes->clear();
    }
    const bool reduced = appearance.reduced_motion || input.reduced_motion;
    ui_.begin_frame(input, metrics, appearance.night ? night_theme() : day_theme(), pen, reduced);
    draw(ui_);
    ui_.end_frame();
    ImGui::Render();
    pacer_.drew(!ui_.awake_reasons().empty(), ui_.wake_time());
}

ImDrawData& Shell::draw_data() {
    ImGui::SetCurrentContext(context_);
    return *ImGui::GetDrawData();
}

Bitmap Shell::picture(Colour ground) {
    Bitmap out;
    soft_raster(draw_data(), out, ground);
    return out;
}

} // namespace lanternleaf
