#include "compiler/stock/rough/rough.hpp"

#include "compiler/quantity/quantity.hpp"
#include "tests/unit/rough/library_milling.hpp"
#include "tests/unit/rough/sizes_of.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// A row of blocks of 200 x 60 x 20 mm; at least two.
CompiledDesign blocks(int count, const std::string& species = "white_ash") {
    return compile_body("wood x = " + species + "\npart block[" + std::to_string(count) +
                        "] of x { grain wide; left = piece.left; wide = 200mm; deep = 60mm; bottom = "
                        "piece.bottom; tall = 20mm }\nspace block along deep from piece.front to piece.back "
                        "{ ends = 10mm }\n");
}

std::string ash_stick(const std::string& head, const std::vector<int>& size, const std::string& more = "") {
    return "wood ash = white_ash\n" + stick(head + " of ash", "wide", {0, 0, 0}, size, more);
}

std::vector<std::string> lengths_of(const Piece& piece, const MillingData& milling) {
    std::vector<std::string> lines;
    for (const Blank& blank : rough_sizes(piece, milling).blanks) {
        lines.push_back(std::to_string(blank.count) + " of " + std::to_string(blank.kinds.size()) + ": " +
                        to_text(blank.size[Axis::wide]));
    }
    return lines;
}

using Lines = std::vector<std::string>;

// A piece of one part, turned from 300 x 50 x 50 mm.
Piece turned_post() {
    Kind post;
    post.name = "post";
    post.size = {{300, 50, 50}};
    post.parts = {PartId{0}};
    ShapeUse turning;
    turning.work.steps.emplace_back().machine = "lathe";
    post.shapes.push_back(turning);
    Piece piece;
    piece.style = {LengthUnit::millimetre, ratio(1, 2), true};
    piece.kinds.push_back(post);
    return piece;
}

}  // namespace

