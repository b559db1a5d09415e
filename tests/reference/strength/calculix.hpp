// The same frame for another program: CalculiX (Debian package calculix-ccx), a general finite-element
// solver. Its quadratic beams become solid bricks inside, so that nothing of our beam elements is in it.
//
// A brick has Poisson's number 0 here, G = E / 2, carries shear over its whole section and twists by w^3 h^3
// / (3 (w^2 + h^2)): what bricks that are quadratic across can represent. comparable() gives our frame the
// same.
#pragma once

#include <string>
#include <vector>

#include "compiler/check/frame/model.hpp"

namespace rodwright::testing {

// Every section as a rectangle of the same area and height.
frame::Model comparable(frame::Model model);

struct CalculixResult {
    std::vector<frame::Vec3> moved;  // by node, mm
    // By node: bending about two axes of the part's section, N mm. Where parts meet it is a mean of theirs
    // and of no use.
    std::vector<Eigen::Vector2d> moments;
};

// Runs `ccx` in a scratch folder; fails the test if it is not there or gives no answer.
CalculixResult run_calculix(const frame::Model& model, const frame::LoadCase& loads);

// Width along the beam's y, height along its z.
struct RectangleOf {
    double width;
    double height;
};
RectangleOf rectangle_of(const frame::Section& section);

}  // namespace rodwright::testing
