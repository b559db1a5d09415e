#include "compiler/check/movement/narrow_gaps.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include "compiler/assembly/shared_wood.hpp"
#include "compiler/check/check_data.hpp"
#include "compiler/check/movement/change.hpp"

namespace rodwright {

namespace {

constexpr double touching = 0.01;

struct Beside {
    Axis axis{};
    bool above = false;  // the second lies towards the greater coordinate
    double gap = 0;
};

// How the second stands beside the first, if it faces it over a gap.
std::optional<Beside> beside(const Box& a, const Box& b) {
    const GapLimit& limit = check_data().movement;
    std::optional<Beside> found;
    for (const Axis axis : all_axes) {
        const Rational low = std::max(a.low[axis], b.low[axis]);
        const Rational high = std::min(a.high[axis], b.high[axis]);
        const double over = Rational(high - low).get_d();
        if (over < -touching) {
            if (found || -over > limit.widest) return std::nullopt;
            found = Beside{axis, b.low[axis] >= a.high[axis], -over};
        } else if (over < limit.cover * std::min(a.size(axis), b.size(axis)).get_d()) {
            return std::nullopt;
        }
    }
    return found;
}

double growth_of(const Piece& piece, const Part& part, Axis axis) {
    return change_per_percent(piece, part, axis).value_or(0) * part.body.size(axis).get_d();
}

// The nearest neighbour below and above, by part and axis.
struct Sides {
    std::array<std::optional<std::pair<double, std::size_t>>, 2> nearest;

    void add(bool above, double gap, std::size_t other) {
        auto& side = nearest[above ? 1 : 0];
        if (!side || gap < side->first) side = std::pair(gap, other);
    }
};

using SidesOfParts = std::map<std::pair<std::size_t, Axis>, Sides>;

NarrowGap free_standing(const Piece& piece, std::size_t part, Axis axis, const Sides& sides) {
    NarrowGap gap{part, part, axis, 0, growth_of(piece, piece.parts[part], axis)};
    for (const auto& side : sides.nearest) {
        if (!side) continue;
        gap.room += side->first;
        gap.other = side->second;
    }
    return gap;
}

}  // namespace

std::vector<NarrowGap> narrow_gaps(const Piece& piece, const std::vector<Mesh>& meshes) {
    std::vector<NarrowGap> gaps;
    SidesOfParts free;
    for (const auto& [a, b] : near_pairs(meshes, check_data().movement.widest)) {
        const Part& first = piece.parts[a];
        const Part& second = piece.parts[b];
        const std::optional<Beside> how = beside(first.body, second.body);
        if (!how) continue;
        if (first.assembly == second.assembly) {
            const double growth = growth_of(piece, first, how->axis) + growth_of(piece, second, how->axis);
            if (growth > 0) gaps.push_back({a, b, how->axis, how->gap, growth / 2});
            continue;
        }
        if (first.assembly != AssemblyId::none) free[{a, how->axis}].add(how->above, how->gap, b);
        if (second.assembly != AssemblyId::none) free[{b, how->axis}].add(!how->above, how->gap, a);
    }
    std::map<std::pair<AssemblyId, Axis>, NarrowGap> tightest;  // of a whole drawer, one part speaks
    for (const auto& [key, sides] : free) {
        const NarrowGap gap = free_standing(piece, key.first, key.second, sides);
        const auto [known, is_new] =
            tightest.emplace(std::pair(piece.parts[gap.part].assembly, gap.axis), gap);
        if (!is_new && gap.growth * known->second.room > known->second.growth * gap.room) known->second = gap;
    }
    for (const auto& [key, gap] : tightest) {
        if (gap.growth > 0) gaps.push_back(gap);
    }
    std::ranges::stable_sort(gaps, {}, &NarrowGap::part);
    return gaps;
}

}  // namespace rodwright
