// Compares the cutting core with the best values known.
//
//   rodwright_cutting_benchmark FOLDER [--effort quick|normal|deep] [--rule RULE]... [--every N]
//                               [--refuted LIST] [--first length|width] [PREFIX]...
//   rodwright_cutting_benchmark FOLDER --new-best LIST
//   rodwright_cutting_benchmark --growth [--effort quick|normal|deep]
//
// Values of rules with two or three stages are known for one fixed direction of the first cut; unless --first
// names the axis that it divides, it is free here, and plans may be cheaper than the bound.
//
// FOLDER holds best-known.tsv, 1d/ and 2d/. Rows can be picked by rule, by the beginnings of instances'
// names, and every Nth only. LISTs are the files beside this one. Each plan is proved by the tests' checker;
// time is processor time of this process.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <stdexcept>

#include "compiler/stock/cutting/figures.hpp"
#include "compiler/stock/cutting/solve.hpp"
#include "tests/benchmark/cutting/benchmark_set.hpp"
#include "tests/benchmark/cutting/growth.hpp"
#include "tests/benchmark/cutting/new_best.hpp"
#include "tests/unit/cutting/plan_checker.hpp"

namespace rodwright::cutting {
namespace {

struct Options {
    std::filesystem::path folder;
    Effort effort = Effort::normal;
    std::vector<std::string> rules;
    std::vector<std::string> prefixes;
    int every = 1;
    bool growth = false;
    std::string new_best;
    std::string refuted;
    std::optional<Axis> first;
};

Axis axis_named(const std::string& name) {
    if (name == "length") return Axis::length;
    if (name == "width") return Axis::width;
    throw std::runtime_error(fmt::format("no axis '{}'", name));
}

Options parse(const std::vector<std::string>& words) {
    Options options;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto value = [&] {
            if (i + 1 == words.size()) throw std::runtime_error(fmt::format("{} needs a value", words[i]));
            return words[++i];
        };
        if (words[i] == "--effort") {
            options.effort = effort_named(value());
        } else if (words[i] == "--rule") {
            options.rules.push_back(value());
        } else if (words[i] == "--every") {
            options.every = std::stoi(value());
        } else if (words[i] == "--new-best") {
            options.new_best = value();
        } else if (words[i] == "--refuted") {
            options.refuted = value();
        } else if (words[i] == "--first") {
            options.first = axis_named(value());
        } else if (words[i] == "--growth") {
            options.growth = true;
        } else if (options.folder.empty()) {
            options.folder = words[i];
        } else {
            options.prefixes.push_back(words[i]);
        }
    }
    if (options.folder.empty() && !options.growth) throw std::runtime_error("which folder?");
    return options;
}

bool chosen(const Options& options, const BestKnown& row) {
    if (row.rule == "OF" || row.rule == "RF") return false;
    const auto& rules = options.rules;
    if (!rules.empty() && std::find(rules.begin(), rules.end(), row.rule) == rules.end()) return false;
    if (options.prefixes.empty()) return true;
    return std::any_of(options.prefixes.begin(), options.prefixes.end(),
                       [&](const std::string& prefix) { return row.instance.rfind(prefix, 0) == 0; });
}

// Sums of a set of rows. Costs of different instances are not alike, so their mean excess is given too.
struct Total {
    int rows = 0;
    int at_best = 0;
    int below_best = 0;
    int proven = 0;
    Amount cost = 0;
    Amount best = 0;
    Amount bound = 0;
    double excess = 0;
    double gathered = 0;  // of what is left, as if it were in one rectangle: its usefulness
    long cuts = 0;
    long settings = 0;
    std::vector<double> seconds;

