// Which way the faces of a solid look.
#pragma once

#include <optional>

#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Dir.hxx>
#include <gp_Vec.hxx>

namespace rodwright::occt {

// Out of the solid, of length 1, at a parameter of an edge of the face; empty where the face has no normal.
std::optional<gp_Vec> outward_normal(const TopoDS_Edge& edge, const TopoDS_Face& face, double parameter);

// True if some face may turn away from the viewer within its edges, so that an outline of the shape runs
// across it. Planes, cylinders, cones, spheres and tori are looked at; any other surface may.
bool outline_inside_a_face(const TopoDS_Shape& shape, const gp_Dir& towards);

}  // namespace rodwright::occt
