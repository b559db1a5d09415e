// The most valuable pattern that a board can be cut into.
#pragma once

#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright {

struct BestPattern {
    cutting::Amount value = 0;
    std::vector<int> counts;  // by piece
};

// Cuts from edge to edge in any number of stages, pieces in any number, none turned. Dynamic programming over
// the lengths and widths that pieces one behind another come to; nothing that can be cut is worth more.
class PatternTable {
  public:
    PatternTable(cutting::Size board, std::vector<cutting::Size> pieces, const std::vector<bool>& strips);

    // How many steps best() takes, about.
    cutting::Amount work() const;
    // The values are those of the pieces.
    BestPattern best(const std::vector<cutting::Amount>& values);

  private:
    struct Way {
        cutting::Amount value = 0;
        int piece = -1;       // alone, or as strips
        int cut = -1;         // of the axis that `across` tells, behind the entry of that index
        bool across = false;  // the width is divided
    };

    Way& at(std::size_t length, std::size_t width) { return table_[length * widths_.size() + width]; }
    void try_pieces(std::size_t length, std::size_t width, const std::vector<cutting::Amount>& values);
    void try_cuts(std::size_t length, std::size_t width);
    int times(std::size_t piece, std::size_t length, std::size_t width) const;
    void count(std::size_t length, std::size_t width, std::vector<int>& counts);

    std::vector<cutting::Size> pieces_;
    std::vector<bool> strips_;
    std::vector<int> lengths_;  // from 0
    std::vector<int> widths_;
    std::vector<std::size_t> length_at_most_;  // index of the longest that a length holds
    std::vector<std::size_t> width_at_most_;
    std::vector<Way> table_;
};

}  // namespace rodwright
