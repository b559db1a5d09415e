#include "compiler/check/wood/grain.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rodwright {

namespace {

struct Reach {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
};

// Adds what of the triangle lies in the plane `at` along the grain.
void add_cut(Reach& reach, const Triangle& triangle, std::size_t grain, std::size_t across, double at) {
    for (std::size_t i = 0; i < 3; ++i) {
        const Point3& a = triangle.corners[i];
        const Point3& b = triangle.corners[(i + 1) % 3];
        if ((a[grain] < at) == (b[grain] < at)) continue;
        const double share = (at - a[grain]) / (b[grain] - a[grain]);
        const double where = a[across] + share * (b[across] - a[across]);
        reach.low = std::min(reach.low, where);
        reach.high = std::max(reach.high, where);
    }
}

}  // namespace

StraightGrain straight_grain(const Mesh& mesh, Axis grain, Axis across, double low, double high) {
    constexpr int slices = 32;
    constexpr double end_share = 0.03;  // rounded and chamfered ends do not count
    const double inset = end_share * (high - low);
    StraightGrain found{std::numeric_limits<double>::infinity(), 0};
    Reach through{-std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
    for (int i = 0; i <= slices; ++i) {
        const double at = low + inset + (high - low - 2 * inset) * i / slices;
        Reach reach;
        for (const Triangle& triangle : mesh)
            add_cut(reach, triangle, static_cast<std::size_t>(grain), static_cast<std::size_t>(across), at);
        if (reach.high < reach.low) continue;
        found.narrowest = std::min(found.narrowest, reach.high - reach.low);
        through.low = std::max(through.low, reach.low);
        through.high = std::min(through.high, reach.high);
    }
    found.through = through.high - through.low;
    return std::isfinite(found.narrowest) ? found : StraightGrain{};
}

}  // namespace rodwright
