// Values below the best known ones that the core has found.
#pragma once

#include <filesystem>

namespace rodwright::cutting {

// Plans each row of the list again, with the effort that found it, and has the plan checked. Gives the number
// of rows that were not reached. `folder` holds the benchmark set.
int check_new_best(const std::filesystem::path& folder, const std::filesystem::path& list);

}  // namespace rodwright::cutting
