// A small piece made by hand: what the stages before would make of a bench with two legs, a rail and a top.
//
// Inches, shown to 1/32. Two legs of white ash, 1 1/2 in square and 28 in tall, tapered on their inside faces
// and so mirror images of each other; a rail between them, 20 in from shoulder to shoulder, 4 1/2 in wide and
// 19 mm thick, with a tenon 1 1/8 in long at each end; a top of red elm, glued up, held to the rail by three
// buttons.
#pragma once

#include "compiler/graph/piece.hpp"

namespace rodwright {

Piece sample_piece();

}  // namespace rodwright
