// Plans whose answer is known by hand. Library allowances: 12.7 mm at each end, 3.175 mm at each edge, 1.5875
// mm for both faces; kerfs 3.175 mm. On paper lengths are rounded up to 0.5 mm.
#include <doctest/doctest.h>

#include "tests/unit/wood/oak.hpp"
#include "tests/unit/wood/sound.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::string rail(const std::string& name, int length, int width, int thickness, int up = 0) {
    return stick(name + " of oak", "wide", {0, 0, up}, {length, width, thickness});
}

}  // namespace

TEST_SUITE("unit/wood") {
    TEST_CASE("a rail comes out of one board with its allowances, and the rest is kept") {
        const CompiledDesign design = compile_body(oak + rail("rail", 500, 100, 19));
        const PlannedWood planned =
            plan_from(design.piece(),
                      "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: 150mm, length: 1000mm}]");
        CHECK(planned.report.empty());
        REQUIRE(planned.plan.groups.size() == 1);
        REQUIRE(planned.plan.bounds.size() == 1);
        CHECK(planned.plan.bounds[0].at_least == 1);
        CHECK(planned.plan.bounds[0].proven);
        const std::vector<PlanArea> places = planned.places("A");
        REQUIRE(places.size() == 1);
        CHECK(places[0].length == ratio(1051, 2));  // 500 + 25.4, rounded up
        CHECK(places[0].width == ratio(213, 2));    // 100 + 6.35, rounded up
        bool kept = false;
        for (const PlanRegion& region : planned.board("A1").regions)
            kept = kept || region.kind == PlanRegion::Kind::offcut;
        CHECK(kept);  // 471 mm of the board's length at least
        check_sound(planned, design.piece());
    }

    TEST_CASE("boards at hand come before those that cost money, and what is bought is listed") {
        const CompiledDesign design =
            compile_body(oak + rail("rail", 500, 100, 19) + rail("bar", 700, 100, 19, 100));
        const std::string dealer =
            "dealer:\n  lumber: [{wood: white_oak, thickness: [1 in], width: 120mm to 200mm, length: 800mm "
            "to 2000mm, "
            "price: 10}]\nmoney: crowns\n";
        const PlannedWood enough = plan_from(design.piece(),
                                             "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: "
                                             "150mm, length: 1300mm, price: 900}]\n" +
                                                 dealer);
        CHECK(enough.plan.purchases.empty());
        CHECK(enough.plan.boards.size() == 1);
        const PlannedWood short_of = plan_from(
            design.piece(),
            "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: 150mm, length: 600mm}]\n" + dealer);
        CHECK(short_of.report.empty());
        REQUIRE(short_of.plan.purchases.size() == 1);
        CHECK(short_of.plan.purchases[0].count == 1);
        // 1 in x 120 mm x 800 mm: 25.4 x 120 x 800 / (25.4^3 x 144) board feet at 10 crowns.
        CHECK(short_of.plan.purchases[0].board_feet.get_d() == doctest::Approx(1.0333).epsilon(0.001));
        CHECK(short_of.plan.purchases[0].price.get_d() == doctest::Approx(10.333).epsilon(0.001));
        check_sound(enough, design.piece());
        check_sound(short_of, design.piece());
    }

    TEST_CASE("what is missing is named, with the smallest changes that would do") {
        // Rough 525.5; the board has 520: 5.5 mm too short, a quarter off both end allowances (6.35 mm) is
        // enough.
        const CompiledDesign design = compile_body(oak + rail("rail", 500, 100, 19));
        const PlannedWood planned =
            plan_from(design.piece(),
                      "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: 150mm, length: 520mm}]");
        REQUIRE(planned.plan.missing.size() == 1);
        CHECK(planned.plan.missing[0].label == "A");
        CHECK(planned.plan.missing[0].count == 1);
        CHECK(planned.report.find("W0901") == 0);
        REQUIRE_FALSE(planned.plan.remedies.empty());
        CHECK(planned.plan.remedies[0] ==
              "white oak, ~20.5 mm and thicker with ~9.5 mm at each end instead of 12.7 mm");
        check_sound(planned, design.piece());
    }

    TEST_CASE("parts keep clear of knots, checks, sapwood and a tapering edge") {
        const CompiledDesign design = compile_body(
            oak + rail("rail", 300, 60, 19) + rail("bar", 300, 60, 19, 100) + rail("slat", 300, 60, 19, 200));
        const PlannedWood planned = plan_from(design.piece(), R"(boards:
  - name: A1
    wood: white_oak
    thickness: 25mm
    width: 180mm to 150mm
    length: 1400mm
    checks: 40mm, 60mm
    sapwood: 20mm
    defects:
      - {from_end: 300mm, from_edge: 10mm, length: 30mm, width: 30mm, note: knot}
      - {from_end: 800mm, from_edge: 60mm, length: 40mm, width: 40mm}
)");
        CHECK(planned.report.empty());
        CHECK(planned.plan.complete());
        check_sound(planned, design.piece());
    }

    TEST_CASE("a bad far end goes with the waste before it, but not with what is kept") {
        const auto cuts = [](int length) {
            const CompiledDesign design = compile_body(oak + rail("rail", 500, 100, 19));
            const PlannedWood planned =
                plan_from(design.piece(),
                          "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: 106.5mm, "
                          "checks: \"0 mm, 50 mm\", length: " +
                              std::to_string(length) + "mm}]");
            check_sound(planned, design.piece());
            return planned.board("A1").cuts.size();
        };
        CHECK(cuts(700) == 1);   // 525.5 for the rail, the rest is waste
        CHECK(cuts(1000) == 2);  // the check, and the rail from what stays
        CHECK(cuts(576) == 1);   // the check is all that is left
    }

    TEST_CASE("a knot on one face is no trouble where the design shows the other") {
        // 325.4 (made 355.6, the shortest that the machines take) x 106.35 in 120: the knot in the middle
        // bars it.
        const auto planned = [&](const std::string& show, const std::string& face) {
            const std::string text =
                oak + stick("rail of oak", "wide", {0, 0, 0}, {300, 100, 19}, show + "thick tall");
            const CompiledDesign design = compile_body(text);
            const PlannedWood wood = plan_from(
                design.piece(),
                "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: 120mm, length: 400mm, "
                "defects: [{from_end: 180mm, from_edge: 50mm, length: 20mm, width: 20mm" +
                    face + "}]}]");
            check_sound(wood, design.piece());
            return wood.plan.complete();
        };
        const std::string one = "show top face\n";
        CHECK(planned(one, ", face: upper"));
        CHECK(planned(one, ", face: lower"));
        CHECK_FALSE(planned(one, ", face: both"));
        CHECK_FALSE(planned(one, ""));
        CHECK_FALSE(planned("", ", face: upper"));
        CHECK_FALSE(planned("show top face\nshow bottom face\n", ", face: upper"));
    }

    // Two of 355.6 x 106.35 fill a board of 120 x 720, one in each half; the grain runs from left to right.
    TEST_CASE("which face shows is each part's own choice") {
        const auto shown = [](const std::string& second, const std::string& defects) {
            const CompiledDesign design = compile_body(
                oak + stick("rail of oak", "wide", {0, 0, 0}, {300, 100, 19}, "show top face\nthick tall") +
                stick("bar of oak", "wide", {0, 200, 0}, {300, 100, 18}, second + "thick tall"));
            const PlannedWood wood = plan_from(design.piece(),
                                               "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: "
                                               "120mm, length: 720mm, defects: [" +
                                                   defects + "]}]");
            check_sound(wood, design.piece());
            std::string faces = wood.plan.complete() ? "" : "short";
            for (const PlannedPiece& piece : wood.board("A1").pieces) {
                faces += !piece.show_face                        ? "either "
                         : *piece.show_face == DefectFace::upper ? "upper "
                                                                 : "lower ";
            }
            return faces;
        };
        const std::string near = "{from_end: 180mm, from_edge: 50mm, length: 20mm, width: 20mm, face: ";
        const std::string far = "{from_end: 540mm, from_edge: 50mm, length: 20mm, width: 20mm, face: ";
        const std::string one = "show bottom face\n";
        CHECK(shown(one, near + "upper}, " + far + "lower}") == "lower upper ");
        CHECK(shown(one, near + "upper}, " + far + "upper}") == "lower lower ");
        CHECK(shown("", near + "upper}") == "lower either ");
        CHECK(shown("", near + "upper}, " + far + "lower}").find("short") == 0);
        CHECK(shown(one, near + "upper}, " + near + "lower}").find("short") == 0);
    }

    TEST_CASE("what shows has to be a broad face") {
        const auto report = [](const std::string& show) {
            return compile_body(oak + stick("rail of oak", "wide", {0, 0, 0}, {300, 100, 19}, show)).report();
        };
        CHECK(report("show bottom face").empty());
        CHECK(report("show front face").find("E0405") == 0);
        CHECK(report("show far face").find("E0405") == 0);
    }

    TEST_CASE("a board whose warp would take too much is passed over, and said so") {
        const CompiledDesign design = compile_body(oak + rail("rail", 500, 100, 19));
        // Needs 20.5875; half of the 6 mm bow's length leaves 6 x (525.4 / 1000)^2 = 1.66: 22.2 in all.
        const std::string board =
            "boards: [{name: A1, wood: white_oak, width: 150mm, length: 1000mm, bow: 6mm, thickness: ";
        CHECK(plan_from(design.piece(), board + "22mm}]").plan.missing.size() == 1);
        CHECK(plan_from(design.piece(), board + "22mm}]").plan.notes.size() == 1);
        CHECK(plan_from(design.piece(), board + "22.5mm}]").plan.complete());
    }

    TEST_CASE("a panel's staves are chosen for the boards that there are") {
        // 400 wide, 1/2 in over: 412.7. Boards of 150 mm give at most 145 mm of stave: three of them.
        const CompiledDesign design =
            compile_body(oak + stick("top of oak", "wide", {0, 0, 0}, {600, 400, 19},
                                     "glued from boards each 50mm to 150mm"));
        const PlannedWood planned = plan_from(design.piece(), R"(boards:
  - {name: A1, wood: white_oak, thickness: 25mm, width: 150mm, length: 2000mm}
)");
        CHECK(planned.report.empty());
        REQUIRE(planned.board("A1").pieces.size() == 3);
        for (const PlannedPiece& stave : planned.board("A1").pieces) CHECK(stave.parts.at(0).staves == 3);
        check_sound(planned, design.piece());
    }

    TEST_CASE("a part wider than any board is glued up, but not where no board would give a stave") {
        const CompiledDesign design = compile_body(oak + rail("top", 600, 300, 19));
        const std::string board =
            "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: 170mm, length: ";
        const PlannedWood glued = plan_from(design.piece(), board + "1400mm}]");
        CHECK(glued.plan.complete());
        // 312.7 mm in 6 in at most: three staves of 104 lie one behind another, and two lengths of board are
        // there. Four of 78.2, sawn 83, lie two abreast: 2 x 83 + 3.2 = 169.2 of 170.
        CHECK(glued.board("A1").pieces.at(0).parts.at(0).staves == 4);
        const PlannedWood none = plan_from(design.piece(), board + "500mm}]");
        REQUIRE(none.plan.missing.size() == 1);
        CHECK(none.plan.missing[0].label == "A");
        CHECK(none.plan.notes.empty());
        check_sound(glued, design.piece());
    }

    TEST_CASE("a design can ask for a number of staves") {
        const CompiledDesign design =
            compile_body(oak + stick("top of oak", "wide", {0, 0, 0}, {600, 400, 19}, "glued from 5 boards"));
        const PlannedWood planned = plan_from(design.piece(), R"(boards:
  - {name: A1, wood: white_oak, thickness: 25mm, width: 150mm, length: 2000mm, count: 2}
)");
        CHECK(planned.places("A 5 of 5").size() == 1);
        CHECK(planned.places("A 6 of 6").empty());
        check_sound(planned, design.piece());
    }

    TEST_CASE("matched parts come off one board next to one another, in their order") {
        const std::string rails = rail("front", 400, 80, 19) + rail("back", 500, 80, 19, 100);
        const CompiledDesign design = compile_body(oak + rails + "match back, front in sequence");
        const PlannedWood planned = plan_from(design.piece(), R"(boards:
  - {name: A1, wood: white_oak, thickness: 25mm, width: 100mm, length: 600mm}
  - {name: A2, wood: white_oak, thickness: 25mm, width: 100mm, length: 600mm}
  - {name: A3, wood: white_oak, thickness: 25mm, width: 100mm, length: 1000mm}
)");
        CHECK(planned.report.empty());
        const PlannedBoard& board = planned.board("A3");
        REQUIRE(board.pieces.size() == 1);
        CHECK(board.pieces[0].label == "B+A");
        CHECK(planned.places("B+A").at(0).length == 954);  // 525.4 + 3.175 + 425.4 = 953.975
        check_sound(planned, design.piece());
    }

    TEST_CASE("a match that no board holds is given up, and said so") {
        const std::string rails = rail("front", 400, 80, 19) + rail("back", 500, 80, 19, 100);
        const CompiledDesign design = compile_body(oak + rails + "match back, front from one board");
        const PlannedWood planned = plan_from(design.piece(), R"(boards:
  - {name: A1, wood: white_oak, thickness: 25mm, width: 100mm, length: 600mm, count: 2}
)");
        CHECK(planned.report.find("W0902") == 0);
        CHECK(planned.plan.complete());
        CHECK(planned.plan.boards.size() == 2);
        check_sound(planned, design.piece());
    }

    TEST_CASE("two leaves of a book are one thick piece") {
        const std::string doors = stick("door of oak, handed wide", "tall", {0, 0, 0}, {120, 10, 400});
        const CompiledDesign design = compile_body(oak + doors + "match door[left], door[right] as book");
        // Two leaves with both faces of each to clean and the saw between: 2 x (10 + 2 x 1.5875) + 1.5875
        // = 27.9375.
        const std::string board =
            "boards: [{name: A1, wood: white_oak, width: 140mm, length: 500mm, thickness: ";
        const PlannedWood planned = plan_from(design.piece(), board + "28mm}]");
        CHECK(planned.report.empty());
        CHECK(planned.board("A1").pieces.at(0).parts.size() == 2);
        CHECK(plan_from(design.piece(), board + "27.5mm}]").report.find("W0902") == 0);
        check_sound(planned, design.piece());
    }

    TEST_CASE("thin parts come out of what thick ones leave of their boards") {
        const CompiledDesign design =
            compile_body(oak + rail("post", 400, 80, 40) + rail("slat", 400, 80, 19, 100));
        const PlannedWood planned = plan_from(design.piece(), R"(boards:
  - {name: A1, wood: white_oak, thickness: 50mm, width: 100mm, length: 1000mm}
)");
        CHECK(planned.report.empty());
        CHECK(planned.board("A1").pieces.size() == 2);
        check_sound(planned, design.piece());
    }

    TEST_CASE("what is left of a flat-sawn board is nothing for quartered parts") {
        const std::string design_text = "wood oak = white_oak quartered\n" +
                                        stick("leg of oak", "tall", {0, 0, 0}, {40, 40, 400}) +
                                        rail("slat", 400, 40, 19, 500);
        const auto complete = [&](const std::string& cut) {
            const CompiledDesign design = compile_body(design_text);
            return plan_from(
                       design.piece(),
                       "boards: [{name: A1, wood: white_oak, thickness: 50mm, width: 60mm, length: 1000mm" +
                           cut + "}]")
                .plan.complete();
        };
        // Legs are as thick as wide and come out of any board.
        CHECK(complete(", cut: quartered"));
        CHECK_FALSE(complete(", cut: flat"));
    }

    TEST_CASE("sheets: factory edges go first, and parts keep to the grain of the face") {
        const std::string ply = "wood ply = plywood\n";
        const std::string panel = stick("panel of ply", "wide", {0, 0, 0}, {700, 300, 12});
        const CompiledDesign design = compile_body(ply + panel);
        const auto sheet = [](const std::string& grain) {
            return "sheets: [{name: P1, wood: plywood, thickness: 12mm, length: 750mm, width: 600mm, "
                   "trim: 10mm, "
                   "grain: " +
                   grain + "}]";
        };
        const PlannedWood along = plan_from(design.piece(), sheet("length"));
        CHECK(along.plan.complete());
        CHECK(along.places("A").at(0).from_end == 10);
        CHECK(along.places("A").at(0).length == 700);
        check_sound(along, design.piece());
        const PlannedWood across = plan_from(design.piece(), sheet("width"));
        CHECK_FALSE(across.plan.complete());
        const PlannedWood none = plan_from(design.piece(), sheet("none"));
        CHECK(none.plan.complete());
        check_sound(none, design.piece());
    }
}
