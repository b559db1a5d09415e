#include "compiler/solid/occt/mesh.hpp"

#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <IMeshTools_Parameters.hxx>
#include <Poly_Triangulation.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>

#include "compiler/solid/occt/shapes.hpp"

namespace rodwright::occt {

static constexpr double angle_tolerance = 0.35;  // radians between neighbouring triangles of a curved face

static Point3 as_point(const gp_XYZ& xyz) {
    return {xyz.X(), xyz.Y(), xyz.Z()};
}

static void add_triangle(std::array<gp_Pnt, 3> corners, bool reversed, std::uint32_t face,
                         std::vector<Triangle>& out) {
    if (reversed) std::swap(corners[1], corners[2]);
    const gp_Vec normal = gp_Vec(corners[0], corners[1]).Crossed(gp_Vec(corners[0], corners[2]));
    if (normal.Magnitude() < 1e-12) return;
    Triangle triangle;
    for (std::size_t i = 0; i < 3; ++i) triangle.corners[i] = as_point(corners[i].XYZ());
    triangle.normal = as_point(normal.Normalized().XYZ());
    triangle.face = face;
    out.push_back(triangle);
}

static void add_face(const TopoDS_Face& face, std::uint32_t number, std::vector<Triangle>& out) {
    TopLoc_Location location;
    const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, location);
    if (mesh.IsNull()) return;
    const gp_Trsf transform = location.Transformation();
    for (int i = 1; i <= mesh->NbTriangles(); ++i) {
        std::array<int, 3> at{};
        mesh->Triangle(i).Get(at[0], at[1], at[2]);
        std::array<gp_Pnt, 3> corners;
        for (std::size_t c = 0; c < 3; ++c) corners[c] = mesh->Node(at[c]).Transformed(transform);
        add_triangle(corners, face.Orientation() == TopAbs_REVERSED, number, out);
    }
}

std::vector<Triangle> triangulate(const TopoDS_Shape& solid, double tolerance) {
    const TopoDS_Shape shape = own_copy(solid);
    IMeshTools_Parameters how;
    how.Deflection = tolerance;
    how.Angle = angle_tolerance;
    // Planes, cylinders and rounds are as near as their edges are.
    how.InternalVerticesMode = Standard_False;
    how.ControlSurfaceDeflection = Standard_False;
    BRepMesh_IncrementalMesh(shape, how);
    std::vector<Triangle> triangles;
    std::uint32_t number = 0;
    for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next()) {
        add_face(TopoDS::Face(it.Current()), number++, triangles);
    }
    return triangles;
}

}  // namespace rodwright::occt
