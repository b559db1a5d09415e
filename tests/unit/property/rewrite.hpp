// Designs rewritten so that they must still mean the same.
#pragma once

#include <functional>
#include <random>
#include <string>
#include <vector>

#include "grammar/tree.hpp"

namespace rodwright::testing {

// Every statement of those kinds stands where another one of its block stood; blocks within blocks too.
std::string shuffled(const std::string& text, const std::vector<NodeKind>& kinds, std::mt19937& random);

// Every number of the design, as written, through `rewrite`.
std::string with_numbers(const std::string& text,
                         const std::function<std::string(const std::string&)>& rewrite);

}  // namespace rodwright::testing
