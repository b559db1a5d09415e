// How a part is divided into beams: stations along its grain, and lines across it where it is a plate.
#pragma once

#include <cstddef>
#include <vector>

#include "compiler/check/strength/placed.hpp"

namespace rodwright::strength {

// In the part's own axes, ascending. One line: the part is a single beam on its middle. Several: a grillage
// of strips along the grain and ribs across it (E. C. Hambly, Bridge Deck Behaviour, from memory).
struct Layout {
    std::vector<double> stations;  // at least the two ends
    std::vector<double> lines;

    bool plate() const { return lines.size() > 1; }
    std::size_t station_near(double x) const;
    std::size_t line_near(double y) const;
    // The stretch that belongs to a station, or a line, of the part's length or width.
    double length_of(std::size_t station, double length) const;
    double width_of(std::size_t line, double width) const;
};

// A part so much wider than thick, held or loaded away from its middle line, bends both ways.
inline constexpr double plate_ratio = 8;

bool may_be_plate(const Vec3& size);

// `attached`: where joints, loads and supports get at the part, in its own axes.
Layout lay_out(const Vec3& size, const std::vector<Vec3>& attached);

}  // namespace rodwright::strength
