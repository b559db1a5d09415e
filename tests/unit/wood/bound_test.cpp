// The bound of a plan against brute force: on tiny racks no way of cutting comes below it, whatever the
// staves.
#include <doctest/doctest.h>

#include <fmt/format.h>

#include <cmath>
#include <map>
#include <random>

#include "tests/support/wood.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// In half millimetres, as plans are made where lengths are metric: pieces rounded up, boards down, kerfs of
// 1/8 in.
constexpr int kerf = 7;
constexpr int never = 1'000'000;

int up(double millimetres) {
    return static_cast<int>(std::ceil(2 * millimetres - 1e-9));
}

struct Rough {
    int length;
    int width;
    int thickness;  // of the part, in millimetres
};

struct Board {
    int length;
    int width;
    int thickness;  // in millimetres
    int price;
};

using Set = unsigned;

// The shortest length of a board of some width that gives a set of pieces by cuts from edge to edge, any
// number of stages. Every way to part the set, and every width that pieces side by side can come to.
class ShortestBoard {
  public:
    explicit ShortestBoard(const std::vector<Rough>& pieces) : pieces_(pieces) {
        for (Set set = 1; set < Set{1} << pieces.size(); ++set) {
            int width = -kerf;
            for (std::size_t i = 0; i < pieces.size(); ++i) {
                if ((set >> i & 1U) != 0) width += pieces[i].width + kerf;
            }
            widths_.push_back(width);
        }
    }

    int of(Set set, int width) {
        if (width <= 0) return never;
        const auto known = known_.find({set, width});
        if (known != known_.end()) return known->second;
        int best = (set & (set - 1)) == 0 ? alone(set, width) : never;
        for (Set first = (set - 1) & set; first > 0; first = (first - 1) & set) {
            const Set second = set ^ first;
            best = std::min(best, of(first, width) + kerf + of(second, width));
            for (const int part : widths_) {
                if (part < width)
                    best = std::min(best, std::max(of(first, part), of(second, width - part - kerf)));
            }
        }
        return known_[{set, width}] = best;
    }

  private:
    const std::vector<Rough>& pieces_;
    std::vector<int> widths_;
    std::map<std::pair<Set, int>, int> known_;

    int alone(Set set, int width) const {
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            if (set == Set{1} << i) return pieces_[i].width <= width ? pieces_[i].length : never;
        }
        return never;
    }
};

struct Least {
    int boards = never;
    int price = never;
};

// Every way to share the pieces out over the boards.
void share_out(const std::vector<Rough>& pieces, const std::vector<Board>& boards, Least& least) {
    ShortestBoard shortest(pieces);
    const Set all = (Set{1} << pieces.size()) - 1;
    std::vector<Least> best(all + 1);
    best[0] = {0, 0};
    for (const Board& board : boards) {
        std::vector<Least> next = best;
        for (Set given = 1; given <= all; ++given) {
            bool thick = true;
            for (std::size_t i = 0; i < pieces.size(); ++i)
                thick = thick && ((given >> i & 1U) == 0 || pieces[i].thickness + 2 <= board.thickness);
            if (!thick || shortest.of(given, board.width) > board.length) continue;
            for (Set before = 0; before <= all; ++before) {
                if ((before & given) != 0) continue;
                Least& with = next[before | given];
                with.boards = std::min(with.boards, best[before].boards + 1);
                with.price = std::min(with.price, best[before].price + board.price);
            }
        }
        best = std::move(next);
    }
    least.boards = std::min(least.boards, best[all].boards);
    least.price = std::min(least.price, best[all].price);
}

struct Tiny {
    std::string design = "wood oak = white_oak\n";
    std::string rack = "money: crowns\nboards:\n";
    std::vector<Rough> rails;
    std::vector<Board> boards;
    int panel_length = 0;  // none
    int panel_width = 0;
};

