// Cards that someone sent: what is refused, with a sentence and nothing written, and what comes through
// whole.
#include "exchange/bundle.h"

#include "cardfile/cardfile.h"
#include "exchange/beside.h"
#include "exchange/plain_picture.h"
#include "files/files.h"
#include "learn/learnt.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <functional>

using namespace lanternleaf;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

const std::string kFolder = LANTERNLEAF_BUILD "/exchange-test";

struct Place {
    Place() {
        fs::remove_all(kFolder);
        fs::create_directories(sent());
    }

    ~Place() { fs::remove_all(kFolder); }

    [[nodiscard]] static std::string sent() { return kFolder + "/sent"; }

    [[nodiscard]] static std::string library() { return kFolder + "/library"; }

    static void put(const std::string& name, const std::string& bytes) {
        REQUIRE(write_file(sent() + "/" + name, bytes).ok());
    }

    [[nodiscard]] static Outcome<CardBundle> check(const Parts& shipped = make::test_parts()) {
        Outcome<std::vector<LooseFile>> files = read_bundle_folder(sent());
        return files ? check_bundle(files.value(), shipped) : Outcome<CardBundle>(files.problem());
    }

    [[nodiscard]] static Outcome<KeptCard> bring(const std::string& into = library()) {
        const Outcome<CardBundle> bundle = check();
        INFO((bundle ? std::string() : bundle.problem().sentence()));
        REQUIRE(bundle.ok());
        return keep_bundle(bundle.value(), {into, kFolder + "/shipped"});
    }
};

std::string shipped_picture() {
    return read_file(LANTERNLEAF_SOURCE "/assets/cards/window-candle.png").value();
}

std::string card_text(const std::string& art = "") {
    Card card = make::sample_card();
    if (!art.empty()) {
        card.sheet.art = Art{art, {0, 0}, 148, {}};
    }
    return write_card(card);
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

// A PNG whose head claims w x h; its one IDAT chunk is `packed`. CRCs are not looked at by the decoder.
std::string png(unsigned w, unsigned h, const std::string& packed) {
    const auto four = [](unsigned value) {
        return std::string{static_cast<char>(value >> 24), static_cast<char>(value >> 16 & 255),
                           static_cast<char>(value >> 8 & 255), static_cast<char>(value & 255)};
    };
    const auto chunk = [&four](const std::string& type, const std::string& data) {
        return four(static_cast<unsigned>(data.size())) + type + data + std::string(4, '\0');
    };
    return "\x89PNG\r\n\x1a\n" + chunk("IHDR", four(w) + four(h) + std::string("\x08\x02\0\0\0", 5)) +
           chunk("IDAT", packed) + chunk("IEND", "");
}

// A zlib stream (RFC 1950, 1951) of fixed Huffman codes that unpacks to about 258 bytes per 13 bits: zeros
// without end.
std::string bomb(int runs) {
    std::string out = "\x78\x01";
    unsigned bits = 0;
    int count = 0;
    const auto put = [&](unsigned value, int length) { // lowest bit first
        for (int i = 0; i < length; ++i) {
            bits |= (value >> i & 1U) << count;
            if (++count == 8) {
                out += static_cast<char>(bits);
                bits = 0;
                count = 0;
            }
        }
    };
    const auto code = [&](unsigned value, int length) { // Huffman codes: highest bit first
        for (int i = length - 1; i >= 0; --i) {
            put(value >> i & 1U, 1);
        }
    };
    put(1, 1);     // last block
    put(1, 2);     // fixed codes
    code(0x30, 8); // literal 0
    for (int i = 0; i < runs; ++i) {
        code(0xC5, 8); // length 258
        code(0, 5);    // distance 1
    }
    code(0, 7);
    put(0, 7);
    return out + std::string(4, '\0');
}

} // namespace

