#include "compiler/place/linear_system.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <random>

using namespace rodwright;

// The reference is Eigen 3.4, LU decomposition with full pivoting in doubles.

namespace {

struct Dense {
    Eigen::MatrixXd matrix;
    Eigen::VectorXd right;
};

Dense to_dense(std::size_t count, const std::vector<LinearEquation>& equations) {
    const auto rows = static_cast<Eigen::Index>(equations.size());
    const auto columns = static_cast<Eigen::Index>(count);
    Dense dense{Eigen::MatrixXd::Zero(rows, columns), Eigen::VectorXd(rows)};
    for (Eigen::Index r = 0; r < rows; ++r) {
        const LinearEquation& equation = equations[static_cast<std::size_t>(r)];
        dense.right(r) = -equation.constant.get_d();
        for (const Term& term : equation.terms) {
            dense.matrix(r, static_cast<Eigen::Index>(term.unknown)) += term.factor.get_d();
        }
    }
    return dense;
}

// Square, sparse, and dominated by its diagonal, so that doubles solve it well. The rows come shuffled.
std::vector<LinearEquation> dominated_system(std::uint32_t count, std::mt19937& random) {
    std::vector<LinearEquation> equations;
    for (std::uint32_t u = 0; u < count; ++u) {
        LinearEquation next;
        next.constant = ratio(random() % 2001, 16);
        next.terms.push_back({Unknown{u}, 8});
        for (int other = 0; other < 3; ++other) {
            next.terms.push_back({Unknown{static_cast<std::uint32_t>(random() % count)},
                                  ratio(static_cast<long>(random() % 9) - 4, 2)});
        }
        equations.push_back(std::move(next));
    }
    std::ranges::shuffle(equations, random);
    return equations;
}

}  // namespace

TEST_SUITE("reference/place") {
    TEST_CASE("well-conditioned systems have the solution of a dense decomposition in doubles") {
        std::mt19937 random(21);
        for (const std::uint32_t count : {2U, 5U, 20U, 60U}) {
            CAPTURE(count);
            const std::vector<LinearEquation> equations = dominated_system(count, random);
            const Dense dense = to_dense(count, equations);
            const Eigen::FullPivLU<Eigen::MatrixXd> lu(dense.matrix);
            REQUIRE(lu.isInvertible());
            const Eigen::VectorXd expected = lu.solve(dense.right);
            const LinearSolution solution = solve(count, equations);
            for (std::uint32_t u = 0; u < count; ++u) {
                REQUIRE(solution.values[u].has_value());
                REQUIRE(solution.values[u]->get_d() ==
                        doctest::Approx(expected(static_cast<Eigen::Index>(u))).epsilon(1e-9));
            }
        }
    }

    TEST_CASE("an unknown is free where the kernel of the matrix moves it") {
        std::mt19937 random(22);
        std::size_t free_unknowns = 0;
        for (int round = 0; round < 60; ++round) {
            CAPTURE(round);
            constexpr std::uint32_t count = 20;
            std::vector<LinearEquation> equations = dominated_system(count, random);
            equations.resize(count - 2);
            const Dense dense = to_dense(count, equations);
            const Eigen::MatrixXd kernel = Eigen::FullPivLU<Eigen::MatrixXd>(dense.matrix).kernel();
            const LinearSolution solution = solve(count, equations);
            for (std::uint32_t u = 0; u < count; ++u) {
                const bool moved = kernel.row(static_cast<Eigen::Index>(u)).norm() > 1e-9;
                REQUIRE(solution.values[u].has_value() != moved);
                free_unknowns += moved ? 1 : 0;
            }
        }
        CHECK(free_unknowns >= 120);
    }
}
