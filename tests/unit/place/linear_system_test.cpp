#include "compiler/place/linear_system.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <initializer_list>
#include <map>
#include <random>

#include "compiler/limits.hpp"

using namespace rodwright;

namespace {

using Equations = std::vector<LinearEquation>;
using Groups = std::vector<std::vector<Unknown>>;

struct T {
    std::uint32_t unknown;
    Rational factor;
};

// The sum of the terms equals `value`.
LinearEquation equation(std::initializer_list<T> terms, const Rational& value) {
    LinearEquation result;
    result.constant = -value;
    for (const T& term : terms) result.terms.push_back({Unknown{term.unknown}, term.factor});
    return result;
}

// Dense Gauss-Jordan elimination, one equation after another, as the independent account of what solve()
// answers.
class Dense {
  public:
    explicit Dense(std::size_t unknown_count) : count_(unknown_count) {}

    // False if the equation contradicts those before it; it is left out then.
    bool add(const LinearEquation& equation) {
        std::vector<Rational> row(count_ + 1);
        for (const Term& term : equation.terms) row[static_cast<std::size_t>(term.unknown)] += term.factor;
        row[count_] = equation.constant;
        for (std::size_t i = 0; i < rows_.size(); ++i) subtract(row, rows_[i], pivots_[i]);
        std::size_t pivot = 0;
        while (pivot < count_ && row[pivot] == 0) ++pivot;
        if (pivot == count_) return row[count_] == 0;
        const Rational factor = row[pivot];
        for (Rational& entry : row) entry /= factor;
        for (std::vector<Rational>& other : rows_) subtract(other, row, pivot);
        rows_.push_back(row);
        pivots_.push_back(pivot);
        return true;
    }

    std::vector<std::optional<Rational>> values() const {
        std::vector<std::optional<Rational>> result(count_);
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            const auto zeros = std::count(rows_[i].begin(), rows_[i].end() - 1, Rational(0));
            if (zeros + 1 == static_cast<std::ptrdiff_t>(count_)) result[pivots_[i]] = -rows_[i][count_];
        }
        return result;
    }

  private:
    static void subtract(std::vector<Rational>& row, const std::vector<Rational>& other, std::size_t pivot) {
        const Rational factor = row[pivot];
        for (std::size_t i = 0; i < row.size(); ++i) row[i] -= factor * other[i];
    }

    std::size_t count_;
    std::vector<std::vector<Rational>> rows_;  // in reduced row echelon form, but for their order
    std::vector<std::size_t> pivots_;
};

bool consistent(std::size_t count, const Equations& equations, const std::vector<std::size_t>& chosen) {
    Dense dense(count);
    return std::ranges::all_of(chosen, [&](std::size_t i) { return dense.add(equations[i]); });
}

struct RandomSystem {
    std::size_t unknown_count = 0;
    Equations equations;
};

// A few terms for an equation. `errors`: some equations do not hold for the hidden solution.
RandomSystem random_system(std::mt19937& random, bool errors) {
    RandomSystem system;
    system.unknown_count = random() % 14 + 1;
    std::vector<Rational> hidden(system.unknown_count);
    for (Rational& value : hidden) value = ratio(random() % 40, random() % 6 + 1);
    const std::size_t count = random() % (2 * system.unknown_count) + 1;
    for (std::size_t i = 0; i < count; ++i) {
        LinearEquation next;
        for (std::size_t terms = random() % 4 + 1; terms > 0; --terms) {
            const auto unknown = static_cast<std::uint32_t>(random() % system.unknown_count);
            next.terms.push_back(
                {Unknown{unknown}, ratio(static_cast<long>(random() % 5) - 2, random() % 2 + 1)});
            next.constant -= next.terms.back().factor * hidden[unknown];
        }
        if (errors && random() % 6 == 0) next.constant += 1;
        system.equations.push_back(std::move(next));
    }
    return system;
}

