// Linear statics of a frame by the stiffness method: small displacements, elastic.
//
// Element matrices: J. S. Przemieniecki, Theory of Matrix Structural Analysis (1968), chapter 5 (from
// memory); the equations are factored once by Eigen's sparse LDLT and solved for every load case.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "compiler/check/frame/model.hpp"

namespace rodwright::frame {

// What the nodes put on a beam's ends, in the beam's axes: force along x, y, z, moment about x, y, z.
struct EndForces {
    Vec6 start = Vec6::Zero();
    Vec6 end = Vec6::Zero();
};

struct Solution {
    std::vector<Vec6> motions;         // by node
    std::vector<EndForces> beams;      // by beam
    std::vector<Vec6> spring_motions;  // by spring: of the second against the first, in its axes
    std::vector<Vec6> reactions;       // by node: what a support puts on it; zero where nothing is fixed
};

// Why a frame has no solution: something can move freely, or a number in it is of no use.
struct Fault {
    enum class Kind { mechanism, bad_number } kind{};
    std::string name;  // of the node or beam
};

// The largest share of a load that may stay out of balance after solving.
inline constexpr double most_residual = 1e-6;

class Factored {
  public:
    // Empty, with why in `fault`, if the frame cannot be solved.
    static std::optional<Factored> make(const Model& model, Fault& fault);
    Factored(Factored&&) noexcept;
    Factored& operator=(Factored&&) noexcept;
    ~Factored();

    // Empty if rounding left more than most_residual out of balance.
    std::optional<Solution> solve(const LoadCase& loads) const;

  private:
    struct Inside;
    explicit Factored(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> inside_;
};

}  // namespace rodwright::frame
