#include "compiler/stock/plan/plan_wood.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "compiler/stock/cutting/bounds/bounds.hpp"
#include "compiler/stock/plan/cut_up.hpp"
#include "compiler/stock/plan/groups.hpp"
#include "compiler/stock/plan/remedies.hpp"
#include "compiler/stock/plan/staves.hpp"

namespace rodwright {
namespace {

class Planner {
  public:
    Planner(const Piece& piece, const WoodSupply& supply, cutting::Effort effort, Diagnostics& diagnostics)
        : piece_(piece),
          supply_(supply),
          milling_(supply.milling),
          effort_(effort),
          diagnostics_(diagnostics),
          grid_(piece.style.unit) {}

    WoodPlan run() {
        plan_.rough = rough_sizes(without_matched(piece_), milling_);
        Demands demands = demands_of(piece_, milling_, plan_.rough);
        if (!supply_.rack) return std::move(plan_);
        plan_.planned = true;
        plan_.money = supply_.rack->money;
        give_up_matches(demands);
        choose_boards_or_panels(demands);
        for (DemandGroup& group : grouped(piece_, std::move(demands))) plan_group(group);
        add_purchases();
        add_volumes();
        return std::move(plan_);
    }

  private:
    const Piece& piece_;
    const WoodSupply& supply_;
    const MillingData& milling_;
    cutting::Effort effort_;
    Diagnostics& diagnostics_;
    Grid grid_;
    WoodPlan plan_;
    std::map<std::string, int> used_;            // boards of the rack, by name
    std::map<std::size_t, std::string> offers_;  // of boards to buy, by their index: what the list calls them
    std::map<std::size_t, Rational> board_feet_;

    // Everything that the demand could come out of, whatever else it is wanted for.
    std::vector<Stock> possible(const Demand& demand) {
        const Wood* wood = piece_.find_wood(demand.wood);
        if (wood == nullptr) return {};
        const StockQuery query{"",
                               *wood,
                               demand.sheet,
                               false,
                               demand.size[Axis::tall],
                               demand.size[Axis::wide],
                               demand.size[Axis::deep]};
        std::vector<std::string> unsaid;
        std::vector<Stock> stock = stock_at_hand(*supply_.rack, query, milling_, unsaid);
        for (Stock& more : stock_for_sale(*supply_.rack, query, milling_, piece_.style))
            stock.push_back(std::move(more));
        return stock;
    }

    bool some_board_holds(const Demand& demand) {
        return std::ranges::any_of(possible(demand),
                                   [&](const Stock& stock) { return holds(stock, demand); });
    }

    void give_up_matches(Demands& demands) {
        std::vector<Demand> kept;
        for (Demand& demand : demands.pieces) {
            if (!demand.match || can_be_matched(demand)) {
                kept.push_back(std::move(demand));
                continue;
            }
            const Match& match = piece_.matches[*demand.match];
            diagnostics_.add(
                diagnose(Code::match_given_up, match.where,
                         fmt::format("no board is {} thick or more and holds {} by {}, which these "
                                     "parts take together",
                                     shown(demand.size[Axis::tall]), shown(demand.size[Axis::wide]),
                                     shown(demand.size[Axis::deep])))
                    .hint("they are taken one by one; match fewer parts, or add a board to the rack"));
            for (Demand& single : taken_singly(piece_, match, milling_)) kept.push_back(std::move(single));
        }
        demands.pieces = std::move(kept);
    }

    bool can_be_matched(const Demand& demand) {
        const bool book = piece_.matches[*demand.match].how == MatchKind::book;
        const bool can_be_sawn_open = demand.size[Axis::deep] <= milling_.saw_limits.tallest_resaw;
        return (!book || can_be_sawn_open) && some_board_holds(demand);
    }

    // Where the design does not say that a wide part is glued up, one board is tried first.
    void choose_boards_or_panels(Demands& demands) {
        std::vector<bool> dropped(demands.pieces.size(), false);
        std::erase_if(demands.panels, [&](const PanelDemand& panel) {
            if (!panel.need.suggested) return false;
            const auto blank = std::ranges::find_if(demands.pieces, [&](const Demand& demand) {
                return piece_[demand.pieces.front().parts.front()].kind == panel.need.kind;
            });
            if (blank == demands.pieces.end() || some_board_holds(*blank)) return true;
            dropped[static_cast<std::size_t>(blank - demands.pieces.begin())] = true;
            plan_.notes.push_back(fmt::format("{} is wider than any board and is glued up", panel.label));
            return false;
        });
        std::vector<Demand> kept;
        for (std::size_t i = 0; i < demands.pieces.size(); ++i) {
            if (!dropped[i]) kept.push_back(std::move(demands.pieces[i]));
        }
        demands.pieces = std::move(kept);
    }

    std::string shown(const Rational& length) const { return format_length(length, piece_.style); }

    // Less what thicker parts have taken, and with what is left of their boards.
    std::vector<Stock> at_hand(const DemandGroup& group) {
        std::vector<Stock> stock;
        for (Stock& one : stock_at_hand(*supply_.rack, group.query(), milling_, plan_.notes)) {
            const auto used = used_.find(one.board.origin);
            if (used != used_.end()) *one.count -= used->second;
            if (*one.count > 0) stock.push_back(std::move(one));
        }
        for (const PlanGroup& earlier : plan_.groups) {
            if (earlier.sheet || group.sheet || earlier.wood != group.wood->name) continue;
            for (Stock& left : stock_left_over(plan_, earlier)) stock.push_back(std::move(left));
        }
        return stock;
    }

