#include "compiler/solid/occt/step/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "compiler/diagnostics/utf8.hpp"

namespace rodwright::occt {

static char32_t code_point(std::string_view sequence) {
    const auto first = static_cast<unsigned char>(sequence[0]);
    char32_t code = first & (0x7FU >> sequence.size());
    for (const char byte : sequence.substr(1)) code = code << 6 | (static_cast<unsigned char>(byte) & 0x3FU);
    return code;
}

static std::string escaped(char32_t code) {
    const auto number = static_cast<std::uint32_t>(code);
    return number > 0xFFFF ? fmt::format("\\X4\\{:08X}\\X0\\", number)
                           : fmt::format("\\X2\\{:04X}\\X0\\", number);
}

static std::string joined_strings(std::string_view text) {
    std::string joined;
    bool in_string = false;
    for (const char letter : text) {
        if (letter == '\'') in_string = !in_string;
        if (!in_string || letter != '\n') joined += letter;
    }
    return joined;
}

std::string clean_step_text(std::string_view text) {
    const std::string joined = joined_strings(text);
    std::string clean;
    for (std::string_view rest = joined; !rest.empty();) {
        const std::size_t length = std::max<std::size_t>(utf8_sequence(rest), 1);
        if (length == 1) {
            clean += rest[0];
        } else {
            clean += escaped(code_point(rest.substr(0, length)));
        }
        rest.remove_prefix(length);
    }
    return clean;
}

}  // namespace rodwright::occt
