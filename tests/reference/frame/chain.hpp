// A straight beam along x, divided, with what the closed forms of handbooks speak of.
#pragma once

#include <doctest/doctest.h>

#include "compiler/check/frame/solve.hpp"

namespace rodwright::testing {

struct Chain {
    frame::Model model;
    double length = 0;
    std::size_t pieces = 0;

    double inertia() const { return model.beams.front().section.inertia_z; }
    double bending() const { return model.beams.front().modulus * inertia(); }
    double shearing() const {
        return model.beams.front().shear_modulus * model.beams.front().section.shear_y;
    }
    std::size_t middle() const { return pieces / 2; }
};

inline constexpr std::array<bool, 6> held_fast = {true, true, true, true, true, true};
inline constexpr std::array<bool, 6> pinned = {true, true, true, true, false, false};
inline constexpr std::array<bool, 6> on_rollers = {false, true, true, true, false, false};

inline frame::Section rectangle(double wide, double tall) {
    const double area = wide * tall;
    return {area,
            area * 5 / 6,
            area * 5 / 6,
            tall * wide * wide * wide / 12,
            wide * tall * tall * tall / 12,
            wide * wide * area / 3};
}

inline Chain chain(double length, std::size_t pieces, const frame::Section& section, double modulus,
                   double shear_modulus) {
    Chain result{{}, length, pieces};
    for (std::size_t i = 0; i <= pieces; ++i) {
        frame::Node node;
        node.name = "node";
        node.at = {length * static_cast<double>(i) / static_cast<double>(pieces), 0, 0};
        result.model.nodes.push_back(node);
    }
    for (std::size_t i = 0; i < pieces; ++i) {
        frame::Beam beam;
        beam.name = "beam";
        beam.start = i;
        beam.end = i + 1;
        beam.section = section;
        beam.modulus = modulus;
        beam.shear_modulus = shear_modulus;
        result.model.beams.push_back(beam);
    }
    return result;
}

inline frame::LoadCase uniform(const Chain& chain, double total) {
    frame::LoadCase loads;
    for (std::size_t i = 0; i < chain.pieces; ++i)
        loads.on_beams.push_back({i, {0, -total / chain.length, 0}});
    return loads;
}

inline frame::LoadCase at_node(std::size_t node, double down) {
    frame::NodeLoad load;
    load.node = node;
    load.force(1) = -down;
    return {{load}, {}};
}

inline frame::Solution solved(const frame::Model& model, const frame::LoadCase& loads) {
    frame::Fault fault;
    const std::optional<frame::Factored> factored = frame::Factored::make(model, fault);
    REQUIRE_MESSAGE(factored.has_value(), fault.name);
    std::optional<frame::Solution> solution = factored->solve(loads);
    REQUIRE(solution.has_value());
    return *solution;
}

}  // namespace rodwright::testing
