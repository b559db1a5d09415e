#include <doctest/doctest.h>

#include <sstream>

#include "compiler/solid/solid_kernel.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"
#include "tests/support/piece_text.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/property");

namespace {

// `leg[right back]` is the image of `leg[left front]`: each far word is a mirror.
struct Image {
    std::string written;
    std::array<bool, 3> along{};
    bool any = false;
};

Image image_of(const std::string& name) {
    Image image;
    const std::size_t open = name.find('[');
    if (open == std::string::npos) return image;
    image.written = name.substr(0, open + 1);
    std::istringstream words(name.substr(open + 1, name.size() - open - 2));
    for (std::string word; words >> word;) {
        for (const Face face : all_faces) {
            if (!is_far(face) || face_name(face) != word) continue;
            image.along[static_cast<std::size_t>(axis_of(face))] = image.any = true;
            word = face_name(opposite(face));
        }
        image.written += (image.written.back() == '[' ? "" : " ") + word;
    }
    image.written += "]";
    return image;
}

double volume(SolidStore& solids, KindId kind) {
    const SolidRef solid = solids.solid(kind);
    REQUIRE(solid != nullptr);
    return solids.kernel()->volume(*solid);
}

// From where to where the tongue of the shelf's left end reaches, along deep.
std::pair<Rational, Rational> trench(const CompiledDesign& design, const std::string& shelf) {
    const Part& part = design.part(shelf);
    for (const Feature& feature : design.kind(shelf).features) {
        const Box tongue = placed_box(feature.body, part.placement);
        if (tongue.high[Axis::wide] == part.body.low[Axis::wide]) {
            return {tongue.low[Axis::deep], tongue.high[Axis::deep]};
        }
    }
    FAIL("no tongue on the left of `" << shelf << "`");
    return {};
}

// How many copies were held against the written one.
std::size_t check_mirrored(const CompiledDesign& design) {
    const Piece& piece = design.piece();
    Diagnostics of_solids;
    SolidStore solids(piece, of_solids);
    std::size_t checked = 0;
    for (const Part& part : piece.parts) {
        const Image image = image_of(part.name);
        if (!image.any) continue;
        CAPTURE(part.name);
        const Part& written = design.part(image.written);
        const bool inside = part.assembly != AssemblyId::none;
        const Reflection reflection{
            image.along, inside ? piece.assemblies[static_cast<std::size_t>(part.assembly)].box : piece.box};
        CHECK(reflection.apply(written.body) == part.body);
        CHECK(placed_features(piece, written, reflection) == placed_features(piece, part));
        CHECK(volume(solids, part.kind) == doctest::Approx(volume(solids, written.kind)).epsilon(1e-9));
        ++checked;
    }
    CHECK(of_solids.list().empty());
    return checked;
}

// Everything off the middle: shapes on an end, on a face and on edges of a handed part in an assembly.
const std::string cabinet =
    "assembly case(room = 400mm) { wide = room; deep = 300mm; tall = 500mm\n"
    "part stile of oak, handed wide deep { grain tall; left = piece.left + 10mm; wide = 30mm; front = "
    "piece.front + "
    "5mm; deep = 45mm; bottom = piece.bottom; top = piece.top\n"
    "bore(diameter = 8mm, deep = 12mm, count = 3, spacing = 40mm, from_edge = 11mm, from_end = 120mm) on "
    "right face\n"
    "taper(to = 20mm, from_top = 300mm) on right face\nnotch(long = 25mm, from_end = 60mm) on back face\n"
    "round(3mm) on left front edge\nchamfer(2mm) on top end edges\n}\n"
    "part rail of oak, handed deep { grain wide; left = stile[left].right; right = stile[right].left; front "
    "= "
    "stile.front; deep = 20mm; top = piece.top - 30mm; tall = 50mm\ngroove(wide = 6mm, deep = 5mm, from_edge "
    "= 9mm) "
    "on bottom face }\n"
    "join rail.left, rail.right to stile with mortise_and_tenon(long = 18mm, haunch = 8mm)\n}\n"
    "place case as low { left = piece.left + 37mm; front = piece.front; bottom = piece.bottom }\n"
    "place case as high(350mm) { right = piece.right; back = piece.back; bottom = low.top }\n";

}  // namespace

TEST_CASE("handed copies in the examples are exact mirror images, joints included") {
    // One for each copy that was not written: 1 side; 1 end and 1 side; 3 legs, 3 pairs.
    const std::vector<std::size_t> copies = {1, 2, 6};
    for (std::size_t i = 0; i < copies.size(); ++i) {
        CAPTURE(example_names()[i]);
        CHECK(check_mirrored(compile_text(example_text(example_names()[i]))) == copies[i]);
    }
}

TEST_CASE("copies in an assembly are mirrored about its middle, not the piece's") {
    const CompiledDesign design = compile_body("wood oak = white_oak\n" + cabinet);
    // Three stiles and a rail in each of two.
    CHECK(check_mirrored(design) == 8);
    // 400 wide from 37 on: a stile from 47 to 77 has its image from 397 to 427.
    CHECK(design.at("low/stile[right front]", Face::left) == 397);
    CHECK(design.at("low/stile[right front]", Face::right) == 427);
}

TEST_CASE("a joint that is not the same both ways is mirrored with its parts") {
    // Front and back shelves between two sides; their trenches stop short of the side away from the middle.
    const CompiledDesign design = compile_body(
        "wood oak = white_oak\n" + stick("side of oak, handed wide", "deep", {0, 0, 0}, {20, 1000, 500}) +
        stick("shelf of oak, handed deep", "wide", {20, 100, 100}, {960, 200, 20}) +
        stick("rail of oak, handed deep", "wide", {20, 400, 400}, {960, 20, 60}) +
        "join shelf.left, shelf.right to side with housing(stop = 30mm)\n"
        "join rail.left, rail.right to side with sliding_dovetail\n");
    CHECK(check_mirrored(design) == 3);
    // The front one reaches from 100 to 300, its trench from 130; the back one from 700 to 900, its trench to
    // 870.
    CHECK(trench(design, "shelf[front]") == std::pair<Rational, Rational>(130, 300));
    CHECK(trench(design, "shelf[back]") == std::pair<Rational, Rational>(700, 870));
}

TEST_CASE("a copy that is chosen by name is not: directions are the piece's there") {
    const CompiledDesign design =
        compile_body("wood oak = white_oak\n" + stick("side of oak", "deep", {0, 0, 0}, {20, 1000, 500}) +
                     stick("shelf of oak, handed deep", "wide", {20, 100, 100}, {200, 200, 20}) +
                     "join shelf[front].left to side with housing(stop = 30mm)\n"
                     "join shelf[back].left to side with housing(stop = 30mm)\n");
    CHECK(trench(design, "shelf[back]") == std::pair<Rational, Rational>(730, 900));
}

TEST_CASE("an odd-shaped pair is listed as a pair") {
    const CompiledDesign design = compile_body("wood oak = white_oak\n" + cabinet);
    const Kind& left = design.kind("low/stile[left front]");
    const Kind& right = design.kind("low/stile[right front]");
    CHECK(left.letter != right.letter);
    REQUIRE(right.mirror_of.has_value());
    CHECK(&design.piece()[*right.mirror_of] == &left);
    CHECK(&design.kind("low/stile[right back]") == &left);
}

TEST_SUITE_END();
