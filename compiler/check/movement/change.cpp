#include "compiler/check/movement/change.hpp"

namespace rodwright {

std::optional<double> change_per_percent(const Piece& piece, const Kind& kind, Axis kind_axis) {
    const Wood* wood = piece.find_wood(kind.wood);
    if (kind_axis == Axis::wide || (wood != nullptr && wood->sheet)) return 0;
    if (wood == nullptr || wood->tangential == 0) return std::nullopt;
    const double radial = wood->radial.get_d();
    const double tangential = wood->tangential.get_d();
    if (wood->cut == "rift") return (radial + tangential) / 2;
    const bool along_rings = (kind_axis == Axis::deep) == (wood->cut != "quartered");
    return along_rings ? tangential : radial;
}

Axis kind_axis_of(const Part& part, Axis piece_axis) {
    return part.placement.turn.from[static_cast<std::size_t>(piece_axis)].axis;
}

std::optional<double> change_per_percent(const Piece& piece, const Part& part, Axis piece_axis) {
    return change_per_percent(piece, piece[part.kind], kind_axis_of(part, piece_axis));
}

}  // namespace rodwright
