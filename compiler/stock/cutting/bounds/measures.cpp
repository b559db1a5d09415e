#include "compiler/stock/cutting/bounds/measures.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "compiler/stock/cutting/bounds/stock_choice.hpp"

namespace rodwright::cutting {
namespace {

constexpr std::size_t most_measures = 24;
constexpr std::size_t most_sizes = 24;  // along each axis

// What one piece measures: of a part once, of a stock piece with so many rows and lanes.
struct Extents {
    Amount length, width, rows, lanes;
};
constexpr std::array ways = {
    +[](const Extents& e) { return e.length * e.lanes; },
    +[](const Extents& e) { return e.width * e.rows; },
    +[](const Extents& e) { return e.rows * e.lanes; },
    +[](const Extents& e) { return e.rows * e.lanes > 0 ? e.length * e.width : Amount{0}; },
};

std::vector<Amount> distinct_sizes(const Problem& problem, Axis axis) {
    std::set<Amount> sizes;
    for (const PartKind& part : problem.parts) sizes.insert(part.size[axis] + problem.kerf[axis]);
    std::vector<Amount> result(sizes.begin(), sizes.end());
    if (result.size() <= most_sizes) return result;
    std::vector<Amount> spread;
    for (std::size_t i = 0; i < most_sizes; ++i) spread.push_back(result[i * result.size() / most_sizes]);
    return spread;
}

Measure measured(const Problem& problem, Amount length, Amount width, Amount (*way)(const Extents&)) {
    Measure measure;
    for (const PartKind& part : problem.parts) {
        const Size size = part.size.grown(problem.kerf);
        const bool counts = size[Axis::length] >= length && size[Axis::width] >= width;
        if (counts) measure.needed += part.quantity * way({size[Axis::length], size[Axis::width], 1, 1});
    }
    for (const StockPiece& piece : problem.stock) {
        const Size size = piece.size.grown(problem.kerf);
        const Amount rows = size[Axis::length] / length;
        const Amount lanes = size[Axis::width] / width;
        const bool holds = rows > 0 && lanes > 0;
        measure.held.push_back(holds ? way({size[Axis::length], size[Axis::width], rows, lanes}) : 0);
    }
    return measure;
}

// So many pieces of the kind that holds most it takes at least.
double strength(const Measure& measure) {
    const Amount most = *std::max_element(measure.held.begin(), measure.held.end());
    return static_cast<double>(measure.needed) / static_cast<double>(std::max<Amount>(most, 1));
}

}  // namespace

std::vector<Measure> measures(const Problem& problem) {
    std::vector<Measure> result;
    Measure area{needed_area(problem), {}};
    for (const StockPiece& piece : problem.stock) area.held.push_back(piece.size.grown(problem.kerf).area());
    const bool turns = std::any_of(problem.parts.begin(), problem.parts.end(),
                                   [](const PartKind& part) { return part.may_turn; });
    if (!turns && !problem.stock.empty()) {
        for (const Amount length : distinct_sizes(problem, Axis::length)) {
            for (const Amount width : distinct_sizes(problem, Axis::width)) {
                for (const auto way : ways) result.push_back(measured(problem, length, width, way));
            }
        }
        std::stable_sort(result.begin(), result.end(),
                         [](const Measure& a, const Measure& b) { return strength(a) > strength(b); });
        result.resize(std::min(result.size(), most_measures));
    }
    result.insert(result.begin(), std::move(area));
    return result;
}

}  // namespace rodwright::cutting