    void print(const std::string& name) {
        std::sort(seconds.begin(), seconds.end());
        fmt::print(
            "{:<14} {:>4} rows  ours {:>11}  best known {:>11}  bound {:>11}  over {:>6.2f} %  mean over "
            "{:>6.3f} %  at best {:>5.1f} %  new {:>3}  proven {:>4}  s median {:.3f} most {:.2f}  rest in "
            "one {:.3f}  cuts {}  settings {}\n",
            name, rows, cost, best, bound, 100 * (static_cast<double>(cost) / static_cast<double>(best) - 1),
            100 * excess / rows, 100.0 * at_best / rows, below_best, proven, seconds[seconds.size() / 2],
            seconds.back(), gathered / rows, cuts, settings);
    }
};

// The usefulness of what is left, over what it were if all were in one rectangle.
double gathered(const Problem& problem, const CuttingPlan& plan) {
    Amount rest = 0;
    for (const CutTree& tree : plan.sheets) rest += tree.nodes.front().area.size.area();
    for (const PartKind& part : problem.parts) rest -= part.quantity * part.size.area();
    const auto whole = static_cast<double>(rest);
    return rest == 0 ? 1.0 : figures_of(problem, plan).usefulness / (whole * whole);
}

void add(Total& total, const BestKnown& row, const Problem& problem, const CuttingPlan& plan,
         double seconds) {
    const PlanFigures figures = figures_of(problem, plan);
    total.gathered += gathered(problem, plan);
    total.cuts += figures.cuts;
    total.settings += figures.settings;
    ++total.rows;
    if (plan.cost <= row.upper) ++total.at_best;
    if (plan.cost < row.upper) ++total.below_best;
    if (plan.optimal()) ++total.proven;
    total.cost += plan.cost;
    total.best += row.upper;
    total.bound += plan.bound.cost;
    total.excess += static_cast<double>(plan.cost) / static_cast<double>(row.upper) - 1;
    total.seconds.push_back(seconds);
}

std::string set_name(const BestKnown& row) {
    return row.instance.substr(0, row.instance.find('-'));
}

int run(const Options& options) {
    std::map<std::string, Total> by_set;
    std::map<std::string, Total> by_rule;
    int faults = 0;
    int number = 0;
    std::vector<BestKnown> rows = read_best_known(options.folder);
    if (!options.refuted.empty()) apply_refuted(options.refuted, rows);
    for (const BestKnown& row : rows) {
        if (!chosen(options, row) || number++ % options.every != 0) continue;
        Problem problem = read_problem(options.folder, row);
        if (problem.rule.stages) problem.rule.first_axis = options.first;
        const bool bound_holds = !problem.rule.stages || options.first;
        const double begin = processor_seconds();
        const CuttingPlan plan = solve(problem, options.effort);
        const double seconds = processor_seconds() - begin;
        std::vector<std::string> wrong = check_plan(problem, plan);
        if (!plan.complete()) wrong.push_back("parts are missing");
        if (bound_holds && plan.cost < row.lower) wrong.push_back("cheaper than the published lower bound");
        if (plan.bound.cost > row.upper) wrong.push_back("the lower bound is above the best known plan");
        faults += static_cast<int>(wrong.size());
        fmt::print(
            "{:<22} {:<4} ours {:>10}  best known {:>10}  bound {:>10} (published {}; {})  {:.3f} s{}\n",
            row.instance, row.rule, plan.cost, row.upper, plan.bound.cost, row.lower,
            bound_method_name(plan.bound.method), seconds,
            plan.cost < row.upper   ? "  NEW"
            : plan.cost > row.upper ? "  above"
                                    : "");
        for (const std::string& what : wrong) fmt::print("  WRONG: {}\n", what);
        std::fflush(stdout);
        add(by_set[row.rule + " " + set_name(row)], row, problem, plan, seconds);
        add(by_rule[row.rule], row, problem, plan, seconds);
    }
    fmt::print("\n");
    for (auto& entry : by_set) entry.second.print(entry.first);
    fmt::print("\n");
    for (auto& entry : by_rule) entry.second.print(entry.first);
    return faults == 0 ? 0 : 1;
}

}  // namespace
}  // namespace rodwright::cutting

int main(int count, char** words) {
    try {
        const auto options = rodwright::cutting::parse({words + 1, words + count});
        if (!options.new_best.empty()) {
            return rodwright::cutting::check_new_best(options.folder, options.new_best) == 0 ? 0 : 1;
        }
        if (!options.growth) return rodwright::cutting::run(options);
        rodwright::cutting::print_growth(options.effort);
        return 0;
    } catch (const std::exception& error) {
        fmt::print(stderr, "{}\n", error.what());
        return 2;
    }
}
