// The difference between two texts, for a person.
#pragma once

#include <string>

namespace rodwright::golden {

// Lines with `-` stand only in `expected`, those with `+` only in `actual`; between the first and the last
// line that differ nothing is matched up. Empty if the texts are equal.
std::string difference(const std::string& expected, const std::string& actual);

}  // namespace rodwright::golden
