// Values flow one way through the stages, and a stage knows only those before it.
#include <doctest/doctest.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "tests/unit/structure/source_tree.hpp"

using namespace rodwright::testing;

namespace {

// In the order of the flow; the longest beginning that fits a path is its stage. An include may only point to
// the same line or to one above it. Since the order is total, no cycle between two stages can arise.
constexpr std::string_view stages[] = {
    "compiler/limits.hpp",
    "compiler/at_once.",
    "compiler/stdlib.hpp",
    "compiler/words.",
    "compiler/world.",
    "compiler/revision.",
    "compiler/diagnostics/",
    "compiler/quantity/",
    "compiler/data/",
    "grammar/",
    "compiler/geometry/",
    "compiler/evaluate/",
    "compiler/place/",
    "compiler/graph/",
    "compiler/compile.",
    "compiler/stock/",
    "compiler/solid/",
    "compiler/solid/occt/",
    "compiler/assembly/",
    "compiler/check/",
    "compiler/workplan/schedule/",
    "compiler/workplan/",
    "compiler/plugin/",
    "backends/words.",
    "backends/work_words.",
    "backends/epoch.",
    "backends/csv.",
    "backends/cutlist/",
    "backends/boards/",
    "backends/steps/",
    "backends/graph/",
    "backends/model/",
    "backends/drawing/",
    "backends/drawing/pdf/",
    "backends/packet/",
    "backends/svg/",
    "backends/backend_table.",
    "compiler/cli/",
};
constexpr std::size_t no_stage = std::size(stages);

std::size_t stage_of(const std::string& path) {
    std::size_t found = no_stage;
    for (std::size_t i = 0; i < std::size(stages); ++i) {
        if (!path.starts_with(stages[i])) continue;
        if (found == no_stage || stages[i].size() > stages[found].size()) found = i;
    }
    return found;
}

// What stands in `#include "..."`.
std::vector<std::string> includes_of(const SourceFile& file) {
    constexpr std::string_view opening = "#include \"";
    std::vector<std::string> found;
    for (const std::string& line : lines_of(file.text)) {
        if (!line.starts_with(opening)) continue;
        found.push_back(line.substr(opening.size(), line.rfind('"') - opening.size()));
    }
    return found;
}

std::vector<std::string> faults_of(const SourceFile& file) {
    std::vector<std::string> faults;
    const std::size_t own = stage_of(file.path);
    if (own == no_stage) faults.push_back(file.path + " belongs to no stage");
    for (const std::string& included : includes_of(file)) {
        const std::size_t other = stage_of(included);
        if (other == no_stage || other > own)
            faults.push_back(file.path + " includes " + included + " against the flow");
    }
    return faults;
}

}  // namespace

TEST_SUITE("unit/structure") {
    TEST_CASE("includes point only to the same stage or to an earlier one") {
        const auto files = source_files({"compiler", "grammar", "backends"}, {".hpp", ".cpp"});
        REQUIRE(files.size() > 100);
        for (const SourceFile& file : files) {
            for (const std::string& fault : faults_of(file)) FAIL_CHECK(fault);
        }
    }

    TEST_CASE("an include against the flow is found") {
        CHECK(faults_of({"compiler/place/a.cpp", "#include \"compiler/place/a.hpp\"\n#include <map>\n"})
                  .empty());
        CHECK(faults_of({"compiler/place/a.cpp", "#include \"compiler/graph/piece.hpp\"\n"}).size() == 1);
        CHECK(faults_of({"compiler/solid/a.hpp", "#include \"compiler/solid/occt/a.hpp\"\n"}).size() == 1);
        CHECK(faults_of({"grammar/a.cpp", "#include \"tests/a.hpp\"\n"}).size() == 1);
        CHECK(faults_of({"compiler/new_stage/a.cpp", ""}).size() == 1);
    }

    TEST_CASE(
        "only the solid kernel's folder knows Open CASCADE, only the grammar knows the parser library") {
        for (const SourceFile& file : source_files({"compiler", "grammar", "backends"}, {".hpp", ".cpp"})) {
            CAPTURE(file.path);
            const bool kernel = file.path.starts_with("compiler/solid/occt/");
            CHECK((kernel || (file.text.find("#include <BRep") == std::string::npos &&
                              file.text.find("#include <TopoDS") == std::string::npos &&
                              file.text.find("#include <gp_") == std::string::npos)));
            CHECK((file.path.starts_with("grammar/") || file.text.find("<tao/") == std::string::npos));
            CHECK(
                (file.path.starts_with("backends/drawing/") || file.text.find("<hpdf") == std::string::npos));
            CHECK((file.path.starts_with("compiler/data/") || file.path.starts_with("backends/graph/") ||
                   file.text.find("<yaml-cpp") == std::string::npos));
        }
    }
}
