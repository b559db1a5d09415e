#include "compiler/stock/cutting/linear/solve.hpp"

#include <algorithm>
#include <functional>
#include <limits>
#include <map>

#include "compiler/stock/cutting/bounds/stock_choice.hpp"
#include "compiler/stock/cutting/guillotine/leftovers.hpp"
#include "compiler/stock/cutting/guillotine/solve.hpp"
#include "compiler/stock/cutting/linear/column_generation.hpp"
#include "compiler/stock/cutting/linear/dive.hpp"
#include "compiler/stock/cutting/linear/tight_cover.hpp"

namespace rodwright::cutting::linear {
namespace {

struct Input {
    Cover cover;
    std::vector<std::vector<int>> parts;  // of each wanted length: the part kind of each piece
};

Input input_of(const Problem& problem) {
    Input input;
    std::map<int, std::vector<int>, std::greater<>> by_length;
    int pieces = 0;
    for (std::size_t i = 0; i < problem.parts.size(); ++i) {
        const PartKind& part = problem.parts[i];
        auto& kinds = by_length[part.size.along[0] + problem.kerf[Axis::length]];
        kinds.insert(kinds.end(), static_cast<std::size_t>(part.quantity), static_cast<int>(i));
        pieces += part.quantity;
    }
    for (auto& entry : by_length) {
        if (entry.second.empty()) continue;
        input.cover.wanted.push_back({entry.first, static_cast<int>(entry.second.size())});
        input.parts.push_back(std::move(entry.second));
    }
    for (const StockPiece& piece : problem.stock) {
        const bool limited = piece.available.has_value() && *piece.available < pieces;
        input.cover.bars.push_back({piece.size.along[0] + problem.kerf[Axis::length],
                                    limited ? *piece.available : pieces, limited, piece.cost});
    }
    return input;
}

Amount cost_of(const Cover& cover, const std::vector<Pattern>& plan) {
    Amount cost = 0;
    for (const Pattern& pattern : plan) cost += cover.bars[static_cast<std::size_t>(pattern.bar)].cost;
    return cost;
}

class TreeWriter {
  public:
    TreeWriter(const Problem& problem, Input& input) : problem_(problem), input_(input) {}

    CutTree write(const Pattern& pattern) {
        CutTree tree;
        tree.stock = pattern.bar;
        CutNode root;
        root.area.size = problem_.stock[static_cast<std::size_t>(pattern.bar)].size;
        tree.nodes.push_back(root);
        int rest = 0;
        for (const auto& entry : pattern.entries) {
            for (int i = 0; i < entry.count; ++i) rest = cut_off(tree, rest, next_part(entry.wanted));
        }
        return tree;
    }

  private:
    int next_part(int wanted) {
        auto& parts = input_.parts[static_cast<std::size_t>(wanted)];
        const int part = parts.back();
        parts.pop_back();
        return part;
    }

    // Gives the index of what is left of the bar behind the part.
    int cut_off(CutTree& tree, int rest, int part) {
        const int length = problem_.parts[static_cast<std::size_t>(part)].size.along[0];
        const Rectangle whole = tree.nodes[static_cast<std::size_t>(rest)].area;
        int target = rest;
        int behind = CutNode::none;
        if (whole.size.along[0] != length) {
            target = add(tree, whole.corner.along[0], length, whole);
            const int taken = length + problem_.kerf[Axis::length];
            const int left = whole.size.along[0] - taken;
            if (left > 0) behind = add(tree, whole.corner.along[0] + taken, left, whole);
            CutNode& cut = tree.nodes[static_cast<std::size_t>(rest)];
            cut.kind = CutNode::Kind::cut;
            cut.axis = Axis::length;
            cut.position = whole.corner.along[0] + length;
            cut.first = target;
            cut.second = behind;
        }
        tree.nodes[static_cast<std::size_t>(target)].kind = CutNode::Kind::part;
        tree.nodes[static_cast<std::size_t>(target)].part = part;
        return behind;
    }

    static int add(CutTree& tree, int from, int length, Rectangle area) {
        area.corner.along[0] = from;
        area.size.along[0] = length;
        CutNode node;
        node.area = area;
        tree.nodes.push_back(node);
        return static_cast<int>(tree.nodes.size()) - 1;
    }

