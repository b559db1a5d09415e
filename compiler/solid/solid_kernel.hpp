// Solids behind one interface. The kernel (Open CASCADE) lives in a module that load_solid_kernel() loads the
// first time a solid is asked for; nothing outside compiler/solid/occt/ sees its headers.
//
// Millimetres throughout. Kinds are built in their own frame (see Piece).
#pragma once

#include <array>
#include <memory>
#include <string>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

using Point3 = std::array<double, 3>;
Point3 point3_of(const Vector& vector);

struct Bounds {
    Point3 low{};
    Point3 high{};
};

// The solid of one kind; opaque.
class Solid {
  public:
    virtual ~Solid() = default;
    // Holds the solid, and may be a little larger: known without work.
    virtual Bounds rough_bounds() const = 0;
};
using SolidRef = std::shared_ptr<const Solid>;

// Rotation then translation: column-major 3x3 of +-1 and 0, from a Placement.
struct Pose {
    std::array<Point3, 3> columns = {Point3{1, 0, 0}, Point3{0, 1, 0}, Point3{0, 0, 1}};
    Point3 move = {0, 0, 0};
};
Pose pose_of(const Placement& placement);

struct PlacedSolid {
    SolidRef solid;
    Pose pose;
    std::uint32_t tag = 0;  // comes back on every line and triangle: which part it is of
};

// A parallel projection. `towards` points from the piece to the viewer, `up` is up on the paper (need not be
// square to `towards`). Paper x = up cross towards, paper y = up made square, origin at the model's origin.
struct View {
    Point3 towards = {0, -1, 0};
    Point3 up = {0, 0, 1};
};

using PaperPoint = std::array<double, 2>;  // millimetres of the model, not scaled

enum class LineClass : std::uint8_t { sharp, smooth, outline, seam };

// Part of an edge as seen. Lines, circular arcs and everything else:
//   line     points[0], points[1]
//   arc      start, a point on the arc, end; `closed` marks a whole circle (start = end) with `centre`,
//   `radius` curve    a polyline within `tolerance` of the curve
enum class LineShape : std::uint8_t { line, arc, curve };

struct ViewLine {
    LineShape shape{};
    LineClass line_class{};
    bool visible = true;
    bool closed = false;
    std::uint32_t tag = 0;
    std::vector<PaperPoint> points;
    PaperPoint centre{};
    double radius = 0;
};

// How near meshes come to what is round, mm. Who asks for the same gets one that is there already.
inline constexpr double mesh_tolerance = 0.1;

// Triangles of one solid in its own frame, for shading. `face` tells faces apart; `normal` is outward.
struct Triangle {
    std::array<Point3, 3> corners;
    Point3 normal{};
    std::uint32_t face = 0;
};

// Where the kernel itself fails, a measure is 0 and a list is empty. Any of these may be called by several
// threads at once.
class SolidKernel {
  public:
    virtual ~SolidKernel() = default;

    // The kind's true shape: stock box, trims, blends and bevels, leaves, removals. Failures of a feature are
    // diagnostics that name it (left_sharp for an edge that cannot be eased, solid_failed otherwise); null if
    // nothing usable remains.
    virtual SolidRef build(const Piece& piece, const Kind& kind, Diagnostics& diagnostics) const = 0;
    virtual double volume(const Solid& solid) const = 0;        // mm^3
    virtual double surface_area(const Solid& solid) const = 0;  // mm^2
    virtual Point3 centre_of_mass(const Solid& solid) const = 0;
    virtual Bounds bounds(const Solid& solid) const = 0;
    // Volume that two placed solids share, mm^3.
    virtual double overlap(const PlacedSolid& a, const PlacedSolid& b) const = 0;
    // What of the solid lies within a box of its own frame: itself if all does, null if nothing.
    virtual SolidRef within(const SolidRef& solid, const Bounds& box) const = 0;
    // Exact hidden-line removal. Lines that are covered by others on the paper are given once.
    virtual std::vector<ViewLine> view(const std::vector<PlacedSolid>& solids, const View& from,
                                       bool with_hidden) const = 0;
    virtual std::vector<Triangle> triangles(const Solid& solid, double tolerance) const = 0;
};

// Loads the kernel's module, once. Null with `error` filled in if it cannot be loaded.
const SolidKernel* load_solid_kernel(std::string& error);

// The solids of a piece's kinds: all of them are built when the first is asked for, and kept. From then on
// several threads may ask. Its kernel remembers what it has answered.
class SolidStore {
  public:
    SolidStore(const Piece& piece, Diagnostics& diagnostics);
    // Null if the kernel or the kind failed (already reported).
    const SolidKernel* kernel();
    SolidRef solid(KindId kind);
    // Every part of the piece that has a solid; the tag is the part's index.
    std::vector<PlacedSolid> placed();

  private:
    void build_all();

    const Piece& piece_;
    Diagnostics& diagnostics_;
    std::unique_ptr<const SolidKernel> kernel_;
    bool kernel_tried_ = false;
    std::vector<SolidRef> solids_;
    bool built_ = false;
};

}  // namespace rodwright
