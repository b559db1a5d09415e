#include "compiler/solid/occt/normals.hpp"

#include <BRepAdaptor_Surface.hxx>
#include <BRepLProp_SLProps.hxx>
#include <BRep_Tool.hxx>
#include <Geom2d_Curve.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

namespace rodwright::occt {

namespace {

// A face counts as edge-on where its normal is this square to the view.
constexpr double nearly_edge_on = 1e-7;

bool is_elementary(GeomAbs_SurfaceType type) {
    return type == GeomAbs_Cylinder || type == GeomAbs_Cone || type == GeomAbs_Sphere ||
           type == GeomAbs_Torus;
}

// The normals of these surfaces turn by sines and cosines of their parameters: nine samples each way show
// both sides of a whole turn, and of a quarter turn (a round-over, a rounded corner) all that a drawing
// could.
bool turns_inside(const BRepAdaptor_Surface& surface, const gp_Dir& towards) {
    constexpr int steps = 8;
    bool facing = false;
    bool averted = false;
    BRepLProp_SLProps properties(surface, 1, 1e-9);
    const double first_u = surface.FirstUParameter();
    const double first_v = surface.FirstVParameter();
    const double du = (surface.LastUParameter() - first_u) / steps;
    const double dv = (surface.LastVParameter() - first_v) / steps;
    for (int i = 0; i <= steps; ++i) {
        for (int j = 0; j <= steps; ++j) {
            properties.SetParameters(first_u + du * i, first_v + dv * j);
            if (!properties.IsNormalDefined()) continue;
            const double side = properties.Normal().Dot(towards);
            facing |= side > nearly_edge_on;
            averted |= side < -nearly_edge_on;
        }
    }
    return facing && averted;
}

}  // namespace

std::optional<gp_Vec> outward_normal(const TopoDS_Edge& edge, const TopoDS_Face& face, double parameter) {
    double first = 0;
    double last = 0;
    const Handle(Geom2d_Curve) curve = BRep_Tool::CurveOnSurface(edge, face, first, last);
    if (curve.IsNull()) return std::nullopt;
    const gp_Pnt2d at = curve->Value(parameter);
    const BRepAdaptor_Surface surface(face, Standard_False);
    BRepLProp_SLProps properties(surface, at.X(), at.Y(), 1, 1e-9);
    if (!properties.IsNormalDefined()) return std::nullopt;
    gp_Vec normal(properties.Normal());
    if (face.Orientation() == TopAbs_REVERSED) normal.Reverse();
    return normal;
}

bool outline_inside_a_face(const TopoDS_Shape& shape, const gp_Dir& towards) {
    for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next()) {
        const TopoDS_Face& face = TopoDS::Face(it.Current());
        const GeomAbs_SurfaceType type = BRepAdaptor_Surface(face, Standard_False).GetType();
        if (type == GeomAbs_Plane) continue;
        if (!is_elementary(type) || turns_inside(BRepAdaptor_Surface(face), towards)) return true;
    }
    return false;
}

}  // namespace rodwright::occt
