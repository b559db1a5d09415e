#include "compiler/stock/plan/bound.hpp"

#include <algorithm>
#include <tuple>

#include "compiler/stock/cutting/bounds/bounds.hpp"
#include "compiler/stock/plan/pattern_measure.hpp"
#include "compiler/stock/plan/resaw.hpp"
#include "compiler/stock/rough/flatten.hpp"

namespace rodwright {
namespace {

using cutting::Amount;
using cutting::Measure;

using Groups = std::vector<const PlannedGroup*>;

class BoundOfWood {
  public:
    BoundOfWood(Groups groups, const PlanState& state, const Planning& planning)
        : groups_(std::move(groups)), plan_(state.plan), planning_(planning) {
        for (std::size_t g = 0; g < groups_.size(); ++g) add_stock(g);
        costs_ = costs_of(stock_);
        turns_ = std::ranges::all_of(stock_, [](const Stock& stock) { return stock.board.no_grain; });
        for (std::size_t g = 0; g < groups_.size(); ++g) add_pieces(g);
        for (std::size_t g = 0; g < groups_.size(); ++g) add_level(g);
    }

    PlanBound find() const {
        PlanBound bound;
        bound.wood = groups_.front()->group.wood->name;
        bound.title = wood_title(*groups_.front()->group.wood);
        bound.sheet = groups_.front()->group.sheet;
        bound.boards = static_cast<int>(boards().size());
        std::tie(bound.at_least, bound.at_least_by) = least_boards();
        const Amount cost = cost_of_plan();
        const Amount least = least_cost();
        bound.proven = cost == least;
        if (!bound.proven && least > 0) bound.over = ratio(cost, least) - 1;
        return bound;
    }

  private:
    Groups groups_;
    const WoodPlan& plan_;
    const Planning& planning_;
    std::vector<Stock> stock_;               // each board or offer once
    std::vector<std::vector<bool>> listed_;  // of each group: its own stock
    std::vector<Amount> costs_;
    bool turns_ = false;                             // pieces may lie either way
    std::vector<std::vector<WantedPieces>> pieces_;  // of each group
    std::vector<cutting::Problem> levels_;  // pieces as thick as one of the groups' and more, without kerfs
    std::vector<std::vector<std::size_t>> stock_of_level_;

    static std::string key(const PlannedBoard& board) {
        return board.origin.empty() ? board.offer : board.origin;
    }

    std::vector<std::size_t> boards() const {
        std::vector<std::size_t> all;
        for (const PlannedGroup* group : groups_) {
            const std::vector<std::size_t>& own = plan_.groups[group->index].boards;
            all.insert(all.end(), own.begin(), own.end());
        }
        return all;
    }

    void add_stock(std::size_t g) {
        const StockQuery query = groups_[g]->group.query();
        std::vector<std::string> unsaid;
        std::vector<Stock> found = stock_at_hand(planning_.rack, query, planning_.milling, unsaid);
        const bool bought =
            std::ranges::any_of(groups_, [](const PlannedGroup* group) { return group->bought; });
        if (bought) {
            for (Stock& one : stock_for_sale(planning_.rack, query, planning_.milling, planning_.piece.style))
                found.push_back(std::move(one));
        }
        listed_.emplace_back(stock_.size(), false);
        for (Stock& one : found) {
            const auto known = std::ranges::find_if(
                stock_, [&](const Stock& other) { return key(other.board) == key(one.board); });
            const auto index = static_cast<std::size_t>(known - stock_.begin());
            if (known == stock_.end()) stock_.push_back(std::move(one));
            listed_.back().resize(stock_.size(), false);
            listed_.back()[index] = true;
        }
    }

    // What is left of boards that were taken for thicker pieces serves as well.
    bool serves(std::size_t g, std::size_t stock) const {
        if (stock < listed_[g].size() && listed_[g][stock]) return true;
        return !groups_[g]->group.sheet && stock_[stock].board.thickness >= groups_[g]->group.least_thickness;
    }

    void add_level(std::size_t thinnest) {
        cutting::Problem problem;
        std::vector<std::size_t> used;
        const Rational& least = groups_[thinnest]->group.least_thickness;
        const auto counts = [&](std::size_t g) { return groups_[g]->group.least_thickness >= least; };
        for (std::size_t s = 0; s < stock_.size(); ++s) {
            bool serves_any = false;
            for (std::size_t g = 0; g < groups_.size(); ++g)
                serves_any = serves_any || (counts(g) && serves(g, s));
            if (!serves_any) continue;
            used.push_back(s);
            problem.stock.push_back({size_of(stock_[s]), stock_[s].count, costs_[s], {}});
        }
        for (std::size_t g = 0; g < groups_.size(); ++g) {
            if (!counts(g)) continue;
            for (const WantedPieces& pieces : pieces_[g])
                problem.parts.push_back({pieces.size, pieces.quantity, turns_});
        }
        levels_.push_back(std::move(problem));
        stock_of_level_.push_back(std::move(used));
    }

    cutting::Size kerf() const {
        return saw_kerfs(groups_.front()->group.sheet, planning_.grid, planning_.milling);
    }

    cutting::Size size_with_kerf(const Rational& length, const Rational& width) const {
        return cutting::Size{{planning_.grid.up(length), planning_.grid.up(width)}}.grown(kerf());
    }

