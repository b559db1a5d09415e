#include "backends/drawing/scale.hpp"

#include <array>

namespace rodwright::drawing {

std::string Scale::text() const {
    return std::to_string(paper) + ":" + std::to_string(model);
}

std::span<const Scale> scales(LengthUnit unit) {
    static constexpr std::array<Scale, 17> metric = {{{50, 1},
                                                      {20, 1},
                                                      {10, 1},
                                                      {5, 1},
                                                      {2, 1},
                                                      {1, 1},
                                                      {1, 2},
                                                      {1, 5},
                                                      {1, 10},
                                                      {1, 20},
                                                      {1, 50},
                                                      {1, 100},
                                                      {1, 200},
                                                      {1, 500},
                                                      {1, 1000},
                                                      {1, 2000},
                                                      {1, 5000}}};
    static constexpr std::array<Scale, 13> inch = {{{8, 1},
                                                    {4, 1},
                                                    {2, 1},
                                                    {1, 1},
                                                    {1, 2},
                                                    {1, 4},
                                                    {1, 8},
                                                    {1, 12},
                                                    {1, 16},
                                                    {1, 24},
                                                    {1, 32},
                                                    {1, 48},
                                                    {1, 96}}};
    return unit == LengthUnit::inch ? std::span<const Scale>(inch) : std::span<const Scale>(metric);
}

Scale choose_scale(LengthUnit unit, double width, double height, double room_width, double room_height,
                   Scale largest) {
    const std::span<const Scale> list = scales(unit);
    for (const Scale& scale : list) {
        const double factor = scale.factor();
        if (factor <= largest.factor() && width * factor <= room_width && height * factor <= room_height)
            return scale;
    }
    return list.back();
}

}  // namespace rodwright::drawing
