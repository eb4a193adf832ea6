// A craft table for tests: a library folder of its own, the app in it, and fingers that tap by name.
#pragma once

#include "frame/frame.h"
#include "support/headless_app.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <string>

namespace lanternleaf {

/// A folder that is gone when the test ends.
class OwnFolder {
public:
    OwnFolder() {
        path_ = (std::filesystem::temp_directory_path() / "lanternleaf-table-XXXXXX").string();
        REQUIRE(mkdtemp(path_.data()) != nullptr);
    }

    ~OwnFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }

    OwnFolder(const OwnFolder&) = delete;
    OwnFolder& operator=(const OwnFolder&) = delete;

    [[nodiscard]] const std::string& path() const { return path_; }

private:
    std::string path_;
};

inline App app_in(const std::string& library, Pictures& pictures) {
    Outcome<App> app =
        open_app_in({std::string(LANTERNLEAF_SOURCE) + "/assets", library}, pictures, 1'780'000'000);
    REQUIRE(app.ok());
    return std::move(app).value();
}

/// The app on a table, drawn at a size, with everything a maker does as a method.
class Table {
public:
    explicit Table(const std::string& library, Size size = {1180, 820})
        : app(app_in(library, pictures_)), fingers([this](Ui& ui) { app_frame(app, ui, now_s); }, size) {}

    void start(const std::string& card, const char* audience = "adults") {
        tap("shelf/card/" + card);
        tap(std::string("audience/") + audience);
    }

    void tap(const std::string& name) {
        fingers.frame(2);
        fingers.tap(name);
        now_s += 7;
        fingers.frame(2);
    }

    [[nodiscard]] bool there(const std::string& name) {
        fingers.frame(2);
        return fingers.find(name) != nullptr;
    }

    /// Scrolls a list until a target can be touched, then taps it.
    void reach(const std::string& list, const std::string& name) {
        fingers.frame(2);
        for (int i = 0; i < 40 && !fingers.targets().reachable(fingers.need(name)); ++i) {
            const Target& room = fingers.need(list);
            const bool below = fingers.need(name).rect.centre().y > room.rect.centre().y;
            fingers.wheel(room.rect.centre(), below ? -1.0f : 1.0f);
            fingers.frame(30);
        }
        tap(name);
    }

    [[nodiscard]] const OpenBuild& build() const {
        REQUIRE(app.state.build.has_value());
        return *app.state.build;
    }

    /// One move done, with the adult's hold where it is asked for.
    void one_move() {
        tap("make/done");
        if (app.state.notice == Notice::asking) {
            fingers.hold("notice/adult", 4.3);
            fingers.frame(3);
        }
    }

    /// The proof of a step answered by eye, the lights as the engine expects them, and the step proved.
    void prove() {
        const MakeFace before = build().face;
        REQUIRE(before == MakeFace::proof);
        std::vector<LightExpectation> lights;
        for (const Check& check : open_step(build()).proof) {
            if (check.kind == CheckKind::lights) {
                lights = check.lights;
            }
        }
        for (const LightExpectation& light : lights) {
            const int taps = light.state == "lit" ? 1 : light.state == "dim" ? 2 : 3;
            for (int i = 0; i < taps; ++i) {
                reach("make/proof", "make/light/" + light.led);
            }
        }
        if (!lights.empty()) {
            reach("make/proof", "make/save-seen");
        }
        if (there("proof/all-look-right")) {
            reach("make/proof", "proof/all-look-right");
        }
        for (const NeededCheck& needed : needed_checks(build())) {
            if (needed.reading == nullptr) {
                reach("make/proof", "proof/look/" + needed.check->id);
                tap("look/yes");
                break; // at most one is left: two or more have the button for all
            }
        }
        tap("make/done");
    }

    /// On until `step` is open (8: finished).
    void build_to(int step) {
        for (int guard = 0; guard < 1000 && app.state.build && build().record.step < step; ++guard) {
            if (build().record.finished) {
                return;
            }
            REQUIRE(build().face != MakeFace::verdict);
            if (build().face == MakeFace::move) {
                one_move();
            } else {
                prove();
            }
        }
    }

private:
    NoPictures pictures_;

public:
    App app;
    HeadlessApp fingers;
    std::int64_t now_s = 1'780'000'000;
};

} // namespace lanternleaf
