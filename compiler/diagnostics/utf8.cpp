#include "compiler/diagnostics/utf8.hpp"

#include <cstdint>

namespace rodwright {
namespace {

using Byte = unsigned char;

bool between(Byte byte, int low, int high) {
    return byte >= low && byte <= high;
}

// How long the sequence is that starts with `first`, and what its second byte may be.
struct Lead {
    std::size_t length = 0;  // 0: no sequence starts so
    int low = 0x80;
    int high = 0xBF;
};

Lead lead(Byte first) {
    if (first < 0x80) return {1};
    if (between(first, 0xC2, 0xDF)) return {2};
    if (first == 0xE0) return {3, 0xA0, 0xBF};
    if (first == 0xED) return {3, 0x80, 0x9F};
    if (between(first, 0xE1, 0xEF)) return {3};
    if (first == 0xF0) return {4, 0x90, 0xBF};
    if (first == 0xF4) return {4, 0x80, 0x8F};
    if (between(first, 0xF1, 0xF3)) return {4};
    return {};
}

}  // namespace

std::size_t utf8_sequence(std::string_view text) {
    if (text.empty()) return 0;
    const Lead start = lead(static_cast<Byte>(text[0]));
    if (start.length == 0 || start.length > text.size()) return 0;
    for (std::size_t i = 1; i < start.length; ++i) {
        const auto byte = static_cast<Byte>(text[i]);
        if (!between(byte, i == 1 ? start.low : 0x80, i == 1 ? start.high : 0xBF)) return 0;
    }
    return start.length;
}

std::optional<std::size_t> first_bad_utf8(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t length = utf8_sequence(text.substr(at));
        if (length == 0) return at;
        at += length;
    }
    return std::nullopt;
}

}  // namespace rodwright
