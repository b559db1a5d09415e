// Beams against the closed forms of handbooks.
#include "tests/reference/frame/chain.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// Red oak, 250 x 19 mm: its E, and G = 0.081 E (handbook, tables 5-3b and 5-1).
Chain shelf(double length, std::size_t pieces) {
    return chain(length, pieces, rectangle(250, 19), 12548, 0.081 * 12548);
}

// kb W L^3 / (E I) + ks W L / (G A')
double handbook(const Chain& beam, double load, double kb, double ks) {
    return kb * load * beam.length * beam.length * beam.length / beam.bending() +
           ks * load * beam.length / beam.shearing();
}

struct Held {
    std::array<bool, 6> start;
    std::array<bool, 6> end;
};
const Held simple = {pinned, on_rollers};
const Held both_fast = {held_fast, held_fast};
const Held cantilever = {held_fast, {}};

frame::Solution under(Chain beam, const Held& held, const frame::LoadCase& loads) {
    beam.model.nodes.front().fixed = held.start;
    beam.model.nodes.back().fixed = held.end;
    return solved(beam.model, loads);
}

constexpr double load = 300;

}  // namespace

// Source, where nothing else is said: Wood Handbook, FPL-GTR-282 (2021), equation 9-2 and table 9-1, shear
// deflection included.
TEST_SUITE("reference/frame") {
    TEST_CASE("deflection of single beams, with shear: kb and ks of the handbook") {
        struct Row {
            const char* name;
            Held held;
            bool spread;
            std::size_t at;  // node of the load, of 8 pieces
            std::size_t seen;
            double kb;
            double ks;
        };
        for (const Row& row : std::initializer_list<Row>{
                 {"simple, uniform", simple, true, 0, 4, 5.0 / 384, 1.0 / 8},
                 {"simple, centre", simple, false, 4, 4, 1.0 / 48, 1.0 / 4},
                 {"fixed, uniform", both_fast, true, 0, 4, 1.0 / 384, 1.0 / 8},
                 {"fixed, centre", both_fast, false, 4, 4, 1.0 / 192, 1.0 / 4},
                 {"cantilever, uniform", cantilever, true, 0, 8, 1.0 / 8, 1.0 / 2},
                 {"cantilever, end", cantilever, false, 8, 8, 1.0 / 3, 1.0},
             }) {
            CAPTURE(row.name);
            for (const double length : {900.0, 120.0}) {  // slender, and short enough for shear to count
                const Chain beam = shelf(length, 8);
                const auto loads = row.spread ? uniform(beam, load) : at_node(row.at, load);
                const double sag = -under(beam, row.held, loads).motions[row.seen](1);
                CHECK(sag == doctest::Approx(handbook(beam, load, row.kb, row.ks)).epsilon(1e-9));
            }
        }
    }

    TEST_CASE("two loads of a half at the quarter points: midspan and at a load") {
        const Chain beam = shelf(900, 8);
        frame::LoadCase loads = at_node(2, load / 2);
        loads.on_nodes.push_back(at_node(6, load / 2).on_nodes.front());
        const frame::Solution solution = under(beam, simple, loads);
        CHECK(-solution.motions[4](1) == doctest::Approx(handbook(beam, load, 11.0 / 768, 1.0 / 8)));
        CHECK(-solution.motions[2](1) == doctest::Approx(handbook(beam, load, 1.0 / 96, 1.0 / 8)));
    }

    TEST_CASE("end moments and shear of a beam held fast: W L / 12 and W / 2, W L / 8 at the centre load") {
        const Chain beam = shelf(900, 2);
        const frame::EndForces spread = under(beam, both_fast, uniform(beam, load)).beams.front();
        CHECK(spread.start(5) == doctest::Approx(load * 900 / 12));
        CHECK(spread.start(1) == doctest::Approx(load / 2));
        CHECK(under(beam, both_fast, at_node(1, load)).beams.front().start(5) ==
              doctest::Approx(load * 900 / 8));
    }

    // Source: standard beam tables (from memory): w L^2 / 8 at the fixed end, 3 w L / 8 on the prop; the
    // shear term, which they leave out, is made small.
    TEST_CASE("a propped cantilever under a uniform load") {
        Chain beam = chain(900, 8, rectangle(250, 19), 12548, 1e9);
        const frame::Solution solution = under(beam, {held_fast, on_rollers}, uniform(beam, load));
        CHECK(solution.beams.front().start(5) == doctest::Approx(load * 900 / 8).epsilon(1e-5));
        CHECK(solution.reactions.back()(1) == doctest::Approx(3 * load / 8).epsilon(1e-5));
    }

    // Source: standard beam tables (from memory): 1.25 w L in the middle, w L^2 / 8 over it.
    TEST_CASE("two equal spans under a uniform load") {
        Chain beam = chain(1800, 8, rectangle(250, 19), 12548, 1e9);
        beam.model.nodes[4].fixed = on_rollers;
        const frame::Solution solution = under(beam, simple, uniform(beam, 2 * load));
        CHECK(solution.reactions[4](1) == doctest::Approx(1.25 * load).epsilon(1e-5));
        CHECK(solution.beams[4].start(5) == doctest::Approx(load * 900 / 8).epsilon(1e-5));
    }

    // Source: pickedshares.com, worked example of a line load: 5 m, 6 kN/m, 318 cm^4, 210 GPa: 73 mm (exact
    // 73.12).
    TEST_CASE("a published steel beam sags 73 mm") {
        frame::Section section = rectangle(100, 100);
        section.inertia_z = 318e4;
        const Chain beam = chain(5000, 4, section, 210e3, 1e12);
        CHECK(-under(beam, simple, uniform(beam, 30e3)).motions[2](1) ==
              doctest::Approx(73.12).epsilon(1e-4));
    }

    // Source: engineeringtoolbox.com, beam calculator example, W12x35 of 100 in, 285 in^4, 29e6 psi, 100
    // lb/in: 0.016 in (exact 0.01575), stress 2741 psi at 6.25 in.
    TEST_CASE("a published W12x35 sags 0.016 in and carries 2741 psi") {
        frame::Section section = rectangle(10, 10);
        section.inertia_z = 285;
        const Chain beam = chain(100, 4, section, 29e6, 1e15);
        const frame::Solution solution = under(beam, simple, uniform(beam, 100 * 100));
        CHECK(-solution.motions[2](1) == doctest::Approx(0.01575).epsilon(1e-3));
        CHECK(std::abs(solution.beams[2].start(5)) * 6.25 / 285 == doctest::Approx(2741).epsilon(1e-3));
    }

    // Source: Wood Handbook, chapter 9: theta = T L / (G K).
    TEST_CASE("a twisted bar turns by T L / (G K)") {
        Chain beam = shelf(900, 3);
        beam.model.nodes.front().fixed = held_fast;
        frame::NodeLoad twist;
        twist.node = 3;
        twist.force(3) = 5000;
        const frame::Beam& first = beam.model.beams.front();
        CHECK(solved(beam.model, {{twist}, {}}).motions[3](3) ==
              doctest::Approx(5000.0 * 900 / (first.shear_modulus * first.section.torsion)));
    }
}
