#include "compiler/place/propagation.hpp"

namespace rodwright {
namespace {

// Which rows mention an unknown: rows[start[u]] .. rows[start[u + 1] - 1].
struct Mentions {
    std::vector<std::size_t> start;
    std::vector<std::size_t> rows;

    Mentions(std::span<const LinearRow> table, std::size_t unknown_count) : start(unknown_count + 1, 0) {
        for (const LinearRow& row : table) {
            for (const RowEntry& entry : row.entries) ++start[entry.unknown + 1];
        }
        for (std::size_t u = 0; u < unknown_count; ++u) start[u + 1] += start[u];
        rows.resize(start.back());
        std::vector<std::size_t> next(start.begin(), start.end() - 1);
        for (std::size_t r = 0; r < table.size(); ++r) {
            for (const RowEntry& entry : table[r].entries) rows[next[entry.unknown]++] = r;
        }
    }

    std::span<const std::size_t> of(std::uint32_t unknown) const {
        return std::span(rows).subspan(start[unknown], start[unknown + 1] - start[unknown]);
    }
};

class Propagation {
  public:
    Propagation(std::span<const LinearRow> rows, Values& values, Effort& effort)
        : rows_(rows), values_(values), effort_(effort), mentions_(rows, values.size()) {
        for (std::size_t r = 0; r < rows_.size(); ++r) {
            unknowns_left_.push_back(rows_[r].entries.size());
            if (unknowns_left_[r] <= 1) worklist_.push_back(r);
        }
    }

    Propagated run() {
        // Every row comes into the worklist once, when its count falls to one (or begins below).
        for (std::size_t next = 0; next < worklist_.size() && !effort_.used_up(); ++next) {
            visit(worklist_[next]);
        }
        for (std::size_t r = 0; r < rows_.size(); ++r) {
            if (unknowns_left_[r] > 1) result_.remaining.push_back(r);
        }
        return std::move(result_);
    }

  private:
    void visit(std::size_t r) {
        const LinearRow left = substitute(rows_[r], values_, effort_);
        if (effort_.used_up()) return;
        if (!left.entries.empty()) {
            determine(left.entries.front().unknown, -left.constant / left.entries.front().factor);
        } else if (left.constant != 0) {
            result_.contradicting.push_back(r);
        }
    }

    void determine(std::uint32_t unknown, Rational value) {
        effort_.spend(value);
        values_[unknown] = std::move(value);
        for (const std::size_t r : mentions_.of(unknown)) {
            if (--unknowns_left_[r] == 1) worklist_.push_back(r);
        }
    }

    std::span<const LinearRow> rows_;
    Values& values_;
    Effort& effort_;
    Mentions mentions_;
    std::vector<std::size_t> unknowns_left_;
    std::vector<std::size_t> worklist_;
    Propagated result_;
};

}  // namespace

Propagated propagate(std::span<const LinearRow> rows, Values& values, Effort& effort) {
    return Propagation(rows, values, effort).run();
}

}  // namespace rodwright
