#include "compiler/solid/occt/step/tree.hpp"

#include <BRep_Builder.hxx>
#include <TopExp_Explorer.hxx>

#include "compiler/solid/occt/shapes.hpp"

namespace rodwright::occt {

// What the booleans leave may be a compound around the solid; written as it is, that would be an assembly.
static TopoDS_Shape single_solid(const Solid& solid) {
    const TopExp_Explorer solids(held(solid).shape(), TopAbs_SOLID);
    return solids.More() ? solids.Current() : held(solid).shape();
}

namespace {

// Fills in StepTree::assemblies from the innermost outwards: a member can no longer be added to.
class Assembler {
  public:
    Assembler(const StepModel& model, StepTree& tree) : model_(model), tree_(tree) {
        tree_.assemblies.resize(model.assemblies.size());
    }

    void assemble(std::size_t index) {
        for (std::size_t i = 0; i < model_.parts.size(); ++i) {
            if (model_.parts[i].assembly == index) add(index, tree_.parts[i]);
        }
        for (std::size_t i = index + 1; i < model_.assemblies.size(); ++i) {
            if (model_.assemblies[i].parent != index) continue;
            assemble(i);
            if (!tree_.assemblies[i].IsNull()) add(index, tree_.assemblies[i]);
        }
    }

  private:
    void add(std::size_t index, const TopoDS_Shape& member) {
        TopoDS_Compound& assembly = tree_.assemblies[index];
        const BRep_Builder builder;
        if (assembly.IsNull()) builder.MakeCompound(assembly);
        builder.Add(assembly, member);
    }

    const StepModel& model_;
    StepTree& tree_;
};

}  // namespace

StepTree step_tree(const StepModel& model) {
    StepTree tree;
    for (const StepShape& shape : model.shapes) tree.shapes.push_back(single_solid(*shape.solid));
    for (const ModelPart& part : model.parts)
        tree.parts.push_back(tree.shapes.at(part.shape).Moved(TopLoc_Location(transform_of(part.pose))));
    Assembler(model, tree).assemble(0);
    return tree;
}

}  // namespace rodwright::occt
