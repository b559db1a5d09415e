// Rounding and chamfering edges.
#pragma once

#include <optional>
#include <vector>

#include <TopoDS_Edge.hxx>
#include <TopoDS_Shape.hxx>

#include "compiler/graph/piece.hpp"

namespace rodwright::occt {

// The edges of `shape` that stand for an edge of the stock: convex, and at their middle the outward normal of
// each of their two faces points most of all the way that one face of `edge` does. So what was an edge of the
// box is still found after a taper. In the order of their middles.
std::vector<TopoDS_Edge> edges_of(const TopoDS_Shape& shape, const BoxEdge& edge);

// What became of one feature's edges.
struct Easing {
    const Feature* feature = nullptr;
    int found = 0;  // edges of the solid
    int sharp = 0;  // those that could not be eased
};

// Rounds (FeatureOp::blend) or chamfers (bevel) the edges of all the features of that kind: all at once, so
// that corners where several meet come out whole, or else one at a time as far as they go.
std::vector<Easing> ease(TopoDS_Shape& shape, FeatureOp op, const std::vector<const Feature*>& features);

}  // namespace rodwright::occt
