#include "compiler/stock/cutting/bounds/dual_feasible.hpp"

#include <algorithm>
#include <set>

namespace rodwright::cutting {
namespace {

constexpr std::size_t most_thresholds = 60;

// A size that occurs along an axis, and how many parts can have it there.
struct Extent {
    int size = 0;
    int count = 0;
};

// Values of a dual feasible function for a list of sizes; the greatest sum side by side is `capacity`.
struct Values {
    Amount capacity = 1;
    std::vector<Amount> of;
};

// All functions for one axis of the stock piece.
class Family {
  public:
    Family(int whole, std::vector<Extent> extents) : whole_(whole), extents_(std::move(extents)) {
        add_threshold(1);  // the size itself
        for (const int k : thresholds()) {
            if (k > 1 && 2 * k <= whole_) add_threshold(k);
            add_rounding(k);
            add_counting(k);
        }
    }

    const std::vector<Values>& functions() const { return functions_; }

  private:
    std::vector<int> thresholds() const {
        std::set<int> all;
        for (const Extent& extent : extents_) {
            if (2 * extent.size <= whole_) all.insert(extent.size);
            if (2 * extent.size > whole_ && extent.size < whole_) all.insert(whole_ - extent.size + 1);
        }
        all.erase(all.upper_bound(whole_ / 2 + 1), all.end());
        std::vector<int> chosen(all.begin(), all.end());
        if (chosen.size() <= most_thresholds) return chosen;
        std::vector<int> fewer;
        for (std::size_t i = 0; i < most_thresholds; ++i) {
            fewer.push_back(chosen[i * chosen.size() / most_thresholds]);
        }
        return fewer;
    }

    template <typename Function>
    void add(Amount capacity, Function&& function) {
        Values values;
        values.capacity = capacity;
        for (const Extent& extent : extents_) values.of.push_back(function(extent.size));
        functions_.push_back(std::move(values));
    }

    // Sizes below k are nothing, those that leave less than k all.
    void add_threshold(int k) {
        add(whole_, [&](int size) -> Amount {
            if (size > whole_ - k) return whole_;
            return size < k ? 0 : size;
        });
    }

    // Sizes in multiples of k: the small rounded down, the large up. With k above a half, only large ones
    // count.
    void add_rounding(int k) {
        const int most = whole_ / k;
        add(2 * most, [&](int size) -> Amount {
            if (2 * size > whole_) return 2 * (most - (whole_ - size) / k);
            return 2 * size == whole_ ? most : 2 * (size / k);
        });
    }

    // Sizes of at least k up to a half count 1; a larger one as many as it leaves no room for.
    void add_counting(int k) {
        std::vector<Extent> small;
        for (const Extent& extent : extents_) {
            if (extent.size >= k && 2 * extent.size <= whole_) small.push_back(extent);
        }
        std::sort(small.begin(), small.end(),
                  [](const Extent& a, const Extent& b) { return a.size < b.size; });
        const auto fitting = [&](int room) {
            Amount count = 0;
            for (const Extent& extent : small) {
                const int more = std::min(extent.count, room / extent.size);
                count += more;
                room -= more * extent.size;
                if (more < extent.count) break;
            }
            return count;
        };
        const Amount most = fitting(whole_);
        if (most == 0) return;
        add(most, [&](int size) -> Amount {
            if (2 * size > whole_) return most - fitting(whole_ - size);
            return size < k ? 0 : 1;
        });
    }

    int whole_;
    std::vector<Extent> extents_;
    std::vector<Values> functions_;
};

struct Part {
    int quantity = 0;
    // Indices into the extents of both axes; those of the turned part follow where it may be turned.
    std::array<std::size_t, 2> index{};
    std::array<std::size_t, 2> turned{};
    bool upright = false;  // fits so
    bool turns = false;    // and so
};

Amount value_of(const Part& part, const Values& length, const Values& width) {
    const Amount upright = length.of[part.index[0]] * width.of[part.index[1]];
    if (!part.turns) return upright;
    const Amount turned = length.of[part.turned[0]] * width.of[part.turned[1]];
    return part.upright ? std::min(upright, turned) : turned;
}

class Bound {
  public:
    explicit Bound(const Problem& problem) : whole_(problem.stock.front().size.grown(problem.kerf)) {
        for (const PartKind& kind : problem.parts) add(kind, problem.kerf);
    }

    Amount best() const {
        const Family lengths(whole_.along[0], extents_[0]);
        const Family widths(whole_.along[1], extents_[1]);
        Amount best = 0;
        for (const Values& length : lengths.functions()) {
            for (const Values& width : widths.functions()) {
                Amount sum = 0;
                for (const Part& part : parts_) sum += part.quantity * value_of(part, length, width);
                const Amount capacity = length.capacity * width.capacity;
                best = std::max(best, (sum + capacity - 1) / capacity);
            }
        }
        return best;
    }

  private:
    bool fits(Size size) const {
        return size.along[0] <= whole_.along[0] && size.along[1] <= whole_.along[1];
    }

    void add(const PartKind& kind, Size kerf) {
        const Size size = kind.size.grown(kerf);
        const Size turned = kind.size.turned().grown(kerf);
        Part part;
        part.quantity = kind.quantity;
        part.upright = fits(size);
        part.turns = kind.may_turn && fits(turned);
        if (kind.quantity == 0 || (!part.upright && !part.turns)) return;
        for (std::size_t axis = 0; axis < 2; ++axis) {
            if (part.upright) part.index[axis] = extent(axis, size.along[axis], kind.quantity);
            if (part.turns) part.turned[axis] = extent(axis, turned.along[axis], kind.quantity);
        }
        parts_.push_back(part);
    }

    std::size_t extent(std::size_t axis, int size, int count) {
        auto& extents = extents_[axis];
        const auto known = std::find_if(extents.begin(), extents.end(),
                                        [&](const Extent& entry) { return entry.size == size; });
        if (known != extents.end()) {
            known->count += count;
            return static_cast<std::size_t>(known - extents.begin());
        }
        extents.push_back({size, count});
        return extents.size() - 1;
    }

    Size whole_;
    std::array<std::vector<Extent>, 2> extents_;
    std::vector<Part> parts_;
};

}  // namespace

Amount dual_feasible_bound(const Problem& problem) {
    return Bound(problem).best();
}

}  // namespace rodwright::cutting
