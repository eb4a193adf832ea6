#include "report/zip.h"

#include <array>

namespace lanternleaf {

namespace {

constexpr std::uint16_t kVersion = 20;          // 2.0: folders
constexpr std::uint16_t kUtf8Names = 1 << 11;   // general purpose bit 11
constexpr std::uint16_t kFirstDay = 1 << 5 | 1; // 1980-01-01: year 0, month 1, day 1

std::array<std::uint32_t, 256> crc_table() {
    std::array<std::uint32_t, 256> table{};
    for (std::uint32_t i = 0; i < 256; ++i) {
        std::uint32_t value = i;
        for (int bit = 0; bit < 8; ++bit) {
            value = (value & 1) != 0 ? 0xEDB88320U ^ value >> 1 : value >> 1;
        }
        table[i] = value;
    }
    return table;
}

void put16(std::string& out, std::uint32_t value) {
    out += static_cast<char>(value & 0xFF);
    out += static_cast<char>(value >> 8 & 0xFF);
}

void put32(std::string& out, std::uint32_t value) {
    put16(out, value & 0xFFFF);
    put16(out, value >> 16);
}

// What the local header and the central directory have in common.
void put_facts(std::string& out, const std::string& name, const CopiedFile& file) {
    put16(out, kUtf8Names);
    put16(out, 0); // stored
    put16(out, 0); // midnight
    put16(out, kFirstDay);
    put32(out, crc32_of(file.bytes));
    put32(out, static_cast<std::uint32_t>(file.bytes.size()));
    put32(out, static_cast<std::uint32_t>(file.bytes.size()));
    put16(out, static_cast<std::uint32_t>(name.size()));
    put16(out, 0); // no extra field
}

} // namespace

std::uint32_t crc32_of(std::string_view bytes) {
    static const std::array<std::uint32_t, 256> kTable = crc_table();
    std::uint32_t crc = 0xFFFFFFFFU;
    for (const char c : bytes) {
        crc = kTable[(crc ^ static_cast<unsigned char>(c)) & 0xFF] ^ crc >> 8;
    }
    return crc ^ 0xFFFFFFFFU;
}

std::string zip(const std::string& folder, const std::vector<CopiedFile>& files) {
    std::string out;
    std::string directory;
    for (const CopiedFile& file : files) {
        const std::string name = folder + "/" + file.name;
        const auto at = static_cast<std::uint32_t>(out.size());
        put32(out, 0x04034B50);
        put16(out, kVersion);
        put_facts(out, name, file);
        out += name;
        out += file.bytes;

        put32(directory, 0x02014B50);
        put16(directory, kVersion);
        put16(directory, kVersion);
        put_facts(directory, name, file);
        put16(directory, 0); // no comment
        put16(directory, 0); // disk
        put16(directory, 0); // bytes, not text
        put32(directory, 0);
        put32(directory, at);
        directory += name;
    }
    const auto start = static_cast<std::uint32_t>(out.size());
    out += directory;
    put32(out, 0x06054B50);
    put16(out, 0);
    put16(out, 0);
    put16(out, static_cast<std::uint32_t>(files.size()));
    put16(out, static_cast<std::uint32_t>(files.size()));
    put32(out, static_cast<std::uint32_t>(directory.size()));
    put32(out, start);
    put16(out, 0);
    return out;
}

} // namespace lanternleaf
