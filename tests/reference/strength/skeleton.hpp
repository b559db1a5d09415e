// A piece as a frame of centre lines, as an engineer would draw it by hand: every part a straight bar of its
// box's section from joint to joint, bars that an end meets share a point, and nothing gives in the joints.
// Parts that no end joint touches (a top on buttons) are left out.
#pragma once

#include <string>

#include "compiler/check/frame/model.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::testing {

// A part's nodes, one after the other, and the beams between them.
struct SkeletonBar {
    std::string part;
    std::vector<std::size_t> nodes;
    std::size_t first_beam = 0;
};

struct Skeleton {
    frame::Model model;
    std::vector<SkeletonBar> bars;
    // The node of a part nearest to that share of its length.
    std::size_t node(const std::string& part, double share) const;
    // Whether more than one part has it.
    bool shared(std::size_t node) const;
};

// Feet, where parts reach the floor, are held fast.
Skeleton skeleton_of(const Piece& piece);

}  // namespace rodwright::testing
