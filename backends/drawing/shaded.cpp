#include "backends/drawing/shaded.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "backends/drawing/depth_buffer.hpp"

namespace rodwright::drawing {

namespace {

// How much of the wood's own colour shows; the rest is paper, so that lines stand out and ink is saved.
constexpr double own_colour = 0.62;
constexpr Colour light_wood{200, 176, 137};

// Tone of a face by its outward normal in the view: 1 is full light. Chosen so that the three faces of a box
// in an isometric view differ also in black and white.
double tone_of(const Point3& normal) {
    constexpr Point3 light = {-0.35, 0.85, 0.4};
    const double shine = normal[0] * light[0] + normal[1] * light[1] + normal[2] * light[2];
    return std::clamp(0.84 + 0.2 * shine, 0.55, 1.0);
}

// Growth rings cut lengthwise: bands along the solid's x, their edges wandering a little. `pitch` is their
// width.
double grain_tone(const Point3& own, const Point3& normal, double pitch) {
    if (std::abs(normal[0]) > 0.7) return 0.9;  // end grain
    const double wander = std::abs(std::fmod(std::abs(own[0]), 60 * pitch) / (30 * pitch) - 1);
    const double across = (own[1] + own[2] * 0.7) / pitch + wander;
    const auto band = static_cast<std::int64_t>(std::floor(across));
    return ((band % 3) + 3) % 3 == 0 ? 0.93 : 1.0;
}

std::uint8_t mixed(std::uint8_t own, double tone) {
    const double full = 255 - own_colour * (255 - own);
    return static_cast<std::uint8_t>(std::clamp(std::lround(full * tone), 0L, 255L));
}

Colour pixel_colour(const Hit& hit, const ViewAxes& axes, double pitch) {
    if (hit.part == nullptr) return white;
    const Point3 normal = axes.seen(turned(hit.part->pose, hit.triangle->normal));
    const double tone = tone_of(normal) * grain_tone(hit.own, hit.triangle->normal, pitch);
    const Colour& own = hit.part->colour;
    return {mixed(own.red, tone), mixed(own.green, tone), mixed(own.blue, tone)};
}

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
    for (const Hit& hit : nearest_hits(parts, axes_of(from), grid)) {
        seen.push_back(hit.part == nullptr ? no_part : hit.part->tag);
    }
    return seen;
}

Raster shaded_picture(const std::vector<ShadedPart>& parts, const View& from, const PixelGrid& grid) {
    const ViewAxes axes = axes_of(from);
    const double pitch = 6 * grid.pixel;
    Raster raster{
        grid.window, static_cast<std::uint32_t>(grid.columns), static_cast<std::uint32_t>(grid.rows), {}};
    raster.rgb.reserve(3 * grid.rows * grid.columns);
    for (const Hit& hit : nearest_hits(parts, axes, grid)) {
        const Colour colour = pixel_colour(hit, axes, pitch);
        raster.rgb.insert(raster.rgb.end(), {colour.red, colour.green, colour.blue});
    }
    return raster;
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
