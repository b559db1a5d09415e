// What parts can be cut from: boards and sheets of the rack, what is left of boards already planned, and what
// the dealer sells, each with what it is worth.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/stock/plan/demand.hpp"
#include "compiler/stock/plan/wood_plan.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright {

struct Stock {
    PlannedBoard board;                  // as it will stand in the plan, nothing cut yet
    PlanArea usable;                     // between the end checks, or what is left of a board already planned
    std::vector<PlanDefect> barred;      // within `usable`: defects, sapwood, what a taper lacks
    std::optional<int> count;            // nothing: as many as are asked for
    Rational worth;                      // of wood at hand
    Rational price;                      // of wood to buy
    std::optional<std::size_t> left_of;  // index into WoodPlan::boards, where it is part of one
};

// What is looked for: wood of that species and cut, thick enough for parts of that least thickness (sheets:
// of that thickness), in pieces up to that long and wide.
struct StockQuery {
    std::string title;  // in messages
    const Wood& wood;
    bool sheet = false;
    bool square = false;  // as thick as wide
    Rational least_thickness;
    Rational longest;
    Rational widest;
};

// Boards of the rack that will do, in the order of the file, thinner ones being worth less. A board whose
// warp would take too much of its thickness from the longest piece is passed over and named in `notes`.
std::vector<Stock> stock_at_hand(const Rack& rack, const StockQuery& query, const MillingData& milling,
                                 std::vector<std::string>& notes);

// What a dealer sells that will do: boards of each foot of length and a few widths, sheets as they are.
std::vector<Stock> stock_for_sale(const Rack& rack, const StockQuery& query, const MillingData& milling,
                                  const LengthStyle& style);

// The useful rectangles that are left of a group's boards and will do for other parts of the same wood.
std::vector<Stock> stock_left_over(const WoodPlan& plan, const PlanGroup& group, const StockQuery& query);

}  // namespace rodwright