    const Problem& problem_;
    Input& input_;
};

// Floating-point operations for dives: about as long as the search in two dimensions takes.
long dive_work(Effort effort) {
    switch (effort) {
        case Effort::quick:
            return 40'000'000;
        case Effort::normal:
            return 1'500'000'000;
        case Effort::deep:
            return 20'000'000'000;
    }
    return 0;
}

// The same where no more than the chosen bars may be used.
Cover restricted(Cover cover, const StockChoice& choice) {
    for (std::size_t i = 0; i < choice.size(); ++i) {
        cover.bars[i].available = choice[i];
        cover.bars[i].limited = true;
    }
    return cover;
}

// Dives until the bound is met or the work is done. With several kinds of bars, every other dive is told
// which to take: the linear programme alone would mix them in fractions.
std::vector<Pattern> best_dive(const Problem& problem, const Cover& cover, std::vector<Pattern>& pool,
                               Amount bound, Amount limit, long most_work) {
    constexpr std::size_t most_choices = 40;
    const std::vector<StockChoice> choices = cover.bars.size() > 1 && most_work > 0
                                                 ? stock_choices(problem, bound, limit, most_choices)
                                                 : std::vector<StockChoice>{};
    Random random(1);
    std::vector<Pattern> best;
    long work = 0;
    for (std::size_t i = 0; limit >= bound && (i == 0 || work < most_work); ++i) {
        const bool restricts = i % 2 == 1 && !choices.empty();
        const Cover& own = restricts ? restricted(cover, choices[i / 2 % choices.size()]) : cover;
        std::vector<Pattern> next = dive(own, pool, limit, i == 0 ? 0 : 100, random, work);
        work += 100'000;  // so that the smallest end, too
        if (next.empty()) continue;
        best = std::move(next);
        limit = cost_of(cover, best) - 1;
    }
    return best;
}

// The linear programme's time grows with more than the square of the number of different lengths, while many
// pieces fill bars well in any order: from the one on the search is asked first, from the other on it alone.
constexpr std::size_t few_lengths = 100;
constexpr std::size_t most_lengths = 300;

CuttingPlan solve_for_cost(const Problem& problem, Effort effort) {
    Input input = input_of(problem);
    CuttingPlan plan;
    if (input.cover.wanted.size() > few_lengths) {
        plan = guillotine::solve_for_cost_only(problem, effort);
        if (plan.optimal() || input.cover.wanted.size() > most_lengths) return plan;
    }
    std::vector<Pattern> pool = first_fit(input.cover);
    Master master(input.cover);
    for (const Pattern& pattern : pool) master.add(pattern);
    generate_columns(input.cover, master, pool);
    plan.bound = {rounded_to_stock(problem, proved_bound(input.cover, master)),
                  BoundMethod::column_generation};
    const LowerBound bound = plan.bound;
    std::vector<Pattern> best = best_dive(problem, input.cover, pool, bound.cost, Amount{1} << 60, 0);
    const auto short_of_bound = [&] { return best.empty() || cost_of(input.cover, best) > bound.cost; };
    if (short_of_bound()) {
        std::vector<Pattern> tight = tight_cover(input.cover, master, bound.cost);
        if (!tight.empty()) best = std::move(tight);
    }
    if (short_of_bound()) {
        // Where few pieces leave a gap to the linear programme, trying them in turn does better than
        // rounding.
        if (plan.sheets.empty()) plan = guillotine::solve_for_cost_only(problem, effort);
        plan.bound = bound;
        if (plan.optimal()) return plan;
        const Amount limit = plan.complete() ? plan.cost : Amount{1} << 60;
        const Amount known = best.empty() ? limit : std::min(limit, cost_of(input.cover, best));
        std::vector<Pattern> next =
            best_dive(problem, input.cover, pool, bound.cost, known - 1, dive_work(effort));
        if (!next.empty()) best = std::move(next);
        if (best.empty() || cost_of(input.cover, best) > limit) return plan;
    }
    plan.sheets.clear();
    plan.missing.assign(problem.parts.size(), 0);
    plan.cost = cost_of(input.cover, best);
    TreeWriter writer(problem, input);
    for (const Pattern& pattern : best) plan.sheets.push_back(writer.write(pattern));
    for (const auto& left : input.parts) {
        for (const int part : left) ++plan.missing[static_cast<std::size_t>(part)];
    }
    return plan;
}

}  // namespace

bool applies(const Problem& problem) {
    if (problem.stock.empty()) return false;
    if (problem.rule.stages && problem.rule.first_axis == Axis::width) return false;
    const int width = problem.stock.front().size.along[1];
    const auto fits = [&](const StockPiece& piece) {
        return piece.size.along[1] == width && piece.defects.empty();
    };
    const auto is_slice = [&](const PartKind& part) { return part.size.along[1] == width && !part.may_turn; };
    return std::all_of(problem.stock.begin(), problem.stock.end(), fits) &&
           std::all_of(problem.parts.begin(), problem.parts.end(), is_slice);
}

CuttingPlan solve(const Problem& problem, Effort effort) {
    CuttingPlan plan = solve_for_cost(problem, effort);
    if (plan.complete()) guillotine::leave_large_rests(problem, plan, effort);
    return plan;
}

}  // namespace rodwright::cutting::linear
