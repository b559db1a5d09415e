#include "compiler/stock/plan/cut_up.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <deque>

#include "compiler/stock/plan/fewer_cuts.hpp"

namespace rodwright {
namespace {

using cutting::CutNode;
using cutting::CutTree;

// Sections are a, b, ... z, aa, ab ...
std::string section_name(std::size_t number) {
    constexpr std::size_t letters = 26;
    std::string name(1, static_cast<char>('a' + number % letters));
    for (std::size_t rest = number / letters; rest > 0; rest = (rest - 1) / letters)
        name.insert(name.begin(), static_cast<char>('a' + (rest - 1) % letters));
    return name;
}

// Cuts one board by one tree. Cuts of one direction that follow each other are made in a row, and all pieces
// of one stage before any of the next.
class Cutter {
  public:
    Cutter(PlannedBoard& board, const CutTree& tree, const PlanArea& usable, const Grid& grid)
        : board_(board), tree_(tree), usable_(usable), grid_(grid) {
        for (const PlanRegion& region : board.regions) {
            if (region.kind == PlanRegion::Kind::section && !region.name.empty()) ++sections_;
        }
    }

    // `give` yields the piece of a node that is a part.
    template <typename Give>
    void run(std::size_t region, const Give& give) {
        std::deque<std::pair<int, std::size_t>> waiting = {{0, region}};
        while (!waiting.empty()) {
            const auto [node, at] = waiting.front();
            waiting.pop_front();
            if (is_cut(node)) {
                cut_in_a_row(node, at, waiting);
            } else {
                end(node, at, give);
            }
        }
    }

  private:
    PlannedBoard& board_;
    const CutTree& tree_;
    const PlanArea& usable_;
    const Grid& grid_;
    std::size_t sections_ = 0;

    static std::size_t index(int node) { return static_cast<std::size_t>(node); }

    // Below it there is a part. What has none is left whole, whatever cuts the search made round a defect in
    // it.
    bool has_part(int node) const {
        if (node == CutNode::none) return false;
        const CutNode& each = tree_.nodes[index(node)];
        if (each.kind != CutNode::Kind::cut) return each.kind == CutNode::Kind::part;
        return has_part(each.first) || has_part(each.second);
    }
    bool is_cut(int node) const {
        return node != CutNode::none && tree_.nodes[index(node)].kind == CutNode::Kind::cut && has_part(node);
    }

    PlanArea area_of(const cutting::Rectangle& rectangle) const {
        return {usable_.from_end + grid_.length(rectangle.corner.along[0]),
                usable_.from_edge + grid_.length(rectangle.corner.along[1]),
                grid_.length(rectangle.size.along[0]), grid_.length(rectangle.size.along[1])};
    }

    std::size_t add(const PlanArea& area, std::string name) {
        board_.regions.push_back({PlanRegion::Kind::section, area, std::move(name), {}});
        return board_.regions.size() - 1;
    }

    void cut_in_a_row(int node, std::size_t region, std::deque<std::pair<int, std::size_t>>& waiting) {
        if (board_.regions[region].name.empty() && region != 0)
            board_.regions[region].name = section_name(sections_++);
        const cutting::Axis axis = tree_.nodes[index(node)].axis;
        while (is_cut(node) && tree_.nodes[index(node)].axis == axis) {
            const CutNode& cut = tree_.nodes[index(node)];
            const bool crosscut = axis == cutting::Axis::length;
            const Rational at =
                (crosscut ? usable_.from_end : usable_.from_edge) + grid_.length(cut.position);
            PlannedCut planned{region, crosscut, at, grid_.length(cut.position - cut.area.corner[axis]),
                               0,      {}};
            planned.first = add(area_of(tree_.nodes[index(cut.first)].area), "");
            waiting.emplace_back(cut.first, planned.first);
            if (cut.second != CutNode::none) {
                planned.rest = add(area_of(tree_.nodes[index(cut.second)].area), board_.regions[region].name);
                region = *planned.rest;
            }
            board_.cuts.push_back(planned);
            node = cut.second;
        }
        if (node != CutNode::none) waiting.emplace_back(node, region);
    }

    template <typename Give>
    void end(int node, std::size_t at, const Give& give) {
        PlanRegion& region = board_.regions[at];
        const CutNode& leaf = tree_.nodes[index(node)];
        region.name.clear();
        region.kind = PlanRegion::Kind::offcut;
        if (leaf.kind != CutNode::Kind::part) return;
        region.kind = PlanRegion::Kind::piece;
        region.piece = board_.pieces.size();
        board_.pieces.push_back(give(leaf));
    }
};

// Bad ends, and the edges of a sheet, go first. The kerf lies in what goes.
class Trimmer {
  public:
    explicit Trimmer(PlannedBoard& board) : board_(board) {}

    std::size_t run(const PlanArea& usable) {
        const Rational width = std::max(board_.width, board_.far_width);
        board_.regions.push_back({PlanRegion::Kind::section, {0, 0, board_.length, width}, "", {}});
        if (usable.from_end > 0) near(true, usable.from_end);
        if (usable.from_end + usable.length < board_.length) far(true, usable.length);
        if (usable.from_edge > 0) near(false, usable.from_edge);
        if (usable.from_edge + usable.width < width) far(false, usable.width);
        return at_;
    }

