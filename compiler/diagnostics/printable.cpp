#include "compiler/diagnostics/printable.hpp"

#include <algorithm>
#include <cstdint>

#include "compiler/diagnostics/utf8.hpp"

namespace rodwright {

namespace {

constexpr std::size_t tab_width = 4;

// `text` is one well-formed sequence.
std::uint32_t decode(std::string_view text) {
    const auto lead = static_cast<unsigned char>(text.front());
    if (text.size() == 1) return lead;
    std::uint32_t code = lead & (0xffU >> (text.size() + 1));
    for (const char c : text.substr(1)) code = code << 6U | (static_cast<unsigned char>(c) & 0x3fU);
    return code;
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
        const std::size_t sequence = utf8_sequence(text);
        const std::size_t bytes = std::max<std::size_t>(sequence, 1);
        made.column_of.insert(made.column_of.end(), bytes, column);
        if (text.front() == '\t') {
            const std::size_t blanks = tab_width - column % tab_width;
            made.text.append(blanks, ' ');
            column += blanks;
        } else {
            const bool shown = sequence > 0 && is_harmless(decode(text.substr(0, sequence)));
            made.text += shown ? text.substr(0, bytes) : std::string_view("\xef\xbf\xbd");
            ++column;
        }
        text.remove_prefix(bytes);
    }
    made.column_of.push_back(column);
    return made;
}

}  // namespace rodwright
