// Placed statements to the part/joint graph.
#pragma once

#include <optional>

#include "compiler/data/shop.hpp"
#include "compiler/data/woods.hpp"
#include "compiler/evaluate/design.hpp"
#include "compiler/evaluate/statements.hpp"
#include "compiler/graph/piece.hpp"
#include "compiler/place/place.hpp"

namespace rodwright {

// Applies shapes and joints, tells kinds apart. What is wrong with them is reported; the piece is complete
// only if nothing was (empty otherwise). The evaluator must know the places.
std::optional<Piece> build_piece(const Statements& statements, const Places& places, const WoodTable& woods,
                                 const Shop& shop, Design& design, Evaluator& evaluator);

}  // namespace rodwright
