// Pieces of one line, by the distance along it.
#pragma once

#include <cstddef>
#include <vector>

namespace rodwright {

struct Stretch {
    double low = 0;
    double high = 0;
    std::size_t source = 0;  // whose it is
};

// Takes stretches in the order of their importance and keeps of each what those before it leave free; pieces
// of one source group (`same(a, b)`) that then touch, within `slack`, become one. Sorted by `low`.
class StretchMap {
  public:
    explicit StretchMap(double slack) : slack_(slack) {}
    void add(const Stretch& stretch);
    template <typename Same>
    std::vector<Stretch> joined(Same same) const;

  private:
    double slack_;
    std::vector<Stretch> kept_;  // apart from each other, sorted
};

template <typename Same>
std::vector<Stretch> StretchMap::joined(Same same) const {
    std::vector<Stretch> joined;
    for (const Stretch& each : kept_) {
        const bool goes_on = !joined.empty() && each.low - joined.back().high <= slack_ &&
                             same(joined.back().source, each.source);
        if (goes_on) {
            joined.back().high = each.high;
        } else {
            joined.push_back(each);
        }
    }
    return joined;
}

}  // namespace rodwright
