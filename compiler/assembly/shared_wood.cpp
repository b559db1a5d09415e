#include "compiler/assembly/shared_wood.hpp"

#include <algorithm>
// The tree includes an older header of its own library.
#define BOOST_ALLOW_DEPRECATED_HEADERS
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <limits>

#include "compiler/at_once.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

namespace {

namespace bg = boost::geometry;

constexpr double least_shared = 1e-3;  // mm^3
constexpr double least_depth = 1e-3;   // mm: boxes that overlap by less only touch

using TreePoint = bg::model::point<double, 3, bg::cs::cartesian>;
using TreeBox = bg::model::box<TreePoint>;
using TreeEntry = std::pair<TreeBox, std::size_t>;

TreeBox grown(const Bounds& bounds, double by) {
    return {{bounds.low[0] - by, bounds.low[1] - by, bounds.low[2] - by},
            {bounds.high[0] + by, bounds.high[1] + by, bounds.high[2] + by}};
}

// Parts that are in one another meet whichever way one of them goes; most neighbours part some way, which is
// quicker to see than what they share.
bool may_share(const Mesh& a, const Mesh& b) {
    const Blocking pair({a, b});
    return std::ranges::all_of(all_ways, [&](Direction way) { return pair.meets(0, 1, way); });
}

}  // namespace

Bounds bounds_of(const Mesh& mesh) {
    constexpr double far = std::numeric_limits<double>::max();
    Bounds bounds{{far, far, far}, {-far, -far, -far}};
    for (const Triangle& triangle : mesh) {
        for (const Point3& corner : triangle.corners) {
            for (std::size_t i = 0; i < 3; ++i) {
                bounds.low[i] = std::min(bounds.low[i], corner[i]);
                bounds.high[i] = std::max(bounds.high[i], corner[i]);
            }
        }
    }
    return bounds;
}

std::vector<std::pair<std::size_t, std::size_t>> near_pairs(const std::vector<Mesh>& meshes, double within) {
    std::vector<TreeEntry> entries;
    for (std::size_t i = 0; i < meshes.size(); ++i) {
        if (!meshes[i].empty()) entries.emplace_back(grown(bounds_of(meshes[i]), within / 2), i);
    }
    const bg::index::rtree<TreeEntry, bg::index::quadratic<16>> tree(entries);
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    for (const TreeEntry& entry : entries) {
        std::vector<TreeEntry> near;
        tree.query(bg::index::intersects(entry.first), std::back_inserter(near));
        for (const TreeEntry& other : near) {
            if (entry.second < other.second) pairs.emplace_back(entry.second, other.second);
        }
    }
    std::ranges::sort(pairs);
    return pairs;
}

std::vector<SharedWood> shared_wood(const std::vector<Mesh>& meshes, SolidStore& solids) {
    const SolidKernel* kernel = solids.kernel();
    const std::vector<PlacedSolid> placed = solids.placed();
    if (kernel == nullptr || placed.size() != meshes.size()) return {};
    const auto pairs = near_pairs(meshes, -least_depth);
    std::vector<SharedWood> shared;
    constexpr std::size_t batch = 256;
    // Past as many as are told there is no use in more.
    for (std::size_t from = 0; from < pairs.size() && shared.size() < limits::diagnostics; from += batch) {
        std::vector<double> volumes(std::min(batch, pairs.size() - from));
        at_once(volumes.size(), [&](std::size_t i) {
            const auto& [a, b] = pairs[from + i];
            if (may_share(meshes[a], meshes[b])) volumes[i] = kernel->overlap(placed[a], placed[b]);
        });
        for (std::size_t i = 0; i < volumes.size(); ++i) {
            const auto& [a, b] = pairs[from + i];
            if (volumes[i] > least_shared) shared.push_back({a, b, volumes[i]});
        }
    }
    return shared;
}

}  // namespace rodwright
