#include "compiler/check/strength/cross_section.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rodwright::strength {

namespace {

using Point = std::array<double, 2>;  // y, z

struct Segment {
    Point from;
    Point to;
};

Point on_plane(const Point3& below, const Point3& above, double x) {
    const double share = (x - below[0]) / (above[0] - below[0]);
    return {below[1] + share * (above[1] - below[1]), below[2] + share * (above[2] - below[2])};
}

// The line in which a triangle meets the plane, with the wood on its left. A corner in the plane counts as
// below it, in every triangle that shares it, so that the lines close.
std::optional<Segment> crossing(const Triangle& triangle, double x) {
    std::vector<Point> points;
    for (std::size_t i = 0; i < 3; ++i) {
        const Point3& a = triangle.corners[i];
        const Point3& b = triangle.corners[(i + 1) % 3];
        if ((a[0] > x) == (b[0] > x)) continue;
        points.push_back(a[0] > x ? on_plane(b, a, x) : on_plane(a, b, x));
    }
    if (points.size() != 2) return std::nullopt;
    const Point along = {points[1][0] - points[0][0], points[1][1] - points[0][1]};
    const bool forward = along[1] * triangle.normal[1] - along[0] * triangle.normal[2] >= 0;
    return forward ? Segment{points[0], points[1]} : Segment{points[1], points[0]};
}

constexpr std::size_t rim_points = 16;

void add_rim(CrossSection& section, const std::vector<Point>& points) {
    for (std::size_t i = 0; i < rim_points; ++i) {
        const double angle = 2 * std::numbers::pi * static_cast<double>(i) / rim_points;
        const auto reach = [&](const Point& p) { return p[0] * std::cos(angle) + p[1] * std::sin(angle); };
        const Point far = *std::ranges::max_element(points, {}, reach);
        section.rim.push_back({far[0] - section.y, far[1] - section.z});
    }
}

}  // namespace

frame::Section CrossSection::as_beam() const {
    const double shear = area * 5 / 6;
    const double polar = inertia_y + inertia_z;
    return {area, shear, shear, inertia_y, inertia_z, std::pow(area, 4) / (40 * polar)};
}

double CrossSection::least_inertia() const {
    const double middle = (inertia_y + inertia_z) / 2;
    return middle - std::hypot((inertia_y - inertia_z) / 2, product);
}

double CrossSection::stress(double along, double about_y, double about_z) const {
    const double divisor = inertia_y * inertia_z - product * product;
    const double slope_y = -(about_z * inertia_y + about_y * product) / divisor;
    const double slope_z = (about_y * inertia_z + about_z * product) / divisor;
    double worst = 0;
    for (const Point& point : rim) {
        worst = std::max(worst, std::abs(along / area + slope_y * point[0] + slope_z * point[1]));
    }
    return worst;
}

CrossSection rectangle(double width, double thick) {
    CrossSection section;
    section.area = width * thick;
    section.y = width / 2;
    section.z = thick / 2;
    section.inertia_y = width * thick * thick * thick / 12;
    section.inertia_z = thick * width * width * width / 12;
    for (const double y : {-width / 2, width / 2}) {
        for (const double z : {-thick / 2, thick / 2}) section.rim.push_back({y, z});
    }
    return section;
}

// Green's theorem: integrals over the area as sums over its edges.
std::optional<CrossSection> cut_across(const std::vector<Triangle>& surface, double x) {
    CrossSection section;
    std::vector<Point> points;
    double yy = 0;
    double zz = 0;
    double yz = 0;
    for (const Triangle& triangle : surface) {
        const std::optional<Segment> edge = crossing(triangle, x);
        if (!edge) continue;
        const Point& a = edge->from;
        const Point& b = edge->to;
        const double cross = a[0] * b[1] - b[0] * a[1];
        section.area += cross / 2;
        section.y += (a[0] + b[0]) * cross / 6;
        section.z += (a[1] + b[1]) * cross / 6;
        yy += (a[0] * a[0] + a[0] * b[0] + b[0] * b[0]) * cross / 12;
        zz += (a[1] * a[1] + a[1] * b[1] + b[1] * b[1]) * cross / 12;
        yz += (a[0] * b[1] + 2 * a[0] * a[1] + 2 * b[0] * b[1] + b[0] * a[1]) * cross / 24;
        points.push_back(a);
    }
    if (points.empty() || !(section.area > 0)) return std::nullopt;
    section.y /= section.area;
    section.z /= section.area;
    section.inertia_z = yy - section.area * section.y * section.y;
    section.inertia_y = zz - section.area * section.z * section.z;
    section.product = yz - section.area * section.y * section.z;
    if (!(section.inertia_y > 0) || !(section.inertia_z > 0)) return std::nullopt;
    add_rim(section, points);
    return section;
}

}  // namespace rodwright::strength
