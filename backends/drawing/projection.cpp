#include "backends/drawing/projection.hpp"

namespace rodwright::drawing {

// The cone lies with its narrow end to the left. In third angle the view from the left (circles) stands left
// of it, in first angle right of it. Diameters 1 and 1/2, length 1, in parts of the height without centre
// lines.
void draw_projection_symbol(Sheet& sheet, ProjectionMethod method, Point centre, double height) {
    const double size = height / 1.2;
    const double apart = 0.6 * size;
    const bool third = method == ProjectionMethod::third_angle;
    const Point circles = centre + Point{third ? -apart : apart, 0};
    const Point cone = centre + Point{third ? apart : -apart, 0};
    sheet.circle(LineRole::dimension, circles, size / 2);
    sheet.circle(LineRole::dimension, circles, size / 4);
    sheet.polyline(LineRole::dimension,
                   {cone + Point{-size / 2, -size / 4}, cone + Point{size / 2, -size / 2},
                    cone + Point{size / 2, size / 2}, cone + Point{-size / 2, size / 4}},
                   true);
    const double reach = 0.6 * size;
    sheet.line(LineRole::centre, circles - Point{reach, 0}, circles + Point{reach, 0});
    sheet.line(LineRole::centre, circles - Point{0, reach}, circles + Point{0, reach});
    sheet.line(LineRole::centre, cone - Point{reach, 0}, cone + Point{reach, 0});
}

}  // namespace rodwright::drawing
