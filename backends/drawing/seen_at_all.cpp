#include "backends/drawing/seen_at_all.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <utility>

#include "backends/drawing/depth_buffer.hpp"
#include "backends/drawing/geos.hpp"

namespace rodwright::drawing {

namespace {

// A solid in the view: its corners on the paper and its depth, nearest to the viewer.
struct Body {
    Polyline corners;
    Rect extent;
    double nearest = -std::numeric_limits<double>::infinity();
};

Body body_of(const ShadedPart& part, const ViewAxes& axes) {
    Body body;
    for (const Triangle& triangle : *part.triangles) {
        for (const Point3& corner : triangle.corners) {
            const Point3 seen = axes.seen(posed(part.pose, corner));
            const Rect here{seen[0], seen[1], seen[0], seen[1]};
            body.extent = body.corners.empty() ? here : around(body.extent, here);
            body.corners.push_back({seen[0], seen[1]});
            body.nearest = std::max(body.nearest, seen[2]);
        }
    }
    return body;
}

double farthest_of(const SeenTriangle& triangle) {
    return std::min({triangle.corners[0][2], triangle.corners[1][2], triangle.corners[2][2]});
}

// Whether every corner is behind one of the triangles: quickly found, and seldom so.
bool corners_hidden(const Body& body, std::span<const SeenTriangle> nearer) {
    constexpr double on_border = -1e-4;  // a weight above it is inside
    std::vector<const SeenTriangle*> here;
    for (const SeenTriangle& each : nearer) {
        if (each.extent().overlaps(body.extent)) here.push_back(&each);
    }
    return std::all_of(body.corners.begin(), body.corners.end(), [&](Point corner) {
        return std::any_of(here.begin(), here.end(), [&](const SeenTriangle* triangle) {
            const Point3 weights = triangle->weights(corner);
            return *std::min_element(weights.begin(), weights.end()) > on_border;
        });
    });
}

// What meets in a corner has no gap there.
double rounded(double coordinate) {
    constexpr double grid = 1e-3;  // mm
    return std::round(coordinate / grid) * grid;
}

// The paper that is covered by triangles so far.
class Cover {
  public:
    Cover() : area_(geos_.areas({})) {}

    void add(std::span<const SeenTriangle> triangles) {
        std::vector<Polyline> outlines;
        for (const SeenTriangle& each : triangles) {
            Polyline& outline = outlines.emplace_back();
            for (const Point3& corner : each.corners)
                outline.push_back({rounded(corner[0]), rounded(corner[1])});
        }
        const Geos::Shape added = geos_.areas(outlines);
        const Geos::Shape joined = geos_.own(GEOSUnaryUnion_r(geos_.get(), added.get()));
        if (area_ && joined) area_ = geos_.own(GEOSUnion_r(geos_.get(), area_.get(), joined.get()));
    }

    // Whether it holds all that lies between the corners.
    bool holds(const Polyline& corners) const {
        constexpr double border = -0.005;  // mm: what ends where its cover does is hidden too
        const Geos::Shape points = geos_.lines({corners});
        const Geos::Shape hull = geos_.own(GEOSConvexHull_r(geos_.get(), points.get()));
        if (!area_ || !hull) return false;
        const Geos::Shape inner = geos_.own(GEOSBuffer_r(geos_.get(), hull.get(), border, 1));
        return inner && GEOSisEmpty_r(geos_.get(), inner.get()) == 0 &&
               GEOSCovers_r(geos_.get(), area_.get(), inner.get()) == 1;
    }

  private:
    Geos geos_;
    Geos::Shape area_;
};

// From the nearest body on; what it finds hidden hides nothing that is not hidden already.
class Sweep {
  public:
    Sweep(const std::vector<ShadedPart>& parts, const ViewAxes& axes)
        : parts_(parts), triangles_(seen_triangles(parts, axes)), hidden_(parts.size()) {
        std::stable_sort(
            triangles_.begin(), triangles_.end(),
            [](const SeenTriangle& a, const SeenTriangle& b) { return farthest_of(a) > farthest_of(b); });
    }

    void look_at(std::size_t index, const Body& body) {
        constexpr double clear = 0.01;  // mm: no face hides the solid that it is of
        for (; next_ < triangles_.size() && farthest_of(triangles_[next_]) > body.nearest + clear; ++next_) {
            const SeenTriangle& triangle = triangles_[next_];
            if (!hidden_[static_cast<std::size_t>(triangle.part - parts_.data())])
                nearer_.push_back(triangle);
        }
        if (body.corners.empty() || !corners_hidden(body, nearer_)) return;
        if (covered_ < nearer_.size()) cover_.add(std::span(nearer_).subspan(covered_));
        covered_ = nearer_.size();
        hidden_[index] = cover_.holds(body.corners);
    }

    const std::vector<bool>& hidden() const { return hidden_; }

  private:
    const std::vector<ShadedPart>& parts_;
    std::vector<SeenTriangle> triangles_;  // by how far they reach, the nearest first
    std::size_t next_ = 0;
    std::vector<SeenTriangle> nearer_;  // than the body that is looked at
    std::size_t covered_ = 0;           // so many of them are in the cover
    Cover cover_;
    std::vector<bool> hidden_;
};

}  // namespace

std::vector<PlacedSolid> seen_at_all(const std::vector<PlacedSolid>& solids,
                                     const std::vector<ShadedPart>& parts, const View& from) {
    if (solids.size() < 2) return solids;
    const ViewAxes axes = axes_of(from);
    std::vector<std::pair<std::size_t, Body>> bodies;
    for (std::size_t i = 0; i < parts.size(); ++i) bodies.emplace_back(i, body_of(parts[i], axes));
    std::stable_sort(bodies.begin(), bodies.end(),
                     [](const auto& a, const auto& b) { return a.second.nearest > b.second.nearest; });
    Sweep sweep(parts, axes);
    for (const auto& [index, body] : bodies) sweep.look_at(index, body);
    std::vector<PlacedSolid> seen;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        if (!sweep.hidden()[i]) seen.push_back(solids[i]);
    }
    return seen;
}

Projected project_visible(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids,
                          const std::vector<ShadedPart>& parts, const View& from) {
    return project(kernel, seen_at_all(solids, parts, from), from, false);
}

}  // namespace rodwright::drawing
