#include "tests/unit/cutting/small_problems.hpp"

#include <random>

namespace rodwright::cutting {
namespace {

class Maker {
  public:
    Maker(const SmallProblems& family, unsigned seed) : family_(family), random_(seed) {}

    Problem make() {
        Problem problem;
        for (int& kerf : problem.kerf.along) kerf = number(0, 2);
        problem.rule = family_.rule;
        const int kinds = number(1, 3);
        for (int i = 0; i < kinds; ++i) problem.stock.push_back(stock(i));
        int pieces = number(family_.least_pieces, family_.most_pieces);
        while (pieces > 0) {
            PartKind part;
            part.size = size(family_.longest_part / 6, family_.longest_part);
            part.quantity = std::min(pieces, number(1, family_.most_pieces / 3));
            part.may_turn = family_.dimensions == 2 && number(0, 1) == 1;
            part.one_face = family_.faces && number(0, 1) == 1;
            pieces -= part.quantity;
            problem.parts.push_back(part);
        }
        return problem;
    }

  private:
    int number(int from, int to) {
        return from + static_cast<int>(random_() % static_cast<unsigned>(to - from + 1));
    }

    Size size(int from, int to) {
        const int length = number(from, to);
        return {{length, family_.dimensions == 1 ? 1 : number(from, to)}};
    }

    // The first kind holds every part and is not limited.
    StockPiece stock(int index) {
        StockPiece piece;
        const int from = index == 0 ? family_.longest_part + 2 : family_.longest_part - 2;
        piece.size = size(from, family_.longest_stock);
        piece.cost = piece.size.area() + number(-3, 3);
        if (index > 0) piece.available = number(1, 2);
        const bool spoilt = family_.defects && (index > 0 || number(0, 1) == 1);
        for (int i = 0; spoilt && i < number(1, 2); ++i) {
            const Size corner{{number(0, piece.size.along[0] - 1), number(0, piece.size.along[1] - 1)}};
            piece.defects.push_back({{corner, {{number(1, 2), number(1, 2)}}}, faces()});
        }
        return piece;
    }

    Faces faces() { return family_.faces ? static_cast<Faces>(number(1, 3)) : Faces::both; }

    SmallProblems family_;
    std::mt19937 random_;
};

}  // namespace

Problem small_problem(const SmallProblems& family, unsigned seed) {
    return Maker(family, seed).make();
}

}  // namespace rodwright::cutting
