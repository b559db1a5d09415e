// Whether every diagnostic code is shown by a golden case.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace rodwright::golden {

// Reads every *.expected below `root` and `root`/exempt, whose lines are a code and the reason why no case
// can show it. Returns what is wrong: a code in no case and not exempt, an exempt one that a case does show,
// a case named after a code that it does not show, an exemption without a reason.
std::vector<std::string> code_coverage_faults(const std::filesystem::path& root);

}  // namespace rodwright::golden
