// Solids of Open CASCADE: holding them, and making them from the exact bodies of features.
#pragma once

#include <Bnd_Box.hxx>
#include <TopoDS_Shape.hxx>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::occt {

class HeldShape final : public Solid {
  public:
    explicit HeldShape(TopoDS_Shape shape);
    const TopoDS_Shape& shape() const { return shape_; }
    const Bnd_Box& rough_box() const { return rough_box_; }
    Bounds rough_bounds() const override;

  private:
    TopoDS_Shape shape_;
    Bnd_Box rough_box_;
};

const HeldShape& held(const Solid& solid);
gp_Trsf transform_of(const Pose& pose);
TopoDS_Shape placed_shape(const PlacedSolid& placed);

// Faces, edges and corners of its own on the same surfaces and curves. Booleans and meshes write into what
// they are given, and a solid may be in use by other threads.
TopoDS_Shape own_copy(const TopoDS_Shape& shape);

TopoDS_Shape box_shape(const Vector& low, const Vector& high);
TopoDS_Shape box_shape(const Bounds& box);
// Throws what Open CASCADE throws where the body has no thickness.
TopoDS_Shape body_shape(const Body& body);

// The shape, its edges told which of them join faces smoothly, and those of plane faces given their curves in
// the plane, which else are worked out anew each time they are asked for.
TopoDS_Shape ready_to_draw(const TopoDS_Shape& shape);

double volume_of(const TopoDS_Shape& shape);
int count_solids(const TopoDS_Shape& shape);

}  // namespace rodwright::occt