  private:
    PlannedBoard& board_;
    std::size_t at_ = 0;

    Rational kerf(bool crosscut) const { return crosscut ? board_.crosscut_kerf : board_.rip_kerf; }

    static void keep(PlanArea& area, bool crosscut, const Rational& from, const Rational& extent) {
        (crosscut ? area.from_end : area.from_edge) = from;
        (crosscut ? area.length : area.width) = extent;
    }

    std::size_t add(PlanRegion::Kind kind, const PlanArea& area) {
        board_.regions.push_back({kind, area, "", {}});
        return board_.regions.size() - 1;
    }

    void near(bool crosscut, const Rational& lost) {
        const PlanArea whole = board_.regions[at_].area;
        const Rational from = crosscut ? whole.from_end : whole.from_edge;
        const Rational extent = crosscut ? whole.length : whole.width;
        const Rational goes = std::max<Rational>(0, lost - kerf(crosscut));
        PlannedCut cut{at_, crosscut, from + goes, goes, 0, {}};
        PlanArea area = whole;
        keep(area, crosscut, from, goes);
        cut.first = add(PlanRegion::Kind::waste, area);
        keep(area, crosscut, from + lost, extent - lost);
        cut.rest = add(PlanRegion::Kind::section, area);
        board_.cuts.push_back(cut);
        at_ = *cut.rest;
    }

    void far(bool crosscut, const Rational& kept) {
        const PlanArea whole = board_.regions[at_].area;
        const Rational from = crosscut ? whole.from_end : whole.from_edge;
        const Rational extent = crosscut ? whole.length : whole.width;
        PlannedCut cut{at_, crosscut, from + kept, kept, 0, {}};
        PlanArea area = whole;
        keep(area, crosscut, from, kept);
        cut.first = add(PlanRegion::Kind::section, area);
        const Rational behind = extent - kept - kerf(crosscut);
        if (behind > 0) {
            keep(area, crosscut, from + kept + kerf(crosscut), behind);
            cut.rest = add(PlanRegion::Kind::waste, area);
        }
        board_.cuts.push_back(cut);
        at_ = cut.first;
    }
};

void sort_out_waste(PlannedBoard& board, const OffcutLimits& limits) {
    const Rational& length = board.sheet ? limits.sheet_length : limits.length;
    const Rational& width = board.sheet ? limits.sheet_width : limits.width;
    for (PlanRegion& region : board.regions) {
        if (region.kind != PlanRegion::Kind::offcut) continue;
        const bool kept = region.area.length >= length && region.area.width >= width;
        if (!kept) region.kind = PlanRegion::Kind::waste;
    }
}

std::size_t region_at(const PlannedBoard& board, const PlanArea& area) {
    const auto found = std::ranges::find(board.regions, area, &PlanRegion::area);
    return static_cast<std::size_t>(found - board.regions.begin());
}

void name_copies(const std::vector<std::size_t>& added, WoodPlan& plan) {
    std::map<std::string, int> boards;
    for (const std::size_t index : added) ++boards[plan.boards[index].origin];
    std::map<std::string, int> seen;
    for (const std::size_t index : added) {
        PlannedBoard& board = plan.boards[index];
        if (board.origin.empty() || boards[board.origin] == 1) continue;
        board.name = fmt::format("{} no. {}", board.origin, ++seen[board.origin]);
    }
}

}  // namespace

std::vector<std::size_t> cut_up(const LevelPlan& solved, const Level& level, const Grid& grid,
                                const MillingData& milling, WoodPlan& plan) {
    std::vector<std::size_t> given(level.demands.size(), 0);
    const auto give = [&](const CutNode& leaf) {
        const auto demand = static_cast<std::size_t>(leaf.part);
        return level.demands[demand].pieces[given[demand]++];
    };
    std::vector<std::size_t> added;
    const cutting::Problem problem = cutting_problem(level, grid, milling);
    for (const CutTree& sheet_tree : solved.plan.sheets) {
        const auto kind = static_cast<std::size_t>(sheet_tree.stock);
        const CutTree tree = with_fewer_cuts(problem, sheet_tree);
        const Stock& stock = level.stock[kind];
        std::size_t region = 0;
        std::size_t index = plan.boards.size();
        if (stock.left_of) {
            index = *stock.left_of;
            region = region_at(plan.boards[index], stock.usable);
            plan.boards[index].regions[region].kind = PlanRegion::Kind::section;
        } else {
            plan.boards.push_back(stock.board);
            PlannedBoard& board = plan.boards.back();
            const bool sheet = board.sheet;
            board.crosscut_kerf = milling.kerf(sheet ? milling.saws.sheets : milling.saws.crosscut);
            board.rip_kerf = milling.kerf(sheet ? milling.saws.sheets : milling.saws.rip);
            region = Trimmer(board).run(stock.usable);
            added.push_back(index);
        }
        PlannedBoard& board = plan.boards[index];
        Cutter(board, tree, stock.usable, grid).run(region, give);
        sort_out_waste(board, milling.offcuts);
    }
    name_copies(added, plan);
    return added;
}

}  // namespace rodwright