    void add_pieces(std::size_t g) {
        const DemandGroup& group = groups_[g]->group;
        std::vector<bool> from;
        for (std::size_t s = 0; s < stock_.size(); ++s) from.push_back(serves(g, s));
        pieces_.emplace_back();
        std::vector<Demand> demands = group.demands;
        if (group.resawn_from) demands = as_leaves(std::move(demands), *group.resawn_from, planning_.milling);
        for (const Demand& demand : demands) {
            pieces_.back().push_back({size_with_kerf(demand.size[Axis::wide], demand.size[Axis::deep]),
                                      static_cast<int>(demand.pieces.size()), false, from});
        }
        for (const PanelDemand& panel : group.panels) {
            const int length = size_with_kerf(panel.need.size[Axis::wide], 0)[cutting::Axis::length];
            pieces_.back().push_back({{{length, 1}}, strips_of(group, panel), true, from});
        }
    }

    // Whatever a panel's staves are, they hold strips that are one step wide: so many that as few staves as
    // there may be are jointed and sawn apart.
    int strips_of(const DemandGroup& group, const PanelDemand& panel) const {
        const int staves = stave_counts(panel.need).fewest;
        const Rational jointed =
            panel.need.size[Axis::deep] + 2 * staves * planning_.milling.panels.glued_edge;
        const int width = planning_.grid.up(jointed) + staves * kerf()[cutting::Axis::width];
        const Rational finished = panel.need.size[Axis::tall] - planning_.milling.allowances.faces;
        const int leaves = group.resawn_from
                               ? std::max(1, resawn_leaves(*group.resawn_from, finished, planning_.milling))
                               : 1;
        return width * panel.need.count / leaves;
    }

    cutting::Size size_of(const Stock& stock) const {
        return cutting::Size{
            {planning_.grid.down(stock.usable.length), planning_.grid.down(stock.usable.width)}}
            .grown(kerf());
    }

    std::vector<Measure> all_measures() const {
        std::vector<Measure> all;
        for (std::size_t level = 0; level < levels_.size(); ++level) {
            for (const Measure& measure : cutting::measures(levels_[level])) {
                Measure& own =
                    all.emplace_back(Measure{measure.needed, std::vector<Amount>(stock_.size(), 0)});
                for (std::size_t i = 0; i < measure.held.size(); ++i)
                    own.held[stock_of_level_[level][i]] = measure.held[i];
            }
        }
        return all;
    }

    // With values of the pieces that go with the costs.
    Amount least_by_measures(const std::vector<Amount>& costs) const {
        std::vector<StockKind> kinds;
        std::vector<BoardKind> boards;
        for (std::size_t s = 0; s < stock_.size(); ++s) {
            kinds.push_back({costs[s], stock_[s].count});
            boards.push_back({size_of(stock_[s]), kinds.back()});
        }
        std::vector<Measure> measures = all_measures();
        std::vector<WantedPieces> wanted;
        for (const std::vector<WantedPieces>& of_group : pieces_)
            wanted.insert(wanted.end(), of_group.begin(), of_group.end());
        if (!turns_) {
            if (const std::optional<Measure> patterns = pattern_measure(wanted, boards))
                measures.push_back(*patterns);
        }
        return least_cover(kinds, measures).value_or(0);
    }

    // The best bound for pieces of one thickness and more alone.
    cutting::LowerBound least_by_level(const std::vector<Amount>& costs) const {
        cutting::LowerBound best;
        for (std::size_t level = 0; level < levels_.size(); ++level) {
            cutting::Problem problem = levels_[level];
            for (std::size_t i = 0; i < problem.stock.size(); ++i)
                problem.stock[i].cost = costs[stock_of_level_[level][i]];
            const cutting::LowerBound bound = cutting::lower_bound(problem);
            if (bound.cost > best.cost) best = bound;
        }
        return best;
    }

    std::pair<int, std::string> least_boards() const {
        const std::vector<Amount> ones(stock_.size(), 1);
        const cutting::LowerBound single = least_by_level(ones);
        const Amount joint = least_by_measures(ones);
        if (joint <= single.cost)
            return {static_cast<int>(single.cost), std::string(bound_method_name(single.method))};
        return {static_cast<int>(joint), std::string(bound_method_name(cutting::BoundMethod::stock_choice))};
    }

    Amount least_cost() const { return std::max(least_by_level(costs_).cost, least_by_measures(costs_)); }

    Amount cost_of_plan() const {
        Amount cost = 0;
        for (const std::size_t board : boards()) {
            const auto found = std::ranges::find_if(
                stock_, [&](const Stock& one) { return key(one.board) == key(plan_.boards[board]); });
            cost += costs_[static_cast<std::size_t>(found - stock_.begin())];
        }
        return cost;
    }
};

}  // namespace

std::vector<PlanBound> bounds_of(const PlanState& state, const Planning& planning) {
    std::vector<PlanBound> bounds;
    std::vector<const Wood*> done;
    for (const PlannedGroup& first : state.groups) {
        const Wood* wood = first.group.wood;
        if (std::ranges::find(done, wood) != done.end()) continue;
        done.push_back(wood);
        Groups groups;
        bool complete = true;
        for (const PlannedGroup& group : state.groups) {
            if (group.group.wood != wood) continue;
            groups.push_back(&group);
            complete = complete && state.plan.groups[group.index].complete;
        }
        if (complete) bounds.push_back(BoundOfWood(std::move(groups), state, planning).find());
    }
    return bounds;
}

}  // namespace rodwright
