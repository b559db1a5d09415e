// Cutting, joining and intersecting, many tools in one call.
#pragma once

#include <optional>
#include <vector>

#include <TopoDS_Shape.hxx>

namespace rodwright::occt {

enum class Boolean { cut, join };

// `shape` less or plus all the tools. Empty if the kernel fails, or the volume of its answer cannot be: a cut
// takes away at most the tools' volume, and joining adds at most that. A cut that leaves nothing is a null
// shape.
std::optional<TopoDS_Shape> combine(Boolean how, const TopoDS_Shape& shape,
                                    const std::vector<TopoDS_Shape>& tools);

// What both have in common, one shape of all its pieces. Null if nothing.
TopoDS_Shape common(const TopoDS_Shape& a, const TopoDS_Shape& b);

double shared_volume(const TopoDS_Shape& a, const TopoDS_Shape& b);

// One face where several lie in one surface, one edge where several lie in one line: faces that a tenon and
// its part have in common show no line. The shape as it was if that would change it.
TopoDS_Shape merge_faces(const TopoDS_Shape& shape);

}  // namespace rodwright::occt