TEST_CASE("Hostile folders are refused in one sentence each, and nothing is written", "[exchange]") {
    struct Case {
        const char* what;
        std::function<void()> lay;
        const char* says;
    };

    const auto card_naming = [](const std::string& art) {
        // Past write_card, which would never write such a name.
        Place::put("a.card.json", replaced(card_text("ART.png"), "ART.png", art));
        Place::put("ok.png", shipped_picture());
    };
    const std::vector<Case> cases = {
        {"nothing at all", [] {}, "no card"},
        {"a note instead of a card", [] { Place::put("a.card.json", "Dear Jo, here is my card"); },
         "not a card"},
        {"half a card", [] { Place::put("a.card.json", card_text().substr(0, 300)); }, "not right"},
        {"a parts file", [] { Place::put("a.json", R"({"lanternleaf":1,"kind":"parts"})"); }, "not a card"},
        {"a newer card",
         [] { Place::put("a.card.json", replaced(card_text(), "\"lanternleaf\": 1", "\"lanternleaf\": 9")); },
         "newer"},
        {"two cards",
         [] {
             Place::put("a.card.json", card_text());
             Place::put("b.card.json", card_text());
         },
         "one card at a time"},
        {"a part nobody knows",
         [] { Place::put("a.card.json", replaced(card_text(), "carrier-white", "carrier-ghost")); },
         "carrier-ghost"},
        {"art above its folder", [&] { card_naming("../ok.png"); }, "/sheet/art"},
        {"art by a whole path", [&] { card_naming("/etc/passwd"); }, "/sheet/art"},
        {"art behind a backslash", [&] { card_naming("..\\\\ok.png"); }, "/sheet/art"},
        {"art on a drive", [&] { card_naming("C:ok.png"); }, "/sheet/art"},
        {"art with a NUL", [&] { card_naming("ok.png\\u0000.txt"); }, "/sheet/art"},
        {"art named like a device", [&] { card_naming("NUL.png"); }, "plain name"},
        {"hidden art", [&] { card_naming(".ok.png"); }, "plain name"},
        {"art that is text",
         [] {
             Place::put("a.card.json", card_text("ok.png"));
             Place::put("ok.png", "<svg/>");
         },
         "not a PNG or JPEG"},
        {"art cut short",
         [] {
             Place::put("a.card.json", card_text("ok.png"));
             Place::put("ok.png", shipped_picture().substr(0, 900));
         },
         "damaged"},
        {"art that claims 15000 x 15000",
         [] {
             Place::put("a.card.json", card_text("ok.png"));
             Place::put("ok.png", png(15000, 15000, "x"));
         },
         "pixels"},
        {"art that unpacks without end",
         [] {
             Place::put("a.card.json", card_text("ok.png"));
             Place::put("ok.png", png(8, 8, bomb(400'000)));
         },
         "damaged"},
        {"art above the limit",
         [] {
             Place::put("a.card.json", card_text("ok.png"));
             Place::put("ok.png", shipped_picture() + std::string(kMostPictureBytes, ' '));
         },
         "too large"},
        {"a card above the limit",
         [] { Place::put("a.card.json", card_text() + std::string(kMostCardBytes, ' ')); }, "too large"},
        {"a link out of the folder",
         [] { fs::create_symlink("/etc/passwd", Place::sent() + "/a.card.json"); }, "Links"},
        {"art that is a link",
         [] {
             Place::put("a.card.json", card_text("ok.png"));
             fs::create_symlink(LANTERNLEAF_SOURCE "/assets/cards/window-candle.png",
                                Place::sent() + "/ok.png");
         },
         "Links"},
        {"a link to a device", [] { fs::create_symlink("/dev/zero", Place::sent() + "/a.card.json"); },
         "Links"},
        {"more files than a card has",
         [] {
             for (int i = 0; i < 50; ++i) {
                 Place::put(std::string("p").append(std::to_string(i)).append(".png"), "x");
             }
         },
         "too many"},
        {"an own part out of this world",
         [] {
             Place::put("a.card.json",
                        replaced(card_text(), "\"laid\"",
                                 R"("parts": {"tapes": {"copper-5": {"width_mm": -5}}}, "laid")"));
         },
         "/parts/tapes"},
    };
    for (const Case& one : cases) {
        INFO(one.what);
        const Place place;
        one.lay();
        const Outcome<CardBundle> bundle = Place::check();
        REQUIRE_FALSE(bundle.ok());
        CHECK_THAT(bundle.problem().sentence(), Contains(one.says));
        CHECK(bundle.problem().sentence().find('\n') == std::string::npos);
        CHECK_FALSE(fs::exists(Place::library()));
    }
    CHECK(cases.size() >= 15);
    CHECK_FALSE(read_bundle_folder(kFolder + "/nowhere").ok());
}

TEST_CASE("A card goes out and comes in again: the card byte for byte, the art pixel for pixel",
          "[exchange]") {
    const Place place;
    // On one tablet: a card with art, a shelf picture and a tape its maker measured.
    const std::string here = kFolder + "/here/cards";
    TwoStripTest test;
    test.type = "copper-5";
    test.reading_ohm = 0.6;
    Card card = make::sample_card();
    card.own_parts = learn_tape(test, make::test_parts(), "2026-05-04T10:00:00Z").value().parts;
    card.sheet.art = Art{"window-candle.png", {0, 0}, 148, {}};
    REQUIRE(make_folder(here).ok());
    REQUIRE(write_file(here + "/my-window.card.json", write_card(card)).ok());
    const std::string art = plain_picture(shipped_picture(), "x").value();
    REQUIRE(write_file(here + "/window-candle.png", art).ok());
    REQUIRE(write_file(here + "/my-window-front.png", art).ok());
    const std::vector<LooseFile> packed = pack_card(card, "my-window", here, make::test_parts());
    REQUIRE(packed.size() == 3);
    // On another.
    for (const LooseFile& file : packed) {
        Place::put(file.name, file.bytes);
    }
    const Outcome<KeptCard> kept = Place::bring();
    REQUIRE(kept.ok());
    CHECK(kept.value().name == "my-window");
    const std::string there = Place::library() + "/cards/";
    CHECK(read_file(there + "my-window.card.json").value() == write_card(card));
    CHECK(read_file(there + "window-candle.png").value() == art); // the same PNG: the same pixels
    CHECK(read_file(there + "my-window-front.png").value() == art);
    // Once more: it is the same card, kept once.
    const Outcome<KeptCard> again = Place::bring();
    REQUIRE(again.ok());
    CHECK(again.value().was_there);
    CHECK(files_in(Place::library() + "/cards", "").size() == 3);
    CHECK(plain_picture(art, "x").value() == art);
}

TEST_CASE("A card whose names are taken gets new ones; what was there stays as it was", "[exchange]") {
    const Place place;
    const std::string cards = Place::library() + "/cards";
    REQUIRE(make_folder(cards).ok());
    REQUIRE(write_file(cards + "/a.card.json", "someone's own").ok());
    REQUIRE(write_file(cards + "/a-2-front.png", "left over").ok());
    REQUIRE(write_file(cards + "/ok.png", "another picture").ok());
    REQUIRE(make_folder(kFolder + "/shipped").ok());
    REQUIRE(write_file(kFolder + "/shipped/a-3.card.json", card_text()).ok());
    Place::put("A.card.json", card_text("ok.png"));
    Place::put("ok.png", shipped_picture());
    const Outcome<KeptCard> kept = Place::bring();
    REQUIRE(kept.ok());
    CHECK(kept.value().name == "a-4"); // -2 would show the left-over picture, -3 hide a shipped card
    CHECK(read_file(cards + "/a.card.json").value() == "someone's own");
    CHECK(read_file(cards + "/ok.png").value() == "another picture");
    const Outcome<Card> card =
        read_card(read_file(cards + "/a-4.card.json").value(), "a-4", make::test_parts());
    REQUIRE(card.ok());
    CHECK(card.value().sheet.art->file == "ok-2.png");
    CHECK(fs::exists(cards + "/ok-2.png"));
}

TEST_CASE("A card whose picture did not come never shows another of its name", "[exchange]") {
    const Place place;
    REQUIRE(make_folder(Place::library() + "/cards").ok());
    REQUIRE(write_file(Place::library() + "/cards/ok.png", "another picture").ok());
    Place::put("a.card.json", card_text("ok.png"));
    const Outcome<CardBundle> bundle = Place::check();
    REQUIRE(bundle.ok());
    CHECK(bundle.value().art_missing);
    REQUIRE(Place::bring().ok());
    const Outcome<Card> card =
        read_card(read_file(Place::library() + "/cards/a.card.json").value(), "a", make::test_parts());
    REQUIRE(card.ok());
    CHECK(card.value().sheet.art->file == "ok-2.png");
}

TEST_CASE("When the card cannot be written, its pictures are taken away again", "[exchange]") {
    const Place place;
    Place::put("a.card.json", card_text("ok.png"));
    Place::put("ok.png", shipped_picture());
    Outcome<CardBundle> bundle = Place::check();
    REQUIRE(bundle.ok());
    bundle.value().text = std::string(kMostBytes + 1, ' '); // write_file refuses it
    CHECK_FALSE(keep_bundle(bundle.value(), {Place::library(), kFolder + "/shipped"}).ok());
    CHECK(files_in(Place::library() + "/cards", "").empty());
}

TEST_CASE("Names beside a card are plain on every system", "[exchange]") {
    for (const char* good : {"ok.png", "my card 2.png", "größe.png", "a-b_c.jpeg"}) {
        CHECK(is_plain_file_name(good));
    }
    for (const char* bad : {"", ".", "..", "a/b", "a\\b", "a:b", "con", "Con.png", "LPT1.x", " a", "a ", "a.",
                            "a..b", "a\tb", "a|b", "a?", "<a>"}) {
        INFO(bad);
        CHECK_FALSE(is_plain_file_name(bad));
    }
}
