// A piece with its drawers out.
#pragma once

#include <string>
#include <vector>

#include "compiler/assembly/blocking.hpp"
#include "compiler/check/stability/tipping.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

// The middle of the upper edge of a drawer's front, where a child hangs.
struct DrawerFront {
    std::string name;
    FloorPoint at{};
    double height = 0;  // above the floor
    Span where;
};

struct Opened {
    Standing empty;
    Standing full;                    // of what fills the drawers' boxes beside their wood
    std::vector<DrawerFront> fronts;  // none: nothing of it opens
};

// `closed` as the piece stands, `floor` its lowest point; `contents` in kg/m^3.
Opened opened(const Piece& piece, const std::vector<Mesh>& meshes, const Standing& closed, double floor,
              double contents);

}  // namespace rodwright
