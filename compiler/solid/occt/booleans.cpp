#include "compiler/solid/occt/booleans.hpp"

#include <cmath>

#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <ShapeUpgrade_UnifySameDomain.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>

#include "compiler/solid/occt/guard.hpp"
#include "compiler/solid/occt/shapes.hpp"

namespace rodwright::occt {

static constexpr double relative_slack = 1e-7;

static TopoDS_Shape run(BRepAlgoAPI_BooleanOperation& operation, const TopoDS_Shape& shape,
                        const std::vector<TopoDS_Shape>& tools) {
    TopTools_ListOfShape arguments;
    arguments.Append(shape);
    TopTools_ListOfShape others;
    for (const TopoDS_Shape& tool : tools) others.Append(tool);
    operation.SetArguments(arguments);
    operation.SetTools(others);
    operation.SetToFillHistory(Standard_False);
    operation.SetNonDestructive(Standard_True);
    operation.Build();
    if (operation.HasErrors()) throw Standard_Failure("boolean operation failed");
    return operation.Shape();
}

// Booleans answer with a compound; a compound of one solid is that solid.
static TopoDS_Shape unpacked(const TopoDS_Shape& shape) {
    if (shape.IsNull() || count_solids(shape) == 0) return {};
    if (count_solids(shape) > 1) return shape;
    return TopExp_Explorer(shape, TopAbs_SOLID).Current();
}

static double total_volume(const std::vector<TopoDS_Shape>& shapes) {
    double total = 0;
    for (const TopoDS_Shape& shape : shapes) total += volume_of(shape);
    return total;
}

static bool plausible(double change, double tools, double whole) {
    const double slack = relative_slack * (whole + tools);
    return change >= -slack && change <= tools + slack;
}

static TopoDS_Shape attempt(Boolean how, const TopoDS_Shape& shape, const std::vector<TopoDS_Shape>& tools) {
    BRepAlgoAPI_Cut cut;
    BRepAlgoAPI_Fuse fuse;
    BRepAlgoAPI_BooleanOperation& operation = how == Boolean::cut
                                                  ? static_cast<BRepAlgoAPI_BooleanOperation&>(cut)
                                                  : static_cast<BRepAlgoAPI_BooleanOperation&>(fuse);
    return unpacked(run(operation, shape, tools));
}

std::optional<TopoDS_Shape> combine(Boolean how, const TopoDS_Shape& shape,
                                    const std::vector<TopoDS_Shape>& tools) {
    TopoDS_Shape result;
    bool good = false;
    const bool ran = guarded([&] {
        result = attempt(how, shape, tools);
        const double before = volume_of(shape);
        const double after = result.IsNull() ? 0 : volume_of(result);
        good = plausible(how == Boolean::cut ? before - after : after - before, total_volume(tools), before);
        if (good && !result.IsNull()) good = BRepCheck_Analyzer(result).IsValid();
    });
    if (!ran || !good) return std::nullopt;
    return result;
}

double shared_volume(const TopoDS_Shape& a, const TopoDS_Shape& b) {
    BRepAlgoAPI_Common common;
    const TopoDS_Shape shared = unpacked(run(common, a, {b}));
    return shared.IsNull() ? 0 : volume_of(shared);
}

TopoDS_Shape merge_faces(const TopoDS_Shape& shape) {
    TopoDS_Shape merged;
    const bool ran = guarded([&] {
        ShapeUpgrade_UnifySameDomain merge(shape, Standard_True, Standard_True, Standard_False);
        merge.Build();
        merged = merge.Shape();
        const double before = volume_of(shape);
        const bool same = std::abs(volume_of(merged) - before) <= relative_slack * before &&
                          count_solids(merged) == count_solids(shape) && BRepCheck_Analyzer(merged).IsValid();
        if (!same) merged = shape;
    });
    return ran ? merged : shape;
}

}  // namespace rodwright::occt
