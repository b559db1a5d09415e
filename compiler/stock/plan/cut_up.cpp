#include "compiler/stock/plan/cut_up.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <deque>

#include "compiler/stock/plan/far_waste.hpp"
#include "compiler/stock/plan/fewer_cuts.hpp"
#include "compiler/stock/plan/saw_choice.hpp"
#include "compiler/stock/plan/trim.hpp"

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
// of one stage before any of the next. What lies at the tree's far sides reaches as much further as `beyond`
// says.
class Cutter {
  public:
    Cutter(PlannedBoard& board, const CutTree& tree, const PlanArea& usable, const Beyond& beyond,
           const Grid& grid)
        : board_(board), tree_(tree), usable_(usable), beyond_(beyond), grid_(grid) {
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
    const Beyond& beyond_;
    const Grid& grid_;
    std::size_t sections_ = 0;

    static std::size_t index(int node) { return static_cast<std::size_t>(node); }

    // What holds no part is left whole, whatever cuts the search made round a defect in it.
    bool is_cut(int node) const {
        return node != CutNode::none && tree_.nodes[index(node)].kind == CutNode::Kind::cut &&
               cutting::has_part(tree_, node);
    }

    PlanArea area_of(const cutting::Rectangle& rectangle) const {
        PlanArea area{usable_.from_end + grid_.length(rectangle.corner.along[0]),
                      usable_.from_edge + grid_.length(rectangle.corner.along[1]),
                      grid_.length(rectangle.size.along[0]), grid_.length(rectangle.size.along[1])};
        const cutting::Rectangle& whole = tree_.nodes.front().area;
        if (cutting::ends_with(rectangle, whole, cutting::Axis::length)) area.length += beyond_.length;
        if (cutting::ends_with(rectangle, whole, cutting::Axis::width)) area.width += beyond_.width;
        return area;
    }

    std::size_t add(const PlanArea& area, std::string name) {
        board_.regions.push_back({PlanRegion::Kind::section, area, std::move(name), {}});
        return board_.regions.size() - 1;
    }

    // Behind a cut that would leave but dust of what the tree divides.
    std::optional<std::size_t> waste_beyond(const CutNode& cut, const PlannedCut& planned) {
        const bool crosscut = planned.crosscut;
        const Rational& beyond = crosscut ? beyond_.length : beyond_.width;
        if (beyond == 0 || !cutting::ends_with(cut.area, tree_.nodes.front().area, cut.axis))
            return std::nullopt;
        PlanArea area = board_.regions[planned.of].area;
        Rational& from = crosscut ? area.from_end : area.from_edge;
        Rational& extent = crosscut ? area.length : area.width;
        const Rational behind = planned.at + (crosscut ? board_.crosscut_kerf : board_.rip_kerf);
        extent -= behind - from;
        from = behind;
        if (extent <= 0) return std::nullopt;
        board_.regions.push_back({PlanRegion::Kind::waste, area, "", {}});
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
            PlannedCut planned =
                cut_of(region, crosscut, at, grid_.length(cut.position - cut.area.corner[axis]));
            planned.first = add(area_of(tree_.nodes[index(cut.first)].area), "");
            waiting.emplace_back(cut.first, planned.first);
            if (cut.second != CutNode::none) {
                planned.rest = add(area_of(tree_.nodes[index(cut.second)].area), board_.regions[region].name);
                region = *planned.rest;
            } else {
                planned.rest = waste_beyond(cut, planned);
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
        board_.pieces.back().show_face = face_to_show(region.area);
    }

    // A piece that has a defect on one face shows the other.
    std::optional<DefectFace> face_to_show(const PlanArea& area) const {
        for (const PlanDefect& defect : board_.defects) {
            if (!defect.area.overlaps(area)) continue;
            return defect.face == DefectFace::upper ? DefectFace::lower : DefectFace::upper;
        }
        return std::nullopt;
    }
};

void sort_out_waste(PlannedBoard& board, const OffcutLimits& limits) {
    for (PlanRegion& region : board.regions) {
        if (region.kind != PlanRegion::Kind::offcut) continue;
        if (!limits.keeps(board.sheet, region.area.length, region.area.width))
            region.kind = PlanRegion::Kind::waste;
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
        Beyond beyond;
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
            beyond = spared_trim(tree, stock, grid, milling.offcuts);
            PlanArea cut_from = stock.usable;
            cut_from.length += beyond.length;
            cut_from.width += beyond.width;
            region = trim(board, cut_from);
            added.push_back(index);
        }
        PlannedBoard& board = plan.boards[index];
        Cutter(board, tree, stock.usable, beyond, grid).run(region, give);
        sort_out_waste(board, milling.offcuts);
        choose_saws(board, milling);
    }
    name_copies(added, plan);
    return added;
}

}  // namespace rodwright