Tiny tiny(std::mt19937& random) {
    const auto pick = [&](int low, int high) {
        return std::uniform_int_distribution<int>(low, high)(random);
    };
    Tiny made;
    const int rails = pick(1, 3);
    for (int i = 0; i < rails; ++i) {
        const int length = pick(340, 700);
        const int width = pick(50, 120);
        const int thickness = pick(0, 2) == 0 ? 40 : 19;
        made.design +=
            stick(fmt::format("rail{} of oak", i), "wide", {0, 0, i * 60}, {length, width, thickness});
        // 12.7 mm at each end, 3.175 mm at each edge (stdlib/data/milling.yaml).
        made.rails.push_back({up(length + 25.4), up(width + 6.35), thickness});
    }
    if (pick(0, 1) == 0) {
        made.panel_length = pick(340, 600);
        made.panel_width = pick(130, 240);
        made.design += stick("top of oak", "wide", {0, 0, 300}, {made.panel_length, made.panel_width, 19},
                             "glued from boards each 60mm to 130mm");
    }
    const int boards = pick(2, 4);
    for (int i = 0; i < boards; ++i) {
        const Board board{pick(400, 1500), pick(90, 220), pick(0, 1) == 0 ? 25 : 50, pick(5, 40)};
        made.rack += fmt::format(
            "  - {{name: b{}, wood: white_oak, thickness: {}mm, length: {}mm, width: {}mm, price: {}}}\n", i,
            board.thickness, board.length, board.width, board.price);
        made.boards.push_back({2 * board.length, 2 * board.width, board.thickness, board.price});
    }
    return made;
}

// Staves alike in every number that is allowed, and two unlike ones by 10 mm.
std::vector<std::vector<double>> stave_widths(double width) {
    std::vector<std::vector<double>> all;
    for (int staves = 1; staves <= 4; ++staves) {
        if (width / staves <= 130 && width / staves >= 60)
            all.emplace_back(static_cast<std::size_t>(staves), width / staves);
    }
    for (double one = 60; one <= 130; one += 10) {
        if (width - one >= 60 && width - one <= 130) all.push_back({one, width - one});
    }
    return all;
}

Least brute_force(const Tiny& made) {
    Least least;
    if (made.panel_length == 0) {
        share_out(made.rails, made.boards, least);
        return least;
    }
    // Glued 1 in longer and 1/2 in wider; 3/32 in at each edge of a stave (the same file).
    for (const std::vector<double>& widths : stave_widths(made.panel_width + 12.7)) {
        std::vector<Rough> pieces = made.rails;
        for (const double width : widths)
            pieces.push_back({up(made.panel_length + 25.4), up(width + 4.7625), 19});
        share_out(pieces, made.boards, least);
    }
    return least;
}

}  // namespace

TEST_SUITE("unit/wood") {
    TEST_CASE("no way of cutting, and no staves, come below the bound") {
        std::mt19937 random(20261126);
        int proven = 0;
        int complete = 0;
        for (int run = 0; run < 60; ++run) {
            const Tiny made = tiny(random);
            CAPTURE(made.design);
            CAPTURE(made.rack);
            const CompiledDesign design = compile_body(made.design);
            const PlannedWood planned = plan_from(design.piece(), made.rack);
            // Sawn open, thin pieces may come out of less wood: brute force knows no leaves.
            bool resawn = false;
            for (const PlannedBoard& board : planned.plan.boards) {
                for (const PlannedPiece& piece : board.pieces) resawn = resawn || piece.leaves > 1;
            }
            if (!planned.plan.complete() || resawn) continue;
            REQUIRE(planned.plan.bounds.size() == 1);
            const PlanBound& bound = planned.plan.bounds[0];
            const Least least = brute_force(made);
            ++complete;
            CHECK(bound.at_least <= least.boards);
            double price = 0;
            for (const PlannedBoard& board : planned.plan.boards) price += board.price->get_d();
            // Worths are whole ten-thousandths of the rack's.
            const double slack = 1.002;
            CHECK(price <= (1 + bound.over.get_d()) * least.price * slack);
            if (!bound.proven) continue;
            ++proven;
            CHECK(price <= least.price * slack);
        }
        CHECK(complete > 20);
        CHECK(proven > 10);
    }
}
