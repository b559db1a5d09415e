// Reads the cutting benchmark sets: instances in a plain text format and a table of the best values known.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

// A row of best-known.tsv.
struct BestKnown {
    std::string instance;
    std::string rule;  // 1D, OG, RG, MG, OG3, RG3, OG2, RG2; OF and RF allow more than guillotine cuts
    int dimensions = 2;
    int pieces = 0;
    Amount lower = 0;
    Amount upper = 0;
};

// The effort called so; std::runtime_error if there is none.
Effort effort_named(const std::string& name);

// Errors as std::runtime_error with the file and line.
std::vector<BestKnown> read_best_known(const std::filesystem::path& folder);

// Puts right the rows that a list (instance, rule, value) names: no plan reaches what the set says of them,
// and the value is the true optimum.
void apply_refuted(const std::filesystem::path& list, std::vector<BestKnown>& rows);

// The instance under that row's rule. One dimension is a stock of width 1 and parts of width 1 that do not
// turn.
Problem read_problem(const std::filesystem::path& folder, const BestKnown& row);

}  // namespace rodwright::cutting
