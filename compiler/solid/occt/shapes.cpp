#include "compiler/solid/occt/shapes.hpp"

#include <algorithm>

#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepGProp.hxx>
#include <BRepLib.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Solid.hxx>
#include <gp_Ax2.hxx>
#include <gp_Trsf.hxx>

#include "compiler/solid/occt/guard.hpp"

namespace rodwright::occt {

HeldShape::HeldShape(TopoDS_Shape shape) : shape_(std::move(shape)) {
    BRepBndLib::Add(shape_, rough_box_, Standard_False);
}

Bounds HeldShape::rough_bounds() const {
    Bounds bounds;
    rough_box_.Get(bounds.low[0], bounds.low[1], bounds.low[2], bounds.high[0], bounds.high[1],
                   bounds.high[2]);
    return bounds;
}

const HeldShape& held(const Solid& solid) {
    return static_cast<const HeldShape&>(solid);
}

gp_Trsf transform_of(const Pose& pose) {
    const auto& c = pose.columns;
    gp_Trsf transform;
    transform.SetValues(c[0][0], c[1][0], c[2][0], pose.move[0],  //
                        c[0][1], c[1][1], c[2][1], pose.move[1],  //
                        c[0][2], c[1][2], c[2][2], pose.move[2]);
    return transform;
}

TopoDS_Shape placed_shape(const PlacedSolid& placed) {
    return held(*placed.solid).shape().Moved(TopLoc_Location(transform_of(placed.pose)));
}

TopoDS_Shape own_copy(const TopoDS_Shape& shape) {
    return BRepBuilderAPI_Copy(shape, Standard_False, Standard_False).Shape();
}

static gp_Pnt point_of(const Vector& vector) {
    return {vector.at[0].get_d(), vector.at[1].get_d(), vector.at[2].get_d()};
}

static gp_Dir direction_of(Direction direction) {
    std::array<double, 3> at{};
    at[static_cast<std::size_t>(direction.axis)] = direction.positive ? 1 : -1;
    return {at[0], at[1], at[2]};
}

static void go(Vector& from, Direction direction, const Rational& distance) {
    if (direction.positive) {
        from[direction.axis] += distance;
    } else {
        from[direction.axis] -= distance;
    }
}

TopoDS_Shape box_shape(const Vector& low, const Vector& high) {
    return BRepPrimAPI_MakeBox(point_of(low), point_of(high)).Solid();
}

TopoDS_Shape box_shape(const Bounds& box) {
    return BRepPrimAPI_MakeBox(gp_Pnt(box.low[0], box.low[1], box.low[2]),
                               gp_Pnt(box.high[0], box.high[1], box.high[2]))
        .Solid();
}

// MakeBox takes any two opposite corners.
static TopoDS_Shape box_body(const Body& body) {
    const Frame& frame = body.frame;
    Vector near = frame.origin;
    go(near, frame.u, -body.size_u / 2);
    go(near, frame.v, -body.size_v / 2);
    Vector far = near;
    go(far, frame.u, body.size_u);
    go(far, frame.v, body.size_v);
    go(far, frame.w, body.length);
    return box_shape(near, far);
}

static TopoDS_Shape cylinder_body(const Body& body) {
    const gp_Ax2 axes(point_of(body.frame.origin), direction_of(body.frame.w), direction_of(body.frame.u));
    return BRepPrimAPI_MakeCylinder(axes, body.size_u.get_d() / 2, body.length.get_d()).Solid();
}

// Twice the area, positive if the profile turns from u to v.
static Rational turning(const std::vector<Point2>& profile) {
    Rational sum;
    for (std::size_t i = 0; i < profile.size(); ++i) {
        const Point2& a = profile[i];
        const Point2& b = profile[(i + 1) % profile.size()];
        sum += a.u * b.v - b.u * a.v;
    }
    return sum;
}

static bool right_handed(const Frame& frame) {
    return direction_of(frame.u).Crossed(direction_of(frame.v)).Dot(direction_of(frame.w)) > 0;
}

// The face looks along w, so that the sweep makes a solid that is not inside out.
static TopoDS_Shape prism_body(const Body& body) {
    std::vector<Point2> profile = body.profile;
    if ((turning(profile) > 0) != right_handed(body.frame)) std::reverse(profile.begin(), profile.end());
    BRepBuilderAPI_MakePolygon polygon;
    for (const Point2& point : profile) {
        Vector corner = body.frame.origin;
        go(corner, body.frame.u, point.u);
        go(corner, body.frame.v, point.v);
        polygon.Add(point_of(corner));
    }
    polygon.Close();
    const gp_Vec sweep = gp_Vec(direction_of(body.frame.w)) * body.length.get_d();
    return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(polygon.Wire(), Standard_True).Face(), sweep)
        .Shape();
}

TopoDS_Shape body_shape(const Body& body) {
    switch (body.form) {
        case BodyForm::box:
            return box_body(body);
        case BodyForm::cylinder:
            return cylinder_body(body);
        case BodyForm::prism:
            return prism_body(body);
    }
    return {};
}

static void keep_plane_curves(const TopoDS_Shape& shape) {
    for (TopExp_Explorer faces(shape, TopAbs_FACE); faces.More(); faces.Next()) {
        const TopoDS_Face& face = TopoDS::Face(faces.Current());
        for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
            BRepLib::BuildPCurveForEdgeOnPlane(TopoDS::Edge(edges.Current()), face);
        }
    }
}

TopoDS_Shape ready_to_draw(const TopoDS_Shape& shape) {
    guarded([&] { BRepLib::EncodeRegularity(shape, 1e-4); });
    guarded([&] { keep_plane_curves(shape); });
    return shape;
}

double volume_of(const TopoDS_Shape& shape) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(shape, properties);
    return properties.Mass();
}

int count_solids(const TopoDS_Shape& shape) {
    int count = 0;
    for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next()) ++count;
    return count;
}

}  // namespace rodwright::occt
