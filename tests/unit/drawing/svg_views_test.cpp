// The SVGs of the examples: what files there are, that any XML parser reads them, that they say what they
// show.
#include <doctest/doctest.h>

#include <set>

#include "backends/drawing/svg/svg_writer.hpp"
#include "backends/svg/svg_backend.hpp"
#include "backends/svg/views.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/xml_check.hpp"

using namespace rodwright;

static std::map<std::string, std::string> views_of(const std::string& name) {
    testing::Making& making = testing::made_example(name);
    making.sources.add("tables/" + name + ".rod", testing::example_text(name));
    OutputFolder out;
    make_svg_backend()->emit(making.input, {{"projection", "auto"}, {"units", "auto"}}, out,
                             making.diagnostics);
    CHECK(making.diagnostics.ok());
    std::map<std::string, std::string> files;
    for (const auto& [path, bytes] : out.files()) files[path] = bytes;
    return files;
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("the check of XML refuses what a parser would") {
        CHECK(testing::xml_fault("<a b=\"1\"><c/>text &amp; more</a>\n").empty());
        CHECK(testing::xml_fault("<a><b></a></b>") == "`</a>` closes <b>");
        CHECK(testing::xml_fault("<a>") == "<a> is not closed");
        CHECK(testing::xml_fault("<a>1 & 2</a>") == "a bare &");
        CHECK(testing::xml_fault("<a b=1/>") == "attributes of <a>");
        CHECK(testing::xml_fault("<a/><b/>") == "<b> stands beside the root");
        CHECK(testing::xml_fault("<a b=\"1\" b=\"2\"/>") == "attributes of <a>");
        CHECK(testing::xml_fault("").empty() == false);
    }

    TEST_CASE("an SVG for each view and each kind of part but mirror images") {
        std::set<std::string> names;
        for (const auto& [path, bytes] : views_of("instrument_tray")) names.insert(path);
        CHECK(names == std::set<std::string>{"views/arrangement.svg", "views/part-A.svg", "views/part-B1.svg",
                                             "views/part-C.svg", "views/part-D.svg", "views/pictorial.svg",
                                             "views/taken-apart.svg"});
    }

    TEST_CASE("every SVG of the examples is well-formed, the same each time, and has its words") {
        for (const std::string& name : testing::example_names()) {
            const std::map<std::string, std::string> files = views_of(name);
            CHECK(files == views_of(name));
            for (const auto& file : files) {
                const std::string& bytes = file.second;
                CAPTURE(file.first);
                CHECK(testing::xml_fault(bytes) == "");
                CHECK(bytes.find("<title id=\"title\">") != std::string::npos);
                CHECK(bytes.find("<desc id=\"desc\">") != std::string::npos);
                CHECK(bytes.find("<desc>" + name + ".rod:") != std::string::npos);
            }
        }
    }

    TEST_CASE("each part is a group with the line of the design that it comes from") {
        // `part side` stands on that line of the example.
        const std::string text = testing::example_text("instrument_tray");
        const auto line =
            1 + std::count(text.begin(), text.begin() + static_cast<long>(text.find("part side")), '\n');
        const std::string group =
            "<g><title>part B1, side</title>\n<desc>instrument_tray.rod:" + std::to_string(line) + "</desc>";
        const std::map<std::string, std::string> files = views_of("instrument_tray");
        for (const char* path :
             {"views/pictorial.svg", "views/taken-apart.svg", "views/arrangement.svg", "views/part-B1.svg"}) {
            CAPTURE(path);
            CHECK(files.at(path).find(group) != std::string::npos);
        }
        CHECK(files.at("views/pictorial.svg").find("<title>pictorial view</title>") != std::string::npos);
    }
}
