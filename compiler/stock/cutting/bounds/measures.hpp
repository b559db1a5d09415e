// What parts take up, measured in several ways, and how much of each every stock piece holds.
#pragma once

#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

// Whatever is cut from one piece of stock kind i measures at most held[i]; all parts together measure
// `needed`.
struct Measure {
    Amount needed = 0;
    std::vector<Amount> held;
};

// The area of all parts comes first. The others are of the parts that are at least so long and at least so
// wide, where no part may be turned: on a piece of width W at most W / w of width w and more lie side by side
// anywhere along it, so that their lengths add up to at most (W / w) L; the same for widths; their number is
// at most (L / l) (W / w); and what is too short or too narrow for one of them holds none. Sizes with the
// kerf; the strongest few.
std::vector<Measure> measures(const Problem& problem);

}  // namespace rodwright::cutting
