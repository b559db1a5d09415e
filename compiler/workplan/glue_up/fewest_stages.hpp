// Among the many ways in which a piece comes apart, one that goes together in few stages.
#pragma once

#include <functional>
#include <vector>

#include "compiler/assembly/take_apart.hpp"

namespace rodwright {

// How many stages it takes to put together what the partings take apart.
using StageCount = std::function<std::size_t(const std::vector<Parting>&)>;

// From the whole down, each group is taken apart in the way that needs the fewest stages if all below it
// comes apart as take_apart has it (rollouts). `known` takes the whole apart, and is what comes back if
// nothing is better. The effort is a fixed number of steps: large pieces are looked at from the top only.
std::vector<Parting> fewest_stages(const Blocking& blocking, const std::vector<Parting>& known,
                                   const StageCount& count);

}  // namespace rodwright
