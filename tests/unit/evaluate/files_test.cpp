#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/evaluate");

namespace {

// Remembers what was asked for.
class WatchedWorld : public World {
  public:
    explicit WatchedWorld(Files files) : files_(std::move(files)) {}
    ReadResult read(const std::string& path) const override {
        asked.push_back(path);
        return files_.read(path);
    }
    std::vector<std::string> file_names(const std::string& folder) const override {
        return files_.file_names(folder);
    }
    mutable std::vector<std::string> asked;

  private:
    MemoryWorld files_;
};

CompileOptions build(const std::string& path) {
    CompileOptions options;
    options.path = path;
    return options;
}

std::string design_that(const std::string& before, const std::string& inside) {
    return before + "\npiece \"Sample\" { unit mm\nwide = 100mm; deep = 100mm; tall = 100mm\n" + inside +
           "\n}\n";
}

}  // namespace

TEST_CASE("lets, params and woods of a used file are shared") {
    const CompiledDesign design =
        compile_files({{"sizes.rod", "let board = 18mm\nparam gap = board / 6\nwood oak = white_oak\n"},
                       {"box.rod", design_that("use \"sizes.rod\"", "param value = board + gap")}},
                      "box.rod");
    CHECK(design.param("value").value == 21);
    CHECK(design.piece().find_wood("oak") != nullptr);
}

TEST_CASE("a path is relative to the file that uses it, inside the design's folder") {
    const CompiledDesign design =
        compile_files({{"shop/parts/a.rod", "use \"deep/b.rod\"\n"},
                       {"shop/parts/deep/b.rod", "use \"../../c.rod\"\nlet b = c + 1\n"},
                       {"shop/c.rod", "let c = 1\n"},
                       {"shop/box.rod",
                        design_that("use \"parts/a.rod\"\nuse \"./parts/../c.rod\"", "param value = b + c")}},
                      "shop/box.rod");
    CHECK(design.param("value").value == 3);
}

TEST_CASE("a file is read once, even where files use each other in a circle") {
    const WatchedWorld world(
        Files{{"a.rod", "use \"b.rod\"\nlet a = 1\n"},
              {"b.rod", "use \"a.rod\"\nuse \"box.rod\"\nlet b = a\n"},
              {"box.rod", design_that("use \"a.rod\"\nuse \"b.rod\"", "param value = b")}});
    const CompiledDesign design(world, build("box.rod"));
    CHECK(design.param("value").value == 1);
    CHECK(world.asked == std::vector<std::string>{"box.rod", "a.rod", "b.rod"});
}

TEST_CASE("files outside the design's folder are refused without being read") {
    for (const char* path : {"../secret.rod", "/shop/secret.rod", "parts/../../secret.rod", "", "..",
                             "../designs2/secret.rod", "./.././secret.rod"}) {
        CAPTURE(path);
        const WatchedWorld world(
            Files{{"shop/designs/box.rod", design_that("use \"" + std::string(path) + "\"", "")},
                  {"shop/secret.rod", "let secret = 1\n"},
                  {"/shop/secret.rod", "let secret = 1\n"},
                  {"shop/designs2/secret.rod", "let secret = 1\n"}});
        const CompiledDesign design(world, build("shop/designs/box.rod"));
        CHECK(design.report() == "E0105 1:5 `" + std::string(path) + "` is outside the design's folder\n");
        CHECK(world.asked == std::vector<std::string>{"shop/designs/box.rod"});
    }
}

TEST_CASE("they are refused from a used file too, and in the folder of the run") {
    const Files nested = {{"box.rod", design_that("use \"parts/a.rod\"", "")},
                          {"parts/a.rod", "use \"../../secret.rod\"\n"}};
    CHECK(compile_files(nested, "box.rod").report() ==
          "E0105 1:5 `../../secret.rod` is outside the design's folder\n");
    const Files above = {{"../box.rod", design_that("use \"../secret.rod\"", "")}};
    CHECK(compile_files(above, "../box.rod").report() ==
          "E0105 1:5 `../secret.rod` is outside the design's folder\n");
}

