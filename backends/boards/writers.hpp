// A wood plan in each format it is written in. All end their last line.
#pragma once

#include <string>

#include "compiler/stock/plan/wood_plan.hpp"

namespace rodwright {

// Board after board, with its cuts in their order.
std::string boards_text(const Piece& piece, const WoodPlan& plan);
// The whole plan; lengths as {"exact": millimetres as a fraction, "mm": a number, "shown": as the piece shows
// it}.
std::string boards_json(const Piece& piece, const WoodPlan& plan);
// What is to be bought: count, what, board feet, price. RFC 4180.
std::string buying_csv(const WoodPlan& plan);

}  // namespace rodwright
