// Small kinds made by hand, and their solids.
#pragma once

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::testing {

inline constexpr double pi = std::numbers::pi;

inline const SolidKernel& kernel() {
    std::string error;
    const SolidKernel* loaded = load_solid_kernel(error);
    REQUIRE_MESSAGE(loaded != nullptr, error);
    return *loaded;
}

inline Vector vector_of(const Rational& x, const Rational& y, const Rational& z) {
    return Vector{{x, y, z}};
}

inline Kind kind_of(const Rational& length, const Rational& width, const Rational& thickness) {
    Kind kind;
    kind.letter = "A";
    kind.name = "rail";
    kind.size = vector_of(length, width, thickness);
    return kind;
}

inline constexpr Direction plus_x{Axis::wide, true};
inline constexpr Direction minus_x{Axis::wide, false};
inline constexpr Direction plus_y{Axis::deep, true};
inline constexpr Direction minus_y{Axis::deep, false};
inline constexpr Direction plus_z{Axis::tall, true};
inline constexpr Direction minus_z{Axis::tall, false};

inline Body box_body(const Frame& frame, const Rational& u, const Rational& v, const Rational& length) {
    return Body{BodyForm::box, frame, u, v, length, {}};
}

inline Body cylinder_body(const Frame& frame, const Rational& diameter, const Rational& length) {
    return Body{BodyForm::cylinder, frame, diameter, diameter, length, {}};
}

inline Body prism_body(const Frame& frame, std::vector<Point2> profile, const Rational& length) {
    return Body{BodyForm::prism, frame, {}, {}, length, std::move(profile)};
}

inline Feature body_feature(FeatureOp op, Body body, std::string label = "joint") {
    Feature feature;
    feature.op = op;
    feature.body = std::move(body);
    feature.label = std::move(label);
    return feature;
}

inline Feature edge_feature(FeatureOp op, std::vector<BoxEdge> edges, const Rational& size,
                            std::string label = "round") {
    Feature feature;
    feature.op = op;
    feature.edges = std::move(edges);
    feature.size = size;
    feature.label = std::move(label);
    return feature;
}

// The four edges along the length.
inline std::vector<BoxEdge> long_edges() {
    return {{Face::front, Face::bottom},
            {Face::front, Face::top},
            {Face::back, Face::bottom},
            {Face::back, Face::top}};
}

inline SolidRef build(const Kind& kind, Diagnostics& diagnostics) {
    return kernel().build(Piece(), kind, diagnostics);
}

// Of a kind that nothing is wrong with.
inline SolidRef build(const Kind& kind) {
    Diagnostics diagnostics;
    SolidRef solid = build(kind, diagnostics);
    for (const Diagnostic& each : diagnostics.list()) FAIL_CHECK(each.message);
    REQUIRE(solid != nullptr);
    return solid;
}

// Of a straight line.
inline double length(const ViewLine& line) {
    return std::hypot(line.points[1][0] - line.points[0][0], line.points[1][1] - line.points[0][1]);
}

inline double volume(const Kind& kind) {
    return kernel().volume(*build(kind));
}

}  // namespace rodwright::testing
