// A small design compiled from text, for tests of what joints and shapes do to wood.
#pragma once

#include <doctest/doctest.h>

#include <memory>
#include <string>

#include "compiler/graph/piece.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::testing {

// Solids are exact; what is allowed for is the kernel's arithmetic in doubles.
inline doctest::Approx close_to(double value) {
    return doctest::Approx(value).epsilon(1e-6);
}

class Sample {
  public:
    // `body` is what stands in the piece, with a wood called `oak`; `unit` is in or mm. Errors of the
    // compiler and of the solids fail the test; warnings do not.
    explicit Sample(const std::string& body, const std::string& unit = "mm");
    ~Sample();

    std::size_t count(const std::string& declared) const;                 // parts of that name
    double volume(const std::string& part) const;                         // mm^3
    Point3 centre(const std::string& part) const;                         // of mass, in the piece's axes
    Rational near(const std::string& declared, int row, int axis) const;  // left, front or bottom, mm
    double size(const std::string& part, int axis) const;                 // length, width, thickness, mm
    double overall(const std::string& part, int axis) const;              // the same with tenons
    double number(const std::string& name) const;                         // of the only joint
    double shape_number(const std::string& part, const std::string& name) const;  // of the part's first shape

  private:
    struct State;
    std::unique_ptr<State> state_;

    SolidRef solid_of(const std::string& part_name) const;
    const Part& part(const std::string& name) const;
    const Kind& kind(const std::string& part_name) const;
};

}  // namespace rodwright::testing
