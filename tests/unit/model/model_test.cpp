// The STEP file, read back by another program's reader where it is about shapes, as text where it is about
// letters.
#include <doctest/doctest.h>

#include <dlfcn.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "backends/model/model_backend.hpp"
#include "tests/step_reader/read_step.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;
using doctest::Approx;

namespace {

using Environment = std::vector<std::pair<std::string, std::string>>;

// What the backend writes.
std::string step_of(const Piece& piece, const Environment& environment = {}) {
    const SourceManager sources;
    Diagnostics diagnostics;
    SolidStore solids(piece, diagnostics);
    OutputFolder out("unused");
    ModelBackend().emit({piece, sources, solids, environment}, {}, out, diagnostics);
    for (const Diagnostic& diagnostic : diagnostics.list()) FAIL_CHECK(diagnostic.message);
    REQUIRE(out.files().size() == 1);
    REQUIRE(out.files().begin()->first == "piece.step");
    return out.files().begin()->second;
}

ReadModel read(const std::string& bytes) {
    void* module = dlopen(RODWRIGHT_BINARY_DIR "/lib/test_modules/step_reader.so", RTLD_NOW | RTLD_LOCAL);
    REQUIRE_MESSAGE(module != nullptr, dlerror());
    const auto read_step = reinterpret_cast<ReadStep>(dlsym(module, "read_step"));
    REQUIRE((read_step != nullptr));
    ReadModel model;
    REQUIRE(read_step(bytes, model));
    return model;
}

std::size_t count(const std::string& text, const std::string& word) {
    std::size_t found = 0;
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) ++found;
    return found;
}

std::map<std::string, ReadPart> by_name(const ReadModel& model) {
    std::map<std::string, ReadPart> parts;
    for (const ReadPart& part : model.parts) parts[part.name] = part;
    REQUIRE(parts.size() == model.parts.size());
    return parts;
}

// The kind's bounds in its own frame, turned and moved: exact, as a part turns by right angles only.
Bounds placed(const Bounds& own, const Pose& pose) {
    Bounds bounds;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        double low = pose.move[axis];
        double high = low;
        for (std::size_t from = 0; from < 3; ++from) {
            const double turn = pose.columns[from][axis];
            low += std::min(turn * own.low[from], turn * own.high[from]);
            high += std::max(turn * own.low[from], turn * own.high[from]);
        }
        bounds.low[axis] = low;
        bounds.high[axis] = high;
    }
    return bounds;
}

// Within a thousandth of a millimetre; the bounds of round faces are found by iteration.
void check_bounds(const Bounds& found, const Bounds& expected) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
        CHECK(std::abs(found.low[axis] - expected.low[axis]) < 1e-3);
        CHECK(std::abs(found.high[axis] - expected.high[axis]) < 1e-3);
    }
}

// "leg[left front]" of kind A1: "A1 leg (left front)".
std::string name_in_model(const Piece& piece, const Part& part) {
    std::string name = piece[part.kind].letter + " " + part.name;
    std::ranges::replace(name, '_', ' ');
    std::ranges::replace(name, ']', ')');
    const std::size_t bracket = name.find('[');
    return bracket == std::string::npos ? name : name.replace(bracket, 1, " (");
}

// The kernel's volume, but for the legs of the table: where the rounding of an edge bends with the taper the
// kernel's solid is only good to 2e-6, and the file's is better. By hand, in millimetres: 728.6625 x 44.45^2,
// less the wedge of the taper (588.9625 x 15.875 / 2 x 44.45), less (1 - pi/4) r^2 along four edges, two
// straight and two bent (r = 3.175), less five mortises (69.85 x 6.35 x 23.8125 twice, 38.1 x 6.35 x 11.1125
// twice, 31.75 x 6.35 x 23.8125).
double expected_volume(const Part& part, const Solid& solid) {
    if (part.declared != "leg") return kernel().volume(solid);
    const double edges = 4 * 728.6625 + 2 * (std::hypot(588.9625, 15.875) - 588.9625);
    const double rounded = (1 - std::numbers::pi / 4) * 3.175 * 3.175 * edges;
    const double mortises = 6.35 * (2 * 69.85 * 23.8125 + 2 * 38.1 * 11.1125 + 31.75 * 23.8125);
    return 728.6625 * 44.45 * 44.45 - 588.9625 * 15.875 / 2 * 44.45 - rounded - mortises;
}

