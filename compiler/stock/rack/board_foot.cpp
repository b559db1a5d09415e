#include "compiler/stock/rack/board_foot.hpp"

#include <algorithm>
#include <array>

#include "compiler/quantity/quantity.hpp"

namespace rodwright {

namespace {

struct Surfacing {
    Rational rough;
    Rational surfaced;  // both faces
};

// NHLA standard thicknesses of lumber surfaced two sides, dry; 10/4 is 1/4 in less, as its neighbours are.
const std::array<Surfacing, 13>& standard_surfacing() {
    static const std::array<Surfacing, 13> table = {{{inches(3, 8), inches(3, 16)},
                                                     {inches(1, 2), inches(5, 16)},
                                                     {inches(5, 8), inches(7, 16)},
                                                     {inches(3, 4), inches(9, 16)},
                                                     {inches(1), inches(13, 16)},
                                                     {inches(5, 4), inches(17, 16)},
                                                     {inches(3, 2), inches(21, 16)},
                                                     {inches(7, 4), inches(3, 2)},
                                                     {inches(2), inches(7, 4)},
                                                     {inches(5, 2), inches(9, 4)},
                                                     {inches(3), inches(11, 4)},
                                                     {inches(7, 2), inches(13, 4)},
                                                     {inches(4), inches(15, 4)}}};
    return table;
}

}  // namespace

Rational board_feet(const Rational& rough_thickness, const Rational& width, const Rational& length) {
    const Rational counted = std::max(rough_thickness, inches(1));
    const Rational board_foot = inches(1) * inches(12) * inches(12);
    return counted * width * length / board_foot;
}

Rational rough_thickness(const Rational& surfaced) {
    const auto& table = standard_surfacing();
    const auto found = std::ranges::find_if(
        table, [&](const Surfacing& surfacing) { return surfacing.surfaced >= surfaced; });
    return found == table.end() ? Rational(surfaced + inches(1, 4)) : found->rough;
}

Rational board_feet(const RackBoard& board) {
    const Rational rough = board.surfaced ? rough_thickness(board.thickness) : board.thickness;
    return board_feet(rough, (board.width + board.far_width) / 2, board.length);
}

Rational with_allowance(const Rational& net, const Rational& share) {
    return net * (1 + share);
}

}  // namespace rodwright
