// The rough sizes of one part by itself, and what a maker is told about them.
#pragma once

#include <string>
#include <vector>

#include "compiler/graph/piece.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright {

struct RoughPart {
    Vector finished;              // as cut, joints included; of a turned part the square it is turned from
    Rational end;                 // allowance at each end
    std::string end_reason;       // "to square it"
    Rational width;               // rough
    Rational thickness;           // least, of a flat rough board
    std::string thickness_class;  // empty: thicker than any
    std::vector<std::string> reasons;  // of width and thickness; how lengths come about depends on the blank

    Rational length() const { return finished[Axis::wide] + 2 * end; }
};

RoughPart rough_part(const Kind& kind, const LengthStyle& style, const MillingData& milling);

// Length, width and thickness with joints, and with what is cut over where a size is taken from the work.
Vector cut_size(const Kind& kind);

// The thickness class for that finished thickness, or empty; adds why to `reasons`.
std::string choose_class(const Rational& finished, const LengthStyle& style, const MillingData& milling,
                         std::vector<std::string>& reasons);

}  // namespace rodwright
