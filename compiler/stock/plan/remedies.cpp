#include "compiler/stock/plan/remedies.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <optional>

#include "compiler/at_once.hpp"
#include "compiler/stock/cutting/bounds/bounds.hpp"

namespace rodwright {
namespace {

// Allowances are smaller than what the piece's sizes are shown to.
LengthStyle fine(LengthStyle style) {
    style.step = style.unit == LengthUnit::inch ? ratio(1, 64) : ratio(1, 10);
    return style;
}

// What a maker thinks in: 1/8 in off a part, boards by 1/2 in of width and 6 in of length; 2 mm, 10 mm and
// 100 mm.
struct Steps {
    Rational part, board_width, board_length;
};

Steps steps_of(const LengthStyle& style) {
    const Rational inch = ratio(254, 10);
    if (style.unit == LengthUnit::inch) return {inch / 8, inch / 2, inch * 6};
    return {2, 10, 100};
}

bool enough(const Shortage& shortage, const Level& level) {
    if (cutting::too_little_stock(cutting_problem(level, shortage.grid, shortage.milling))) return false;
    return solve_level(level, shortage.grid, shortage.milling, cutting::Effort::quick).missing() == 0;
}

// All sizes along the axis less by `less`, of all demands or of one.
Level smaller(const Level& level, Axis axis, const Rational& less, std::optional<std::size_t> only = {}) {
    Level result = level;
    for (std::size_t i = 0; i < result.demands.size(); ++i) {
        if (only && *only != i) continue;
        Rational& size = result.demands[i].size[axis];
        size = std::max<Rational>(1, size - less);
    }
    return result;
}

// The smallest of a few steps that is enough, by halves: what one step does, a larger one does too.
std::optional<Rational> least_step(const Rational& step, int steps,
                                   const std::function<bool(const Rational&)>& works) {
    if (!works(step * steps)) return std::nullopt;
    int fails = 0;
    int enough = steps;
    while (enough - fails > 1) {
        const int middle = (fails + enough) / 2;
        (works(step * middle) ? enough : fails) = middle;
    }
    return Rational(step * enough);
}

using Remedy = std::optional<std::string>;

// Less of an allowance on both sides, in quarters of it.
Remedy less_allowance(const Shortage& shortage, Axis axis, const Rational& allowance, std::string_view name) {
    constexpr int quarters = 4;
    const auto works = [&](const Rational& less) {
        return enough(shortage, smaller(shortage.short_of.level, axis, less * 2));
    };
    const std::optional<Rational> less = least_step(allowance / quarters, quarters, works);
    if (!less) return std::nullopt;
    return fmt::format("{} with {} at each {} instead of {}", shortage.short_of.group.title,
                       format_length(allowance - *less, fine(shortage.style)), name,
                       format_length(allowance, fine(shortage.style)));
}

Remedy smaller_part(const Shortage& shortage, std::size_t demand, Axis axis, std::string_view word) {
    constexpr int most = 8;
    const auto works = [&](const Rational& less) {
        return enough(shortage, smaller(shortage.short_of.level, axis, less, demand));
    };
    const std::optional<Rational> less = least_step(steps_of(shortage.style).part, most, works);
    if (!less) return std::nullopt;
    return fmt::format("{} {} {}", shortage.short_of.level.demands[demand].label,
                       format_length(*less, shortage.style), word);
}

// One board more, as wide as the widest piece that is missing or twice that, and as short as will do.
Remedy one_board_more(const Shortage& shortage, const Rational& width, const Rational& shortest) {
    constexpr int most = 12;
    const Steps steps = steps_of(shortage.style);
    const Rational wide = ceil(width / steps.board_width) * steps.board_width;
    const auto with_board = [&](const Rational& length) {
        Level level = shortage.short_of.level;
        Stock more;
        more.usable = {0, 0, length, wide};
        more.count = 1;
        level.stock.push_back(std::move(more));
        return enough(shortage, level);
    };
    const Rational start = floor(shortest / steps.board_length) * steps.board_length;
    const auto length =
        least_step(steps.board_length, most, [&](const Rational& more) { return with_board(start + more); });
    if (!length) return std::nullopt;
    return fmt::format("one more board of {}, {} wide and {} long", shortage.short_of.group.title,
                       format_length(wide, shortage.style), format_length(start + *length, shortage.style));
}

std::vector<std::function<Remedy()>> searches(const Shortage& shortage) {
    std::vector<std::function<Remedy()>> all = {
        [&shortage] { return less_allowance(shortage, Axis::wide, shortage.milling.allowances.end, "end"); },
        [&shortage] {
            return less_allowance(shortage, Axis::deep, shortage.milling.allowances.edge, "edge");
        }};
    Rational width = 0;
    Rational length = 0;
    for (std::size_t i = 0; i < shortage.short_of.level.demands.size(); ++i) {
        if (shortage.short_of.missing[i] == 0) continue;
        const Vector& size = shortage.short_of.level.demands[i].size;
        width = std::max(width, size[Axis::deep]);
        length = std::max(length, size[Axis::wide]);
        all.emplace_back([&shortage, i] { return smaller_part(shortage, i, Axis::deep, "narrower"); });
        all.emplace_back([&shortage, i] { return smaller_part(shortage, i, Axis::wide, "shorter"); });
    }
    if (width > 0)
        all.emplace_back([&shortage, width, length] { return one_board_more(shortage, width, length); });
    return all;
}

}  // namespace

std::vector<std::string> remedies(const Shortage& shortage) {
    const std::vector<std::function<Remedy()>> all = searches(shortage);
    std::vector<Remedy> results(all.size());
    at_once(all.size(), [&](std::size_t i) { results[i] = all[i](); });
    std::vector<std::string> found;
    for (Remedy& result : results) {
        if (result) found.push_back(std::move(*result));
    }
    return found;
}

}  // namespace rodwright