void check_part(const Piece& piece, const Part& part, const SolidRef& solid, const ReadPart& found) {
    CAPTURE(part.name);
    CHECK(found.valid);
    CHECK(found.volume == Approx(expected_volume(part, *solid)).epsilon(1e-6));
    check_bounds(found.bounds, placed(kernel().bounds(*solid), pose_of(part.placement)));
    std::string shape = piece[part.kind].letter + " " + piece[part.kind].name;
    std::ranges::replace(shape, '_', ' ');
    CHECK(found.shape == shape);
}

constexpr const char* rack = R"(piece "Sorting rack" {
    unit mm to 1
    wide = 420mm; deep = 220mm; tall = 300mm
    wood pale = white_ash
    assembly tray(inside) {
        wide = inside + 20mm; deep = 200mm; tall = 60mm
        part side of pale, handed wide {
            grain deep
            left = piece.left; wide = 10mm
            front = piece.front; back = piece.back
            bottom = piece.bottom; top = piece.top
            taper(to = 30mm, from_top = 0mm) on top face
        }
        part floor of pale {
            grain wide
            left = side[left].right; right = side[right].left
            front = piece.front; back = piece.back
            bottom = piece.bottom + 6mm; tall = 6mm
        }
    }
    part foot of pale {
        grain wide
        left = piece.left; wide = 420mm
        front = piece.front; deep = 30mm
        top = piece.top; tall = 20mm
    }
    place tray as low(inside = 400mm) { left = piece.left; front = piece.front; bottom = piece.bottom }
    place tray as high(inside = 300mm) { left = piece.left; front = piece.front; bottom = piece.bottom + 100mm }
}
)";

// A board 100 x 40 x 20 in a piece of that size.
Piece board(const std::string& name) {
    Piece piece;
    piece.name = name;
    piece.kinds = {kind_of(100, 40, 20)};
    piece.kinds[0].parts = {PartId{0}};
    piece.parts.resize(1);
    piece.parts[0].name = "rail";
    piece.parts[0].kind = KindId{0};
    return piece;
}

}  // namespace

