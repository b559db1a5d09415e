#include "compiler/stock/plan/buying.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/rack/board_foot.hpp"

namespace rodwright {
namespace {

// A piece is as thick as the board that it is sawn from.
Rational net_board_feet(const PlannedBoard& board) {
    Rational net = 0;
    for (const PlannedPiece& piece : board.pieces)
        net += board_feet(board.thickness, piece.size[Axis::deep], piece.size[Axis::wide]);
    return net;
}

void add_board(const PlannedBoard& board, WoodPlan& plan) {
    auto row = std::ranges::find(plan.purchases, board.offer, &Purchase::text);
    if (row == plan.purchases.end()) {
        row = plan.purchases.insert(row, Purchase{});
        row->text = board.offer;
    }
    ++row->count;
    row->board_feet += board.board_feet;
    row->price += *board.price;
}

void add_lumber(const PlannedBoard& board, const Planning& planning, WoodPlan& plan) {
    if (board.sheet) return;
    auto row = std::ranges::find(plan.by_the_foot, board.lumber, &LumberByTheFoot::text);
    if (row == plan.by_the_foot.end()) {
        row = plan.by_the_foot.insert(row, LumberByTheFoot{});
        row->text = board.lumber;
        row->added = planning.milling.buying.share(board.species);
    }
    const Rational net = net_board_feet(board);
    const Rational bought = with_allowance(net, row->added);
    row->net += net;
    row->board_feet += bought;
    row->price += bought * *board.price / board.board_feet;
}

}  // namespace

void add_purchases(const Planning& planning, WoodPlan& plan) {
    int number = 0;
    for (PlannedBoard& board : plan.boards) {
        if (board.offer.empty()) continue;
        board.name = fmt::format("new {}", ++number);
        add_board(board, plan);
        add_lumber(board, planning, plan);
    }
}

}  // namespace rodwright
