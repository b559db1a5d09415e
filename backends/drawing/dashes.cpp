#include "backends/drawing/dashes.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rodwright::drawing {

namespace {

// Walks along a polyline.
class Walker {
  public:
    explicit Walker(const std::vector<Point>& points) : points_(points), at_(points[0]) {}

    // The points from here on to `length` further, or to the end.
    std::vector<Point> take(double length) {
        std::vector<Point> taken = {at_};
        while (next_ < points_.size()) {
            const double rest = distance(at_, points_[next_]);
            if (rest > length) {
                at_ = at_ + (points_[next_] - at_) * (length / rest);
                taken.push_back(at_);
                return taken;
            }
            length -= rest;
            at_ = points_[next_++];
            taken.push_back(at_);
        }
        return taken;
    }

  private:
    const std::vector<Point>& points_;
    Point at_;
    std::size_t next_ = 1;
};

double length_of(const std::vector<Point>& points) {
    double length = 0;
    for (std::size_t i = 1; i < points.size(); ++i) length += distance(points[i - 1], points[i]);
    return length;
}

// The lengths of dash and gap in turn along a line of that length; one alone for a line without gaps.
std::vector<double> fitted(double length, const std::vector<double>& pattern) {
    constexpr double least = 1;  // mm: below that a second dash is not to be seen
    if (length < least || pattern.empty()) return {length};
    const double period = std::accumulate(pattern.begin(), pattern.end(), 0.0);
    const double periods = std::max(1.0, std::round((length - pattern[0]) / period));
    const double stretch = length / (periods * period + pattern[0]);
    const std::size_t count = static_cast<std::size_t>(periods) * pattern.size() + 1;
    std::vector<double> lengths;
    for (std::size_t i = 0; i < count; ++i) lengths.push_back(pattern[i % pattern.size()] * stretch);
    return lengths;
}

}  // namespace

std::vector<std::vector<Point>> dashes_of(const std::vector<Point>& points,
                                          const std::vector<double>& pattern) {
    const std::vector<double> lengths = fitted(length_of(points), pattern);
    if (lengths.size() == 1) return {points};
    std::vector<std::vector<Point>> dashes;
    Walker walker(points);
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        std::vector<Point> piece = walker.take(lengths[i]);
        if (i % 2 == 0 && piece.size() > 1) dashes.push_back(std::move(piece));
    }
    return dashes;
}

std::vector<Arc> dashes_of(const Arc& arc, const std::vector<double>& pattern) {
    const std::vector<double> lengths = fitted(std::abs(arc.sweep) * arc.radius, pattern);
    std::vector<Arc> dashes;
    double start = arc.start;
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const double sweep = std::copysign(lengths[i] / arc.radius, arc.sweep);
        if (i % 2 == 0) dashes.push_back({arc.role, arc.centre, arc.radius, start, sweep});
        start += sweep;
    }
    return dashes;
}

}  // namespace rodwright::drawing