// Undetermined unknowns connected through equations, by spreading marks until nothing changes.
Groups expected_groups(const RandomSystem& system, const std::vector<std::optional<Rational>>& values) {
    std::vector<std::size_t> mark(system.unknown_count);
    for (std::size_t u = 0; u < mark.size(); ++u) mark[u] = u;
    for (bool changed = true; changed;) {
        changed = false;
        for (const LinearEquation& each : system.equations) {
            std::map<std::size_t, Rational> factors;
            for (const Term& term : each.terms)
                factors[static_cast<std::size_t>(term.unknown)] += term.factor;
            std::erase_if(factors, [&](const auto& f) { return f.second == 0 || values[f.first]; });
            std::size_t least = mark.size();
            for (const auto& [u, factor] : factors) least = std::min(least, mark[u]);
            for (const auto& [u, factor] : factors) {
                changed = changed || mark[u] != least;
                mark[u] = least;
            }
        }
    }
    std::map<std::size_t, std::vector<Unknown>> by_mark;
    for (std::uint32_t u = 0; u < mark.size(); ++u) {
        if (!values[u]) by_mark[mark[u]].push_back(Unknown{u});
    }
    Groups groups;
    for (auto& [least, members] : by_mark) groups.push_back(members);
    return groups;
}

void check_conflict(const RandomSystem& system, const LinearSolution& solution, const Conflict& conflict) {
    const std::vector<std::size_t>& involved = conflict.involved;
    REQUIRE(std::ranges::is_sorted(involved));
    REQUIRE(std::ranges::binary_search(involved, conflict.equation));
    REQUIRE(involved.back() == conflict.equation);
    REQUIRE_FALSE(consistent(system.unknown_count, system.equations, involved));
    for (const std::size_t left_out : involved) {
        std::vector<std::size_t> rest = involved;
        std::erase(rest, left_out);
        REQUIRE(consistent(system.unknown_count, system.equations, rest));
    }
    const LinearEquation& equation = system.equations[conflict.equation];
    Rational left_side = equation.constant;
    bool known = true;
    for (const Term& term : equation.terms) {
        const auto& value = solution.values[static_cast<std::size_t>(term.unknown)];
        known = known && value.has_value();
        if (value) left_side += term.factor * *value;
    }
    REQUIRE(conflict.residual != 0);
    if (known) REQUIRE(conflict.residual == left_side);
}

}  // namespace

