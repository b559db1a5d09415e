// The same pieces in fewer cuts: waste beside waste is one piece of waste, and what is cut to one width piece
// by piece is cut to it once.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"

namespace rodwright {

// A strip (or the stock piece) that is cut apart and whose pieces are then all trimmed to one extent is
// trimmed first. Its waste goes, with all other waste of the rectangle that the strip was cut from, to the
// end that is farthest from the corner. Rectangles with defects in them stay as they are. So does a tree of
// which less would be left in large pieces then.
cutting::CutTree with_fewer_cuts(const cutting::Problem& problem, const cutting::CutTree& tree);

}  // namespace rodwright
