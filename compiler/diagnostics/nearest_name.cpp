#include <algorithm>
#include <utility>

#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

namespace {

using Row = std::vector<std::size_t>;

std::string lower(std::string_view text) {
    std::string lowered(text);
    for (char& c : lowered) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return lowered;
}

// Letters added, dropped, exchanged, or two neighbours swapped, each counting one.
std::size_t edit_distance(std::string_view a, std::string_view b) {
    Row before(b.size() + 1), above(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before = std::exchange(above, row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t exchanged = above[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U);
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, exchanged});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
        }
    }
    return row[b.size()];
}

std::size_t difference(std::size_t a, std::size_t b) {
    return a > b ? a - b : b - a;
}

}  // namespace

std::string nearest_name(std::string_view name, std::vector<std::string> candidates) {
    std::sort(candidates.begin(), candidates.end());
    const std::string wanted = lower(name);
    std::string nearest;
    std::size_t least = name.size() / 3 + 1;
    for (std::string& candidate : candidates) {
        const std::string lowered = lower(candidate);
        if (lowered == wanted) return std::move(candidate);
        if (difference(lowered.size(), wanted.size()) >= least) continue;
        const std::size_t distance = edit_distance(wanted, lowered);
        if (distance >= least) continue;
        least = distance;
        nearest = candidate;
    }
    return nearest;
}

}  // namespace rodwright
