#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/check/strength/load_cases.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

struct Found {
    std::vector<strength::Case> cases;
    std::string report;
};

Found cases_of(const CompiledDesign& design) {
    Diagnostics diagnostics;
    Found found{strength::load_cases(design.piece(), strength::strength_data(), diagnostics), {}};
    for (const Diagnostic& each : diagnostics.list())
        found.report += fmt::format("{} {}\n", info(each.code).code, each.message);
    return found;
}

const std::string slabs =
    "wood oak = red_oak\npart low of oak { grain wide; left = piece.left; wide = 900mm; front = piece.front; "
    "deep = "
    "300mm; bottom = piece.bottom; tall = 20mm }\npart high of oak { grain wide; left = piece.left; wide = "
    "800mm; front "
    "= piece.front; deep = 400mm; bottom = piece.bottom + 500mm; tall = 20mm }\npart post of oak { grain "
    "tall; left = "
    "piece.left; wide = 40mm; front = piece.front; deep = 40mm; bottom = low.top; top = high.bottom }\n";

std::string names(const CompiledDesign& design, const strength::Case& each) {
    std::string text;
    for (const PartId part : each.carriers) text += design.piece()[part].name + " ";
    return text;
}

}  // namespace

TEST_SUITE("unit/strength") {
    TEST_CASE("a table's loads go onto the highest flat part, a shelf's onto every one") {
        const CompiledDesign table = compile_body(slabs + "use table\n");
        const Found found = cases_of(table);
        REQUIRE(found.cases.size() == 4);
        CHECK(names(table, found.cases[0]) == "high ");
        CHECK(found.cases[0].forces[0].on.at.isApprox(frame::Vec3(400, 200, 520)));
        CHECK(found.cases[0].forces[0].force.isApprox(frame::Vec3(0, 0, -1000)));
        CHECK(found.cases[1].forces[0].on.at.isApprox(frame::Vec3(400, 0, 520)));
        CHECK(found.cases[2].push);
        CHECK(found.cases[2].forces[0].force.isApprox(frame::Vec3(300, 0, 0)));
        CHECK(found.cases[3].forces[0].force.isApprox(frame::Vec3(0, 300, 0)));

        const CompiledDesign shelf = compile_body(slabs + "use shelf books\n");
        const Found books = cases_of(shelf);
        REQUIRE(books.cases.size() == 1);
        CHECK(names(shelf, books.cases[0]) == "low high ");
        CHECK(books.cases[0].lasting);
        CHECK(books.cases[0].spread[0].per_length == doctest::Approx(0.365));
    }

    TEST_CASE("people sit side by side, where the design says") {
        const Found found = cases_of(compile_body(slabs + "use seat for 2 on low\n"));
        REQUIRE(found.cases.size() == 3);
        REQUIRE(found.cases[0].forces.size() == 2);
        CHECK(found.cases[0].forces[0].on.at.isApprox(frame::Vec3(225, 150, 20)));
        CHECK(found.cases[0].forces[1].on.at.isApprox(frame::Vec3(675, 150, 20)));
    }

    TEST_CASE("loads of the design are put in the middle of a face, at a long or a short edge") {
        const CompiledDesign design = compile_body(
            slabs +
            "load 10 N on high.top at middle\nload 20 N on high.top at edge\nload 30 N on high.top at end\n");
        const Found found = cases_of(design);
        REQUIRE(found.cases.size() == 1);
        REQUIRE(found.cases[0].forces.size() == 3);
        CHECK(found.cases[0].forces[0].on.at.isApprox(frame::Vec3(400, 200, 520)));
        CHECK(found.cases[0].forces[1].on.at.isApprox(frame::Vec3(400, 0, 520)));
        CHECK(found.cases[0].forces[2].on.at.isApprox(frame::Vec3(0, 200, 520)));
        CHECK(found.cases[0].forces[2].force.z() == doctest::Approx(-30));
    }

    TEST_CASE("a use that nothing is known of, and one that no part fits, are reported") {
        CHECK(cases_of(compile_body(slabs + "use trestle\n")).report ==
              "E1301 nothing is known of a piece used as `trestle`\n");
        CHECK(cases_of(compile_body(slabs + "use table books\n")).report ==
              "E1301 nothing is known of a piece used as `table books`\n");
        const std::string post =
            "wood oak = red_oak\npart post of oak { grain tall; left = piece.left; wide = 40mm; "
            "front = piece.front; deep = 60mm; bottom = piece.bottom; top = piece.top }\n";
        CHECK(cases_of(compile_body(post + "use table\n")).report ==
              "W1306 no part lies flat, so nothing carries what a table has to\n");
        CHECK(cases_of(compile_body(post)).cases.empty());
    }

    TEST_CASE("how many people must be a whole number of them") {
        CHECK(compile_body(slabs + "use seat for 0 on low\n").report().starts_with("E"));
        CHECK(compile_body(slabs + "use seat for 1/2 on low\n").report().starts_with("E"));
        CHECK(compile_body(slabs + "use seat on nobody\n").report().starts_with("E0201"));
    }
}
