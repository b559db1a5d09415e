// Pieces as text, exact and without places in files, so that two designs can be compared.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "compiler/graph/piece.hpp"

namespace rodwright::testing {

// Mirror images in the middle planes of a box, one for each axis that is set.
struct Reflection {
    std::array<bool, 3> along{};
    Box container;

    Vector apply(const Vector& point) const;
    Face apply(Face face) const;
    Box apply(const Box& box) const;
};

// The corners of a body in a kind's frame, of a cylinder the two centres, put where the part is. Worked out
// from the definition of Body alone.
std::vector<Vector> placed_corners(const Body& body, const Placement& placement);
// The box around them; for a cylinder the box around its axis.
Box placed_box(const Body& body, const Placement& placement);
// A line for each feature of a part, in the piece's axes, reflected, in alphabetical order.
std::vector<std::string> placed_features(const Piece& piece, const Part& part,
                                         const Reflection& reflection = {});
// The faces of the part, in the piece's axes, that the edges of a feature lie between: "right top".
std::vector<std::string> placed_edges(const Feature& feature, const Placement& placement);

// All of a piece but labels as written, places in files and the maker's parameters. `texts`: steps and
// supplies too.
std::string piece_text(const Piece& piece, bool texts = true);

}  // namespace rodwright::testing
