#include "compiler/diagnostics/printable.hpp"

#include <cstdint>

namespace rodwright {

namespace {

constexpr std::size_t tab_width = 4;

struct Character {
    std::uint32_t code = 0;
    std::size_t bytes = 0;  // zero: not UTF-8
};

std::size_t sequence_length(unsigned char lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xc2 && lead < 0xe0) return 2;
    if (lead >= 0xe0 && lead < 0xf0) return 3;
    if (lead >= 0xf0 && lead < 0xf5) return 4;
    return 0;
}

Character decode(std::string_view text) {
    const auto lead = static_cast<unsigned char>(text.front());
    const std::size_t length = sequence_length(lead);
    if (length == 0 || length > text.size()) return {};
    std::uint32_t code = length == 1 ? lead : lead & (0xffU >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if ((byte & 0xc0U) != 0x80U) return {};
        code = code << 6U | (byte & 0x3fU);
    }
    const bool overlong = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
    if (overlong || code > 0x10ffff || (code >= 0xd800 && code < 0xe000)) return {};
    return {code, length};
}

bool is_harmless(std::uint32_t code) {
    const bool control = code < 0x20 || (code >= 0x7f && code < 0xa0);
    const bool line_break = code == 0x2028 || code == 0x2029;
    const bool turns_reading = code == 0x200e || code == 0x200f || (code >= 0x202a && code <= 0x202e) ||
                               (code >= 0x2066 && code <= 0x2069);
    return !control && !line_break && !turns_reading;
}

}  // namespace

Printable make_printable(std::string_view text) {
    Printable made;
    std::size_t column = 0;
    while (!text.empty()) {
        const Character next = decode(text);
        const std::size_t bytes = next.bytes == 0 ? 1 : next.bytes;
        made.column_of.insert(made.column_of.end(), bytes, column);
        if (text.front() == '\t') {
            const std::size_t blanks = tab_width - column % tab_width;
            made.text.append(blanks, ' ');
            column += blanks;
        } else {
            const bool shown = next.bytes != 0 && is_harmless(next.code);
            made.text += shown ? text.substr(0, bytes) : std::string_view("\xef\xbf\xbd");
            ++column;
        }
        text.remove_prefix(bytes);
    }
    made.column_of.push_back(column);
    return made;
}

}  // namespace rodwright
