#include "compiler/solid/occt/booleans.hpp"

#include <cmath>

#include <BRepAdaptor_Surface.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <Precision.hxx>
#include <ShapeUpgrade_UnifySameDomain.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>

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
    operation.SetCheckInverted(Standard_False);  // no solid of ours is inside out
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
    });
    if (!ran || !good) return std::nullopt;
    return result;
}

TopoDS_Shape common(const TopoDS_Shape& a, const TopoDS_Shape& b) {
    BRepAlgoAPI_Common operation;
    return unpacked(run(operation, own_copy(a), {own_copy(b)}));
}

double shared_volume(const TopoDS_Shape& a, const TopoDS_Shape& b) {
    const TopoDS_Shape shared = common(a, b);
    return shared.IsNull() ? 0 : volume_of(shared);
}

// Whether two faces can be pieces of one surface: planes that look the same way, cylinders of one radius.
static bool may_be_one(const TopoDS_Face& a, const TopoDS_Face& b) {
    const BRepAdaptor_Surface first(a, Standard_False);
    const BRepAdaptor_Surface second(b, Standard_False);
    if (first.GetType() != second.GetType()) return false;
    switch (first.GetType()) {
        case GeomAbs_Plane:
            return first.Plane().Axis().IsParallel(second.Plane().Axis(), Precision::Angular());
        case GeomAbs_Cylinder:
            return std::abs(first.Cylinder().Radius() - second.Cylinder().Radius()) < Precision::Confusion();
        default:
            return false;
    }
}

static bool may_have_seams(const TopoDS_Shape& shape) {
    TopTools_IndexedDataMapOfShapeListOfShape faces_of_edge;
    TopExp::MapShapesAndAncestors(shape, TopAbs_EDGE, TopAbs_FACE, faces_of_edge);
    for (int i = 1; i <= faces_of_edge.Extent(); ++i) {
        const TopTools_ListOfShape& faces = faces_of_edge.FindFromIndex(i);
        if (faces.Extent() != 2 || faces.First().IsSame(faces.Last())) continue;
        if (may_be_one(TopoDS::Face(faces.First()), TopoDS::Face(faces.Last()))) return true;
    }
    return false;
}

static bool same_solid(const TopoDS_Shape& a, const TopoDS_Shape& b) {
    const double volume = volume_of(a);
    return std::abs(volume_of(b) - volume) <= relative_slack * volume && count_solids(a) == count_solids(b);
}

TopoDS_Shape merge_faces(const TopoDS_Shape& shape) {
    TopoDS_Shape merged = shape;
    const bool ran = guarded([&] {
        if (!may_have_seams(shape)) return;
        ShapeUpgrade_UnifySameDomain merge(shape, Standard_True, Standard_True, Standard_False);
        merge.Build();
        if (same_solid(shape, merge.Shape()) && BRepCheck_Analyzer(merge.Shape()).IsValid()) {
            merged = merge.Shape();
        }
    });
    return ran ? merged : shape;
}

}  // namespace rodwright::occt