    void plan_group(const DemandGroup& group) {
        Level level{group.demands, at_hand(group)};
        level.demands = with_staves(level, group.panels, grid_, milling_);
        LevelPlan solved = solve_level(level, grid_, milling_, effort_);
        std::vector<Stock> sale;
        if (solved.missing() > 0) sale = stock_for_sale(*supply_.rack, group.query(), milling_, piece_.style);
        if (!sale.empty()) {
            level.demands = group.demands;
            for (Stock& one : sale) level.stock.push_back(std::move(one));
            level.demands = with_staves(level, group.panels, grid_, milling_);
            solved = solve_level(level, grid_, milling_, effort_);
        }
        PlanGroup planned;
        planned.wood = group.wood->name;
        planned.title = group.title;
        planned.sheet = group.sheet;
        planned.least_thickness = group.least_thickness;
        planned.boards = cut_up(solved, level, grid_, milling_, plan_);
        count_boards(solved, level, planned);
        add_bound(solved, level, planned);
        plan_.groups.push_back(std::move(planned));
        if (solved.missing() > 0) report_missing(solved, level, group);
    }

    void count_boards(const LevelPlan& solved, const Level& level, const PlanGroup& planned) {
        std::size_t next = 0;
        for (const cutting::CutTree& tree : solved.plan.sheets) {
            const Stock& stock = level.stock[static_cast<std::size_t>(tree.stock)];
            if (stock.left_of) continue;
            const std::size_t index = planned.boards[next++];
            if (stock.offer.empty()) {
                ++used_[stock.board.origin];
                continue;
            }
            offers_[index] = stock.offer;
            board_feet_[index] = stock.board_feet;
            plan_.boards[index].name = fmt::format("new {}", offers_.size());
        }
    }

    // Counted in boards, whatever each is worth; and how far the worth of the plan can be from the least.
    void add_bound(const LevelPlan& solved, const Level& level, PlanGroup& planned) const {
        if (!solved.plan.complete() || solved.plan.sheets.empty()) return;
        cutting::Problem problem = cutting_problem(level, grid_, milling_);
        for (std::size_t i = 0; i < problem.stock.size(); ++i)
            problem.stock[i].cost = level.stock[i].left_of ? 0 : 1;
        const cutting::LowerBound bound = cutting::lower_bound(problem);
        planned.at_least = static_cast<int>(bound.cost);
        planned.at_least_by = cutting::bound_method_name(bound.method);
        planned.proven = solved.plan.optimal();
        const cutting::Amount least = solved.plan.bound.cost;
        if (!planned.proven && least > 0) planned.over = ratio(solved.plan.cost, least) - 1;
    }

    void report_missing(const LevelPlan& solved, const Level& level, const DemandGroup& group) {
        std::string list;
        for (std::size_t i = 0; i < level.demands.size(); ++i) {
            const int count = solved.plan.missing[i];
            if (count == 0) continue;
            const Demand& demand = level.demands[i];
            const PlannedPiece& sample = demand.pieces.back();
            plan_.missing.push_back({sample.label, count, demand.size, group.title});
            list += fmt::format("{}{} of {} ({} x {})", list.empty() ? "" : ", ", count, sample.label,
                                shown(demand.size[Axis::wide]), shown(demand.size[Axis::deep]));
        }
        Diagnostic diagnostic =
            diagnose(Code::short_of_wood, first_missing(solved, level),
                     fmt::format("{}: no board is left for {}, rough sizes", group.title, list));
        for (std::string& remedy : remedies({level, group, grid_, milling_, piece_.style})) {
            diagnostic.notes.push_back(remedy);
            plan_.remedies.push_back(std::move(remedy));
        }
        diagnostics_.add(std::move(diagnostic));
    }

    Span first_missing(const LevelPlan& solved, const Level& level) const {
        for (std::size_t i = 0; i < level.demands.size(); ++i) {
            if (solved.plan.missing[i] > 0)
                return piece_[level.demands[i].pieces.front().parts.front()].where;
        }
        return {};
    }

    void add_purchases() {
        for (const auto& [index, text] : offers_) {
            auto row = std::ranges::find(plan_.purchases, text, &Purchase::text);
            if (row == plan_.purchases.end()) row = plan_.purchases.insert(row, Purchase{text, 0, 0, 0});
            ++row->count;
            row->board_feet += board_feet_.at(index);
            row->price += *plan_.boards[index].price;
        }
    }

    void add_volumes() {
        for (const Part& part : piece_.parts) {
            const Kind& kind = piece_[part.kind];
            if (piece_.find_wood(kind.wood) == nullptr) continue;
            plan_.finished_volume +=
                kind.overall(Axis::wide) * kind.overall(Axis::deep) * kind.overall(Axis::tall);
        }
        for (const PlannedBoard& board : plan_.boards) {
            Rational area = board.length * (board.width + board.far_width) / 2;
            for (const PlanRegion& region : board.regions) {
                if (region.kind == PlanRegion::Kind::offcut) area -= region.area.length * region.area.width;
            }
            plan_.used_volume += area * board.thickness;
        }
    }
};

}  // namespace

WoodPlan plan_wood(const Piece& piece, const WoodSupply& supply, cutting::Effort effort,
                   Diagnostics& diagnostics) {
    return Planner(piece, supply, effort, diagnostics).run();
}

}  // namespace rodwright
