// Which edges of a solid stand for an edge of the stock.
#include <algorithm>
#include <array>
#include <cmath>

#include <BRepAdaptor_Curve.hxx>
#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>

#include "compiler/solid/occt/easing.hpp"
#include "compiler/solid/occt/normals.hpp"

namespace rodwright::occt {

namespace {

// An edge whose faces meet at a flatter angle than this is none that a hand would feel.
constexpr double smallest_sine = 0.02;

struct MiddleOf {
    gp_Pnt point;
    gp_Vec along;  // as the first face goes round it, of length 1
    gp_Vec first;  // outward normals
    gp_Vec second;
};

double middle_parameter(const BRepAdaptor_Curve& curve) {
    return (curve.FirstParameter() + curve.LastParameter()) / 2;
}

TopAbs_Orientation orientation_in(const TopoDS_Edge& edge, const TopoDS_Face& face) {
    for (TopExp_Explorer it(face, TopAbs_EDGE); it.More(); it.Next()) {
        if (it.Current().IsSame(edge)) return it.Current().Orientation();
    }
    return TopAbs_INTERNAL;
}

std::optional<MiddleOf> middle_of(const TopoDS_Edge& edge, const TopoDS_Face& a, const TopoDS_Face& b) {
    const BRepAdaptor_Curve curve(edge);
    const double parameter = middle_parameter(curve);
    const auto first = outward_normal(edge, a, parameter);
    const auto second = outward_normal(edge, b, parameter);
    MiddleOf middle;
    curve.D1(parameter, middle.point, middle.along);
    if (!first || !second || middle.along.Magnitude() < 1e-12) return std::nullopt;
    middle.along.Normalize();
    if (orientation_in(edge, a) == TopAbs_REVERSED) middle.along.Reverse();
    middle.first = *first;
    middle.second = *second;
    return middle;
}

// Seen from outside, a face lies to the left of the edges round it; across a convex edge it falls away from
// the other face's outward side.
bool convex(const MiddleOf& middle) {
    const gp_Vec into_first = middle.first.Crossed(middle.along);
    return into_first.Dot(middle.second) < -smallest_sine;
}

// The face of the stock that a normal points out of most of all; none if two of them tie.
std::optional<Face> main_face(const gp_Vec& normal) {
    std::array<std::pair<double, Axis>, 3> sizes = {std::pair{std::abs(normal.X()), Axis::wide},
                                                    std::pair{std::abs(normal.Y()), Axis::deep},
                                                    std::pair{std::abs(normal.Z()), Axis::tall}};
    std::sort(sizes.begin(), sizes.end());
    if (sizes[2].first - sizes[1].first < 1e-9) return std::nullopt;
    const Axis axis = sizes[2].second;
    return face_of(axis, normal.Coord(static_cast<int>(axis) + 1) > 0);
}

bool stands_for(const MiddleOf& middle, const BoxEdge& edge) {
    const auto first = main_face(middle.first);
    const auto second = main_face(middle.second);
    if (!first || !second || !convex(middle)) return false;
    return (*first == edge.a && *second == edge.b) || (*first == edge.b && *second == edge.a);
}

bool before(const gp_Pnt& a, const gp_Pnt& b) {
    return std::array{a.X(), a.Y(), a.Z()} < std::array{b.X(), b.Y(), b.Z()};
}

}  // namespace

std::vector<TopoDS_Edge> edges_of(const TopoDS_Shape& shape, const BoxEdge& edge) {
    TopTools_IndexedDataMapOfShapeListOfShape faces_of_edge;
    TopExp::MapShapesAndAncestors(shape, TopAbs_EDGE, TopAbs_FACE, faces_of_edge);
    std::vector<std::pair<gp_Pnt, TopoDS_Edge>> found;
    for (int i = 1; i <= faces_of_edge.Extent(); ++i) {
        const TopoDS_Edge& candidate = TopoDS::Edge(faces_of_edge.FindKey(i));
        const TopTools_ListOfShape& faces = faces_of_edge.FindFromIndex(i);
        if (faces.Extent() != 2 || BRep_Tool::Degenerated(candidate)) continue;
        const auto middle = middle_of(candidate, TopoDS::Face(faces.First()), TopoDS::Face(faces.Last()));
        if (middle && stands_for(*middle, edge)) found.emplace_back(middle->point, candidate);
    }
    std::sort(found.begin(), found.end(),
              [](const auto& a, const auto& b) { return before(a.first, b.first); });
    std::vector<TopoDS_Edge> edges;
    for (const auto& each : found) edges.push_back(each.second);
    return edges;
}

}  // namespace rodwright::occt
