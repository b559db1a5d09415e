// Change of red oak for each percent of moisture, as in stdlib/data/wood_ways.yaml.
#pragma once

namespace rodwright::testing {

inline constexpr double quartered_oak = 0.00158;
inline constexpr double flat_oak = 0.00369;

}  // namespace rodwright::testing