TEST_SUITE("unit/place") {
    TEST_CASE("nothing to solve") {
        CHECK(solve(0, {}).values.empty());
        const LinearSolution lonely = solve(2, {});
        CHECK_FALSE(lonely.values[0].has_value());
        CHECK(lonely.free_groups == Groups{{Unknown{0}}, {Unknown{1}}});
    }

    TEST_CASE("a chain is followed from its known end") {
        const LinearSolution solution =
            solve(3, {equation({{2, 1}, {1, -1}}, 5), equation({{1, 1}, {0, -1}}, 2), equation({{0, 1}}, 1)});
        CHECK(solution.values == std::vector<std::optional<Rational>>{1, 3, 8});
        CHECK(solution.conflicts.empty());
        CHECK(solution.free_groups.empty());
    }

    TEST_CASE("equations that only together determine their unknowns") {
        // x + y = 5, x - y = 2: x = 7/2, y = 3/2
        const LinearSolution solution =
            solve(2, {equation({{0, 1}, {1, 1}}, 5), equation({{0, 1}, {1, -1}}, 2)});
        CHECK(solution.values == std::vector<std::optional<Rational>>{ratio(7, 2), ratio(3, 2)});
    }

    TEST_CASE("terms of one unknown add up, and may cancel") {
        const LinearSolution solution = solve(2, {equation({{0, 1}, {1, 3}, {0, 1}, {1, -3}}, 6)});
        CHECK(solution.values[0] == Rational(3));
        CHECK(solution.free_groups == Groups{{Unknown{1}}});
    }

    TEST_CASE("an unknown is determined although those it is written with are not") {
        // y - x = 4 and w = y - x: w = 4 while x and y stay free.
        const LinearSolution solution =
            solve(3, {equation({{1, 1}, {0, -1}}, 4), equation({{2, 1}, {1, -1}, {0, 1}}, 0)});
        CHECK(solution.values[2] == Rational(4));
        CHECK(solution.free_groups == Groups{{Unknown{0}, Unknown{1}}});
    }

    TEST_CASE("a redundant equation is no conflict") {
        const LinearSolution solution =
            solve(2, {equation({{0, 1}}, 1), equation({{1, 1}, {0, -1}}, 1), equation({{1, 3}}, 6)});
        CHECK(solution.conflicts.empty());
        CHECK(solution.values[1] == Rational(2));
    }

    TEST_CASE("of two that contradict one another the later is reported and not used") {
        const LinearSolution solution =
            solve(3, {equation({{0, 1}}, 1), equation({{2, 1}}, 9), equation({{0, 2}}, 5)});
        REQUIRE(solution.conflicts.size() == 1);
        CHECK(solution.conflicts[0].equation == 2);
        CHECK(solution.conflicts[0].residual == -3);
        CHECK(solution.conflicts[0].involved == std::vector<std::size_t>{0, 2});
        CHECK(solution.values[0] == Rational(1));
        CHECK(solution.values[2] == Rational(9));
    }

    TEST_CASE("the last of a contradicting chain is reported, even if it is read first") {
        // x + y = 3, y = 5 give x = -2; x = 1 comes last.
        const LinearSolution solution =
            solve(2, {equation({{0, 1}, {1, 1}}, 3), equation({{1, 1}}, 5), equation({{0, 1}}, 1)});
        REQUIRE(solution.conflicts.size() == 1);
        CHECK(solution.conflicts[0].equation == 2);
        CHECK(solution.conflicts[0].residual == -3);
        CHECK(solution.conflicts[0].involved == std::vector<std::size_t>{0, 1, 2});
        CHECK(solution.values[0] == Rational(-2));
    }

    TEST_CASE("an equation without unknowns may be wrong all by itself") {
        const LinearSolution solution =
            solve(1, {equation({{0, 1}, {0, -1}}, 2), equation({}, 0), equation({{0, 1}}, 4)});
        REQUIRE(solution.conflicts.size() == 1);
        CHECK(solution.conflicts[0].involved == std::vector<std::size_t>{0});
        CHECK(solution.conflicts[0].residual == -2);
        CHECK(solution.values[0] == Rational(4));
    }

    TEST_CASE("conflicts among unknowns that stay free") {
        const LinearSolution solution =
            solve(2, {equation({{1, 1}, {0, -1}}, 4), equation({{0, 1}, {1, -1}}, 4)});
        REQUIRE(solution.conflicts.size() == 1);
        CHECK(solution.conflicts[0].involved == std::vector<std::size_t>{0, 1});
        CHECK(solution.conflicts[0].residual == -8);
        CHECK(solution.free_groups == Groups{{Unknown{0}, Unknown{1}}});
    }

    TEST_CASE("random consistent systems against dense elimination") {
        std::mt19937 random(11);
        for (int round = 0; round < 1500; ++round) {
            CAPTURE(round);
            const RandomSystem system = random_system(random, false);
            const LinearSolution solution = solve(system.unknown_count, system.equations);
            Dense dense(system.unknown_count);
            for (const LinearEquation& each : system.equations) REQUIRE(dense.add(each));
            REQUIRE(solution.conflicts.empty());
            REQUIRE(solution.values == dense.values());
            REQUIRE(solution.free_groups == expected_groups(system, solution.values));
        }
    }

    TEST_CASE("random contradicting systems against dense elimination, with minimal sets") {
        std::mt19937 random(12);
        std::size_t conflicts = 0;
        for (int round = 0; round < 1500; ++round) {
            CAPTURE(round);
            const RandomSystem system = random_system(random, true);
            const LinearSolution solution = solve(system.unknown_count, system.equations);
            Dense dense(system.unknown_count);
            std::vector<std::size_t> refused;
            for (std::size_t i = 0; i < system.equations.size(); ++i) {
                if (!dense.add(system.equations[i])) refused.push_back(i);
            }
            std::vector<std::size_t> reported;
            for (const Conflict& each : solution.conflicts) reported.push_back(each.equation);
            REQUIRE(reported == refused);
            REQUIRE(solution.values == dense.values());
            for (const Conflict& each : solution.conflicts) check_conflict(system, solution, each);
            conflicts += reported.size();
        }
        CHECK(conflicts > 500);
    }

    TEST_CASE("the order of equations and of terms does not change the values") {
        std::mt19937 random(13);
        for (int round = 0; round < 300; ++round) {
            CAPTURE(round);
            RandomSystem system = random_system(random, false);
            const LinearSolution before = solve(system.unknown_count, system.equations);
            std::ranges::shuffle(system.equations, random);
            for (LinearEquation& each : system.equations) std::ranges::shuffle(each.terms, random);
            const LinearSolution after = solve(system.unknown_count, system.equations);
            REQUIRE(after.values == before.values);
            REQUIRE(after.free_groups == before.free_groups);
            REQUIRE(after.conflicts.empty());
        }
    }

    TEST_CASE("a contradiction leaves the rest alone") {
        // 0..2 contradict one another, 3 and 4 are apart from them.
        const LinearSolution solution = solve(
            5, {equation({{3, 1}, {4, -1}}, 0), equation({{0, 1}, {1, 1}}, 1), equation({{0, 1}, {1, 1}}, 2),
                equation({{3, 1}, {4, 1}}, 6), equation({{2, 1}, {0, 1}, {1, 1}}, 5)});
        REQUIRE(solution.conflicts.size() == 1);
        CHECK(solution.conflicts[0].equation == 2);
        CHECK(solution.values[3] == Rational(3));
        CHECK(solution.values[4] == Rational(3));
        CHECK(solution.values[2] == Rational(4));
        CHECK(solution.free_groups == Groups{{Unknown{0}, Unknown{1}}});
    }

    TEST_CASE("hundreds of conflicts: earlier equations win, and the first conflicts are listed") {
        std::mt19937 random(14);
        RandomSystem system{12, {}};
        for (int i = 0; i < 400; ++i) {
            LinearEquation next;
            next.constant = static_cast<long>(random() % 7);
            for (std::size_t terms = random() % 3 + 1; terms > 0; --terms) {
                next.terms.push_back({Unknown{static_cast<std::uint32_t>(random() % 12)},
                                      static_cast<long>(random() % 5) - 2});
            }
            system.equations.push_back(std::move(next));
        }
        const LinearSolution solution = solve(system.unknown_count, system.equations);
        Dense dense(system.unknown_count);
        std::vector<std::size_t> refused;
        for (std::size_t i = 0; i < system.equations.size(); ++i) {
            if (!dense.add(system.equations[i])) refused.push_back(i);
        }
        REQUIRE(refused.size() > limits::diagnostics);
        CHECK(solution.values == dense.values());
        REQUIRE(solution.conflicts.size() == limits::diagnostics);
        for (std::size_t i = 0; i < limits::diagnostics; ++i) {
            REQUIRE(solution.conflicts[i].equation == refused[i]);
            check_conflict(system, solution, solution.conflicts[i]);
        }
    }

    TEST_CASE("no more conflicts than the limit are listed") {
        Equations equations;
        for (std::size_t i = 0; i <= limits::diagnostics + 20; ++i) {
            equations.push_back(equation({{0, 1}}, static_cast<long>(i)));
        }
        const LinearSolution solution = solve(1, equations);
        REQUIRE(solution.conflicts.size() == limits::diagnostics);
        CHECK(solution.conflicts.front().equation == 1);
        CHECK(solution.conflicts.back().equation == limits::diagnostics);
    }
}
