#include "compiler/stock/rack/offcut.hpp"

#include <algorithm>

namespace rodwright {

namespace {

// Where [begin, end) lies within [from, from + size), measured from there.
struct Overlap {
    Overlap(const Rational& begin, const Rational& end, const Rational& from, const Rational& size)
        : first(std::max(Rational(begin - from), Rational(0))), last(std::min(Rational(end - from), size)) {}
    Rational length() const { return std::max(Rational(last - first), Rational(0)); }

    Rational first;
    Rational last;
};

std::vector<WoodDefect> defects_in(const std::vector<WoodDefect>& defects, const RackChange::Left& left) {
    std::vector<WoodDefect> found;
    for (const WoodDefect& defect : defects) {
        const Overlap along(defect.from_end, defect.from_end + defect.length, left.from_end, left.length);
        const Overlap across(defect.from_edge, defect.from_edge + defect.width, left.from_edge, left.width);
        if (along.length() == 0 || across.length() == 0) continue;
        found.push_back(
            {along.first, across.first, along.length(), across.length(), defect.note, defect.face});
    }
    return found;
}

Rational rounded_up(const Rational& value, const Rational& step) {
    return ceil(value / step) * step;
}

// The sapwood follows the far edge of a board that may taper: as wide as it gets anywhere in the offcut.
Rational sapwood_in(const RackBoard& board, const RackChange::Left& left, const Rational& step) {
    if (board.sapwood == 0) return 0;
    const Rational far_edge = left.from_edge + left.width;
    const auto sapwood_at = [&](const Rational& along) {
        const Rational width = board.width + (board.far_width - board.width) * along / board.length;
        return Rational(far_edge - (width - board.sapwood));
    };
    Rational sapwood = std::max(sapwood_at(left.from_end), sapwood_at(left.from_end + left.length));
    if (board.width != board.far_width) sapwood = rounded_up(sapwood, step);
    return std::clamp(sapwood, Rational(0), left.width);
}

// An arc's rise goes with the square of what is left of it; twist is a bilinear surface.
Warp warp_in(const RackBoard& board, const RackChange::Left& left, const Rational& step) {
    const Rational along = left.length / board.length;
    const Rational across = left.width / std::max(board.width, board.far_width);
    const auto part = [&](const Rational& whole, const Rational& share) {
        return std::min(whole, rounded_up(whole * share, step));
    };
    return {part(board.warp.bow, along * along), part(board.warp.cup, across * across),
            part(board.warp.twist, along * across)};
}

// What boards and sheets have in common.
template <typename Entry>
Entry part_of(const Entry& whole, const RackChange::Left& left) {
    Entry offcut;
    offcut.species = whole.species;
    offcut.thickness = whole.thickness;
    offcut.length = left.length;
    offcut.width = left.width;
    offcut.defects = defects_in(whole.defects, left);
    offcut.offcut = true;
    offcut.from = whole.name;
    return offcut;
}

}  // namespace

RackBoard offcut_of(const RackBoard& board, const RackChange::Left& left, const Rational& step) {
    RackBoard offcut = part_of(board, left);
    offcut.cut = board.cut;
    offcut.surfaced = board.surfaced;
    offcut.far_width = left.width;
    offcut.moisture = board.moisture;
    offcut.checks = Overlap(0, board.checks, left.from_end, left.length).length();
    offcut.far_checks =
        Overlap(board.length - board.far_checks, board.length, left.from_end, left.length).length();
    offcut.sapwood = sapwood_in(board, left, step);
    offcut.warp = warp_in(board, left, step);
    return offcut;
}

RackSheet offcut_of(const RackSheet& sheet, const RackChange::Left& left) {
    RackSheet offcut = part_of(sheet, left);
    offcut.grain = sheet.grain;
    const bool sawn_all_round = left.from_end >= sheet.trim && left.from_edge >= sheet.trim &&
                                left.from_end + left.length <= sheet.length - sheet.trim &&
                                left.from_edge + left.width <= sheet.width - sheet.trim;
    if (!sawn_all_round) offcut.trim = sheet.trim;
    return offcut;
}

}  // namespace rodwright
