// Every sheet of every example in every format, projection and way to show lengths.
#include <doctest/doctest.h>

#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/sheet_check.hpp"

using namespace rodwright;

TEST_SUITE("unit/drawing") {
    TEST_CASE("on the sheets of the examples nothing stands on a text or outside its frame") {
        for (const std::string& name : testing::example_names()) {
            testing::Making making(testing::example_piece(name));
            for (const drawing::SheetFormat& format : drawing::sheet_formats()) {
                for (const char* projection : {"first", "third"}) {
                    for (const char* units : {"mm", "inch", "both"}) {
                        const std::string which = name + " " + format.word + " " + projection + " " + units;
                        CAPTURE(which);
                        const std::vector<drawing::Sheet> sheets = making.sheets(
                            {{"sheet", format.word}, {"projection", projection}, {"units", units}});
                        CHECK(sheets.size() > 8);
                        for (const drawing::Sheet& sheet : sheets) {
                            for (const std::string& fault : testing::faults_of(sheet, *making.fonts))
                                FAIL_CHECK(fault);
                        }
                    }
                }
            }
        }
    }
}
