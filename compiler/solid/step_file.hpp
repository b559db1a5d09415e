// A model as a STEP file (ISO 10303-21, schema AP214): shapes, each written once, and a tree of assemblies
// whose parts are those shapes in their places. Millimetres.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

struct StepShape {
    std::string name;
    SolidRef solid;      // not null
    std::string colour;  // "#c8b089"; anything else: none
};

struct StepAssembly {
    std::string name;
    std::size_t parent = 0;  // an assembly before this one; without meaning for the first
};

struct ModelPart {
    std::string name;
    std::size_t shape = 0;
    std::size_t assembly = 0;
    Pose pose;  // in the axes of the whole
};

struct StepModel {
    std::string time;    // for the header, as ISO 8601 writes it: "2024-05-01T00:00:00Z"
    std::string system;  // what the model was made with, and its version
    std::vector<StepShape> shapes;
    std::vector<StepAssembly> assemblies;  // the first is the whole; those without parts are left out
    std::vector<ModelPart> parts;          // no two of one shape in the same place
};

struct StepFile {
    std::optional<std::string> bytes;  // empty if the kernel could not translate the model
    std::string load_error;            // not empty if the writer's module cannot be loaded
};

// Names are UTF-8. The bytes depend on the model and on nothing else. The writer is a module of its own
// beside the solid kernel, loaded when first needed: the libraries behind it take half as long to load as the
// kernel.
StepFile step_file(const StepModel& model);

}  // namespace rodwright
