// Moving labels apart so that none covers another.
#pragma once

#include <vector>

namespace rodwright::drawing {

// New places for labels that want to be at `wanted` (in rising order), at least `apart` from one another and
// within [low, high], each as near to its wish as the others allow. Where there is not the room, they stand
// evenly over all of it, closer than `apart`.
std::vector<double> spread(const std::vector<double>& wanted, double apart, double low, double high);

}  // namespace rodwright::drawing
