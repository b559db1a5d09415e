#include "compiler/check/strength/layout.hpp"

#include <algorithm>
#include <cmath>

namespace rodwright::strength {

namespace {

constexpr double least_pieces = 6;    // of a part's length
constexpr double strip_share = 8;     // strips are not narrower than this share of the width
constexpr double rib_share = 24;      // nor ribs than this share of the length
constexpr double same_station = 1.0;  // mm

std::size_t nearest(const std::vector<double>& values, double value) {
    const auto far = [&](double each) { return std::abs(each - value); };
    return static_cast<std::size_t>(std::ranges::min_element(values, {}, far) - values.begin());
}

// Half of the way to both neighbours, and all of it to an end.
double stretch_of(const std::vector<double>& values, std::size_t i, double whole) {
    const double low = i == 0 ? 0 : (values[i - 1] + values[i]) / 2;
    const double high = i + 1 == values.size() ? whole : (values[i] + values[i + 1]) / 2;
    return high - low;
}

// Those that are further apart than `least`; nearer ones become one, the first and last value stay.
std::vector<double> spread_out(std::vector<double> values, double least) {
    std::ranges::sort(values);
    std::vector<double> kept;
    for (const double value : values) {
        if (kept.empty() || value - kept.back() > least) kept.push_back(value);
    }
    return kept;
}

void divide(std::vector<double>& stations, double most) {
    std::vector<double> divided;
    for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
        const double gap = stations[i + 1] - stations[i];
        const auto pieces = static_cast<std::size_t>(std::max(1.0, std::ceil(gap / most - 1e-9)));
        for (std::size_t j = 0; j < pieces; ++j)
            divided.push_back(stations[i] + gap * static_cast<double>(j) / static_cast<double>(pieces));
    }
    divided.push_back(stations.back());
    stations = std::move(divided);
}

std::vector<double> lines_of(const Vec3& size, const std::vector<Vec3>& attached) {
    const double middle = size.y() / 2;
    std::vector<double> across;
    for (const Vec3& point : attached) across.push_back(std::clamp(point.y(), 0.0, size.y()));
    const auto far = [&](double y) { return std::abs(y - middle) > 2 * size.z(); };
    if (!may_be_plate(size) || std::ranges::none_of(across, far)) return {middle};
    across.push_back(middle);
    return spread_out(std::move(across), std::max(size.z(), size.y() / strip_share));
}

}  // namespace

bool may_be_plate(const Vec3& size) {
    return size.y() >= plate_ratio * size.z();
}

std::size_t Layout::station_near(double x) const {
    return nearest(stations, x);
}

std::size_t Layout::line_near(double y) const {
    return nearest(lines, y);
}

double Layout::length_of(std::size_t station, double length) const {
    return stretch_of(stations, station, length);
}

double Layout::width_of(std::size_t line, double width) const {
    return stretch_of(lines, line, width);
}

Layout lay_out(const Vec3& size, const std::vector<Vec3>& attached) {
    Layout layout;
    layout.lines = lines_of(size, attached);
    const double least = layout.plate() ? std::max(same_station, size.x() / rib_share) : same_station;
    std::vector<double> along = {0};
    for (const Vec3& point : attached) {
        const double x = std::clamp(point.x(), 0.0, size.x());
        if (size.x() - x > least) along.push_back(x);
    }
    layout.stations = spread_out(std::move(along), least);
    layout.stations.push_back(size.x());
    divide(layout.stations, size.x() / least_pieces);
    return layout;
}

}  // namespace rodwright::strength
