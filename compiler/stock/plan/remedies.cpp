#include "compiler/stock/plan/remedies.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <optional>

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

// Less of an allowance on both sides, in quarters of it.
void try_allowance(const Shortage& shortage, Axis axis, const Rational& allowance, std::string_view name,
                   std::vector<std::string>& found) {
    constexpr int quarters = 4;
    const auto works = [&](const Rational& less) {
        return enough(shortage, smaller(shortage.short_of.level, axis, less * 2));
    };
    const std::optional<Rational> less = least_step(allowance / quarters, quarters, works);
    if (!less) return;
    found.push_back(fmt::format("{} with {} at each {} instead of {}", shortage.short_of.group.title,
                                format_length(allowance - *less, fine(shortage.style)), name,
                                format_length(allowance, fine(shortage.style))));
}

void try_smaller_part(const Shortage& shortage, std::size_t demand, Axis axis, std::string_view word,
                      std::vector<std::string>& found) {
    constexpr int most = 8;
    const auto works = [&](const Rational& less) {
        return enough(shortage, smaller(shortage.short_of.level, axis, less, demand));
    };
    const std::optional<Rational> less = least_step(steps_of(shortage.style).part, most, works);
    if (!less) return;
    found.push_back(fmt::format("{} {} {}", shortage.short_of.level.demands[demand].label,
                                format_length(*less, shortage.style), word));
}

// One board more, as wide as the widest piece that is missing or twice that, and as short as will do.
void try_board(const Shortage& shortage, const Rational& width, const Rational& shortest,
               std::vector<std::string>& found) {
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
    if (!length) return;
    found.push_back(fmt::format("one more board of {}, {} wide and {} long", shortage.short_of.group.title,
                                format_length(wide, shortage.style),
                                format_length(start + *length, shortage.style)));
}

}  // namespace

std::vector<std::string> remedies(const Shortage& shortage) {
    std::vector<std::string> found;
    try_allowance(shortage, Axis::wide, shortage.milling.allowances.end, "end", found);
    try_allowance(shortage, Axis::deep, shortage.milling.allowances.edge, "edge", found);
    Rational width = 0;
    Rational length = 0;
    for (std::size_t i = 0; i < shortage.short_of.level.demands.size(); ++i) {
        if (shortage.short_of.missing[i] == 0) continue;
        const Vector& size = shortage.short_of.level.demands[i].size;
        width = std::max(width, size[Axis::deep]);
        length = std::max(length, size[Axis::wide]);
        try_smaller_part(shortage, i, Axis::deep, "narrower", found);
        try_smaller_part(shortage, i, Axis::wide, "shorter", found);
    }
    if (width > 0) try_board(shortage, width, length, found);
    return found;
}

}  // namespace rodwright
