// Frames with joints that give, offsets and several members against closed forms.
#include <cmath>

#include "tests/reference/frame/chain.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

constexpr double modulus = 10000;
constexpr double stiff = 1e12;  // G and areas so large that only bending is left, as the formulas have it

frame::Section bending_only(double inertia) {
    return {1e8, 1e8, 1e8, inertia, inertia, inertia};
}

frame::Beam bar(std::size_t start, std::size_t end, double inertia, const frame::Vec3& across) {
    frame::Beam beam;
    beam.name = "bar";
    beam.start = start;
    beam.end = end;
    beam.across = across;
    beam.section = bending_only(inertia);
    beam.modulus = modulus;
    beam.shear_modulus = stiff;
    return beam;
}

frame::Node node(double x, double y, bool fast) {
    frame::Node result;
    result.name = "node";
    result.at = {x, y, 0};
    if (fast) result.fixed = held_fast;
    return result;
}

// A beam between springs that only turn: two nodes more, at the ends.
frame::Model turning_ends(Chain beam, double turn) {
    const std::size_t last = beam.pieces;
    for (const std::size_t end : {std::size_t{0}, last}) {
        frame::Node support = beam.model.nodes[end];
        support.fixed = held_fast;
        frame::Spring spring;
        spring.name = "joint";
        spring.first = beam.model.nodes.size();
        spring.second = end;
        spring.point = support.at;
        spring.stiffness.diagonal() << 1e9, 1e9, 1e9, 1e12, 1e12, turn;
        beam.model.nodes.push_back(support);
        beam.model.springs.push_back(spring);
    }
    return beam.model;
}

}  // namespace

TEST_SUITE("reference/frame") {
    // Source: A. Kleinlogel, Rigid Frame Formulas (from memory): k = (I beam / I post) (h / l); a push H at
    // the beam of a frame with feet held fast gives H h / 2 (3 k + 1) / (6 k + 1) at the feet and H h / 2 (3
    // k) / (6 k + 1) at the corners.
    TEST_CASE("a portal frame with feet held fast under a push") {
        const double h = 700;
        const double l = 1000;
        const double post = 5e5;
        const double across = 8e5;
        frame::Model model;
        model.nodes = {node(0, 0, true), node(0, h, false), node(l, h, false), node(l, 0, true)};
        model.beams = {bar(0, 1, post, {1, 0, 0}), bar(1, 2, across, {0, 1, 0}), bar(3, 2, post, {1, 0, 0})};
        frame::NodeLoad push;
        push.node = 1;
        push.force(0) = 400;
        const frame::Solution solution = solved(model, {{push}, {}});
        const double k = across / post * h / l;
        const double half = 400 * h / 2;
        CHECK(std::abs(solution.beams[0].start(5)) ==
              doctest::Approx(half * (3 * k + 1) / (6 * k + 1)).epsilon(1e-4));
        CHECK(std::abs(solution.beams[0].end(5)) ==
              doctest::Approx(half * 3 * k / (6 * k + 1)).epsilon(1e-4));
        CHECK(solution.reactions[0](0) + solution.reactions[3](0) == doctest::Approx(-400));
    }

    // Source: slope deflection with springs at the ends (Monforton and Wu 1963, from memory): a uniform load
    // gives end moments of W L / 12 / (1 + 2 E I / (k L)).
    TEST_CASE("a beam between joints that turn") {
        const double length = 800;
        const double inertia = 3e5;
        for (const double turn : {1e5, 1e7, 1e9}) {
            CAPTURE(turn);
            const Chain beam = chain(length, 4, bending_only(inertia), modulus, stiff);
            const frame::Solution solution = solved(turning_ends(beam, turn), uniform(beam, 500));
            const double expected = 500 * length / 12 / (1 + 2 * modulus * inertia / (turn * length));
            CHECK(solution.beams.front().start(5) == doctest::Approx(expected).epsilon(1e-4));
            CHECK(std::abs(solution.spring_motions.front()(5)) * turn ==
                  doctest::Approx(expected).epsilon(1e-4));
        }
    }

    // Source: statics. A bar that stands 50 mm beside its support on a rigid arm is twisted by its end load.
    TEST_CASE("rigid offsets carry moments") {
        frame::Model model;
        model.nodes = {node(0, 0, true), node(600, 0, false)};
        frame::Beam beam = bar(0, 1, 3e5, {0, 1, 0});
        beam.start_offset = {0, 0, 50};
        beam.end_offset = {0, 0, 50};
        model.beams = {beam};
        const frame::Solution solution = solved(model, at_node(1, 100));
        CHECK(std::abs(solution.beams[0].start(3)) == doctest::Approx(100.0 * 50));
        CHECK(std::abs(solution.reactions[0](5)) == doctest::Approx(100.0 * 600));
        CHECK(solution.reactions[0](3) == doctest::Approx(0).epsilon(1e-3));
    }

    // Source: statics and theory of trusses: a tie of two bars at 45 degrees under a weight P: each P /
    // sqrt 2.
    TEST_CASE("two bars at 45 degrees carry P over the root of 2 each") {
        frame::Model model;
        model.nodes = {node(-500, 500, true), node(500, 500, true), node(0, 0, false)};
        for (const std::size_t from : {std::size_t{0}, std::size_t{1}}) {
            frame::Beam tie = bar(from, 2, 1, {0, 0, 1});
            tie.section.area = 100;
            model.beams.push_back(tie);
        }
        const frame::Solution solution = solved(model, at_node(2, 1000));
        CHECK(-solution.beams[0].start(0) == doctest::Approx(1000 / std::sqrt(2.0)).epsilon(1e-3));
    }
}
