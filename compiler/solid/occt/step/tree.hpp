// The model as one nested compound, which is how Open CASCADE's STEP writer takes an assembly.
#pragma once

#include <vector>

#include <TopoDS_Compound.hxx>
#include <TopoDS_Shape.hxx>

#include "compiler/solid/step_file.hpp"

namespace rodwright::occt {

struct StepTree {
    std::vector<TopoDS_Shape> shapes;         // of StepModel::shapes, each a single solid without a location
    std::vector<TopoDS_Compound> assemblies;  // of StepModel::assemblies; null where one has no parts
    std::vector<TopoDS_Shape> parts;          // of StepModel::parts: the shape, located
};

// assemblies[0] holds everything.
StepTree step_tree(const StepModel& model);

}  // namespace rodwright::occt
