#include "tests/unit/cutting/exhaustive.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>
#include <vector>

namespace rodwright::cutting {
namespace {

// Which sets of parts one stock piece can give.
class OneSheet {
  public:
    OneSheet(const Problem& problem, const StockPiece& piece, const std::vector<PartKind>& parts)
        : problem_(problem), piece_(piece), parts_(parts) {}

    bool holds(int set) { return cut(0, 0, piece_.size.along[0], piece_.size.along[1], set, 0, -1); }

  private:
    using Key = std::tuple<int, int, int, int, int, int, int>;

    bool clear(int x, int y, int length, int width) const {
        return std::none_of(piece_.defects.begin(), piece_.defects.end(), [&](const Rectangle& d) {
            return x < d.corner.along[0] + d.size.along[0] && d.corner.along[0] < x + length &&
                   y < d.corner.along[1] + d.size.along[1] && d.corner.along[1] < y + width;
        });
    }

    bool is_part(int set, int length, int width) const {
        if (set == 0 || (set & (set - 1)) != 0) return false;
        std::size_t index = 0;
        while ((set >> index) != 1) ++index;
        const PartKind& part = parts_[index];
        const bool upright = part.size.along[0] == length && part.size.along[1] == width;
        return upright || (part.may_turn && part.size.along[1] == length && part.size.along[0] == width);
    }

    Amount area(int set) const {
        Amount sum = 0;
        for (std::size_t i = 0; i < parts_.size(); ++i) {
            if ((set >> i) % 2 == 1) sum += parts_[i].size.area();
        }
        return sum;
    }

    bool cut(int x, int y, int length, int width, int set, int stages, int axis) {
        if (set == 0) return true;
        if (length <= 0 || width <= 0 || area(set) > static_cast<Amount>(length) * width) return false;
        if (is_part(set, length, width)) return clear(x, y, length, width);
        const auto known = known_.find({x, y, length, width, set, stages, axis});
        if (known != known_.end()) return known->second;
        const bool possible = cut_along(x, y, length, width, set, stages, axis, 0) ||
                              cut_along(x, y, length, width, set, stages, axis, 1);
        known_[{x, y, length, width, set, stages, axis}] = possible;
        return possible;
    }

    bool cut_along(int x, int y, int length, int width, int set, int stages, int axis, int divided) {
        const CutRule& rule = problem_.rule;
        if (stages == 0 && rule.first_axis && static_cast<int>(*rule.first_axis) != divided) ++stages;
        if (axis != divided) ++stages;
        const bool over = rule.stages && stages > *rule.stages;
        if (over && !(rule.trimming && axis != divided && stages == *rule.stages + 1)) return false;
        const int extent = divided == 0 ? length : width;
        for (int at = 1; at < extent; ++at) {
            const int behind = at + problem_.kerf.along[static_cast<std::size_t>(divided)];
            const auto first = [&](int part) {
                return divided == 0 ? cut(x, y, at, width, part, stages, divided)
                                    : cut(x, y, length, at, part, stages, divided);
            };
            const auto second = [&](int part) {
                return divided == 0 ? cut(x + behind, y, length - behind, width, part, stages, divided)
                                    : cut(x, y + behind, length, width - behind, part, stages, divided);
            };
            if (over) {
                if (divided == 0 ? is_part(set, at, width) : is_part(set, length, at)) {
                    if (first(set)) return true;
                }
                continue;
            }
            for (int part = set;; part = (part - 1) & set) {
                if (first(part) && second(set & ~part)) return true;
                if (part == 0) break;
            }
        }
        return false;
    }

    const Problem& problem_;
    const StockPiece& piece_;
    const std::vector<PartKind>& parts_;
    std::map<Key, bool> known_;
};

}  // namespace

std::optional<Amount> exhaustive_optimum(const Problem& problem) {
    std::vector<PartKind> parts;
    for (const PartKind& kind : problem.parts) {
        parts.insert(parts.end(), static_cast<std::size_t>(kind.quantity), kind);
    }
    const std::size_t sets = std::size_t{1} << parts.size();
    constexpr Amount never = std::numeric_limits<Amount>::max() / 2;
    std::vector<Amount> least(sets,
                              never);  // cost at which a set can be cut from the pieces looked at so far
    least[0] = 0;
    for (const StockPiece& piece : problem.stock) {
        OneSheet sheet(problem, piece, parts);
        std::vector<std::size_t> held;
        for (std::size_t set = 1; set < sets; ++set) {
            if (sheet.holds(static_cast<int>(set))) held.push_back(set);
        }
        const int most = std::min(piece.available.value_or(static_cast<int>(parts.size())),
                                  static_cast<int>(parts.size()));
        for (int i = 0; i < most; ++i) {
            std::vector<Amount> next = least;
            for (const std::size_t set : held) {
                for (std::size_t before = 0; before < sets; ++before) {
                    if ((before & set) != 0) continue;
                    next[before | set] = std::min(next[before | set], least[before] + piece.cost);
                }
            }
            least = next;
        }
    }
    if (least[sets - 1] >= never) return std::nullopt;
    return least[sets - 1];
}

}  // namespace rodwright::cutting
