// A part that is glued up from boards: what the design asks of them.
#pragma once

#include <optional>
#include <string>

#include "compiler/quantity/format.hpp"

namespace rodwright {

struct GluedUp {
    std::optional<long> count;          // of boards; empty: as many as the wood asks for
    std::optional<Rational> narrowest;  // millimetres; of one board
    std::optional<Rational> widest;
    bool alternating = false;  // every other one turned over
};

// `5 boards, each 3" to 5", alternating`
std::string glued_up_words(const GluedUp& glued, const LengthStyle& style);

}  // namespace rodwright
