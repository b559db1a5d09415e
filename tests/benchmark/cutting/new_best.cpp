#include "tests/benchmark/cutting/new_best.hpp"

#include <fmt/format.h>

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "compiler/stock/cutting/solve.hpp"
#include "tests/benchmark/cutting/benchmark_set.hpp"
#include "tests/unit/cutting/plan_checker.hpp"

namespace rodwright::cutting {
namespace {

struct Entry {
    std::string instance;
    std::string rule;
    Amount value = 0;
    std::string effort;
};

BestKnown row_of(const std::vector<BestKnown>& rows, const Entry& entry) {
    for (const BestKnown& row : rows) {
        if (row.instance == entry.instance && row.rule == entry.rule) return row;
    }
    throw std::runtime_error(fmt::format("no {} under {} in the set", entry.instance, entry.rule));
}

bool reached(const std::filesystem::path& folder, const BestKnown& row, const Entry& entry) {
    const Problem problem = read_problem(folder, row);
    const CuttingPlan plan = solve(problem, effort_named(entry.effort));
    const bool right = check_plan(problem, plan).empty() && plan.complete() && plan.cost <= entry.value;
    fmt::print("{:<22} {:<4} new {:>10}  best known {:>10}  ours {:>10}  {}\n", entry.instance, entry.rule,
               entry.value, row.upper, plan.cost, right ? "reached" : "NOT REACHED");
    std::fflush(stdout);
    return right;
}

}  // namespace

int check_new_best(const std::filesystem::path& folder, const std::filesystem::path& list) {
    std::ifstream file(list);
    if (!file) throw std::runtime_error(fmt::format("cannot read {}", list.string()));
    const std::vector<BestKnown> rows = read_best_known(folder);
    int missed = 0;
    std::string line;
    std::getline(file, line);  // the heading
    while (std::getline(file, line)) {
        std::istringstream words(line);
        Entry entry;
        if (!(words >> entry.instance >> entry.rule >> entry.value >> entry.effort)) {
            throw std::runtime_error(fmt::format("{}: cannot read '{}'", list.string(), line));
        }
        if (!reached(folder, row_of(rows, entry), entry)) ++missed;
    }
    return missed;
}

}  // namespace rodwright::cutting
