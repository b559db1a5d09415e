#include <fmt/format.h>

#include "compiler/diagnostics/utf8.hpp"
#include "compiler/limits.hpp"
#include "grammar/mistakes.hpp"

namespace rodwright {

std::optional<Diagnostic> check_text(FileId file, std::string_view text) {
    if (text.size() > limits::file_bytes) {
        return diagnose(Code::too_large, {file, 0, 0},
                        fmt::format("the file has {} bytes; a design file may have {}", text.size(),
                                    limits::file_bytes))
            .hint("write what stands there many times once, as a row or an `assembly`");
    }
    if (const std::optional<std::size_t> bad = first_bad_utf8(text)) {
        const auto at = static_cast<std::uint32_t>(*bad);
        const auto byte = static_cast<unsigned>(static_cast<unsigned char>(text[*bad]));
        return diagnose(Code::not_text, {file, at, at + 1},
                        fmt::format("byte {} of the file (0x{:02X}) is not UTF-8 text", at + 1, byte))
            .hint("save the file as UTF-8");
    }
    if (const std::size_t zero = text.find('\0'); zero != std::string_view::npos) {
        const auto at = static_cast<std::uint32_t>(zero);
        return diagnose(Code::not_text, {file, at, at + 1},
                        fmt::format("byte {} of the file is zero", at + 1))
            .hint("save the file as UTF-8");
    }
    return std::nullopt;
}

}  // namespace rodwright
