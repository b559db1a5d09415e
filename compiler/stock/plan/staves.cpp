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

std::vector<Demand> with_staves(const DemandGroup& group, const std::vector<Stock>& stock, const Grid& grid,
                                const MillingData& milling) {
    std::vector<std::vector<StaveWidths>> choices;
    std::vector<StaveWidths> chosen;
    for (const PanelDemand& panel : group.panels) {
        choices.push_back(stave_choices(panel, stock, milling));
        chosen.push_back(choices.back().front());
    }
    const auto plan_with = [&](const std::vector<StaveWidths>& widths) {
        return solve_level({all_demands(group, widths, milling), stock}, grid, milling,
                           cutting::Effort::quick);
    };
    std::size_t trials = 0;
    for (const auto& of_panel : choices) trials += of_panel.size() - 1;
    if (trials == 0) return all_demands(group, chosen, milling);
    // One panel after the other, each as is best with the choices made for the rest.
    LevelPlan best = plan_with(chosen);
    for (std::size_t i = 0; i < choices.size(); ++i) {
        std::vector<LevelPlan> tried(choices[i].size());
        at_once(tried.size(), [&](std::size_t choice) {
            std::vector<StaveWidths> other = chosen;
            other[i] = choices[i][choice];
            tried[choice] = plan_with(other);
        });
        for (std::size_t choice = 0; choice < tried.size(); ++choice) {
            if (!tried[choice].better_than(best)) continue;
            best = std::move(tried[choice]);
            chosen[i] = choices[i][choice];
        }
    }
    return all_demands(group, chosen, milling);
}

}  // namespace rodwright
