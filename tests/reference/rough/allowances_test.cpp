// Rough sizes as textbooks and the grading rules have them.
#include <tuple>

#include "compiler/quantity/quantity.hpp"
#include "tests/unit/rough/library_milling.hpp"
#include "tests/unit/rough/sizes_of.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

Vector rough_size(const std::string& sizes, const MillingData& milling) {
    const CompiledDesign design = compile_text(
        "piece \"Sample\" { unit in to 1/32; wide = 40\"; deep = 20\"; tall = 20\"\nwood ash = "
        "white_ash\npart rail of ash { grain wide; left = piece.left; front = piece.front; bottom = "
        "piece.bottom; " +
        sizes + " } }\n");
    return blank_of(rough_sizes(design.piece(), milling), design, "rail").size;
}

const std::string rail = "wide = 20\"; deep = 4\"; tall = 3/4\"";

}  // namespace

TEST_SUITE("reference/rough") {
    // Source: a textbook's instructions for a bill of material: length + 1/2 in, width + 1/4 in, thickness +
    // 1/8 in for mill planing.
    TEST_CASE("a textbook's rough sizes: 20 x 4 becomes 20 1/2 x 4 1/4, and 1/8 in for the mill") {
        const MillingData milling = own_milling("allowances: {end: 1/4 in, edge: 1/8 in, faces: 1/8 in}\n");
        CHECK(rough_size(rail, milling) == Vector{{inches(41, 2), inches(17, 4), inches(7, 8)}});
    }

    // Source: another textbook: length + 1/2 in (12.5 mm), 3/32 in (2.5 mm) for each planed edge.
    TEST_CASE("another textbook's: 20 1/2 x 4 3/16") {
        const MillingData milling = own_milling("allowances: {end: 1/4 in, edge: 3/32 in}\n");
        const Vector size = rough_size(rail, milling);
        CHECK(size[Axis::wide] == inches(41, 2));
        CHECK(size[Axis::deep] == inches(67, 16));
    }

    // Source: makers' articles: length + 1 in, width + 1/4 in. Clean-up of 1/16 in: common practice, no
    // source.
    TEST_CASE("the library's own: 21 x 4 1/4") {
        CHECK(rough_size(rail, library_milling()) == Vector{{inches(21), inches(17, 4), inches(13, 16)}});
    }

    // Source: hardwood grading rules' (NHLA) standard surfaced thicknesses, by way of two pages that restate
    // them; 10/4 from memory.
    TEST_CASE("hardwood: rough and surfaced thickness by class") {
        const MillingData milling = library_milling();
        const std::tuple<const char*, Rational, Rational> classes[] = {
            {"4/4", inches(1), inches(13, 16)},    {"5/4", inches(5, 4), inches(17, 16)},
            {"6/4", inches(3, 2), inches(21, 16)}, {"7/4", inches(7, 4), inches(3, 2)},
            {"8/4", inches(2), inches(7, 4)},      {"10/4", inches(5, 2), inches(9, 4)},
            {"12/4", inches(3), inches(11, 4)},    {"14/4", inches(7, 2), inches(13, 4)},
            {"16/4", inches(4), inches(15, 4)}};
        for (const auto& [name, rough, surfaced] : classes) {
            const std::string of = name;  // clang 14 captures no structured binding
            CAPTURE(of);
            const ThicknessClass* found = milling.find_class(name);
            REQUIRE(found != nullptr);
            CHECK(found->rough == rough);
            CHECK(found->surfaced == surfaced);
        }
    }

    // Source: American Softwood Lumber Standard (PS 20), minimum dry dressed sizes, by way of a page that
    // restates it.
    TEST_CASE("softwood: dressed thickness by nominal thickness") {
        const MillingData milling = library_milling();
        const std::pair<const char*, Rational> classes[] = {
            {"4/4", inches(3, 4)}, {"5/4", inches(1)},     {"6/4", inches(5, 4)}, {"8/4", inches(3, 2)},
            {"10/4", inches(2)},   {"12/4", inches(5, 2)}, {"14/4", inches(3)},   {"16/4", inches(7, 2)}};
        for (const auto& [name, dressed] : classes) {
            const std::string of = name;  // clang 14 captures no structured binding
            CAPTURE(of);
            REQUIRE(milling.find_class(name) != nullptr);
            CHECK(milling.find_class(name)->dressed == dressed);
        }
    }

    // Source: common practice, no source.
    TEST_CASE("what finished sizes usually come from") {
        const MillingData milling = library_milling();
        const std::pair<Rational, const char*> usual[] = {{inches(3, 4), "4/4"},
                                                          {inches(1), "5/4"},
                                                          {inches(5, 4), "6/4"},
                                                          {inches(7, 4), "8/4"},
                                                          {inches(5, 2), "12/4"}};
        for (const auto& [finished, name] : usual) {
            const std::string of = name;  // clang 14 captures no structured binding
            CAPTURE(of);
            REQUIRE(milling.class_for(finished) != nullptr);
            CHECK(milling.class_for(finished)->name == name);
        }
    }

    // Source: makers' articles and machine makers' papers (saws), school shops' safety sheets (least
    // lengths); the mitre saw and the band saw with its drift are common practice, no source.
    TEST_CASE("kerfs and least sizes") {
        const MillingData milling = library_milling();
        CHECK(milling.kerf("table_saw") == inches(1, 8));
        CHECK(milling.kerf("thin_kerf_blade") == inches(3, 32));
        CHECK(milling.kerf("heavy_rip_blade") == inches(5, 32));
        CHECK(milling.kerf("mitre_saw") == inches(1, 8));
        CHECK(milling.kerf("band_saw") == inches(1, 16));
        CHECK(milling.jointer.shortest == inches(12));
        CHECK(milling.planer.shortest == inches(14));
        CHECK(milling.saw_limits.shortest_rip == inches(12));
        CHECK(milling.saw_limits.shortest_mitre_saw == inches(8));
    }
}
