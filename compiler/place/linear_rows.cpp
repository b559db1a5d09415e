#include "compiler/place/linear_rows.hpp"

#include <algorithm>

namespace rodwright {

bool Effort::spend(const Rational& made) {
    const std::size_t words = mpz_size(made.get_num_mpz_t()) + mpz_size(made.get_den_mpz_t());
    const bool too_large = mpz_sizeinbase(made.get_num_mpz_t(), 2) > limits::value_bits ||
                           mpz_sizeinbase(made.get_den_mpz_t(), 2) > limits::value_bits;
    left_ = too_large || words >= left_ ? 0 : left_ - words;
    return left_ > 0;
}

void Effort::pass_over(std::size_t numbers) {
    constexpr std::size_t quicker = 8;  // than to make a word of a number
    left_ -= std::min(left_, numbers / quicker);
}

LinearRow to_row(const LinearEquation& equation) {
    LinearRow row;
    row.constant = equation.constant;
    row.entries.reserve(equation.terms.size());
    for (const Term& term : equation.terms) {
        row.entries.push_back({static_cast<std::uint32_t>(term.unknown), term.factor});
    }
    std::ranges::sort(row.entries, {}, &RowEntry::unknown);
    std::size_t kept = 0;
    for (std::size_t i = 0; i < row.entries.size(); ++i) {
        if (kept > 0 && row.entries[kept - 1].unknown == row.entries[i].unknown) {
            row.entries[kept - 1].factor += row.entries[i].factor;
        } else {
            std::swap(row.entries[kept++], row.entries[i]);
        }
    }
    row.entries.resize(kept);
    std::erase_if(row.entries, [](const RowEntry& entry) { return entry.factor == 0; });
    return row;
}

LinearRow substitute(const LinearRow& row, const Values& values, Effort& effort) {
    LinearRow result;
    result.constant = row.constant;
    for (const RowEntry& entry : row.entries) {
        const std::optional<Rational>& value = values[entry.unknown];
        if (value) {
            result.constant += entry.factor * *value;
            if (!effort.spend(result.constant)) return result;
        } else {
            result.entries.push_back(entry);
        }
    }
    return result;
}

}  // namespace rodwright
