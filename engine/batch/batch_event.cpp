#include "batch/batch_event.h"

#include <algorithm>
#include <array>

namespace lanternleaf {

namespace {

constexpr std::array<const char*, kBatchEventKindCount> kNames = {
    "started", "opened", "joined", "shown-as", "cells-out", "cells-back", "note", "closed", "reopened"};

bool goes_on(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; // a later byte of a UTF-8 character
}

} // namespace

std::string tidy_nickname(const std::string& typed) {
    std::string out;
    std::size_t characters = 0;
    for (const char c : typed) {
        if (c == '@' || c == '\x7f' || (static_cast<unsigned char>(c) < 0x20 && c != '\t')) {
            return "";
        }
        const bool blank = c == ' ' || c == '\t';
        if (blank && (out.empty() || out.back() == ' ')) {
            continue;
        }
        characters += goes_on(c) ? 0U : 1U;
        if (characters > kLongestNickname) {
            break;
        }
        out += blank ? ' ' : c;
    }
    while (!out.empty() && out.back() == ' ') {
        out.pop_back();
    }
    return out;
}

bool is_batch_id(const std::string& id) {
    const auto fits = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
    return !id.empty() && id.size() <= 150 && std::all_of(id.begin(), id.end(), fits);
}

const char* name_of(BatchEventKind kind) {
    return kNames[static_cast<std::size_t>(kind)];
}

const char* name_of(BatchFor purpose) {
    return purpose == BatchFor::group ? "group" : "repeater";
}

} // namespace lanternleaf
