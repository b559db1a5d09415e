#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/check/strength/assess.hpp"
#include "compiler/check/strength/joint_springs.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const std::string own_joints =
    "joint screwed(rail: end, post: face) {\n\"Two long screws.\"\n"
    "hold screw cylinder(6mm, 40mm) repeat 2 every 40mm along widthwise\n}\n"
    "joint one_sided(rail: end, post: face) {\n\"A peg that stays in the post.\"\nglue hole\n"
    "hold dowel cylinder(8mm, 30mm)\n}\n";

// A rail that stands out 250 mm from a post that cannot rock, with a weight at its end.
CompiledDesign tee(const std::string& joint) {
    return compile_text(
        own_joints +
        fmt::format(
            "piece \"Tee\" {{ unit mm to 1\nwide = 400mm; deep = 60mm; tall = 300mm\nwood oak = red_oak\n"
            "part post of oak {{ grain tall; left = piece.left; wide = 150mm; front = piece.front; deep = "
            "60mm; bottom = piece.bottom; tall = 300mm }}\n"
            "part rail of oak {{ grain wide; left = post.right; wide = 250mm; deep = 22mm; front = "
            "piece.front; bottom = piece.bottom + 100mm; tall = 64mm }}\n"
            "join rail.left to post with {}\nload 100 N on rail.right at middle }}\n",
            joint));
}

strength::Bonds bonds_of(const CompiledDesign& design) {
    const auto bonds =
        strength::bonds_of(design.piece(), design.piece().joints.front(), strength::strength_data().rules);
    REQUIRE(bonds.has_value());
    return *bonds;
}

double moment_use(const std::string& joint) {
    Diagnostics diagnostics;
    const auto made = strength::assess(tee(joint).piece(), {}, diagnostics);
    REQUIRE(made.has_value());
    return made->verdict.joints.front().use;
}

}  // namespace

TEST_SUITE("unit/strength") {
    TEST_CASE("every joint of an end holds all six ways, and its forces are what statics says") {
        for (const char* joint : {"mortise_and_tenon", "mortise_and_tenon(through = yes)", "dowels",
                                  "half_lap", "housing(depth = 10mm)", "rabbet",
                                  "sliding_dovetail(depth = 12mm)", "screws(long = 300mm)", "screwed"}) {
            CAPTURE(joint);
            const CompiledDesign design = tee(joint);
            const strength::Bonds bonds = bonds_of(design);
            for (const strength::JointSpring& spring : strength::joint_springs(design.piece(), 0, bonds)) {
                const frame::Mat6 stiffness = strength::stiffness_of(spring);
                CHECK(stiffness.isApprox(stiffness.transpose()));
                for (int i = 0; i < 6; ++i) {
                    for (int j = 0; j < 6; ++j) {
                        frame::Vec6 motion = frame::Vec6::Unit(i);
                        motion(j) -= i == j ? 0 : 0.5;
                        double energy = 0;
                        for (int k = 0; k < 6; ++k) energy += motion(k) * stiffness.row(k).dot(motion);
                        CHECK(energy > 0);
                    }
                }
            }
            Diagnostics diagnostics;
            const auto made = strength::assess(design.piece(), {}, diagnostics);
            REQUIRE(made.has_value());
            // 100 N at 250 mm, and the rail's own weight of 706 kg/m3 at half of that.
            const double weight = 706 * 9.80665e-9 * 250 * 22 * 64;
            CHECK(made->verdict.joints.front().force == doctest::Approx(100 + weight).epsilon(0.01));
            CHECK(made->verdict.joints.front().moment ==
                  doctest::Approx(250 * (100 + weight / 2)).epsilon(0.01));
        }
    }

    TEST_CASE("a joint of the design's own is known by what it holds, not by its name") {
        const strength::Bonds bonds = bonds_of(tee("screwed"));
        REQUIRE(bonds.bonds.size() == 3);
        CHECK(bonds.bonds[0].kind == strength::BondKind::screw);
        CHECK(bonds.bonds[0].strength.z() ==
              doctest::Approx(strength::screw_withdrawal(706.0 / 1120, 6, 40)).epsilon(1e-6));
        CHECK(bonds.bonds[2].one_way);
    }

    TEST_CASE("a dowel that is in one part only holds nothing") {
        for (const strength::Bond& bond : bonds_of(tee("one_sided")).bonds)
            CHECK(bond.kind == strength::BondKind::bearing);
    }

    TEST_CASE("more of what holds it uses less of its strength") {
        CHECK(moment_use("dowels(diameter = 10mm, count = 2, inset = 14mm)") <
              moment_use("dowels(diameter = 6mm, count = 2, inset = 14mm)"));
        CHECK(moment_use("mortise_and_tenon(long = 40mm, thick = 8mm)") <
              moment_use("mortise_and_tenon(long = 20mm, thick = 4mm)"));
    }
}
