#include "compiler/stock/plan/best_pattern.hpp"

namespace rodwright {
namespace {

using cutting::Amount;

// All sums of sizes up to `most`, 0 among them.
std::vector<int> sums(const std::vector<int>& sizes, int most) {
    std::vector<bool> reached(static_cast<std::size_t>(most) + 1, false);
    std::vector<int> all;
    reached[0] = true;
    for (int at = 0; at <= most; ++at) {
        if (!reached[static_cast<std::size_t>(at)]) continue;
        all.push_back(at);
        for (const int size : sizes) {
            if (at + size <= most) reached[static_cast<std::size_t>(at + size)] = true;
        }
    }
    return all;
}

std::vector<std::size_t> indices_at_most(const std::vector<int>& values, int most) {
    std::vector<std::size_t> indices;
    std::size_t index = 0;
    for (int at = 0; at <= most; ++at) {
        while (index + 1 < values.size() && values[index + 1] <= at) ++index;
        indices.push_back(index);
    }
    return indices;
}

}  // namespace

PatternTable::PatternTable(cutting::Size board, std::vector<cutting::Size> pieces,
                           const std::vector<bool>& strips)
    : pieces_(std::move(pieces)), strips_(strips) {
    std::vector<int> lengths;
    std::vector<int> widths;
    for (const cutting::Size& piece : pieces_) {
        lengths.push_back(piece[cutting::Axis::length]);
        widths.push_back(piece[cutting::Axis::width]);
    }
    lengths_ = sums(lengths, board[cutting::Axis::length]);
    widths_ = sums(widths, board[cutting::Axis::width]);
    length_at_most_ = indices_at_most(lengths_, board[cutting::Axis::length]);
    width_at_most_ = indices_at_most(widths_, board[cutting::Axis::width]);
}

Amount PatternTable::work() const {
    const auto lengths = static_cast<Amount>(lengths_.size());
    const auto widths = static_cast<Amount>(widths_.size());
    return lengths * widths * (static_cast<Amount>(pieces_.size()) + (lengths + widths) / 4);
}

BestPattern PatternTable::best(const std::vector<Amount>& values) {
    table_.assign(lengths_.size() * widths_.size(), {});
    for (std::size_t length = 1; length < lengths_.size(); ++length) {
        for (std::size_t width = 1; width < widths_.size(); ++width) {
            try_pieces(length, width, values);
            try_cuts(length, width);
        }
    }
    BestPattern best;
    best.value = at(lengths_.size() - 1, widths_.size() - 1).value;
    best.counts.assign(pieces_.size(), 0);
    count(lengths_.size() - 1, widths_.size() - 1, best.counts);
    return best;
}

// How often the piece lies in that rectangle by itself.
int PatternTable::times(std::size_t piece, std::size_t length, std::size_t width) const {
    const int rows = lengths_[length] / pieces_[piece][cutting::Axis::length];
    const int lanes = widths_[width] / pieces_[piece][cutting::Axis::width];
    return strips_[piece] ? rows * lanes : static_cast<int>(rows > 0 && lanes > 0);
}

void PatternTable::try_pieces(std::size_t length, std::size_t width, const std::vector<Amount>& values) {
    Way& way = at(length, width);
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        const Amount value = values[i] * times(i, length, width);
        if (value > way.value) way = {value, static_cast<int>(i), -1, false};
    }
}

// A cut behind the smaller half of two.
void PatternTable::try_cuts(std::size_t length, std::size_t width) {
    Way& way = at(length, width);
    for (std::size_t i = 1; 2 * lengths_[i] <= lengths_[length]; ++i) {
        const std::size_t rest = length_at_most_[static_cast<std::size_t>(lengths_[length] - lengths_[i])];
        const Amount value = at(i, width).value + at(rest, width).value;
        if (value > way.value) way = {value, -1, static_cast<int>(i), false};
    }
    for (std::size_t i = 1; 2 * widths_[i] <= widths_[width]; ++i) {
        const std::size_t rest = width_at_most_[static_cast<std::size_t>(widths_[width] - widths_[i])];
        const Amount value = at(length, i).value + at(length, rest).value;
        if (value > way.value) way = {value, -1, static_cast<int>(i), true};
    }
}

void PatternTable::count(std::size_t length, std::size_t width, std::vector<int>& counts) {
    const Way way = at(length, width);
    if (way.piece >= 0) {
        const auto piece = static_cast<std::size_t>(way.piece);
        counts[piece] += times(piece, length, width);
    }
    if (way.cut < 0) return;
    const auto cut = static_cast<std::size_t>(way.cut);
    if (way.across) {
        count(length, cut, counts);
        count(length, width_at_most_[static_cast<std::size_t>(widths_[width] - widths_[cut])], counts);
    } else {
        count(cut, width, counts);
        count(length_at_most_[static_cast<std::size_t>(lengths_[length] - lengths_[cut])], width, counts);
    }
}

}  // namespace rodwright
