// The kernel, and what the module exports.
#include <BRepBndLib.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>

#include "compiler/solid/kernel_module.hpp"
#include "compiler/solid/occt/booleans.hpp"
#include "compiler/solid/occt/build.hpp"
#include "compiler/solid/occt/guard.hpp"
#include "compiler/solid/occt/mesh.hpp"
#include "compiler/solid/occt/shapes.hpp"
#include "compiler/solid/occt/view.hpp"
#include "compiler/solid/paper_lines.hpp"

namespace rodwright::occt {

namespace {

// What `work` sets; the empty value if Open CASCADE fails.
template <typename Value, typename Work>
Value guarded_value(Work&& work) {
    Value value{};
    return guarded([&] { value = work(); }) ? value : Value{};
}

GProp_GProps volume_properties(const Solid& solid) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(held(solid).shape(), properties);
    return properties;
}

double surface_of(const Solid& solid) {
    GProp_GProps properties;
    BRepGProp::SurfaceProperties(held(solid).shape(), properties);
    return properties.Mass();
}

Bounds exact_bounds(const Solid& solid) {
    Bnd_Box box;
    BRepBndLib::AddOptimal(held(solid).shape(), box, Standard_False, Standard_False);
    box.SetGap(0);
    Bounds bounds;
    box.Get(bounds.low[0], bounds.low[1], bounds.low[2], bounds.high[0], bounds.high[1], bounds.high[2]);
    return bounds;
}

bool lies_within(const Bounds& inner, const Bounds& outer) {
    for (std::size_t i = 0; i < 3; ++i) {
        if (inner.low[i] < outer.low[i] || inner.high[i] > outer.high[i]) return false;
    }
    return true;
}

Bnd_Box rough_box(const PlacedSolid& placed) {
    return held(*placed.solid).rough_box().Transformed(transform_of(placed.pose));
}

class OpenCascadeKernel final : public SolidKernel {
  public:
    SolidRef build(const Piece&, const Kind& kind, Diagnostics& diagnostics) const override {
        const TopoDS_Shape shape = build_kind(kind, diagnostics);
        return shape.IsNull() ? nullptr : std::make_shared<HeldShape>(shape);
    }
    double volume(const Solid& solid) const override {
        return guarded_value<double>([&] { return volume_properties(solid).Mass(); });
    }
    double surface_area(const Solid& solid) const override {
        return guarded_value<double>([&] { return surface_of(solid); });
    }
    Point3 centre_of_mass(const Solid& solid) const override {
        return guarded_value<Point3>([&] {
            const gp_Pnt centre = volume_properties(solid).CentreOfMass();
            return Point3{centre.X(), centre.Y(), centre.Z()};
        });
    }
    Bounds bounds(const Solid& solid) const override {
        return guarded_value<Bounds>([&] { return exact_bounds(solid); });
    }
    double overlap(const PlacedSolid& a, const PlacedSolid& b) const override {
        return guarded_value<double>([&] {
            if (rough_box(a).IsOut(rough_box(b))) return 0.0;
            return shared_volume(placed_shape(a), placed_shape(b));
        });
    }
    SolidRef within(const SolidRef& solid, const Bounds& box) const override {
        return guarded_value<SolidRef>([&]() -> SolidRef {
            const HeldShape& whole = held(*solid);
            if (!lies_within({box.low, box.low}, box)) return nullptr;  // there is no room in it
            if (lies_within(whole.rough_bounds(), box)) return solid;
            const TopoDS_Shape left = common(whole.shape(), box_shape(box));
            return left.IsNull() ? nullptr : std::make_shared<HeldShape>(ready_to_draw(left));
        });
    }
    std::vector<ViewLine> view(const std::vector<PlacedSolid>& solids, const View& from,
                               bool with_hidden) const override {
        return each_line_once(project(solids, from, with_hidden));
    }
    std::vector<Triangle> triangles(const Solid& solid, double tolerance) const override {
        using Triangles = std::vector<Triangle>;
        return guarded_value<Triangles>([&] { return triangulate(held(solid).shape(), tolerance); });
    }
};

}  // namespace

}  // namespace rodwright::occt

extern "C" std::uint32_t rodwright_solid_version() {
    return rodwright::solid_kernel_version;
}

extern "C" const rodwright::SolidKernel* rodwright_solid_kernel() {
    static const rodwright::occt::OpenCascadeKernel kernel;
    rodwright::occt::be_quiet();
    return &kernel;
}
