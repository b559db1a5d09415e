// The backends that are part of the program. The table itself is backends/backend_table.cpp.
#pragma once

#include <memory>
#include <vector>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

// In the order in which they are listed and run.
std::vector<std::unique_ptr<Backend>> linked_backends();

}  // namespace rodwright
