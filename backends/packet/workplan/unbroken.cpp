#include "backends/packet/workplan/unbroken.hpp"

#include "backends/work_words.hpp"
#include "compiler/workplan/duration.hpp"

namespace rodwright::packet {

namespace {

constexpr std::string_view no_break = "\u00a0";

}  // namespace

std::string unbroken_duration(Seconds seconds) {
    std::string text;
    for (const char c : duration_words(seconds)) {
        const bool after_number = !text.empty() && text.back() >= '0' && text.back() <= '9';
        if (c == ' ' && after_number) {
            text += no_break;
        } else {
            text += c;
        }
    }
    return text;
}

std::vector<std::string> unbroken_parts(const Piece& piece, const Operation& step) {
    std::vector<std::string> parts = operation_parts(piece, step);
    for (std::string& part : parts) {
        part.replace(part.find(' '), 1, no_break);
        const std::size_t count = part.rfind(" x ");
        if (count == std::string::npos) continue;
        part.replace(count + 2, 1, no_break);
        part.replace(count, 1, no_break);
    }
    return parts;
}

}  // namespace rodwright::packet
