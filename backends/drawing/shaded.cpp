#include "backends/drawing/shaded.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "backends/drawing/depth_buffer.hpp"

namespace rodwright::drawing {

namespace {

constexpr Colour light_wood{200, 176, 137};

// Distance from every pixel to the nearest that is not of the part, in steps to a side; beyond the grid is
// not of the part either. Two passes, there and back.
std::vector<int> distances(const std::vector<std::uint32_t>& seen, const PixelGrid& grid, std::uint32_t tag) {
    std::vector<int> steps(seen.size());
    const auto at = [&](std::size_t row, std::size_t column) {
        return row < grid.rows && column < grid.columns ? steps[grid.index(row, column)] : 0;
    };
    for (std::size_t row = 0; row < grid.rows; ++row) {
        for (std::size_t column = 0; column < grid.columns; ++column) {
            const std::size_t i = grid.index(row, column);
            steps[i] = seen[i] == tag ? 1 + std::min(at(row - 1, column), at(row, column - 1)) : 0;
        }
    }
    for (std::size_t row = grid.rows; row-- > 0;) {
        for (std::size_t column = grid.columns; column-- > 0;) {
            const std::size_t i = grid.index(row, column);
            steps[i] = std::min(steps[i], 1 + std::min(at(row + 1, column), at(row, column + 1)));
        }
    }
    return steps;
}

}  // namespace

Point PixelGrid::centre(std::size_t row, std::size_t column) const {
    return {window.left + (static_cast<double>(column) + 0.5) * pixel,
            window.top - (static_cast<double>(row) + 0.5) * pixel};
}

PixelGrid pixel_grid(const Rect& window, std::size_t pixels) {
    const double pixel = std::max(window.width(), window.height()) / static_cast<double>(pixels);
    const auto count = [&](double length) {
        return static_cast<std::size_t>(std::ceil(length / pixel - 1e-6));
    };
    PixelGrid grid{window, count(window.width()), count(window.height()), pixel};
    // Whole pixels: the window grows to the right and down to hold the last ones.
    grid.window.right = window.left + pixel * static_cast<double>(grid.columns);
    grid.window.bottom = window.top - pixel * static_cast<double>(grid.rows);
    return grid;
}

std::vector<std::uint32_t> parts_seen(const std::vector<ShadedPart>& parts, const View& from,
                                      const PixelGrid& grid) {
    std::vector<std::uint32_t> seen;
    for (const Hit& hit : nearest_hits(seen_triangles(parts, axes_of(from)), grid)) {
        seen.push_back(hit.part == nullptr ? no_part : hit.part->tag);
    }
    return seen;
}

Point inmost_point(const std::vector<std::uint32_t>& seen, const PixelGrid& grid, std::uint32_t tag) {
    const std::vector<int> steps = distances(seen, grid, tag);
    const int most = *std::max_element(steps.begin(), steps.end());
    std::vector<std::size_t> deepest;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (steps[i] == most) deepest.push_back(i);
    }
    // Along a strip all are as deep: the middle one.
    const std::size_t best = deepest[deepest.size() / 2];
    return grid.centre(best / grid.columns, best % grid.columns);
}

Colour colour_of(const std::string& hex) {
    unsigned value = 0;
    const char* end = hex.data() + hex.size();
    if (hex.size() != 7 || hex[0] != '#') return light_wood;
    const auto [read_to, error] = std::from_chars(hex.data() + 1, end, value, 16);
    if (error != std::errc() || read_to != end) return light_wood;
    return {static_cast<std::uint8_t>(value >> 16U), static_cast<std::uint8_t>(value >> 8U & 0xffU),
            static_cast<std::uint8_t>(value & 0xffU)};
}

}  // namespace rodwright::drawing
