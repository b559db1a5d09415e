#include "tests/unit/cutting/patterns.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace rodwright::cutting {
namespace {

bool contains(const Counts& a, const Counts& b) {
    return std::equal(a.begin(), a.end(), b.begin(), [](int x, int y) { return x >= y; });
}

class Cutter {
  public:
    Cutter(const Problem& problem, const StockPiece& piece) : problem_(problem), piece_(piece) {}

    // `stages` have been begun above the area, the last of them dividing `axis` (-1: none).
    const std::vector<Counts>& patterns(Rectangle area, int stages, int axis) {
        const bool clear = is_clear(area);
        if (clear) area.corner = clear_place;  // all of that size are alike
        const bool any_stages = !problem_.rule.stages;
        const Key key{area.corner.along, area.size.along, any_stages ? 0 : stages, any_stages ? -1 : axis};
        const auto known = known_.find(key);
        if (known != known_.end()) return known->second;
        std::set<Counts> found = {Counts(problem_.parts.size(), 0)};
        for (std::size_t i = 0; i < problem_.parts.size(); ++i) {
            if (is(problem_.parts[i], area.size) && may_lie(problem_.parts[i], area)) found.insert(one(i));
        }
        if (holds_any(area.size)) {
            cut_along(area, stages, axis, Axis::length, found);
            cut_along(area, stages, axis, Axis::width, found);
        }
        return known_[key] = largest(found);
    }

  private:
    using Key = std::tuple<std::array<int, 2>, std::array<int, 2>, int, int>;

    // Outside of the stock piece.
    static constexpr Size clear_place{{max_size, max_size}};

    bool is_clear(const Rectangle& area) const { return !piece_.has_defect_in(area); }

    // Defects on one face only do no harm to what needs one face.
    bool may_lie(const PartKind& part, const Rectangle& area) const {
        const auto spoils = [&](Faces faces) {
            return std::any_of(piece_.defects.begin(), piece_.defects.end(), [&](const Defect& defect) {
                return defect.area.overlaps(area) && (defect.faces == faces || defect.faces == Faces::both);
            });
        };
        if (part.one_face) return !spoils(Faces::upper) || !spoils(Faces::lower);
        return is_clear(area);
    }

    static bool is(const PartKind& part, Size size) {
        return part.quantity > 0 && (part.size == size || (part.may_turn && part.size.turned() == size));
    }

    bool holds_any(Size size) const {
        return std::any_of(problem_.parts.begin(), problem_.parts.end(), [&](const PartKind& part) {
            return size.reaches(part.size) || (part.may_turn && size.reaches(part.size.turned()));
        });
    }

    Counts one(std::size_t part) const {
        Counts counts(problem_.parts.size(), 0);
        counts[part] = 1;
        return counts;
    }

    static std::vector<Counts> largest(const std::set<Counts>& found) {
        std::vector<Counts> kept;
        for (const Counts& counts : found) {
            const bool inside = std::any_of(found.begin(), found.end(), [&](const Counts& other) {
                return &other != &counts && contains(other, counts);
            });
            if (!inside) kept.push_back(counts);
        }
        return kept;
    }

    void cut_along(const Rectangle& area, int stages, int axis, Axis divided, std::set<Counts>& found) {
        const CutRule& rule = problem_.rule;
        if (stages == 0 && rule.first_axis && *rule.first_axis != divided) ++stages;
        const bool begins = axis != static_cast<int>(divided);
        if (begins) ++stages;
        const bool over = rule.stages && stages > *rule.stages;
        const bool trims = over && rule.trimming && begins && stages == *rule.stages + 1;
        if (over && !trims) return;
        for (int at = 1; at < area.size[divided]; ++at) {
            Rectangle first = area;
            Rectangle second = area;
            first.size[divided] = at;
            second.corner[divided] += at + problem_.kerf[divided];
            second.size[divided] -= at + problem_.kerf[divided];
            if (trims) {
                trim(first, found);
            } else {
                combine(first, second, stages, divided, found);
            }
        }
    }

    // Separates one part from waste.
    void trim(const Rectangle& first, std::set<Counts>& found) const {
        for (std::size_t i = 0; i < problem_.parts.size(); ++i) {
            if (is(problem_.parts[i], first.size) && may_lie(problem_.parts[i], first)) found.insert(one(i));
        }
    }

    void combine(const Rectangle& first, const Rectangle& second, int stages, Axis divided,
                 std::set<Counts>& found) {
        const std::vector<Counts> all_first = patterns(first, stages, static_cast<int>(divided));
        if (second.size[divided] <= 0) {
            found.insert(all_first.begin(), all_first.end());
            return;
        }
        const std::vector<Counts> all_second = patterns(second, stages, static_cast<int>(divided));
        for (const Counts& a : all_first) {
            for (const Counts& b : all_second) {
                Counts sum = a;
                for (std::size_t i = 0; i < sum.size(); ++i) {
                    sum[i] = std::min(sum[i] + b[i], problem_.parts[i].quantity);
                }
                found.insert(sum);
            }
        }
    }

    const Problem& problem_;
    const StockPiece& piece_;
    std::map<Key, std::vector<Counts>> known_;
};

}  // namespace

std::vector<Counts> all_patterns(const Problem& problem, const StockPiece& piece) {
    return Cutter(problem, piece).patterns({{}, piece.size}, 0, -1);
}

}  // namespace rodwright::cutting
