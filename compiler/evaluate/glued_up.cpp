#include "compiler/evaluate/glued_up.hpp"

#include <fmt/format.h>

namespace rodwright {

std::string glued_up_words(const GluedUp& glued, const LengthStyle& style) {
    std::string words = glued.count ? fmt::format("{} boards", *glued.count) : "boards";
    if (glued.narrowest && glued.widest) {
        words += fmt::format(", each {} to {}", format_length(*glued.narrowest, style),
                             format_length(*glued.widest, style));
    }
    if (glued.alternating) words += ", alternating";
    return words;
}

}  // namespace rodwright
