// Pieces of any number of parts, for benchmarks and for tests of what has to hold at every size.
#pragma once

#include <cstddef>
#include <string>

namespace rodwright::testing {

// Parts in one bay of a generated store, and joints: rails and bearers to posts, slats let into the bearers,
// runners screwed to every slat.
inline constexpr std::size_t bay_parts = 50;
inline constexpr std::size_t bay_joints = 8 + 4 + 2 * 38 + 2 * 38;

// A store of that many bays side by side. In each stand handed posts with two rows of handed rails, and two
// bearers with a row of slats between them and a row of runners on the slats. Every other bay is a placed
// assembly; the rest are written out, each with sizes of its own. Compiles without an error or a warning.
std::string store_text(std::size_t bays);

}  // namespace rodwright::testing
