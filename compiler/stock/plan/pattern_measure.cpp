#include "compiler/stock/plan/pattern_measure.hpp"

#include <algorithm>
#include <cmath>

#include "compiler/stock/cutting/columns/master.hpp"
#include "compiler/stock/plan/best_pattern.hpp"

namespace rodwright {
namespace {

using cutting::Amount;
using cutting::Measure;
namespace columns = cutting::columns;

constexpr int most_rounds = 60;
constexpr Amount most_work = 40'000'000;
constexpr double value_unit = 1e6;  // the dearest piece

class Patterns {
  public:
    Patterns(const std::vector<WantedPieces>& pieces, const std::vector<BoardKind>& boards)
        : pieces_(pieces), boards_(boards), master_(cover()), values_(pieces.size(), 0) {
        for (std::size_t board = 0; board < boards.size(); ++board) add_table(board);
    }

    bool takes_too_long() const {
        Amount work = 0;
        for (const PatternTable& table : tables_) work += table.work();
        return work * most_rounds > most_work;
    }

    Measure measure() {
        for (int round = 0; round < most_rounds; ++round) {
            master_.optimise();
            set_values();
            if (!add_better_patterns()) break;
        }
        Measure measure;
        for (std::size_t i = 0; i < pieces_.size(); ++i) measure.needed += values_[i] * pieces_[i].quantity;
        for (std::size_t board = 0; board < boards_.size(); ++board)
            measure.held.push_back(best_of(board).value);
        return measure;
    }

  private:
    const std::vector<WantedPieces>& pieces_;
    const std::vector<BoardKind>& boards_;
    columns::Master master_;
    std::vector<Amount> values_;
    double per_cost_ = 1;  // values for one of cost
    std::vector<PatternTable> tables_;
    std::vector<std::vector<std::size_t>> pieces_of_;  // by board: those that it is thick enough for

    columns::Cover cover() const {
        columns::Cover cover;
        int pieces = 0;
        for (const WantedPieces& piece : pieces_) {
            cover.wanted.push_back({0, piece.quantity});
            pieces += piece.quantity;
        }
        for (const BoardKind& board : boards_) {
            cover.bars.push_back({0, board.stock.available.value_or(pieces),
                                  board.stock.available.has_value(), board.stock.cost});
        }
        return cover;
    }

    void add_table(std::size_t board) {
        std::vector<cutting::Size> sizes;
        std::vector<bool> strips;
        pieces_of_.emplace_back();
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            if (!pieces_[i].from[board]) continue;
            pieces_of_.back().push_back(i);
            sizes.push_back(pieces_[i].size);
            strips.push_back(pieces_[i].strips);
        }
        tables_.emplace_back(boards_[board].size, std::move(sizes), strips);
    }

    void set_values() {
        double dearest = 0;
        for (std::size_t i = 0; i < pieces_.size(); ++i) dearest = std::max(dearest, master_.duals()[i]);
        per_cost_ = dearest > 0 ? value_unit / dearest : 1;
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            values_[i] = static_cast<Amount>(std::max(0.0, std::floor(master_.duals()[i] * per_cost_)));
    }

    BestPattern best_of(std::size_t board) {
        std::vector<Amount> values;
        for (const std::size_t piece : pieces_of_[board]) values.push_back(values_[piece]);
        return tables_[board].best(values);
    }

    // False if no pattern is worth more than its board costs.
    bool add_better_patterns() {
        bool any = false;
        for (std::size_t board = 0; board < boards_.size(); ++board) {
            const BestPattern best = best_of(board);
            const double price = static_cast<double>(boards_[board].stock.cost) - master_.bar_dual(board);
            if (static_cast<double>(best.value) <= price * per_cost_ * (1 + 1e-6)) continue;
            columns::Pattern pattern;
            pattern.bar = static_cast<int>(board);
            for (std::size_t i = 0; i < best.counts.size(); ++i) {
                if (best.counts[i] > 0)
                    pattern.entries.push_back({static_cast<int>(pieces_of_[board][i]), best.counts[i]});
            }
            master_.add(pattern);
            any = true;
        }
        return any;
    }
};

}  // namespace

std::optional<Measure> pattern_measure(const std::vector<WantedPieces>& pieces,
                                       const std::vector<BoardKind>& boards) {
    Patterns patterns(pieces, boards);
    if (patterns.takes_too_long()) return std::nullopt;
    return patterns.measure();
}

}  // namespace rodwright
