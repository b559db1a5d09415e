#include "backends/drawing/line_style.hpp"

namespace rodwright::drawing {

namespace {

constexpr double dash = 12 * narrow_line;
constexpr double gap = 3 * narrow_line;
constexpr double long_dash = 24 * narrow_line;
constexpr double dot = 0.5 * narrow_line;
// Tables and faint lines stand back behind the drawing: thinner by one step of the series 0.13 0.18 0.25
// 0.35.
constexpr double fine_line = 0.18;

}  // namespace

const LineStyle& line_style(LineRole role) {
    static const LineStyle visible{wide_line, {}, black};
    static const LineStyle hidden{narrow_line, {dash, gap}, black};
    static const LineStyle smooth{fine_line, {}, Colour{90, 90, 90}};
    static const LineStyle centre{narrow_line, {long_dash, gap, dot, gap}, black};
    static const LineStyle dimension{narrow_line, {}, black};
    static const LineStyle table{fine_line, {}, Colour{90, 90, 90}};
    static const LineStyle frame{0.7, {}, black};
    switch (role) {
        case LineRole::visible:
            return visible;
        case LineRole::hidden:
            return hidden;
        case LineRole::smooth:
            return smooth;
        case LineRole::centre:
            return centre;
        case LineRole::dimension:
            return dimension;
        case LineRole::table:
            return table;
        case LineRole::frame:
            return frame;
    }
    return dimension;
}

}  // namespace rodwright::drawing