TEST_SUITE("unit/rough") {
    TEST_CASE("short parts share a blank, as many blanks as are long enough") {
        // Alone 200 + 25.4 < 355.6, which is 14 in. Two: 400 + 3.175 + 25.4 = 428.575, three: 600 + 6.35
        // + 25.4 = 631.75.
        const MillingData milling = library_milling();
        CHECK(lengths_of(blocks(2).piece(), milling) == Lines{"1 of 2: 17143/40"});
        CHECK(lengths_of(blocks(3).piece(), milling) == Lines{"1 of 3: 2527/4"});
        CHECK(lengths_of(blocks(5).piece(), milling) == Lines{"1 of 2: 17143/40", "1 of 3: 2527/4"});
        CHECK(lengths_of(blocks(6).piece(), milling) == Lines{"3 of 2: 17143/40"});
        // Of three apiece and four: ten parts in three blanks.
        const MillingData longer = own_milling("planer: {shortest: 600mm}");
        CHECK(lengths_of(blocks(10).piece(), longer) == Lines{"2 of 3: 2527/4", "1 of 4: 33397/40"});
        // A shop that mills 225.4 mm takes each by itself.
        CHECK(lengths_of(blocks(6).piece(),
                         own_milling("jointer: {shortest: 225.4mm}\nplaner: {shortest: 0mm}")) ==
              Lines{"6 of 1: 1127/5"});
        // 5 parts that need three in a blank: one blank of five, since two would not reach.
        CHECK(lengths_of(blocks(5).piece(), own_milling("planer: {shortest: 430mm}")) ==
              Lines{"1 of 5: 10381/10"});
    }

    TEST_CASE("one short part gets a blank as long as the machines ask for") {
        const CompiledDesign design = compile_body(ash_stick("block", {200, 60, 20}));
        const RoughSizes sizes = rough_sizes(design.piece(), library_milling());
        const Blank& blank = blank_of(sizes, design, "block");
        // 20 + 1.5875 from 60 + 6.35.
        CHECK(blank.size == Vector{{inches(14), ratio(6635, 100), ratio(215875, 10000)}});
        CHECK(blank.thickness_class == "4/4");  // which gives 20.6375
        CHECK(blank.reasons ==
              Lines{"length: 200 mm + ~12.5 mm at each end to square it; made ~355.5 mm long, the shortest "
                    "that the machines take",
                    "width: 60 mm + ~3 mm at each edge for jointing and ripping",
                    "thickness: 20 mm + ~1.5 mm to clean up both faces; a flat 4/4 board gives ~20.5 mm"});
    }

    TEST_CASE("a part and its mirror image share a blank where they are short") {
        // Tapered towards one end and chamfered on one side, so that no turn maps front on back.
        const std::string body =
            "wood ash = white_ash\npart cheek of ash, handed deep { grain wide; left = "
            "piece.left; front = piece.front; bottom = piece.bottom; wide = LENGTH; deep = "
            "20mm; tall = 60mm\n taper(to = 30mm, from_top = 100mm) on top face\n "
            "chamfer(3mm) on bottom front edge }\n";
        const auto with_length = [&](const std::string& length) {
            std::string text = body;
            return compile_body(text.replace(text.find("LENGTH"), 6, length));
        };
        const CompiledDesign brief = with_length("200mm");
        REQUIRE(brief.piece().kinds.size() == 2);
        const RoughSizes sizes = rough_sizes(brief.piece(), library_milling());
        REQUIRE(sizes.blanks.size() == 1);
        CHECK(sizes.blanks[0].kinds == std::vector<KindId>{KindId{0}, KindId{1}});
        CHECK(sizes.blanks[0].count == 1);
        CHECK(sizes.blanks[0].size[Axis::wide] == ratio(17143, 40));
        CHECK(
            sizes.blanks[0].reasons[0] ==
            "length: 2 of 200 mm end to end with ~3 mm between for the saw, ~12.5 mm at each end to square "
            "it; cut apart after planing, as one alone is shorter than the ~355.5 mm that the machines take");
        // Long ones do not.
        CHECK(lengths_of(with_length("400mm").piece(), library_milling()) ==
              Lines{"1 of 1: 2127/5", "1 of 1: 2127/5"});
    }

    TEST_CASE("the leaves of a book do not lie end to end") {
        const std::string row =
            "wood ash = white_ash\npart door of ash, handed wide { grain tall; left = "
            "piece.left; wide = 60mm; front = piece.front; deep = 10mm; bottom = "
            "piece.bottom; tall = 200mm }\n";
        const MillingData milling = library_milling();
        CHECK(lengths_of(compile_body(row).piece(), milling) == Lines{"1 of 2: 17143/40"});
        CHECK(lengths_of(compile_body(row + "match door as book\n").piece(), milling) ==
              Lines{"2 of 1: 1778/5"});
    }

    TEST_CASE("sheet goods keep their sizes") {
        const RoughSizes sizes = rough_sizes(blocks(5, "plywood").piece(), library_milling());
        REQUIRE(sizes.blanks.size() == 1);
        CHECK(sizes.panels.empty());
        CHECK(sizes.blanks[0].sheet);
        CHECK(sizes.blanks[0].count == 5);
        CHECK(sizes.blanks[0].size == Vector{{200, 60, 20}});
        CHECK(sizes.blanks[0].thickness_class.empty());
    }

    TEST_CASE("ends that the planer makes too thin are cut off") {
        const CompiledDesign design = compile_body(ash_stick("rail", {600, 60, 20}));
        const MillingData snipes = own_milling("planer: {snipes: true, snipe: 60mm}");
        const RoughSizes sizes = rough_sizes(design.piece(), snipes);
        CHECK(sizes.blanks[0].size[Axis::wide] == 720);
        CHECK(sizes.blanks[0].reasons[0] ==
              "length: 600 mm + 60 mm at each end that the planer makes too thin");
        // Shorter than what squaring takes anyway.
        const MillingData hardly = own_milling("planer: {snipes: true, snipe: 5mm}");
        CHECK(rough_sizes(design.piece(), hardly).blanks[0].size[Axis::wide] == ratio(6254, 10));
    }

    TEST_CASE("thicker than any class, thinner than the planer takes") {
        const auto blank = [](int thick) {
            const CompiledDesign design = compile_body(ash_stick("block", {600, 150, thick}));
            return rough_sizes(design.piece(), library_milling()).blanks.front();
        };
        CHECK(blank(96).thickness_class.empty());
        CHECK(blank(96).reasons[2] ==
              "thickness: 96 mm + ~1.5 mm to clean up both faces; no class is so thick: "
              "glue it up in layers");
        CHECK(blank(95).thickness_class == "16/4");  // gives 95.25
        CHECK(blank(6).reasons[2] ==
              "thinner than the ~6.5 mm that the planer takes: plane it on a carrier board");
        CHECK(blank(7).reasons.size() == 3);
    }

    TEST_CASE("a turned part comes out of a larger square") {
        const RoughSizes sizes =
            rough_sizes(turned_post(), own_milling("allowances: {turning_length: 40mm}"));
        REQUIRE(sizes.blanks.size() == 1);
        // 300 + 40; 50 + 6.35 in the square, + 6.35 for its edges, + 1.5875 for its faces.
        CHECK(sizes.blanks[0].size ==
              Vector{{inches(14), ratio(627, 10), Rational(ratio(5635, 100) + inches(1, 16))}});
        CHECK(sizes.blanks[0].reasons[1] == "turned from a square ~6.5 mm larger than its diameter");
        CHECK(sizes.blanks[0].reasons[0].find("20 mm at each end for the lathe's centres") !=
              std::string::npos);
        CHECK(sizes.blanks[0].thickness_class == "10/4");  // 56.35 of 57.15
    }
}
