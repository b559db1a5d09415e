// Drawing scales: those of ISO 5455 for pieces in millimetres; for inches those that a foot of the piece
// makes a whole or common fraction of an inch of (6 in, 3 in, 1-1/2 in ... to the foot; common practice).
#pragma once

#include <span>
#include <string>

#include "compiler/quantity/format.hpp"

namespace rodwright::drawing {

struct Scale {
    int paper = 1;
    int model = 1;
    double factor() const { return static_cast<double>(paper) / model; }
    std::string text() const;  // "1:5"
    friend bool operator==(const Scale&, const Scale&) = default;
};

// From the largest to the smallest.
std::span<const Scale> scales(LengthUnit unit);

// The largest scale, up to `largest`, at which `width` x `height` of the model stays within the room on the
// paper; the smallest of all if none does. Millimetres.
Scale choose_scale(LengthUnit unit, double width, double height, double room_width, double room_height,
                   Scale largest = {1, 1});

}  // namespace rodwright::drawing
