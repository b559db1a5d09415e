// STEP files read back by Open CASCADE, for tests of what we write; a module, so that tests that read none do
// not wait for its libraries. What it exports is `bool read_step(const std::string& bytes, ReadModel&
// model)`.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::testing {

struct ReadPart {
    std::vector<std::string> within;  // the assemblies around it, from the outermost but one
    std::string name;
    std::string shape;  // the name of the shape that it is one of
    bool valid = false;
    double volume = 0;
    Bounds bounds;                      // where it stands
    std::array<double, 3> colour = {};  // sRGB, 0 to 1
};

struct ReadModel {
    std::string name;
    double millimetres = 0;  // of the unit that the file says
    std::vector<ReadPart> parts;
};

}  // namespace rodwright::testing

extern "C" {
using ReadStep = bool (*)(const std::string& bytes, rodwright::testing::ReadModel& model);
}
