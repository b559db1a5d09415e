// The files that are part of the program: the joints, shapes and data of stdlib/.
#pragma once

#include <string>
#include <vector>

namespace rodwright {

struct EmbeddedFile {
    std::string path;  // "joints/housing.rod"
    std::string text;
};

// Sorted by path.
const std::vector<EmbeddedFile>& stdlib_files();
// The pages that `explain` prints, one for each diagnostic code: "E0101.md".
const std::vector<EmbeddedFile>& explain_files();

}  // namespace rodwright
