#include "backends/packet/parts/line_features.hpp"

#include <algorithm>
#include <cmath>

#include "backends/packet/parts/part_geometry.hpp"

namespace rodwright::packet {

using drawing::AxisView;

namespace {

constexpr double near = 0.01;  // mm

bool on(const PaperPoint& point, const std::array<PaperPoint, 2>& segment) {
    const auto& [a, b] = segment;
    const double x = b[0] - a[0];
    const double y = b[1] - a[1];
    const double square = x * x + y * y;
    if (square == 0) return false;
    const double part = std::clamp(((point[0] - a[0]) * x + (point[1] - a[1]) * y) / square, 0.0, 1.0);
    return std::hypot(point[0] - a[0] - part * x, point[1] - a[1] - part * y) < near;
}

PaperPoint paper_point(const AxisView& view, const Point3& point) {
    const drawing::Point at = view.on_paper(point);
    return {at.x, at.y};
}

// A corner of the box, each coordinate low or high.
Point3 corner_of(const Box& box, std::array<bool, 3> high) {
    Point3 corner{};
    for (const Axis axis : all_axes) {
        const auto i = static_cast<std::size_t>(axis);
        corner[i] = (high[i] ? box.high : box.low)[axis].get_d();
    }
    return corner;
}

Point3 shifted(Point3 point, Direction way, double by) {
    point[static_cast<std::size_t>(way.axis)] += way.positive ? by : -by;
    return point;
}

}  // namespace

LineFeatures::LineFeatures(const Kind& kind, const AxisView& view) : kind_(kind), view_(view) {
    for (std::size_t i = 0; i < kind.features.size(); ++i) {
        const Feature& feature = kind.features[i];
        Outline outline{i, {}, {}};
        if (feature.op == FeatureOp::blend || feature.op == FeatureOp::bevel) {
            add_easing(outline, feature);
        } else {
            add_body(outline, feature.body);
        }
        outlines_.push_back(std::move(outline));
    }
    const Box body = visible_box(kind);
    for (std::size_t axis = 0; axis < 3; ++axis) {
        for (unsigned other = 0; other < 4; ++other) {
            std::array<bool, 3> high{};
            high[(axis + 1) % 3] = (other & 1U) != 0;
            high[(axis + 2) % 3] = (other & 2U) != 0;
            const Point3 from = corner_of(body, high);
            high[axis] = true;
            add_line(stock_, from, corner_of(body, high));
        }
    }
}

void LineFeatures::add_line(Outline& outline, const Point3& from, const Point3& to) const {
    outline.lines.push_back({paper_point(view_, from), paper_point(view_, to)});
}

void LineFeatures::add_body(Outline& outline, const Body& body) const {
    const Box stock = overall_box(kind_);
    if (body.form == BodyForm::cylinder && body.frame.w.axis == view_.towards.axis)
        outline.circles.emplace_back(paper_point(view_, point3_of(body.frame.origin)),
                                     body.size_u.get_d() / 2);
    const auto swept = static_cast<std::size_t>(body.frame.w.axis);
    const auto held = [&](Point3 point) {
        point[swept] = std::clamp(point[swept], stock.low.at[swept].get_d(), stock.high.at[swept].get_d());
        return point;
    };
    const std::vector<Vector> corners = section_within(body, stock);
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Point3 a = point3_of(corners[i]);
        const Point3 b = point3_of(corners[(i + 1) % corners.size()]);
        const double length = body.length.get_d();
        const Point3 far_a = held(shifted(a, body.frame.w, length));
        add_line(outline, held(a), held(b));
        add_line(outline, far_a, held(shifted(b, body.frame.w, length)));
        add_line(outline, held(a), far_a);
    }
}

// Where the rounded or chamfered strip runs out into both faces; at its end, the arc or the slope.
void LineFeatures::add_easing(Outline& outline, const Feature& feature) const {
    const Box body = visible_box(kind_);
    const double size = feature.size.get_d();
    for (const BoxEdge& edge : feature.edges) {
        const Direction a = outward(edge.a);
        const Direction b = outward(edge.b);
        std::array<bool, 3> high{};
        high[static_cast<std::size_t>(a.axis)] = a.positive;
        high[static_cast<std::size_t>(b.axis)] = b.positive;
        const Point3 from = corner_of(body, high);
        high[static_cast<std::size_t>(drawing::cross(a, b).axis)] = true;
        const Point3 to = corner_of(body, high);
        add_line(outline, shifted(from, a, -size), shifted(to, a, -size));
        add_line(outline, shifted(from, b, -size), shifted(to, b, -size));
        if (feature.op == FeatureOp::bevel) {
            add_line(outline, shifted(from, a, -size), shifted(from, b, -size));
        } else if (drawing::cross(a, b).axis == view_.towards.axis) {
            outline.circles.emplace_back(paper_point(view_, shifted(shifted(from, a, -size), b, -size)),
                                         size);
        }
    }
}

bool LineFeatures::made_alike(std::size_t a, std::size_t b) const {
    const Feature& one = kind_.features[a];
    const Feature& other = kind_.features[b];
    return one.where.file == other.where.file && one.where.begin == other.where.begin &&
           one.made_by == other.made_by;
}

std::optional<std::size_t> LineFeatures::feature_of(const ViewLine& line) const {
    const auto made_by = [&](const Outline& outline) {
        if (line.shape == LineShape::arc) {
            return std::any_of(outline.circles.begin(), outline.circles.end(), [&](const auto& circle) {
                const auto& [centre, radius] = circle;
                return std::hypot(centre[0] - line.centre[0], centre[1] - line.centre[1]) < near &&
                       std::abs(radius - line.radius) < near;
            });
        }
        return line.shape == LineShape::line &&
               std::any_of(outline.lines.begin(), outline.lines.end(), [&](const auto& segment) {
                   return on(line.points[0], segment) && on(line.points[1], segment);
               });
    };
    if (made_by(stock_)) return std::nullopt;
    std::optional<std::size_t> found;
    for (const Outline& outline : outlines_) {
        if (!made_by(outline)) continue;
        if (found && !made_alike(*found, outline.feature)) return std::nullopt;
        if (!found) found = outline.feature;
    }
    return found;
}

}  // namespace rodwright::packet
