// Pieces of one wood that may come out of the same boards, as a problem of the cutting core, and its answer.
#pragma once

#include <vector>

#include "compiler/stock/cutting/cut_tree.hpp"
#include "compiler/stock/plan/demand.hpp"
#include "compiler/stock/plan/grid.hpp"
#include "compiler/stock/plan/stock.hpp"

namespace rodwright {

struct Level {
    std::vector<Demand> demands;
    std::vector<Stock> stock;
};

// Money to spend comes first, then the worth of the boards that are cut. Boards: crosscuts and rips in three
// stages at most (what a saw bench does without carrying every piece back and forth); sheets: any number.
cutting::Problem cutting_problem(const Level& level, const Grid& grid, const MillingData& milling);

struct LevelPlan {
    cutting::CuttingPlan plan;
    std::size_t missing() const;
    // Fewer missing first, then less cost.
    bool better_than(const LevelPlan& other) const;
};

LevelPlan solve_level(const Level& level, const Grid& grid, const MillingData& milling,
                      cutting::Effort effort);

}  // namespace rodwright
