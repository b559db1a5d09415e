#include "compiler/stock/plan/staves.hpp"

#include <algorithm>

#include "compiler/at_once.hpp"
#include "compiler/stock/plan/resaw.hpp"

namespace rodwright {
namespace {

constexpr std::size_t most_choices = 12;

bool allowed(const PanelDemand& panel, const Rational& width) {
    return panel.need.narrowest <= width && width <= panel.need.widest;
}

// Widths that the boards give without a rip, widest first.
std::vector<Rational> board_widths(const PanelDemand& panel, const std::vector<Stock>& stock,
                                   const MillingData& milling) {
    std::vector<Rational> widths;
    for (const Stock& one : stock) {
        const Rational width = std::min(one.board.width, one.board.far_width) - one.board.sapwood -
                               2 * milling.panels.glued_edge;
        if (allowed(panel, width) && std::ranges::find(widths, width) == widths.end())
            widths.push_back(width);
    }
    std::ranges::sort(widths, std::ranges::greater());
    return widths;
}

// `many` of that width, and the rest shared out.
void add_mixed(const PanelDemand& panel, const Rational& width, int many, int staves,
               std::vector<StaveWidths>& choices) {
    const Rational rest = (panel.need.size[Axis::deep] - width * many) / (staves - many);
    if (!allowed(panel, rest)) return;
    StaveWidths widths(static_cast<std::size_t>(many), width);
    widths.resize(static_cast<std::size_t>(staves), rest);
    choices.push_back(std::move(widths));
}

std::vector<Demand> all_demands(const DemandGroup& group, const std::vector<StaveWidths>& chosen,
                                const MillingData& milling) {
    std::vector<Demand> demands = group.demands;
    for (std::size_t i = 0; i < group.panels.size(); ++i) {
        for (Demand& stave : staves_of(group.panels[i], chosen[i], milling))
            demands.push_back(std::move(stave));
    }
    return group.resawn_from ? as_leaves(std::move(demands), *group.resawn_from, milling) : demands;
}

// Tries the choices of one panel after the other, each as is best with those made for the rest.
class StaveTrials {
  public:
    StaveTrials(const DemandGroup& group, const std::vector<Stock>& stock, const Grid& grid,
                const MillingData& milling)
        : group_(group), stock_(stock), grid_(grid), milling_(milling) {
        for (const PanelDemand& panel : group.panels) {
            choices_.push_back(stave_choices(panel, stock, milling));
            chosen_.push_back(choices_.back().front());
        }
    }

    StavedLevel best() && {
        best_ = solve_level(level_with(chosen_), grid_, milling_, cutting::Effort::quick);
        for (std::size_t panel = 0; panel < choices_.size(); ++panel) try_choices(panel);
        return {level_with(chosen_), std::move(best_)};
    }

  private:
    const DemandGroup& group_;
    const std::vector<Stock>& stock_;
    const Grid& grid_;
    const MillingData& milling_;
    std::vector<std::vector<StaveWidths>> choices_;
    std::vector<StaveWidths> chosen_;
    LevelPlan best_;

    Level level_with(const std::vector<StaveWidths>& widths) const {
        return {all_demands(group_, widths, milling_), stock_};
    }

    // Empty where its bound says that it is no better than the best so far.
    std::optional<LevelPlan> tried(std::size_t panel, const StaveWidths& widths) const {
        std::vector<StaveWidths> other = chosen_;
        other[panel] = widths;
        const Level level = level_with(other);
        if (!may_be_better(level, best_, grid_, milling_)) return std::nullopt;
        return solve_level(level, grid_, milling_, cutting::Effort::quick);
    }

    void try_choices(std::size_t panel) {
        const std::vector<StaveWidths>& choices = choices_[panel];
        std::vector<std::optional<LevelPlan>> plans(choices.size());
        at_once(choices.size(), [&](std::size_t choice) {
            if (choices[choice] != chosen_[panel]) plans[choice] = tried(panel, choices[choice]);
        });
        for (std::size_t choice = 0; choice < plans.size(); ++choice) {
            if (!plans[choice] || !plans[choice]->better_than(best_)) continue;
            best_ = std::move(*plans[choice]);
            chosen_[panel] = choices[choice];
        }
    }
};

}  // namespace

std::vector<StaveWidths> stave_choices(const PanelDemand& panel, const std::vector<Stock>& stock,
                                       const MillingData& milling) {
    const StaveCounts counts = stave_counts(panel.need);
    const std::vector<Rational> widths = board_widths(panel, stock, milling);
    std::vector<StaveWidths> choices;
    for (int staves = counts.fewest; staves <= counts.most && choices.size() < most_choices; ++staves) {
        const auto count = static_cast<std::size_t>(staves);
        choices.emplace_back(count, Rational(panel.need.size[Axis::deep] / staves));
        for (const Rational& width : widths) {
            for (int many = 1; many < staves; ++many) add_mixed(panel, width, many, staves, choices);
        }
    }
    choices.resize(std::min(choices.size(), most_choices));
    return choices;
}

StavedLevel with_staves(const DemandGroup& group, std::vector<Stock> stock, const Grid& grid,
                        const MillingData& milling) {
    return StaveTrials(group, stock, grid, milling).best();
}

}  // namespace rodwright
