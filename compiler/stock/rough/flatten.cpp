#include "compiler/stock/rough/flatten.hpp"

#include <algorithm>

namespace rodwright {

Warp warp_of_piece(const Warp& board, const Rational& length_share, const Rational& width_share) {
    return {board.bow * length_share * length_share, board.cup * width_share * width_share,
            board.twist * length_share * width_share};
}

Rational warp_loss(const Warp& warp) {
    return warp.bow + warp.cup + warp.twist / 2;
}

Rational thickness_needed(const Rational& finished, const Warp& warp, bool surfaced,
                          const MillingData& milling) {
    const Rational loss = warp_loss(warp);
    if (surfaced && loss == 0) return finished;
    return finished + loss + milling.allowances.faces;
}

std::optional<int> pieces_to_flatten(const Rational& rise, const Rational& room) {
    constexpr int most = 100;
    for (int pieces = 1; pieces <= most; ++pieces) {
        if (room > 0 && rise <= room * pieces * pieces) return pieces;
    }
    return std::nullopt;
}

int resawn_leaves(const Rational& rough, const Rational& leaf, const MillingData& milling) {
    constexpr long most = 1000;
    const Rational& kerf = milling.kerf(milling.saws.resaw);
    const Rational each = leaf + 2 * milling.allowances.resawn_face + kerf;
    const Rational leaves = each > 0 ? floor((rough + kerf) / each) : Rational(0);
    return static_cast<int>(std::min(leaves, Rational(most)).get_d());
}

Rational length_with_kerfs(const Rational& length, int parts, int ready_ends, const Rational& kerf) {
    return length * parts + kerf * (parts + 1 - ready_ends);
}

}  // namespace rodwright
