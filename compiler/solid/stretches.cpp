#include "compiler/solid/stretches.hpp"

#include <algorithm>

namespace rodwright {

void StretchMap::add(const Stretch& stretch) {
    std::vector<Stretch> free;
    double from = stretch.low;
    for (const Stretch& kept : kept_) {
        if (kept.high <= from) continue;
        if (kept.low >= stretch.high) break;
        if (kept.low - from > slack_) free.push_back({from, kept.low, stretch.source});
        from = kept.high;
    }
    if (stretch.high - from > slack_) free.push_back({from, stretch.high, stretch.source});
    for (const Stretch& piece : free) {
        const auto place = std::upper_bound(kept_.begin(), kept_.end(), piece,
                                            [](const Stretch& a, const Stretch& b) { return a.low < b.low; });
        kept_.insert(place, piece);
    }
}

}  // namespace rodwright
