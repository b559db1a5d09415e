#include "compiler/stock/plan/staves.hpp"

#include <algorithm>

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

std::vector<Demand> all_demands(const Level& level, const std::vector<PanelDemand>& panels,
                                const std::vector<StaveWidths>& chosen, const MillingData& milling) {
    std::vector<Demand> demands = level.demands;
    for (std::size_t i = 0; i < panels.size(); ++i) {
        for (Demand& stave : staves_of(panels[i], chosen[i], milling)) demands.push_back(std::move(stave));
    }
    return demands;
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

std::vector<Demand> with_staves(const Level& level, const std::vector<PanelDemand>& panels, const Grid& grid,
                                const MillingData& milling) {
    std::vector<std::vector<StaveWidths>> choices;
    std::vector<StaveWidths> chosen;
    for (const PanelDemand& panel : panels) {
        choices.push_back(stave_choices(panel, level.stock, milling));
        chosen.push_back(choices.back().front());
    }
    const auto plan_with = [&](const std::vector<StaveWidths>& widths) {
        return solve_level({all_demands(level, panels, widths, milling), level.stock}, grid, milling,
                           cutting::Effort::quick);
    };
    std::size_t trials = 0;
    for (const auto& of_panel : choices) trials += of_panel.size() - 1;
    if (trials == 0) return all_demands(level, panels, chosen, milling);
    // One panel after the other, each as is best with the choices made for the rest.
    LevelPlan best = plan_with(chosen);
    for (std::size_t i = 0; i < panels.size(); ++i) {
        for (std::size_t choice = 1; choice < choices[i].size(); ++choice) {
            std::vector<StaveWidths> other = chosen;
            other[i] = choices[i][choice];
            LevelPlan tried = plan_with(other);
            if (!tried.better_than(best)) continue;
            best = std::move(tried);
            chosen = std::move(other);
        }
    }
    return all_demands(level, panels, chosen, milling);
}

}  // namespace rodwright
