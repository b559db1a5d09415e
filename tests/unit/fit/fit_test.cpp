// Every sheet of every example in every format, projection and way to show lengths.
#include <doctest/doctest.h>

#include "tests/support/wood.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/sheet_check.hpp"

using namespace rodwright;

namespace {

std::vector<OptionValues> ways_to_draw() {
    std::vector<OptionValues> ways;
    for (const drawing::SheetFormat& format : drawing::sheet_formats()) {
        for (const char* projection : {"first", "third"}) {
            for (const char* units : {"mm", "inch", "both"})
                ways.push_back({{"sheet", format.word}, {"projection", projection}, {"units", units}});
        }
    }
    return ways;
}

}  // namespace

TEST_SUITE("unit/fit") {
    TEST_CASE("on the sheets of the examples nothing stands on a text or outside its frame") {
        const std::vector<OptionValues> ways = ways_to_draw();
        for (const std::string& name : testing::example_names()) {
            testing::Making making(testing::example_piece(name));
            const testing::PlannedWood wood = testing::plan_from(
                making.piece, testing::example_file(name, "rack.yaml"), testing::example_milling(name));
            making.input.wood = &wood.plan;
            for (const OptionValues& way : ways) {
                const std::string which =
                    name + " " + way.at("sheet") + " " + way.at("projection") + " " + way.at("units");
                CAPTURE(which);
                const std::vector<drawing::Sheet> sheets = making.sheets(way);
                CHECK(sheets.size() > 8);
                for (const drawing::Sheet& sheet : sheets) {
                    for (const std::string& fault : testing::faults_of(sheet, *making.fonts))
                        FAIL_CHECK(fault);
                }
            }
        }
    }
}