TEST_SUITE("unit/model") {
    TEST_CASE("the examples read back: every part with its name, volume and place") {
        for (const std::string& example : example_names()) {
            CAPTURE(example);
            const CompiledDesign design = compile_text(example_text(example));
            const Piece& piece = design.piece();
            const ReadModel model = read(step_of(piece));
            CHECK(model.name == piece.name);
            CHECK(model.millimetres == 1);
            REQUIRE(model.parts.size() == piece.parts.size());
            Diagnostics diagnostics;
            SolidStore solids(piece, diagnostics);
            const auto parts = by_name(model);
            for (const Part& part : piece.parts) {
                const auto found = parts.find(name_in_model(piece, part));
                REQUIRE_MESSAGE(found != parts.end(), part.name);
                check_part(piece, part, solids.solid(part.kind), found->second);
            }
        }
    }

    TEST_CASE("a shape is written once for its kind; a mirror image is another") {
        const CompiledDesign design = compile_text(example_text("keepers_table"));
        const std::string text = step_of(design.piece());
        CHECK(count(text, "MANIFOLD_SOLID_BREP(") == design.piece().kinds.size());
        CHECK(count(text, "NEXT_ASSEMBLY_USAGE_OCCURRENCE(") == design.piece().parts.size());
        const auto parts = by_name(read(text));
        CHECK(parts.at("A1 leg (left front)").shape == "A1 leg");
        CHECK(parts.at("A1 leg (right back)").shape == "A1 leg");
        CHECK(parts.at("A2 leg (right front)").shape == "A2 leg");
    }

    // 60 x 200 tapered to 30 at one end, 10 thick; 400 x 200 x 6.
    TEST_CASE("assemblies nest, and parts in them stand where they stand in the piece") {
        const CompiledDesign design = compile_text(rack);
        const ReadModel model = read(step_of(design.piece()));
        REQUIRE(model.parts.size() == 7);
        for (const ReadPart& part : model.parts) {
            CAPTURE(part.name);
            const bool low = part.name.find("low/") != std::string::npos;
            const bool high = part.name.find("high/") != std::string::npos;
            const std::vector<std::string> around{low ? "low" : "high"};
            CHECK(part.within == (low || high ? around : std::vector<std::string>{}));
            if (part.name.ends_with(" low/floor")) {
                CHECK(part.volume == Approx(400.0 * 200 * 6).epsilon(1e-9));
                check_bounds(part.bounds, {{10, 0, 6}, {410, 200, 12}});
            }
            if (part.name.ends_with(" high/side (left)")) {
                CHECK(part.volume == Approx((60.0 + 30) / 2 * 200 * 10).epsilon(1e-9));
                check_bounds(part.bounds, {{0, 0, 100}, {10, 200, 160}});
            }
            if (part.name.ends_with(" foot")) check_bounds(part.bounds, {{0, 0, 280}, {420, 30, 300}});
        }
    }

    TEST_CASE("parts have the colour of their wood") {
        const CompiledDesign design = compile_text(rack);
        REQUIRE(design.piece().woods.at(0).colour.size() == 7);
        for (const ReadPart& part : read(step_of(design.piece())).parts) {
            for (std::size_t i = 0; i < 3; ++i) {
                const std::string digits = design.piece().woods[0].colour.substr(1 + 2 * i, 2);
                CHECK(part.colour[i] == Approx(std::stoi(digits, nullptr, 16) / 255.0).epsilon(1e-5));
            }
        }
    }

    TEST_CASE("the same piece gives the same bytes, whatever was written before") {
        const CompiledDesign design = compile_text(example_text("keepers_table"));
        const std::string first = step_of(design.piece());
        step_of(board("Rail"));
        CHECK(step_of(design.piece()) == first);
    }

    // ISO 10303-21, clauses 5 and 8: the three sections, and the header's three entities in this order.
    TEST_CASE("the header says what the file is and nothing about where or by whom it was made") {
        const std::string text = step_of(board("Rail"));
        CHECK(text.starts_with("ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(("));
        CHECK(text.ends_with("ENDSEC;\nEND-ISO-10303-21;\n"));
        std::string header = text.substr(0, text.find("DATA;"));
        for (std::size_t at = 0; (at = header.find("\n  ")) != std::string::npos;) header.erase(at, 3);
        CHECK(
            header.ends_with(",'2;1');\n"
                             "FILE_NAME('Rail','1970-01-01T00:00:00Z',(''),(''),'Open CASCADE "
                             "Technology','rodwright 0.1.0','');\n"
                             "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\n"
                             "ENDSEC;\n"));
        CHECK(count(text, "Open CASCADE") == 1);
    }

    // 951782400 is the leap day of 2000, at midnight UTC.
    TEST_CASE("the time is that of SOURCE_DATE_EPOCH, and the only thing that it changes") {
        std::string dated = step_of(board("Rail"), {{"SOURCE_DATE_EPOCH", "951782461"}});
        const std::string stamp = "2000-02-29T00:01:01Z";
        REQUIRE(count(dated, stamp) == 1);
        dated.replace(dated.find(stamp), stamp.size(), "1970-01-01T00:00:00Z");
        CHECK(dated == step_of(board("Rail")));
        CHECK(step_of(board("Rail"), {{"SOURCE_DATE_EPOCH", "yesterday"}}) == step_of(board("Rail")));
    }

    // ISO 10303-21, 6.4.3: \X2\ and four hexadecimal digits a letter, \X4\ and eight, \X0\ at the end.
    TEST_CASE("names of any letters and length arrive whole") {
        const std::string name =
            "Möwe's \\ rail \u2713 \U0001F600, of the reading room of the weather station, "
            "with a name that no line of eighty letters can hold";
        const std::string text = step_of(board(name));
        CHECK(std::ranges::all_of(
            text, [](char letter) { return letter == '\n' || (letter >= ' ' && letter <= '~'); }));
        CHECK(count(text,
                    "'M\\X2\\00F6\\X0\\we''s \\\\ rail \\X2\\2713\\X0\\ \\X4\\0001F600\\X0\\, of the reading "
                    "room of the weather station, with a name that no line of eighty letters can hold'") ==
              3);
        CHECK(read(step_of(board("Möwe's rail \u2713"))).name == "Möwe's rail \u2713");
    }

    TEST_CASE("a piece without parts has no model, and says so") {
        const SourceManager sources;
        const Piece piece;
        Diagnostics diagnostics;
        SolidStore solids(piece, diagnostics);
        OutputFolder out("unused");
        ModelBackend().emit({piece, sources, solids, {}}, {}, out, diagnostics);
        CHECK(out.files().empty());
        REQUIRE(diagnostics.errors() == 1);
        CHECK(diagnostics.list()[0].message == "no part of the piece has a shape for a model");
    }
}
