#include "compiler/stock/plan/trim.hpp"

#include <algorithm>

namespace rodwright {
namespace {

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
        PlannedCut cut = cut_of(at_, crosscut, from + goes, goes);
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
        PlannedCut cut = cut_of(at_, crosscut, from + kept, kept);
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

}  // namespace

PlannedCut cut_of(std::size_t region, bool crosscut, const Rational& at, const Rational& setting) {
    PlannedCut cut;
    cut.of = region;
    cut.crosscut = crosscut;
    cut.at = at;
    cut.setting = setting;
    return cut;
}

std::size_t trim(PlannedBoard& board, const PlanArea& usable) {
    return Trimmer(board).run(usable);
}

}  // namespace rodwright
