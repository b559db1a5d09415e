// The section of a part across its grain, from its surface: what beams are reckoned with. Millimetres, in the
// kind's own frame: y along its width, z along its thickness.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "compiler/check/frame/model.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::strength {

struct CrossSection {
    double area = 0;
    double y = 0;  // of the centroid
    double z = 0;
    // About the centroid: integrals of z^2, y^2 and y z over the area.
    double inertia_y = 0;
    double inertia_z = 0;
    double product = 0;
    std::vector<std::array<double, 2>> rim;  // points far out, from the centroid

    // Shear areas of a rectangle; torsion by Saint-Venant's rule A^4 / (40 (I_y + I_z)), from memory: 6 %
    // over the exact value for a square, 10 % under it for a thin strip.
    frame::Section as_beam() const;
    double least_inertia() const;
    // The greatest stress that a force along the grain and moments about y and z make, without sign.
    double stress(double along, double about_y, double about_z) const;
};

CrossSection rectangle(double width, double thick);

// Where the plane x cuts a closed surface; all of its pieces are taken together. Empty where it cuts nothing.
std::optional<CrossSection> cut_across(const std::vector<Triangle>& surface, double x);

}  // namespace rodwright::strength