TEST_CASE("a used file that is not there is an error where it is used") {
    CHECK(compile_files({{"box.rod", design_that("use \"gone.rod\"", "")}}, "box.rod").report() ==
          "E0102 1:5 cannot read `gone.rod`: no such file\n");
    CHECK(compile_files({}, "box.rod").report().find("E0102 cannot read `box.rod`: no such file\n") == 0);
}

TEST_CASE("a joint of the library can be used by its path, and is found without") {
    CHECK(compile_files({{"box.rod", design_that("use \"joints/housing.rod\"", "")}}, "box.rod")
              .report()
              .empty());
}

TEST_CASE("a design has one piece") {
    CHECK(compile_files({{"box.rod", "let a = 1\n"}}, "box.rod").report() ==
          "E0107 1:1 there is no piece in `box.rod`\n");
    const CompiledDesign two = compile_files(
        {{"box.rod", design_that("use \"lid.rod\"", "")}, {"lid.rod", design_that("", "")}}, "box.rod");
    CHECK(two.report() == "E0107 2:7 a design has one piece, this is a second\n");
}

TEST_CASE("statements of a piece mean nothing outside it") {
    CHECK(compile_files({{"box.rod", design_that("part a { grain wide }", "")}}, "box.rod").report() ==
          "E0210 1:1 `part` has no meaning outside a piece\n");
}

TEST_CASE("a definition stands once, in all files together") {
    const std::string joint = "joint cleat(a: face, b: face) { \"A strip.\" }\n";
    CHECK(compile_files({{"box.rod", design_that("use \"own.rod\"\n" + joint, "")}, {"own.rod", joint}},
                        "box.rod")
              .report() == "E0203 2:7 the joint `cleat` is defined twice\n");
}

TEST_CASE("more files than the limit are an error") {
    Files files = {{"f300.rod", "let last = 1\n"}};
    for (int i = 0; i < 300; ++i) {
        files["f" + std::to_string(i) + ".rod"] = "use \"f" + std::to_string(i + 1) + ".rod\"\n";
    }
    files["box.rod"] = design_that("use \"f0.rod\"", "");
    CHECK(compile_files(files, "box.rod").report() == "E0104 1:5 the design uses more than 256 files\n");
}

TEST_CASE("a library in a folder: its definitions are the ones that are meant, and named as they lie") {
    const std::string dowel = "joint dowell(a: end, b: face) { \"A pin.\" }\n";
    const std::string rail = stick("rail", "wide", {0, 0, 0}, {90, 20, 20});
    const auto with_library = [&](const std::string& wood, const std::string& line) {
        const MemoryWorld world({{"box.rod", design_that("", rail + line)},
                                 {"lib/joints/dowell.rod", dowel},
                                 {"lib/joints/notes.txt", "not a joint"},
                                 {"lib/data/woods.yaml", wood},
                                 {"lib/data/wood_ways.yaml", "movement: {}\ncautions: {}\n"},
                                 {"lib/data/shop.yaml", "tools:\n  chisel: [6mm]\n"}});
        CompileOptions options = build("box.rod");
        options.stdlib_folder = "lib";
        return CompiledDesign(world, options).rendered();
    };
    const std::string good = "woods:\n  oak: {common: oak, density: 700, colour: '#c8b089', source: N}\n";
    CHECK(with_library(good, "join rail.left to rail with dowels\n").find("did you mean `dowell`?") !=
          std::string::npos);
    CHECK(with_library("woods:\n  oak: 3\n", "").find(" lib/data/woods.yaml:2") != std::string::npos);
    CHECK(with_library("woods:\n  oak: 3\n", "").find("stdlib/") == std::string::npos);
}

TEST_SUITE_END();
