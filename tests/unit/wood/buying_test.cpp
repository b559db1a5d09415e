// What is bought: boards by their cuts, the same lumber by the board foot, rods for dowels.
#include <doctest/doctest.h>

#include "compiler/stock/plan/rack_change.hpp"
#include "tests/support/wood.hpp"
#include "tests/unit/wood/oak.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::string dealer(const std::string& rest) {
    return "money: crowns\ndealer:\n  lumber: [{wood: white_oak, thickness: [1 in], width: 120mm to 200mm, "
           "length: "
           "800mm to 2000mm, price: 10}]\n" +
           rest;
}

// Two posts and a rail between them, with two dowels of 10 mm at each end: 30 mm in each part, so 60 mm long.
const std::string frame =
    oak + stick("post of oak, handed wide", "tall", {0, 0, 0}, {60, 60, 600}) +
    "part rail of oak {\n grain wide\n left = post[left].right; right = post[right].left\n"
    " front = piece.front; deep = 19mm\n bottom = piece.bottom + 200mm; tall = 100mm\n}\n"
    "join rail.left, rail.right to post with dowels(diameter = 10mm)\n";

}  // namespace

TEST_SUITE("unit/wood") {
    TEST_CASE("by the board foot: the rough pieces, and the waste added on top") {
        const CompiledDesign design =
            compile_body(oak + stick("bar of oak", "wide", {0, 0, 0}, {700, 100, 19}));
        const PlannedWood planned = plan_from(design.piece(), dealer(""));
        REQUIRE(planned.plan.by_the_foot.size() == 1);
        const LumberByTheFoot& lumber = planned.plan.by_the_foot[0];
        // 725.4 x 106.35 mm of 1 in board: 725.4 x 106.35 / 304.8^2 board feet; first and seconds take 30 %
        // more.
        CHECK(lumber.net.get_d() == doctest::Approx(725.4 * 106.35 / (304.8 * 304.8)));
        CHECK(lumber.added == ratio(3, 10));
        CHECK(lumber.board_feet == lumber.net * ratio(13, 10));
        CHECK(lumber.price == lumber.board_feet * 10);
        // The board itself is planned by its cuts, and nothing is added: 1 in x 120 x 800 mm.
        CHECK(planned.plan.purchases.at(0).board_feet.get_d() ==
              doctest::Approx(120 * 800 / (304.8 * 304.8)));
    }

    TEST_CASE("what is left of a board that is bought goes to the rack") {
        const CompiledDesign design =
            compile_body(oak + stick("bar of oak", "wide", {0, 0, 0}, {300, 100, 19}));
        const PlannedWood planned = plan_from(design.piece(), dealer(""));
        const RackChange change = change_of(planned.plan);
        CHECK(change.used.empty());
        REQUIRE(change.left_of_bought.size() == 1);
        const RackBoard& left = change.left_of_bought[0];
        CHECK(left.species == "white_oak");
        CHECK(left.thickness == ratio(254, 10));
        CHECK(left.width == 120);
        // 800 less the blank of 14 in, the shortest that the machines take, and a kerf of 1/8 in; in half
        // millimetres.
        CHECK(left.length.get_d() == doctest::Approx(800 - 356 - 3.5));
    }

    TEST_CASE("rods are planned for the dowels of all joints, a kerf between two") {
        // 4 x 60 and 3 kerfs of 3.175 mm, on paper 3.5: 250.5.
        const CompiledDesign design = compile_body(frame);
        const auto bought = [&](const std::string& rods) {
            const PlannedWood planned = plan_from(design.piece(), dealer("  dowels:\n" + rods));
            std::string text;
            for (const Purchase& purchase : planned.plan.purchases) {
                if (!purchase.supplies.empty())
                    text += std::to_string(purchase.count) + " " + purchase.text + "; ";
            }
            for (const std::string& note : planned.plan.notes) {
                if (note.find("rod") != std::string::npos) text += note;
            }
            return text;
        };
        const auto rod = [](const std::string& length, const std::string& price) {
            return "    - {wood: beech, diameter: 10mm, length: " + length + ", price: " + price + "}\n";
        };
        CHECK(bought(rod("250mm", "3")) == "2 American beech dowel rod, 10 mm thick, 250 mm long; ");
        CHECK(bought(rod("251mm", "3")) == "1 American beech dowel rod, 10 mm thick, 251 mm long; ");
        CHECK(bought(rod("250mm", "3") + rod("1000mm", "5")) ==
              "1 American beech dowel rod, 10 mm thick, 1000 mm long; ");
        CHECK(bought(rod("250mm", "3") + rod("1000mm", "7")) ==
              "2 American beech dowel rod, 10 mm thick, 250 mm long; ");
        CHECK(bought("    - {wood: beech, diameter: 12mm, length: 1000mm, price: 3}\n") ==
              "no rod is sold for the dowels of 10 mm; buy them ready made");
        CHECK(bought(rod("50mm", "1")) == "no rod is sold for the dowels of 10 mm; buy them ready made");
    }
}
