#include <doctest/doctest.h>

#include <cstdlib>
#include <limits>

#include "backends/drawing/pdf/pdf_writer.hpp"
#include "backends/drawing/sheet_format.hpp"
#include "tests/support/scratch_folder.hpp"
#include "tests/unit/drawing/test_fonts.hpp"

using namespace rodwright;
using namespace rodwright::drawing;

static std::vector<Sheet> sample_sheets() {
    Sheet sheet = framed_sheet(*find_sheet_format("a4"), "Ärmel ½");
    sheet.text({"Keeper’s table → 1 5/8\" ☐", FontFace::bold, 5, {30, 200}, Align::left, false});
    sheet.text({"turned", FontFace::regular, 2.5, {100, 100}, Align::middle, true});
    sheet.circle(LineRole::hidden, {100, 100}, 30);
    sheet.fill({200, 10, 10}, {{20, 20}, {30, 20}, {25, 30}});
    sheet.items.emplace_back(Disc{{1, 2, 3}, {55, 55}, 5});
    sheet.items.emplace_back(Stroke{LineRole::crease, {{50, 70}, {60, 75}, {70, 70}}, false, true});
    sheet.items.emplace_back(Link{{100, 100, 110, 110}, "second"});
    Sheet second = framed_sheet(*find_sheet_format("tabloid"), "second");
    second.anchors = {"second"};
    return {sheet, second};
}

static std::string error_of(const Sheet& sheet) {
    Diagnostics diagnostics;
    CHECK(!write_pdf({sheet}, fonts(), {"t", "", true}, diagnostics).has_value());
    REQUIRE(diagnostics.list().size() == 1);
    CHECK(diagnostics.list()[0].code == Code::cannot_draw);
    return diagnostics.list()[0].message;
}

static int run(const std::string& command) {
    return std::system((command + " >/dev/null 2>&1").c_str());
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("the same sheets give the same bytes, and a file that other programs read") {
        Diagnostics diagnostics;
        const auto first =
            write_pdf(sample_sheets(), fonts(), {"Keeper’s table", "packet", true}, diagnostics);
        const auto second =
            write_pdf(sample_sheets(), fonts(), {"Keeper’s table", "packet", true}, diagnostics);
        REQUIRE(first.has_value());
        CHECK(first == second);
        CHECK(first->substr(0, 5) == "%PDF-");
        const ScratchFolder folder;
        folder.put("a.pdf", *first);
        const std::string path = (folder.path() / "a.pdf").string();
        REQUIRE(run("qpdf --version") == 0);
        CHECK(run("qpdf --check " + path) == 0);
        REQUIRE(run("pdftotext " + path + " " + path + ".txt") == 0);
        const std::string text = folder.get("a.pdf.txt");
        CHECK(text.find("Keeper’s table → 1") != std::string::npos);
        CHECK(text.find("☐") != std::string::npos);
    }

    TEST_CASE("sections of several sheets hold their entries; a sheet that goes on has none") {
        std::vector<Sheet> sheets;
        for (const auto& [section, title] :
             std::vector<std::pair<std::string, std::string>>{{"Cover", "Cover"},
                                                              {"Parts", "Part A"},
                                                              {"Parts", "Part B"},
                                                              {"Steps", "Order"},
                                                              {"Steps", "Order"}}) {
            sheets.push_back(framed_sheet(*find_sheet_format("a4"), title));
            sheets.back().section = section;
            sheets.back().text({"→ ½ ☐ ~", FontFace::bold, 5, {50, 100}, Align::left, false});
        }
        Diagnostics diagnostics;
        const PdfInfo info{"t", "", false, std::chrono::sys_seconds(std::chrono::seconds(951782400))};
        const auto pdf = write_pdf(sheets, fonts(), info, diagnostics);
        REQUIRE(pdf.has_value());
        const ScratchFolder folder;
        folder.put("a.pdf", *pdf);
        const std::string path = (folder.path() / "a.pdf").string();
        const auto shown = [&](const std::string& command) {
            REQUIRE(std::system((command + " >" + path + ".out 2>&1").c_str()) == 0);
            return folder.get("a.pdf.out");
        };
        // Each entry by its title; one with others under it comes after them in this form.
        const std::string outline =
            shown("qpdf --json --json-key=outlines " + path + " | grep '\"title\"' | tr -d ' \\n'");
        CHECK(outline == R"("title":"Cover""title":"PartA""title":"PartB""title":"Parts""title":"Order")");
        // 2000-02-29, the day of that number of seconds (see the test of dates).
        CHECK(shown("TZ=UTC pdfinfo -isodates " + path).find("CreationDate:    2000-02-29T00:00:00Z") !=
              std::string::npos);
        CHECK(shown("pdftotext " + path + " /dev/null").empty());  // no complaint about the map to characters
    }

    TEST_CASE("compression makes the file smaller, not different to look at") {
        Diagnostics diagnostics;
        const auto small = write_pdf(sample_sheets(), fonts(), {"t", "", true}, diagnostics);
        const auto large = write_pdf(sample_sheets(), fonts(), {"t", "", false}, diagnostics);
        REQUIRE(small.has_value());
        REQUIRE(large.has_value());
        CHECK(small->size() * 2 < large->size());
    }

    TEST_CASE("a character that the font lacks is an error, not an empty box") {
        Sheet sheet = framed_sheet(*find_sheet_format("a4"), "");
        sheet.text({"top 木", FontFace::regular, 2.5, {50, 50}, Align::left, false});
        CHECK(error_of(sheet) == "the font has no character U+6728, needed for `top 木`");
    }

    TEST_CASE("numbers that the library would write wrong are refused") {
        for (const double bad :
             {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), 1e7}) {
            Sheet sheet = framed_sheet(*find_sheet_format("a4"), "");
            sheet.line(LineRole::visible, {10, 10}, {bad, 20});
            CHECK(error_of(sheet) == "a place on a sheet is not a number within 5 m");
        }
    }

    TEST_CASE("what the library refuses is one error, the first") {
        Sheet sheet = framed_sheet(*find_sheet_format("a4"), "");
        sheet.width = 0.1;  // below the least page side
        CHECK(error_of(sheet).find("0x1054") != std::string::npos);
    }
}
