// The second phase of solving: sparse Gaussian elimination of the rows that propagation could not finish.
#pragma once

#include <functional>
#include <queue>

#include "compiler/place/linear_rows.hpp"

namespace rodwright {

// Which of the rows that hold an unknown is used to eliminate it. `shortest` keeps the rows short. With
// `earliest` a row is changed by rows before it only, so that a row that comes out empty is a combination of
// rows before it: of contradicting equations it is always the later one that shows.
enum class PivotRow { shortest, earliest };

class Elimination {
  public:
    // What it makes is taken off `effort`; when that is used up, nothing it answers has a meaning.
    Elimination(std::size_t unknown_count, PivotRow choice, Effort& effort);

    // In increasing order of `equation`. A row that is only checked never eliminates an unknown; it has to be
    // a combination of the others but for its constant.
    void add(std::size_t equation, LinearRow row, bool only_checked = false);

    void run();

    // Sets the values of the unknowns that the added rows determine. An unknown is taken to be determined if
    // it is zero in a random solution of the homogeneous system. With 62 random bits for each free unknown
    // that misses a dependence with a probability of 2^-62 (Schwartz-Zippel), and needs no symbolic back
    // substitution, whose size is quadratic.
    void read_values(Values& values) const;

    // The equations whose rows came out empty but for a constant.
    std::vector<std::size_t> contradicted() const;

    // The first `most` contradicted equations, with the sets they contradict.
    std::vector<Conflict> conflicts(std::size_t most) const;

  private:
    // row -= factor * row of pivot
    struct Step {
        std::size_t pivot = 0;
        Rational factor;
    };
    struct WorkRow {
        std::size_t equation = 0;
        LinearRow row;
        std::vector<Step> steps;
        bool only_checked = false;
        bool active = true;
    };
    struct Pivot {
        std::size_t row = 0;
        std::uint32_t unknown = 0;
    };
    struct Candidate {
        std::size_t cost = 0;
        std::uint32_t unknown = 0;
        friend auto operator<=>(const Candidate&, const Candidate&) = default;
    };

    void consider(const Candidate& candidate);
    void eliminate(const Pivot& pivot, const std::vector<std::size_t>& rows);
    std::vector<std::size_t> active_rows(std::uint32_t unknown) const;
    std::size_t pivot_row(const std::vector<std::size_t>& rows) const;
    void retire(std::size_t pivot_row);
    void subtract(std::size_t target, const Pivot& pivot);
    LinearRow combine(std::size_t target, const LinearRow& pivot, const Rational& factor);
    void gain(std::uint32_t unknown, std::size_t row);
    void lose(std::uint32_t unknown);
    void note_row(std::size_t row);
    std::vector<Rational> back_substitute(bool homogeneous) const;
    Conflict conflict(std::size_t row) const;

    PivotRow choice_;
    Effort& effort_;
    std::vector<WorkRow> rows_;
    std::vector<std::vector<std::size_t>> columns_;  // by unknown; also rows that have lost it since
    std::vector<std::size_t> degree_;                // active rows that hold the unknown
    std::vector<bool> eliminated_;
    std::vector<Pivot> pivots_;
    std::vector<std::size_t> contradicted_;
    // The unknown that brings the fewest new entries first: those of the pivot's row in each of the other
    // rows that hold it (Markowitz, 1957). The costs are from below; the true one is found when the unknown's
    // turn comes.
    std::priority_queue<Candidate, std::vector<Candidate>, std::greater<>> queue_;
};

}  // namespace rodwright
