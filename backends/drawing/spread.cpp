#include "backends/drawing/spread.hpp"

#include <algorithm>
#include <cstddef>

namespace rodwright::drawing {

namespace {

// Labels that push against one another: they stand `apart`, and the first is where all are nearest to their
// wishes (least squares).
struct Cluster {
    std::size_t count = 0;
    double sum = 0;  // of wish less the place within the cluster
    double first(double low, double high, double apart) const {
        const double length = apart * static_cast<double>(count - 1);
        return std::clamp(sum / static_cast<double>(count), low, std::max(low, high - length));
    }
};

Cluster merge(const Cluster& a, const Cluster& b, double apart) {
    const double moved = apart * static_cast<double>(a.count) * static_cast<double>(b.count);
    return {a.count + b.count, a.sum + b.sum - moved};
}

std::vector<double> evenly(std::size_t count, double low, double high) {
    std::vector<double> places;
    const double step = count > 1 ? (high - low) / static_cast<double>(count - 1) : 0;
    for (std::size_t i = 0; i < count; ++i) places.push_back(low + step * static_cast<double>(i));
    return places;
}

}  // namespace

std::vector<double> spread(const std::vector<double>& wanted, double apart, double low, double high) {
    if (wanted.empty()) return {};
    if (apart * static_cast<double>(wanted.size() - 1) > high - low) return evenly(wanted.size(), low, high);
    std::vector<Cluster> clusters;
    const auto touches = [&](const Cluster& a, const Cluster& b) {
        return a.first(low, high, apart) + apart * static_cast<double>(a.count) > b.first(low, high, apart);
    };
    for (const double wish : wanted) {
        clusters.push_back({1, wish});
        while (clusters.size() > 1 && touches(clusters[clusters.size() - 2], clusters.back())) {
            const Cluster last = clusters.back();
            clusters.pop_back();
            clusters.back() = merge(clusters.back(), last, apart);
        }
    }
    std::vector<double> places;
    for (const Cluster& cluster : clusters) {
        for (std::size_t i = 0; i < cluster.count; ++i) {
            places.push_back(cluster.first(low, high, apart) + apart * static_cast<double>(i));
        }
    }
    return places;
}

}  // namespace rodwright::drawing
