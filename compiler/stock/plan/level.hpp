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
    bool machines_only = false;  // no cuts of what is too small for a machine to hold
};

// Money to spend comes first, then the worth of the boards that are cut. Boards: crosscuts and rips in three
// stages at most (what a saw bench does without carrying every piece back and forth); sheets: any number.
cutting::Problem cutting_problem(const Level& level, const Grid& grid, const MillingData& milling);

// What one of each costs in such a problem.
std::vector<cutting::Amount> costs_of(const std::vector<Stock>& stock);
// What the saws take, by the axis that they divide.
cutting::Size saw_kerfs(bool sheet, const Grid& grid, const MillingData& milling);

struct LevelPlan {
    cutting::CuttingPlan plan;
    std::size_t missing() const;
    // Fewer missing first, then less cost.
    bool better_than(const LevelPlan& other) const;
};

LevelPlan solve_level(const Level& level, const Grid& grid, const MillingData& milling,
                      cutting::Effort effort);

// False only where no plan of the level is better than `best`, which may be one of another level.
bool may_be_better(const Level& level, const LevelPlan& best, const Grid& grid, const MillingData& milling);

// A quick plan of the level made better with more effort, as far as anything is at stake: not where the bound
// is reached or no plan can hold all pieces. Few pieces are not searched longer; instead each cheaper choice
// of boards, of those that may be enough, is tried for itself.
LevelPlan improved(LevelPlan quick, const Level& level, const Grid& grid, const MillingData& milling,
                   cutting::Effort effort);

}  // namespace rodwright
