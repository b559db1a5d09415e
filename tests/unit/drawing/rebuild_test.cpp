// Is a part sheet enough to make the part? Each part is made again from the figures its sheet prints and from
// nothing else of the design than the class of each feature's shape, and compared with what the design says.
#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "backends/packet/parts/feature_table.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"
#include "tests/unit/drawing/rebuilt_kind.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const SolidKernel& solids() {
    std::string error;
    const SolidKernel* loaded = load_solid_kernel(error);
    REQUIRE_MESSAGE(loaded != nullptr, error);
    return *loaded;
}

std::size_t faces_of(const Solid& solid) {
    std::set<std::uint32_t> faces;
    for (const Triangle& triangle : solids().triangles(solid, 0.2)) faces.insert(triangle.face);
    return faces.size();
}

std::vector<std::vector<std::string>> rows_of(const Kind& kind, const drawing::AxisView& view,
                                              const LengthStyle& style) {
    std::vector<std::vector<std::string>> rows;
    for (const drawing::Row& row : packet::feature_table(kind, view, style).rows) rows.push_back(row.cells);
    return rows;
}

void check_kind(const Piece& piece, const Kind& kind) {
    CAPTURE(kind.name);
    const drawing::AxisView view = packet::lying(kind);
    bool rounded = false;
    const Kind again = rebuilt(kind, rows_of(kind, view, piece.style), view, piece.style, rounded);
    Diagnostics diagnostics;
    const SolidRef designed = solids().build(piece, kind, diagnostics);
    const SolidRef made = solids().build(piece, again, diagnostics);
    REQUIRE(designed != nullptr);
    REQUIRE(made != nullptr);
    // Rounded figures are off by half a step at most; a twentieth of a per cent of the part is less than that
    // would show in any of the examples' features left out or misplaced.
    const double slack = rounded ? 5e-4 : 1e-9;
    CHECK(solids().volume(*made) == doctest::Approx(solids().volume(*designed)).epsilon(slack));
    CHECK(solids().surface_area(*made) ==
          doctest::Approx(solids().surface_area(*designed)).epsilon(10 * slack));
    CHECK(faces_of(*made) == faces_of(*designed));
    const Point3 at = solids().centre_of_mass(*designed);
    const Point3 made_at = solids().centre_of_mass(*made);
    for (std::size_t i = 0; i < 3; ++i) CHECK(std::abs(made_at[i] - at[i]) < (rounded ? 0.2 : 1e-6));
}

void check_every_kind(const Piece& piece) {
    for (const Kind& kind : piece.kinds) check_kind(piece, kind);
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("every part of the examples can be made from its sheet") {
        for (const std::string& name : example_names()) {
            CAPTURE(name);
            const auto design = compile_text(example_text(name));
            check_every_kind(design.piece());
        }
    }

    TEST_CASE("so can a bar with each of the shapes, on any side") {
        for (const std::string shape :
             {"taper(to = 20mm, from_top = 50mm) on top face",
              "taper(to = 30mm, from_top = 20mm, thin_end = top) on front face",
              "taper(to = 20mm) on bottom face", "groove(wide = 6mm, deep = 8mm) on front face",
              "groove(wide = 6mm, stop_start = 30mm, stop_end = 20mm) on top face",
              "notch(long = 25mm, deep = 10mm, from_end = 40mm) on top face",
              "arch(rise = 10mm) on bottom face", "arch(rise = 6mm, chord = 90mm) on back face",
              "round(6mm) on top front edge", "chamfer(4mm) on top front edge, bottom back edge",
              "bore(diameter = 8mm, count = 3, spacing = 30mm) on top face",
              "bore(diameter = 8mm, deep = 12mm, from_edge = 10mm, from_end = 20mm) on front face"}) {
            CAPTURE(shape);
            const auto design = compile_body(
                "wood oak = white_oak\npart bar of oak { grain wide; left = 0mm; wide = 200mm; "
                "front = 0mm; deep = 40mm; bottom = 0mm; tall = 30mm; " +
                shape + " }\n");
            check_every_kind(design.piece());
        }
    }

    TEST_CASE("printed lengths are read as a maker reads them") {
        CHECK(printed_length("1 5/8\"", LengthUnit::inch).millimetres == ratio(13 * 254, 80));
        CHECK(printed_length("~3/32\"", LengthUnit::inch).rounded);
        CHECK(printed_length("12.5", LengthUnit::millimetre).millimetres == ratio(25, 2));
    }
}
